package intake

import (
	"iter"
	"strings"

	"evenhand/bank"
	"evenhand/standards/words"
)

// kept is the list with its rows as the bank keeps it.
func (r *Report) kept(o ImportOptions) (bank.List, iter.Seq[bank.ListRow]) {
	list := bank.List{Name: r.List.Name, Written: r.List.Written().String(), By: o.By, At: o.At}
	list.Told = append(list.Told, r.List.Written())
	for _, asked := range r.List.Asked {
		list.Asked, list.Told = append(list.Asked, asked.String()), append(list.Told, asked)
	}
	for _, c := range r.List.Columns {
		list.Columns = append(list.Columns, bank.ListColumn{Number: c.Number, Heading: c.Heading, Meaning: string(c.Meaning), Why: c.Why})
	}
	return list, func(yield func(bank.ListRow) bool) {
		for _, out := range r.Outcomes {
			row := bank.ListRow{Line: out.First, Fate: string(out.Fate), ID: out.ID}
			if out.Problem != nil {
				row.Line, row.Column = out.Problem.Line, out.Problem.Column
				row.Reason, row.Told = out.Problem.Reason.String(), out.Problem.Reason
			}
			if !yield(row) {
				return
			}
		}
	}
}

// UsedError says that a list can't be taken back, as quizzes hold items of it.
type UsedError struct {
	List  string
	Items []string // IDs
}

func (e *UsedError) Error() string { return e.Told().String() }

// Told is what the error tells.
func (e *UsedError) Told() *words.Told {
	items := words.SayCount(len(e.Items), "%d item", "%d items")
	return words.Sayf("%s of %s stood in a quiz already, such as %s; retire what should go one by one", items, e.List, e.Items[0])
}

// Undo takes a whole list out of use again: every item that came in by it, its sheets and its mended
// rows is retired, with its history. It changes nothing when one of them was used in a quiz. It returns
// how many items were retired; none came by that name when found is 0.
func Undo(b *bank.Bank, list string, o ImportOptions) (found, retired int, err error) {
	names, ids, err := broughtBy(b, list)
	if err != nil {
		return 0, 0, err
	}
	var used []string
	for _, id := range ids {
		uses, err := b.Uses(id)
		if err != nil {
			return 0, 0, err
		}
		if len(uses) > 0 {
			used = append(used, id)
		}
	}
	switch {
	case len(used) > 0:
		return len(ids), 0, &UsedError{list, used}
	case len(ids) == 0 || o.DryRun:
		return len(ids), 0, nil
	}
	retired, err = b.ReviseAll(ids, o.By, takenBack+list, o.At, func(it *bank.Item) error {
		it.Standing = bank.Retired
		return nil
	})
	for _, name := range names {
		if err == nil {
			err = b.TakeListBack(name, o.By, o.At)
		}
	}
	return len(ids), retired, err
}

// broughtBy finds the items that came in by a list: those of the rows that the bank keeps, so that an
// item which was there before stays; of lists that came before rows were kept, by the items' origin.
func broughtBy(b *bank.Bank, list string) (names, ids []string, err error) {
	lists, err := b.Lists()
	if err != nil {
		return nil, nil, err
	}
	for _, one := range lists {
		if one.Name != list && firstName(one.Name) != list && !strings.HasPrefix(one.Name, list+" (") {
			continue
		}
		rows, err := b.ListRows(one)
		if err != nil {
			return nil, nil, err
		}
		names = append(names, one.Name)
		for _, row := range rows {
			if row.Fate == string(Added) {
				ids = append(ids, row.ID)
			}
		}
	}
	if len(ids) > 0 {
		return names, ids, nil
	}
	for it, err := range b.Find(bank.Query{Kind: "imported"}) {
		if err != nil {
			return nil, nil, err
		}
		if it.Origin.File == list || strings.HasPrefix(it.Origin.File, list+" (") {
			ids = append(ids, it.ID)
		}
	}
	return names, ids, nil
}
