package intake

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/words"
)

// ImportOptions say how a list goes into a bank.
type ImportOptions struct {
	By       string                // who brings the list; also the author of rows that name none
	At       time.Time             // when
	Skill    standards.SkillID     // for items by hand whose row names no skill; may be empty
	LeaveOut LeaveOut              // what whole number sentences ask for: 47 + 36 = 83 without its 83; may be empty
	Revise   bool                  // rows of the bank's own export that were edited become revisions
	DryRun   bool                  // only report: the bank stays as it is
	Progress func(done, total int) // called now and then with numbers of rows; may be nil
}

// batchRows is how many rows go into the bank in one step: two of its own batches, so
// that it can ready one while it writes the other.
const batchRows = 20_000

// Import brings the rows of a list into a bank. Every row ends as one outcome of the
// report, in the order of the list. An error means that the bank could not be read or
// written; the report then covers the batches of rows before, and importing again adds
// the rest.
func Import(b *bank.Bank, l *List, o ImportOptions) (*Report, error) {
	r := &Report{List: l, DryRun: o.DryRun, Outcomes: make([]Outcome, 0, len(l.rows))}
	err := importAll(b, l, o, r)
	if !o.DryRun && len(r.Outcomes) > 0 {
		err = errors.Join(err, b.KeepList(r.kept(o)))
	}
	return r, err
}

func importAll(b *bank.Bank, l *List, o ImportOptions, r *Report) error {
	in := &importer{bank: b, options: o, report: r, seen: map[string]earlier{}}
	for batch := range judgeAll(newJudge(l, o), l.rows) {
		if err := in.add(batch); err != nil {
			return words.Errorf("%s: %d of %d rows are done, then: %w", l.Name, len(r.Outcomes), l.Rows(), err)
		}
		if o.Progress != nil {
			o.Progress(len(r.Outcomes), l.Rows())
		}
	}
	return nil
}

// batch is some rows, in order, with what was judged of each, or which earlier row of the list,
// counted from 0, a row repeats.
type batch struct {
	rows     []record
	verdicts []*verdict // nil for a row that repeats another
	repeats  map[int]int
}

// judgeAll judges the rows a batch ahead of the writing, in order.
func judgeAll(j *judge, rows []record) func(yield func(batch) bool) {
	return func(yield func(batch) bool) {
		again := repeats{rows: rows, first: map[uint64]int{}, off: j.list.own || j.list.mended}
		judged, stop := make(chan batch), make(chan struct{})
		defer close(stop)
		go func() {
			defer close(judged)
			for rows := range slices.Chunk(rows, batchRows) {
				next := batch{rows, make([]*verdict, len(rows)), map[int]int{}}
				for i, rec := range rows {
					if first, known := again.find(rec); known {
						next.repeats[i] = first
						continue
					}
					v := j.row(rec)
					next.verdicts[i] = &v
				}
				select {
				case judged <- next:
				case <-stop:
					return
				}
			}
		}()
		for next := range judged {
			if !yield(next) {
				return
			}
		}
	}
}

// importer puts judged rows into a bank and their outcomes into a report.
type importer struct {
	bank    *bank.Bank
	options ImportOptions
	report  *Report
	seen    map[string]earlier // by fingerprint: items of this list, all of them in a dry run, else those by hand
}

// earlier is an item that asks the same: in the bank or in an earlier row.
type earlier struct {
	where    *words.Told // "item 01J..." or "line 5"
	id       string      // empty for one that isn't in the bank
	line     int         // of the list; 0 for one that is in the bank
	key      string
	standing bank.Standing

	withdrawn bool // with the whole list that it came in
}

// add puts a batch into the bank, or in a dry run only looks.
func (in *importer) add(b batch) error {
	var items []bank.Item
	var waiting []*Outcome // for the bank's word on items, in order
	outcomes := make([]Outcome, len(b.rows))
	for i := range b.rows {
		rec := &b.rows[i]
		v, out := b.verdicts[i], &outcomes[i]
		*out = Outcome{First: rec.first, Last: rec.last, row: rec}
		if v == nil {
			continue
		}
		if err := in.place(v, out); err != nil {
			return err
		}
		if out.Fate == Added && !in.options.DryRun {
			items, waiting = append(items, v.item), append(waiting, out)
		}
		if out.Fate != SetAside {
			in.report.Notes = append(in.report.Notes, v.notes...)
		}
	}
	if len(items) > 0 {
		added, err := in.bank.Add(items, in.options.By, in.options.At)
		if err != nil {
			return err
		}
		for i, a := range added {
			in.settle(waiting[i], earlier{id: a.ID, standing: a.Standing}, a.Existing)
			if err := in.bringBack(waiting[i], items[i], a); err != nil {
				return err
			}
		}
	}
	done := len(in.report.Outcomes)
	in.report.Outcomes = append(in.report.Outcomes, outcomes...)
	for i, v := range b.verdicts {
		if v == nil {
			repeat(&in.report.Outcomes[done+i], in.report.Outcomes[b.repeats[i]])
		}
	}
	return nil
}

