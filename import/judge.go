package intake

import (
	"errors"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// judge makes items of the rows of one list.
type judge struct {
	list      *List
	by        string
	skill     standards.SkillID              // for items by hand whose row names none
	clocks    bool                           // the list is about clocks
	leaveOut  LeaveOut                       // what whole number sentences ask for; may be empty
	keysPoint bool                           // numbers for keys point to choices
	keysSay   bool                           // or they are the answers
	named     map[string][]standards.SkillID // what skillsNamed said before
}

// verdict is what became of a row: an item, or a problem. Notes come with the item.
type verdict struct {
	item     bank.Item
	notes    []Note
	id       string // of the item in the bank that wrote the row
	revision int    // of the item when the row was written
	problem  *Problem
	whole    bool // the problem is a true number sentence with nothing left out
}

func newJudge(l *List, o ImportOptions) *judge {
	j := &judge{list: l, by: o.By, skill: o.Skill, leaveOut: o.LeaveOut, clocks: aboutClocks(l), named: map[string][]standards.SkillID{}}
	j.readKeys()
	return j
}

// aboutClocks says whether most questions of a list are clocks, or their heading says so. Of rows set aside, only what
// is typed as a time counts: that the others may be times is what was asked about.
func aboutClocks(l *List) bool {
	at := l.column(Question)
	if at < 0 {
		return false
	}
	for _, word := range strings.Fields(plainWords(l.Columns[at].Heading)) {
		if slices.Contains([]string{"clock", "time", "hora", "reloj"}, word) {
			return true
		}
	}
	rows := l.rows[:min(len(l.rows), sniffedRecords)]
	clocks := 0
	for _, rec := range rows {
		cell := rec.cell(at)
		if _, changed := restoreTime(cell); changed && !l.mended || isClock(cell) {
			clocks++
		}
	}
	return 2*clocks > len(rows)
}

// isClock says whether a cell is a clock task.
func isClock(cell string) bool {
	asked, err := task.Parse(cell)
	return err == nil && task.AnswersOf(asked) == task.OneTime
}

// cell is what a row says in the column with a meaning.
func (j *judge) cell(rec record, m Meaning) string {
	if m == Answer && rec.answer != "" {
		return rec.answer
	}
	return rec.cell(j.list.column(m))
}

// row judges one row.
func (j *judge) row(rec record) verdict {
	if j.list.mended {
		rec.open = j.list.leftOpen(rec)
	}
	if j.list.own {
		return j.own(rec)
	}
	if beyond := j.list.leftBeyond(rec); beyond != nil {
		return verdict{problem: &Problem{rec.first, "", beyond}}
	}
	v := j.item(rec)
	switch cells, headings := filled(rec.cells), len(j.list.headings); {
	case cells > len(j.list.Columns):
		j.surplus(&v, rec.first, cells, len(j.list.Columns))
	case v.item.ByHand() && headings > 0 && cells > headings && j.unheard(rec):
		j.surplus(&v, rec.first, cells, headings)
	}
	return v
}

// unheard says that a row of a text has something in a column beyond the headings of which
// nothing is known: a comma in a story may have cut it.
func (j *judge) unheard(rec record) bool {
	if j.list.Encoding == workbookEncoding {
		return false
	}
	for i := len(j.list.headings); i < len(j.list.Columns); i++ {
		if j.list.Columns[i].Meaning == "" && rec.cell(i) != "" {
			return true
		}
	}
	return false
}

// surplus deals with a row of too many cells: an item understood and answered rightly
// comes in with a note; any other was most likely cut in the wrong place.
func (j *judge) surplus(v *verdict, line, cells, columns int) {
	text := words.Sayf("this row has %d cells, the list has %d columns", cells, columns)
	if v.problem == nil && !v.item.ByHand() {
		v.notes = append(v.notes, Note{line, "", words.Sayf("%s; what is beyond was not used", text)})
		return
	}
	advice := words.Sayf("put quotation marks around a cell with %s in it", words.Term(j.list.Delimiter))
	if j.list.Encoding == workbookEncoding {
		advice = words.Sayf("see whether a cell has slipped to the right")
	}
	*v = verdict{problem: &Problem{line, "", words.Sayf("%s; %s", text, advice)}}
}

// item makes an item of a row without counting its cells.
func (j *judge) item(rec record) verdict {
	question, lang := j.question(rec)
	set := func(column Meaning, reason *words.Told) verdict {
		return verdict{problem: &Problem{rec.first, string(column), reason}}
	}
	switch explained, dated := readDate(question); {
	case rec.problem != nil:
		return set("", rec.problem)
	case rec.open:
		return set("", words.Sayf(neverClosed))
	case question == "":
		return set(Question, words.Sayf("there is no question here"))
	case len(question) > longestQuestion:
		return set(Question, words.Sayf("this is %d characters long; a question has at most %d",
			len(question), longestQuestion))
	case dated:
		return set(Question, explained)
	case SheetError(question):
		return set(Question, notWorkedOut(question))
	}
	if at := j.list.column(Answer); at < 0 || rec.cell(at) == "" {
		question, rec = j.answered(rec, question)
	}
	clock := dayShare.MatchString(question) && j.inClocks(rec)
	mended, changed := mendTimes(question, clock)
	typed := strings.TrimLeft(mended, "= ") // "=7+8" is a sum typed into a spreadsheet
	asking, whole := leaveOut(typed, notDigit.ReplaceAllString(j.cell(rec, Answer), ""), j.leaveOut)
	asked, err := task.Parse(asking)
	var v verdict
	switch {
	case err == nil:
		v = j.understood(rec, asked)
	case whole:
		v = set(Question, notATask(question, err))
		v.whole = true
	case keptByHand(mended, err):
		v = j.byHand(rec, question, lang)
	default:
		return set(Question, notATask(question, err))
	}
	if changed && v.problem == nil {
		v.note(rec.first, Question, words.Sayf("%s read as %s, which a spreadsheet had changed",
			shorten(question), shorten(mended)))
	}
	return v
}

// answered takes an answer that stands behind the question in its own cell.
func (j *judge) answered(rec record, question string) (string, record) {
	m := answerInText.FindStringSubmatch(question)
	if m == nil {
		return question, rec
	}
	rec.answer = m[2]
	return m[1], rec
}

// question is the row's question and its language.
func (j *judge) question(rec record) (text, lang string) {
	text, lang = j.cell(rec, Question), "en"
	if text == "" {
		text, lang = j.cell(rec, QuestionEs), "es"
	}
	if strings.ContainsAny(text, "¿¡") {
		lang = "es"
	}
	return plainText(text), lang
}

// inClocks says whether a row is about a clock, so that a share of a day is a time.
func (j *judge) inClocks(rec record) bool {
	if j.clocks {
		return true
	}
	answer := j.cell(rec, Answer)
	if _, changed := restoreTime(answer); changed {
		return true
	}
	_, err := words.ParseTime(answer)
	skills := j.skills(j.cell(rec, Skill))
	return err == nil || len(skills) > 0 && slices.Contains(clockSkills, skills[0])
}

// keptByHand says whether a text that didn't parse may be a question all the same:
// one of no known kind that is more than numbers, one in words that only begins like a
// known kind, or one that multiplies, divides or has fractions.
func keptByHand(text string, err error) bool {
	if errors.As(err, new(*task.NotUnderstoodError)) {
		return !asksNothing.MatchString(text)
	}
	said := letterWords.FindAllString(text, -1)
	return otherOperation.MatchString(text) || len(said) > 3 || len(said) > 0 && !strings.ContainsFunc(text, unicode.IsDigit)
}

var (
	asksNothing    = regexp.MustCompile(`^[\d\s.,:;?!_#()'"-]*$`) // a number, or some
	letterWords    = regexp.MustCompile(`\pL{2,}`)
	otherOperation = regexp.MustCompile(`[\d?_□] ?[×xX*÷/·] ?[\d?_□]`) // multiplying, dividing, fractions
)

// notATask explains why a question can't be kept.
func notATask(question string, err error) *words.Told {
	if typed, changed := restoreTime(question); changed {
		return words.Sayf(mayBeTime, question, typed, typed)
	}
	return words.ToldBy(err)
}

const mayBeTime = "%s may be the time %s that a spreadsheet has changed; if so, write %s"

func (v *verdict) note(line int, column Meaning, text *words.Told) {
	v.notes = append(v.notes, Note{line, string(column), text})
}

// plainText takes control characters but line feeds out of a text.
func plainText(text string) string {
	text = strings.ReplaceAll(text, "\r\n", "\n")
	clean := strings.Map(func(r rune) rune {
		switch {
		case r == '\t' || r == '\r':
			return ' '
		case unicode.IsControl(r) && r != '\n':
			return -1
		}
		return r
	}, text)
	return strings.TrimSpace(clean)
}

// shorten keeps a quoted cell readable within a message.
func shorten(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	if runes := []rune(text); len(runes) > 60 {
		return string(runes[:57]) + "..."
	}
	return text
}
