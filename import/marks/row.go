package marks

import (
	"maps"
	"slices"
	"strings"

	"evenhand/bank/results"
	"evenhand/standards/words"
)

// cell is one filled cell of a row with all that it may say.
type cell struct {
	at     int // the item's place, from 0
	text   string
	plain  string
	sign   *sign          // the mark it may be
	answer results.Answer // what the child may have written
	why    *words.Told    // why it is no possible answer; nil where it is one
	isKey  bool           // it is the key of an item by hand, whatever it looks like
	long   bool           // the key has more than one character
	said   bool           // a person said what the sign means
}

// mayBeBoth says that a cell can be a mark or an answer.
func (c cell) mayBeBoth() bool { return c.sign != nil && c.why == nil }

// notReached says that the cell is a mark for not reached and nothing else.
func (c cell) notReached() bool {
	if !c.surely(noneFamily) && !c.said {
		return false
	}
	state, _ := c.sign.plainly()
	return state == results.NotReached
}

// surely says that the cell is a mark of one of the families and nothing else.
func (c cell) surely(families ...family) bool {
	return c.sign != nil && c.why != nil && slices.Contains(families, c.sign.family)
}

// rowCells are the filled cells of a row.
type rowCells struct {
	cells  []cell
	grid   *evidence
	told   map[string]results.State // what a person said that signs mean; "" for an answer
	digits Digits                   // what a person said of 1 and 0
}

// look makes a cell of what stands under an item.
func look(at int, item results.Item, text string, told map[string]results.State) cell {
	c := cell{at: at, text: text, plain: plain(text), long: len(item.Key) > 1}
	if state, ok := told[c.plain]; ok && state != "" {
		c.sign, c.why, c.said = &sign{tickFamily, []reading{{state: state}}}, &words.Told{}, true
		return c
	} else if s, isSign := signOf(c.plain); isSign && !ok {
		c.sign = &s
	}
	c.answer, c.why = Written(item, text)
	_, known := item.Task()
	c.isKey = !known && c.sign != nil && c.why == nil && c.sign.family != digitFamily
	if inPart.MatchString(c.plain) && (c.why != nil || c.answer.State != results.Right) && strings.ContainsAny(c.plain, "%½⁄~±adf") {
		c.why = words.Sayf("this says that a part of the answer is right; a mark is right or wrong, so write 1 or 0")
	}
	return c
}

// has says that one of the signs stands in the row.
func (r *rowCells) has(plains string) bool {
	for _, want := range strings.Split(plains, " | ") {
		for _, c := range r.cells {
			if want == anyRight && says(c) == results.Right || want == anyWrong && says(c) == results.Wrong || c.plain == want {
				return true
			}
		}
	}
	return false
}

// says is the state that a cell plainly tells: by a mark of one meaning, or by an answer.
func says(c cell) results.State {
	switch {
	case c.sign == nil && c.why == nil:
		return c.answer.State
	case c.sign == nil || c.why == nil:
		return ""
	}
	state, _ := c.sign.plainly()
	return state
}

// meant is the state of a cell that is a mark and has one meaning in this row.
func (r *rowCells) meant(c cell) results.State {
	if c.sign == nil || c.why == nil {
		return ""
	}
	if list := r.states(c.plain, *c.sign); len(list) == 1 {
		return list[0]
	}
	return ""
}

// states are the meanings that a sign has beside the others of the row.
func (r *rowCells) states(plain string, s sign) (list []results.State) {
	for _, one := range s.readings {
		with := one.with == "" || r.has(one.with)
		unless := one.unless == results.Right && r.has(anyRight)
		if with && !unless && !slices.Contains(list, one.state) {
			list = append(list, one.state)
		}
	}
	if r.grid.letters && s.family == letterFamily && len(list) == 1 && list[0] == results.Absent {
		return []results.State{results.Absent, results.Right}
	}
	alone := !slices.ContainsFunc(r.cells, func(c cell) bool { return c.sign == nil || c.sign.family != s.family && c.sign.family != noneFamily })
	if len(list) > 0 || !alone {
		return list
	}
	return slices.Sorted(maps.Keys(r.grid.meant[plain])) // the row doesn't tell, but other rows may
}