// settle notes which item of the bank a row is.
func (in *importer) settle(out *Outcome, item earlier, existing bool) {
	out.ID, out.Repeats = item.id, item.line
	if !existing {
		return
	}
	out.Fate = Here
	if item.standing == bank.Retired {
		in.report.Notes = append(in.report.Notes, Note{out.First, "", words.Sayf(hereRetired, item.id)})
	}
}

// place decides what becomes of a row as far as the bank need not be written for it.
func (in *importer) place(v *verdict, out *Outcome) error {
	if v.problem != nil {
		out.Fate, out.Problem, out.Whole = SetAside, v.problem, v.whole
		return nil
	}
	if v.id != "" {
		if known, err := in.edited(v, out); known || err != nil {
			return err
		}
	}
	out.Fate, out.ByHand, out.proposed = Added, v.item.ByHand(), strings.HasPrefix(v.item.Notes, proposed)
	if !out.ByHand && !in.options.DryRun {
		return nil
	}
	fingerprint := v.item.Fingerprint()
	known, here := in.seen[fingerprint]
	if !here {
		var err error
		if known, here, err = in.find(fingerprint); err != nil {
			return err
		}
	}
	switch {
	case !here:
		in.seen[fingerprint] = earlier{where: words.Sayf("line %d", out.First), line: out.First, key: v.item.Key}
	case known.withdrawn:
	case out.ByHand && !sameText(known.key, v.item.Key):
		out.Fate, out.ByHand = SetAside, false
		out.Problem = &Problem{out.First, string(Answer), words.Sayf("%s asks the same and has the answer %s, "+
			"the list says %s", known.where, shorten(known.key), shorten(v.item.Key))}
	case in.options.DryRun:
		in.settle(out, known, true)
	}
	return nil
}

// edited deals with a row of this very bank's own export: it is the item as it was, or
// what was changed in it becomes a revision or is told.
func (in *importer) edited(v *verdict, out *Outcome) (known bool, err error) {
	it, err := in.bank.Get(v.id)
	if err != nil {
		return false, nil // of another bank
	}
	out.ID = it.ID
	changes := edits(it, v.item)
	switch {
	case len(changes) == 0:
		out.Fate = Here
	case v.revision != it.Revision:
		out.Fate, out.ID = SetAside, ""
		out.Problem = &Problem{out.First, "revision", words.Sayf("item %s is at revision %d, this row was "+
			"exported at revision %d; export it again and edit that", it.ID, it.Revision, v.revision)}
	case !in.options.Revise || in.options.DryRun:
		out.Fate = Differs
		in.report.Notes = append(in.report.Notes, Note{out.First, "", words.Sayf("item %s is different here: %s", it.ID, words.Joined(changes, "%s, %s"))})
	default:
		out.Fate = Revised
		why := fmt.Sprintf("edited in %s, line %d", in.report.List.Name, out.First)
		_, err := in.bank.Revise(it.ID, in.options.By, why, in.options.At, func(now *bank.Item) error {
			edit(now, v.item)
			return nil
		})
		if err != nil { // such as two items that ask the same now
			out.Fate, out.ID, out.Problem = SetAside, "", &Problem{out.First, "", words.ToldBy(err)}
		}
	}
	return true, nil
}

// find looks for an item in the bank.
func (in *importer) find(fingerprint string) (earlier, bool, error) {
	id, here, err := in.bank.Has(fingerprint)
	if err != nil || !here {
		return earlier{}, false, err
	}
	it, err := in.bank.Get(id)
	return earlier{where: words.Sayf("item %s", id), id: id, key: it.Key, standing: it.Standing, withdrawn: withdrawn(it)}, true, err
}

// sameText compares answers by hand, whatever their spaces and capitals.
func sameText(a, b string) bool {
	return strings.EqualFold(strings.Join(strings.Fields(a), " "), strings.Join(strings.Fields(b), " "))
}
