package desk

import (
	"errors"
	"maps"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"evenhand/bank"
	intake "evenhand/import"
	"evenhand/standards"
	"evenhand/standards/words"
)

// How many rows one page shows: fates, and rows with fields to mend them in.
const (
	fatesShown = 100
	mendsShown = 40
)

// mostMends is how many rows of one list can be mended in place.
const mostMends = 5000

// listPage is what the page of one list shows.
type listPage struct {
	upload
	judged
	Columns  []intake.Column
	Meanings []intake.Meaning
	Problem  string // why the list can't be read as the person said
	Said     string // what was just done
	May      bool   // change and accept

	Added, Here, Aside int
	Whole              bool // there are whole sentences to say of what they ask for
	Notes              []string
	Asked              []*words.Told
	Fates              []fateRow
	Mends              []mendRow
	At, Rows           int // the first row shown, from 0, of so many
	Before, Next       string
	MendsNext          string
	NoItems            []intake.Line // that hold none: titles, headings, totals
	Kept               *bank.List    // as the bank keeps it since it came in
	Following          *upload       // another list that waits to be looked at
	Differ             int           // rows of the bank's own export that differ from their items
	Back               int           // items that taking back would take out of use
}

// fateRow is a row with what becomes of it.
type fateRow struct {
	Line             int
	Question, Answer string
	Fate             intake.Fate
	ID               string
	Repeats          int // the earlier line that asks the same
	ByHand           bool
	Reason           *words.Told
}

// list shows a list on its way: columns, the fate of every row, and the rows to mend.
func list(v *visit) error {
	one, data, err := v.uploadOf()
	if err != nil {
		return err
	}
	page := listPage{upload: one, Meanings: intake.Meanings(), May: v.who.Role.may(Writer)}
	switch said := v.URL.Query().Get("said"); said {
	case "saved", "look", "in", "back":
		page.Said = v.said.say("list.said." + said)
	}
	if one.Accepted != nil {
		page.Back, _, err = intake.Undo(v.desk.bank, one.Name, intake.ImportOptions{DryRun: true})
		if err != nil && !errors.As(err, new(*intake.UsedError)) {
			return err
		}
		if page.Kept, err = v.keptAs(one.Name); err != nil {
			return err
		}
		if page.Following, err = v.waiting(); err != nil {
			return err
		}
	}
	if one.Done {
		return v.show("list", page)
	}
	page.judged, err = v.judge(one, data, true)
	if lost := (*intake.NoQuestionsError)(nil); errors.As(err, &lost) {
		page.Columns, page.Problem = lost.Columns, v.said.say("list.noquestions")
		return v.show("list", page)
	}
	if errors.As(err, new(*intake.WrongOptionsError)) {
		return v.asUnderstood(page, one, data, err)
	}
	if err != nil {
		return err
	}
	page.fill(v.URL.Query())
	return v.show("list", page)
}

// asUnderstood shows a list whose columns or encoding can't be what the person said, as it was
// understood before.
func (v *visit) asUnderstood(page listPage, one upload, data []byte, wrong error) error {
	page.Problem = v.said.Tell(wrong)
	one.Columns, one.Encoding = nil, ""
	var err error
	if page.judged, err = v.judge(one, data, true); err != nil {
		if lost := (*intake.NoQuestionsError)(nil); errors.As(err, &lost) {
			page.Columns = lost.Columns
			return v.show("list", page)
		}
		return err
	}
	page.fill(v.URL.Query())
	return v.show("list", page)
}

// fill puts what was judged on the page.
func (p *listPage) fill(query url.Values) {
	if !p.List.OwnExport() {
		p.Columns = p.List.Columns
	}
	p.Asked = slices.Concat(p.Left, p.List.Asked)
	p.Added, p.Here = p.count(intake.Added), p.count(intake.Here)+p.count(intake.Differs)
	p.Aside, p.Differ = p.count(intake.SetAside), p.count(intake.Differs)
	p.NoItems = p.List.Skipped()
	p.NoItems = p.NoItems[:min(len(p.NoItems), fatesShown)]
	p.Whole = p.Report.Whole() > 0 || p.LeaveOut != ""
	at, _ := strconv.Atoi(query.Get("at"))
	p.Rows = len(p.Report.Outcomes)
	p.At = max(0, min(at, p.Rows-1))
	notes := map[int]*words.Told{}
	for _, note := range p.Report.Notes {
		if notes[note.Line] == nil {
			notes[note.Line] = note.Text
		}
	}
	for _, out := range p.Report.Outcomes[min(p.At, p.Rows):min(p.At+fatesShown, p.Rows)] {
		row := fateRow{
			Line: out.First, Question: p.Report.Cell(out, intake.Question), Answer: p.Report.Cell(out, intake.Answer),
			Fate: out.Fate, ID: out.ID, Repeats: out.Repeats, ByHand: out.ByHand, Reason: notes[out.First],
		}
		if row.Question == "" {
			row.Question = p.Report.Cell(out, intake.QuestionEs)
		}
		if out.Problem != nil {
			row.Reason = out.Problem.Reason
		}
		p.Fates = append(p.Fates, row)
	}
	if p.At > 0 {
		p.Before = "?at=" + strconv.Itoa(max(0, p.At-fatesShown)) + "#fates"
	}
	if p.At+fatesShown < p.Rows {
		p.Next = "?at=" + strconv.Itoa(p.At+fatesShown) + "#fates"
	}
	first, _ := strconv.Atoi(query.Get("mend"))
	first = max(0, min(first, len(p.Mending)))
	p.Mends = p.Mending[first:min(first+mendsShown, len(p.Mending))]
	if p.List.OwnExport() { // most of its columns only tell
		for i := range p.Mends {
			p.Mends[i].Cells = slices.DeleteFunc(p.Mends[i].Cells, func(c mendCell) bool {
				return !c.Wrong && !slices.Contains([]string{"task", "question_en", "question_es", "key", "notes"}, c.Heading)
			})
		}
	}
	if first+mendsShown < len(p.Mending) {
		p.MendsNext = "?mend=" + strconv.Itoa(first+mendsShown) + "#mend"
	}
}