// mark is the state that a cell's sign means in this row, or the question about it.
func (r *rowCells) mark(c cell) (state results.State, question *words.Told) {
	if c.said {
		return c.sign.readings[0].state, nil
	}
	if c.plain == "-" {
		return r.dash()
	}
	switch list := r.states(c.plain, *c.sign); {
	case len(list) == 1 && r.untouched(c, list[0]):
		return "", words.Sayf("no box of this row is ticked; is all of it wrong, or is it not marked yet?")
	case len(list) == 1:
		return list[0], nil
	case len(list) == 0:
		return "", words.Sayf("%s can mean several things here; say which, as in --read '%s=right' or --read '%s=wrong'",
			c.text, c.text, c.text)
	default:
		return "", words.Sayf("%s can mean %s; say which, as in --read '%s=%s'", c.text, inWords(list), c.text, list[0])
	}
}

func inWords(states []results.State) *words.Told {
	texts := make([]*words.Told, len(states))
	for i, state := range states {
		texts[i] = words.Term(string(state))
	}
	return words.Joined(texts, "%s or %s")
}

// untouched says that the row is nothing but empty boxes, in one language or more, as when nobody has marked it.
func (r *rowCells) untouched(c cell, state results.State) bool {
	isBox := c.sign.family == boxFamily
	marked := func(other cell) bool { return other.plain != c.plain && !(isBox && emptyBox(other)) }
	return state == results.Wrong && (isBox || strings.ContainsAny(c.plain, "☐¨[")) && len(r.cells) > 1 && !slices.ContainsFunc(r.cells, marked)
}

// emptyBox says that a cell can be the word for a box that is not ticked.
func emptyBox(c cell) bool {
	if c.sign == nil || c.sign.family != boxFamily {
		return false
	}
	state, _ := c.sign.plainly()
	return state == results.Wrong
}

// dash reads -, which is absent, but wrong for those who mark with + and -.
func (r *rowCells) dash() (state results.State, question *words.Told) {
	first, lastCounted := -1, -1
	otherWrong := false
	for i, c := range r.cells {
		switch {
		case c.plain == "-" && first < 0:
			first = i
		case c.plain != "-" && c.plain != ".":
			lastCounted = i
			otherWrong = otherWrong || isWrong(c)
		}
	}
	was := words.Sayf("- can mean absent or wrong; say which, as in --read '-=absent' or --read '-=wrong'")
	switch plus := r.has("+"); {
	case otherWrong:
		return results.Absent, nil
	case plus && (first < lastCounted || r.grid.dashWrong): // who had the next item was there
		return results.Wrong, nil
	case plus, lastCounted < 0 && r.grid.plains["+"] && !r.grid.wrong, first < lastCounted && !r.grid.wrong:
		return "", was
	}
	return results.Absent, nil
}

// isWrong says that a cell plainly tells of something wrong.
func isWrong(c cell) bool {
	if c.sign == nil {
		return c.why == nil && c.answer.State == results.Wrong
	}
	state, _ := c.sign.plainly()
	return state == results.Wrong || c.plain == "x"
}

// uses is how a family of signs is used in a row, for cells that may be marks or answers.
type uses struct {
	sure       bool // the family stands where it can only be a mark
	otherRight bool // another family marks something right
	written    bool // a right answer is written out
	mixed      bool // something else than the family says what is right
	others     int  // cells that say something else
}

func (r *rowCells) usesOf(f family) (u uses) {
	for _, c := range r.cells {
		switch {
		case c.surely(f):
			u.sure = true
		case r.meant(c) == results.Right:
			u.otherRight = true
		case c.sign == nil && c.why == nil:
			u.written = u.written || c.answer.State == results.Right
		}
		if other := c.sign == nil || c.sign.family != f; other && !c.surely(noneFamily) {
			u.others++
			u.mixed = u.mixed || c.sign == nil || c.sign.family == digitFamily || r.meant(c) == results.Right
		}
	}
	return u
}

