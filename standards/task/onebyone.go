package task

import (
	"fmt"
	"regexp"
	"strconv"

	"evenhand/standards/words"
)

// OneByOne asks what counting one by one tells: that the last number is how many there are, "number 7 dots"; that they
// stay as many when they are moved, "7 dots moved"; and that each further number is one more, "7 dots and one more".
type OneByOne struct {
	Dots int      // 2 to 20; moved, 3 to 10; with one more, 1 to 19
	Asks CountAsk // what is asked of them
}

// CountAsk is what a OneByOne asks.
type CountAsk string

// What is asked of dots that are counted one by one.
const (
	NumberDots CountAsk = "number"
	DotsMoved  CountAsk = "moved"
	OneMoreDot CountAsk = "and one more"
)

// LookOneByOne is dots that are numbered, moved, or get one more.
const LookOneByOne Look = "dots-one-by-one"

var _ = ownLook(LookOneByOne, "dots to number, moved, or with one more", 10)

var (
	numberDotsPattern = regexp.MustCompile(`^(?:number|numera) (?:the |los )?([0-9]{1,3}) dots$`)
	dotsThenPattern   = regexp.MustCompile(`^([0-9]{1,3}) dots(?: are|,)? (moved|movidos|and (?:one|1) more|y (?:uno|1) más)(?: dot)?` +
		`(?:[:,] ?(?:how many|cuántos)(?: are there| hay)?(?: now)?)?$`)
)

func readOneByOne(text string) (Task, error) {
	text = trimQuestion(text)
	m := numberDotsPattern.FindStringSubmatch(text)
	asks := NumberDots
	if m == nil {
		if m = dotsThenPattern.FindStringSubmatch(text); m == nil {
			return nil, errOther
		}
		asks = OneMoreDot
		if m[2][0] == 'm' {
			asks = DotsMoved
		}
	}
	n, _ := strconv.Atoi(m[1])
	least, most := asks.bounds()
	if n < least || n > most {
		return nil, words.Errorf("%q: so many dots, from %d to %d, as in %s", text, least, most, OneByOne{7, asks})
	}
	return OneByOne{n, asks}, nil
}

// bounds are how many dots there can be: up to 20, and up to 10 where they lie here and there.
func (a CountAsk) bounds() (least, most int) {
	switch a {
	case DotsMoved:
		return 3, 10
	case OneMoreDot:
		return 1, 19
	}
	return 2, 20
}

func (t OneByOne) String() string {
	if t.Asks == NumberDots {
		return fmt.Sprintf("number %d dots", t.Dots)
	}
	return fmt.Sprintf("%d dots %s", t.Dots, t.Asks)
}

func (t OneByOne) answer() int {
	if t.Asks == OneMoreDot {
		return t.Dots + 1
	}
	return t.Dots
}

// Key is how many dots there are.
func (t OneByOne) Key() string { return strconv.Itoa(t.answer()) }

// Judge accepts the number, in digits or in words.
func (t OneByOne) Judge(answer string) bool {
	r, ok := t.reply(answer)
	return ok && r.number == t.answer()
}

// Possible takes a number of dots.
func (t OneByOne) Possible(answer string) bool { _, ok := t.reply(answer); return ok }

func (t OneByOne) reply(answer string) (reply, bool) {
	r, ok := readReply(answer, vocabulary(t.Prompt))
	return r, ok && r.equation == nil
}

// Prompt asks how many there are. How many are to be numbered, only the picture tells.
func (t OneByOne) Prompt(lang string) string {
	said := map[CountAsk][2]string{
		NumberDots: {"Write 1, 2, 3 and so on in the dots, one number in each. How many dots are there?",
			"Escribe 1, 2, 3 y así hasta el final, un número en cada punto. ¿Cuántos puntos hay?"},
		DotsMoved: {"There are %d dots. Then they are moved. How many dots are there now?",
			"Hay %d puntos. Luego se cambian de lugar. ¿Cuántos puntos hay ahora?"},
		OneMoreDot: {"There are %d dots. One more comes. How many dots are there now?",
			"Hay %d puntos. Llega uno más. ¿Cuántos puntos hay ahora?"},
	}[t.Asks]
	if t.Dots == 1 { // of one dot only one more can be told
		said = [2]string{"There is %d dot. One more comes. How many dots are there now?", "Hay %d punto. Llega uno más. ¿Cuántos puntos hay ahora?"}
	}
	text := said[0]
	if lang == "es" {
		text = said[1]
	}
	if t.Asks == NumberDots {
		return text
	}
	return fmt.Sprintf(text, t.Dots)
}

// Short tells how many dots there are, where the question doesn't.
func (t OneByOne) Short(lang string) string {
	if t.Asks == NumberDots {
		return shown(t, lang, t.Dots)
	}
	return t.Prompt(lang)
}

// Traits of counting one by one.
func (t OneByOne) Traits() Traits {
	ts := numberTraits(t.answer())
	ts[Asks] = map[CountAsk]string{NumberDots: "dots numbered", DotsMoved: "dots moved", OneMoreDot: "one more dot"}[t.Asks]
	return ts
}

// Codes of counting one by one: what counting has to do with how many, kindergarten.
func (t OneByOne) Codes() []Code { return []Code{"K.CC.B.4"} }

// sameAsBefore is the misstep of one who doesn't see that a further number is one more.
var sameAsBefore = newMisstep("one more not counted",
	"gives the number from before, though one more has come",
	"da el número de antes, aunque llegó uno más",
	"say the number, lay one more thing down and say the next number",
	"decir el número, poner una cosa más y decir el número siguiente", "common practice")

// Missteps of counting one by one.
func (t OneByOne) Missteps() []Misstep {
	n := t.answer()
	missed, twice := slip{oneMissed, strconv.Itoa(n - 1)}, slip{oneTwice, strconv.Itoa(n + 1)}
	switch t.Asks {
	case DotsMoved:
		missed.kind, twice.kind = roomCompared, roomCompared
	case OneMoreDot:
		missed.kind = sameAsBefore
	}
	return gather(t, []slip{missed, twice})
}

// Clashes of counting one by one: the number.
func (t OneByOne) Clashes() []string { return []string{"count:" + strconv.Itoa(t.answer())} }

// Fingerprint of counting one by one is its text.
func (t OneByOne) Fingerprint() string { return t.String() }

// Looks of counting one by one.
func (t OneByOne) Looks() []Look { return []Look{LookOneByOne} }