// Meant says whether a meaning can be chosen for a column.
func (p listPage) Meant(m intake.Meaning) bool { return m == "" || slices.Contains(p.Meanings, m) }

// HasMends says that there are rows to mend.
func (p listPage) HasMends() bool { return len(p.Mends) > 0 }

// changeList keeps what was said of a list, and accepts it where that is asked and nothing changed
// that the person has not seen the outcome of.
func changeList(v *visit) error {
	one, data, err := v.uploadOf()
	if err != nil {
		return err
	}
	if one.Done {
		return v.to("/lists/" + one.ID)
	}
	said, problem := v.listSaid(one)
	if problem != "" {
		return &fault{status: http.StatusBadRequest, text: problem, link: "/lists/" + one.ID}
	}
	if said != nil {
		if err := v.desk.uploads.change(v.Context(), one.ID, said); err != nil {
			return err
		}
	}
	switch {
	case v.FormValue("do") != "accept":
		return v.to("/lists/" + one.ID + "?said=saved#mend")
	case said != nil:
		return v.to("/lists/" + one.ID + "?said=look")
	}
	result, err := v.judge(one, data, false)
	if err != nil {
		return err
	}
	how := acceptance{By: v.by(), At: v.now(), Added: result.count(intake.Added), Here: result.count(intake.Here)}
	err = v.desk.uploads.accept(v.Context(), one.ID, how, result.count(intake.SetAside) == 0)
	if err != nil {
		return err
	}
	return v.to("/lists/" + one.ID + "?said=in")
}

// listSaid reads the form; nil when it says nothing new.
func (v *visit) listSaid(one upload) (change func(*upload), problem string) {
	columns, changes := v.columnsSaid(one)
	encoding, skill, leave, revise := one.Encoding, one.Skill, one.LeaveOut, one.Revise
	if v.Form.Has("revise") {
		revise = slices.Contains(v.Form["revise"], "yes")
	}
	if v.Form.Has("encoding") {
		encoding = strings.TrimSpace(v.FormValue("encoding"))
	}
	if name := v.FormValue("skill"); v.Form.Has("skill") {
		skill = ""
		if name != "" {
			var err error
			if skill, err = standards.ParseSkill(name); err != nil {
				return nil, v.said.Tell(err)
			}
		}
	}
	if v.Form.Has("leave") {
		leave = intake.LeaveOut(v.FormValue("leave"))
		if !slices.Contains(leaves, leave) {
			return nil, v.said.say("list.leave.wrong")
		}
	}
	mends := v.mendsSaid()
	if !changes && len(mends) == 0 && encoding == one.Encoding && skill == one.Skill && leave == one.LeaveOut && revise == one.Revise {
		return nil, ""
	}
	return func(u *upload) {
		if changes {
			u.Columns = columns
		}
		u.Encoding, u.Skill, u.LeaveOut, u.Revise = encoding, skill, leave, revise
		for key, cells := range mends {
			if u.Mends == nil {
				u.Mends = map[string]map[int]string{}
			}
			if u.Mends[key] == nil {
				if len(u.Mends) >= mostMends {
					continue
				}
				u.Mends[key] = map[int]string{}
			}
			maps.Copy(u.Mends[key], cells)
		}
	}, ""
}

// columnsSaid reads what each column is said to be, beside what it was understood as when the form was
// made.
func (v *visit) columnsSaid(one upload) (said map[int]string, changes bool) {
	said = map[int]string{}
	maps.Copy(said, one.Columns)
	for name := range v.Form {
		number, err := strconv.Atoi(strings.TrimPrefix(name, "column-"))
		if err != nil || !strings.HasPrefix(name, "column-") || number < 1 {
			continue
		}
		meaning := v.FormValue(name)
		if meaning == v.FormValue("was-"+name) {
			continue
		}
		if _, err := intake.ParseMeaning(meaning); err != nil {
			continue
		}
		changes = true
		for other := range said {
			if said[other] == meaning && meaning != string(intake.Unused) {
				delete(said, other)
			}
		}
		said[number] = meaning
	}
	return said, changes
}

// mendsSaid reads the cells that were changed, by row and column.
func (v *visit) mendsSaid() map[string]map[int]string {
	mends := map[string]map[int]string{}
	for name := range v.Form {
		key, column, ok := strings.Cut(strings.TrimPrefix(name, "mend-"), ".")
		number, err := strconv.Atoi(column)
		if !ok || err != nil || !strings.HasPrefix(name, "mend-") || len(key) > 40 || v.FormValue(name) == v.FormValue("was-"+name) {
			continue
		}
		if mends[key] == nil {
			mends[key] = map[int]string{}
		}
		mends[key][number] = v.FormValue(name)
	}
	return mends
}

// leaves are what whole sentences may ask for.
var leaves = []intake.LeaveOut{"", intake.LeaveOutResult, intake.LeaveOutFirst, intake.LeaveOutSecond}

// Leaves are those, in templates.
func (p listPage) Leaves() []intake.LeaveOut { return leaves }
