package intake

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"evenhand/bank"
	"evenhand/bank/cells"
	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// A file that evenhand export wrote is no colleague's list: it is read back column by
// column, so that a bank filled from it holds equal items, with their origin, standing
// and evidence. IDs, revisions, authors of revisions and times are the new bank's own.

// isOwn says whether headings are those of our own export.
func isOwn(headings []string) bool {
	for _, name := range bank.RowColumns() {
		if !slices.Contains(headings, name) {
			return false
		}
	}
	return true
}

// understandOwn gives the columns of our own export their meanings.
func understandOwn(columns []Column) {
	mending := mendingAt(headingsOf(columns))
	for i := range columns {
		c := &columns[i]
		switch name := c.Heading; {
		case mending >= 0 && mending <= i && i < mending+len(mendingHeadings):
			c.Meaning, c.Why = MarkOfMends, "written when the rows were set aside"
		case slices.Contains(bank.RowColumns(), name):
			c.Meaning, c.Why = Meaning(name), "evenhand's own"
		default:
			c.Why = "evenhand's own, given or computed anew"
		}
	}
}

// ownRow reads the cells of one row of our own export. What is wrong in the first
// cell that can't be read stands in problem.
type ownRow struct {
	bank.Row     // cells as they were before they were made safe for spreadsheets
	at       int // its line in this list
	problem  *Problem
}

func newOwnRow(columns []Column, rec record) *ownRow {
	o := &ownRow{at: rec.first}
	for _, name := range bank.RowColumns() {
		if at := holder(columns, Meaning(name)); at >= 0 && at < len(rec.cells) {
			o.Set(name, cells.Unguard(rec.cells[at]))
		}
	}
	return o
}

func (o *ownRow) wrong(column string, reason *words.Told) {
	if o.problem == nil {
		o.problem = &Problem{o.at, column, reason}
	}
}

// number is a whole number from 0 up that fits in so many bits; 0 for an empty cell.
func (o *ownRow) number(name, cell string, bits int) uint64 {
	n, err := strconv.ParseUint(cell, 10, bits)
	if err != nil && cell != "" {
		o.wrong(name, words.Sayf("%q is not a whole number", cell))
	}
	return n
}

// logits is a difficulty.
func (o *ownRow) logits(name, cell string) standards.Difficulty {
	x, err := strconv.ParseFloat(cell, 64)
	if err != nil || !(math.Abs(x) < 100) { // logits of 100 are beyond any item
		o.wrong(name, words.Sayf("%q is not a difficulty in logits such as -1.099", cell))
		return 0
	}
	return standards.Difficulty(math.Round(1000 * x))
}

// own makes an item of a row of our own export.
func (j *judge) own(rec record) (v verdict) {
	o := newOwnRow(j.list.Columns, rec)
	if rec.open || filled(rec.cells) > len(j.list.Columns) {
		o.wrong("", words.Sayf("the cells of this row can't be told apart; look at its quotation marks"))
	}
	it := o.item()
	o.rest(&it)
	return verdict{item: it, id: o.ID, revision: int(o.number("revision", o.Revision, 31)), problem: o.problem}
}

// item is the item as far as its question, key and skill go.
func (o *ownRow) item() bank.Item {
	question, lang := o.QuestionEN, "en"
	if question == "" {
		question, lang = o.QuestionES, "es"
	}
	key := o.Key
	if o.Task == "" {
		if strings.TrimSpace(question) == "" {
			o.wrong("question", words.Sayf("there is neither a task nor a question here"))
		}
		if strings.TrimSpace(key) == "" {
			o.wrong("key", words.Sayf("there is no key, and it can't be worked out; write one"))
		}
		return o.handItem(question, key, lang)
	}
	asked, err := task.Parse(o.Task)
	if err != nil {
		o.wrong("task", words.ToldBy(err))
		return bank.Item{}
	}
	if key != "" && !judgeAnswer(asked, key) {
		o.wrong("key", wrongAnswer(asked, key, words.Sayf("%s", shorten(key))))
	}
	look := task.Look(o.Look)
	if !slices.Contains(asked.Looks(), look) {
		o.wrong("look", words.Sayf("%s can't be shown as %q", asked, look))
	}
	return bank.NewItem(asked, look, bank.Origin{})
}

func (o *ownRow) handItem(question, key, lang string) bank.Item {
	skill := standards.SkillID(o.Skill)
	if _, err := standards.ParseSkill(string(skill)); err != nil && skill != "" {
		o.wrong("skill", words.ToldBy(err))
	}
	it := bank.NewHandItem(question, key, skill, lang, bank.Origin{})
	it.Codes = standards.SplitCodes(o.Standards)
	it.Seconds = int(o.number("seconds", o.Seconds, 31))
	look, err := task.ParseLook(o.Look)
	if err != nil {
		o.wrong("look", words.ToldBy(err))
	}
	it.Look = look
	return it
}

// rest fills in what isn't part of the question. The predicted difficulty of an item by hand is taken as somebody gave
// it. An export doesn't say by which catalogue it was written, and round numbers such as -1.5 were both the guesses of
// earlier ones and what people type: to guess here could overwrite a person's number, while a guess that has grown old
// is off by some tenths of a logit until papers measure the item. All else that follows from a task is computed anew.
func (o *ownRow) rest(it *bank.Item) {
	it.Wording = nil
	for lang, text := range map[string]string{"en": o.QuestionEN, "es": o.QuestionES} {
		if text != "" {
			if it.Wording == nil {
				it.Wording = map[string]string{}
			}
			it.Wording[lang] = text
		}
	}
	it.Notes = o.Notes
	if o.Predicted != "" {
		it.Predicted = o.logits("predicted", o.Predicted)
	}
	if o.Measured != "" {
		it.Measured = &bank.Measured{
			Difficulty: o.logits("measured", o.Measured), StandardError: o.logits("measured_error", o.MeasuredError),
			Answers: int(o.number("measured_answers", o.MeasuredAnswers, 31)),
		}
	}
	if o.Standing != "" {
		it.Standing = bank.Standing(o.Standing)
	}
	if !slices.Contains([]bank.Standing{bank.Draft, bank.Ready, bank.Retired}, it.Standing) {
		o.wrong("standing", words.Sayf("%q is not draft, ready or retired", it.Standing))
	}
	it.Origin = bank.Origin{Kind: o.Origin, Seed: o.number("seed", o.Seed, 64), File: o.File, Row: int(o.number("row", o.Line, 31)), By: o.OriginBy}
	if !slices.Contains([]string{"generated", "written", "imported"}, it.Origin.Kind) {
		o.wrong("origin", words.Sayf("%q is not generated, written or imported", it.Origin.Kind))
	}
}