// question is what a row asks about one of its cells.
type question struct {
	at   int
	text *words.Told
}

// settle reads the whole row: an answer for each cell, or questions.
func (r *rowCells) settle() (answers map[int]results.Answer, digits Digits, asked []question) {
	for _, c := range r.cells {
		if c.sign == nil && c.why != nil {
			asked = append(asked, question{c.at, words.Sayf("%.40q: %s", c.text, c.why)})
		}
	}
	if len(asked) > 0 {
		return nil, "", asked
	}
	if asked = r.repeated(); len(asked) > 0 {
		return nil, "", asked
	}
	if digits, asked = r.settleDigits(); len(asked) > 0 {
		return nil, "", asked
	}
	answers = map[int]results.Answer{}
	for _, c := range r.cells {
		answer, text := r.settleCell(c, digits)
		if text != nil {
			asked = append(asked, question{c.at, words.Sayf("%.40q: %s", c.text, text)})
		}
		answers[c.at] = answer
	}
	return answers, digits, asked
}

// repeated asks about a text that stands under half of the items or more, of the row or of
// the grid, and is right in none: most likely it counts points.
func (r *rowCells) repeated() []question {
	places := map[string][]cell{}
	for _, c := range r.cells {
		if c.sign == nil && c.why == nil && c.long {
			places[c.plain] = append(places[c.plain], c)
		}
	}
	for text, cells := range places {
		right := slices.ContainsFunc(cells, func(c cell) bool { return c.answer.State == results.Right })
		inRow := !right && len(cells) >= leastRepeated && 2*len(cells) >= len(r.cells)
		if inRow || r.grid.repeated[text] {
			return []question{{cells[0].at, words.Sayf("%q stands under several items and is right in none; if "+
				"it is a mark, say so with --read '%s=right', if the child wrote it, with --read '%s=answer'",
				text, text, text)}}
		}
	}
	return nil
}

// leastRepeated is how often a child hardly writes the same wrong answer (common practice).
const leastRepeated = 3

func (r *rowCells) settleCell(c cell, digits Digits) (results.Answer, *words.Told) {
	switch {
	case c.sign == nil:
		return c.answer, c.why
	case c.sign.family == digitFamily && c.why == nil && digits == AreAnswers:
		return c.answer, nil
	}
	state, asked := r.mark(c)
	marked := results.Answer{State: state}
	if !c.mayBeBoth() || c.sign.family == digitFamily {
		return marked, asked
	}
	asMark, asAnswer := r.stand(c, digits)
	switch {
	case asked == nil && state == c.answer.State && state == results.Wrong:
		return marked, nil
	case asAnswer && !asMark, asked == nil && state == c.answer.State:
		return c.answer, nil
	case asMark && !asAnswer:
		return marked, asked
	}
	return marked, words.Sayf("this can be a mark or what the child wrote; write ✓ or ✗ for the mark, or: wrote %s", c.text)
}

// stand says whether a cell can stand as a mark and as an answer beside the others.
func (r *rowCells) stand(c cell, digits Digits) (asMark, asAnswer bool) {
	u := r.usesOf(c.sign.family)
	u.otherRight = u.otherRight || digits == AreMarks && slices.ContainsFunc(r.cells, isOneForRight)
	asWord := u.sure || !u.otherRight && !u.written
	if state, _ := c.sign.plainly(); judging[c.plain] { // who ticks what is right may judge one answer in words
		asWord = asWord || u.otherRight || state == results.Wrong
	}
	switch {
	case c.isKey && c.sign.family == noneFamily:
		return true, u.others > 1
	case c.isKey:
		return asWord, true
	}
	switch c.sign.family {
	case boxFamily:
		return u.sure || u.others == 0, !u.sure || u.mixed
	case noneFamily:
		return true, u.others > 0
	case tickFamily:
		return true, !u.sure
	}
	return asWord, !u.sure || u.mixed
}
