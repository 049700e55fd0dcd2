package task

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// CountOn asks to count on to add, "count on 3 from 8", or back to take away, "count back 3 from 11": each number that is
// said, and the sum or difference that the last of them is.
type CountOn struct {
	Start int // no number goes past 20 or below 1
	Steps int // 1 to 5
	Back  bool
}

// LookCountOn is a row of numbers to go on and its sum.
const LookCountOn Look = "count-on-to-add"

var _ = ownLook(LookCountOn, "numbers to count on or back, and the sum they make", 0)

var countOnPattern = regexp.MustCompile(`^(?:count|cuenta) (on|forward|up|back|backward|backwards|adelante|hacia adelante|atrás|hacia atrás) ` +
	`(?:by )?([0-9]{1,3}) (?:from|desde|desde el) ([0-9]{1,3})$`)

func readCountOn(text string) (Task, error) {
	m := countOnPattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	t := CountOn{Back: strings.HasPrefix(m[1], "back") || strings.HasSuffix(m[1], "atrás")}
	t.Steps, _ = strconv.Atoi(m[2])
	t.Start, _ = strconv.Atoi(m[3])
	if t.Steps < 1 || t.Steps > 5 || min(t.Start, t.end()) < 1 || max(t.Start, t.end()) > 20 {
		return nil, words.Errorf("%q: 1 to 5 steps are counted, from 1 to 20, as in count on 3 from 8", text)
	}
	return t, nil
}

func (t CountOn) String() string {
	way := "on"
	if t.Back {
		way = "back"
	}
	return fmt.Sprintf("count %s %d from %d", way, t.Steps, t.Start)
}

func (t CountOn) sentence() Sentence {
	return Sentence{Terms: [4]int{t.Start, t.Steps}, Minus: [4]bool{1: t.Back}, N: 2, Blank: 2}
}

func (t CountOn) end() int { return t.sentence().Result() }

// counted are the numbers that are said after the first: 9, 10, 11.
func (t CountOn) counted() (list []int) {
	s := t.sentence()
	for i := range t.Steps {
		list = append(list, t.Start+s.sign(1)*(i+1))
	}
	return list
}

// numbers are those to write: what is counted, and the sum.
func (t CountOn) numbers() []int { return append(t.counted(), t.end()) }

// Key is the numbers that are counted, and the sum.
func (t CountOn) Key() string { return joinInts(t.numbers(), ", ") }

// Fills are the same, one for each place.
func (t CountOn) Fills() []string { return strings.Split(t.Key(), ", ") }

// Written is the row of numbers and the sum, each with its places: "8, ?, ?, ? 8 + 3 = ?".
func (t CountOn) Written() string { return t.Row() + "; " + t.Sum() }

// Row is the numbers to count on with their places: "8, ?, ?, ?".
func (t CountOn) Row() string { return strconv.Itoa(t.Start) + strings.Repeat(", ?", t.Steps) }

// Sum is the sum or difference that they make: "8 + 3 = ?".
func (t CountOn) Sum() string { return t.sentence().String() }

// Judge accepts all numbers in order, the sum with its numbers, or what comes out alone.
func (t CountOn) Judge(answer string) bool {
	r, numbers, ok := t.reply(answer)
	s := t.sentence()
	switch {
	case !ok:
		return false
	case r.equation != nil:
		return r.equation.says(s.signed(), t.end())
	case len(numbers) > 0:
		return slices.Equal(numbers, t.numbers())
	}
	return r.number == t.end()
}

// Possible takes numbers in a row, a number sentence and a number.
func (t CountOn) Possible(answer string) bool { _, _, ok := t.reply(answer); return ok }

func (t CountOn) reply(answer string) (r reply, numbers []int, ok bool) {
	if r, ok = readReply(answer, noWords); ok {
		return r, nil, true
	}
	numbers, ok = listOf(words.ListTokens(answer), ",;")
	return reply{}, numbers, ok && len(numbers) > 1 && len(numbers) <= t.Steps+1
}

// Prompt asks to count and to write the sum.
func (t CountOn) Prompt(lang string) string {
	switch {
	case t.Back && lang == "es":
		return "Cuenta hacia atrás y escribe la resta: " + t.Written()
	case t.Back:
		return "Count back, and write what is left: " + t.Written()
	case lang == "es":
		return "Sigue contando y escribe la suma: " + t.Written()
	}
	return "Count on, and write the sum: " + t.Written()
}

// Traits of counting on are those of the sum or difference.
func (t CountOn) Traits() Traits {
	ts := t.sentence().Traits()
	ts[Asks] = "counting on"
	if t.Back {
		ts[Asks] = "counting back"
	}
	return ts
}

// Codes of counting on: counting seen as adding and taking away, grade 1.
func (t CountOn) Codes() []Code { return []Code{"1.OA.C.5"} }

// Missteps of counting on: the first number counted too, and the other way.
func (t CountOn) Missteps() []Misstep {
	early := append([]int{t.Start}, t.counted()[:t.Steps-1]...)
	slips := []slip{{countedFirst, joinInts(append(early, early[t.Steps-1]), ", ")}}
	turned := CountOn{t.Start, t.Steps, !t.Back}
	switch {
	case t.Back && turned.end() <= 20:
		slips = append(slips, slip{addedInstead, turned.Key()})
	case !t.Back && turned.end() >= 1:
		slips = append(slips, slip{subtractedInstead, turned.Key()})
	}
	return gather(t, slips)
}

// Clashes of counting on: the fact family.
func (t CountOn) Clashes() []string { return t.sentence().Clashes() }

// Fingerprint of counting on is its text.
func (t CountOn) Fingerprint() string { return t.String() }

// Looks of counting on.
func (t CountOn) Looks() []Look { return []Look{LookCountOn} }
