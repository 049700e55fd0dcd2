package task

import (
	"fmt"
	"regexp"
	"strconv"

	"evenhand/standards/words"
)

// CountOut asks to color so many of some dots: "count out 7 of 12". How many a child colored is its answer.
type CountOut struct{ Number, Of int } // of up to 20

// LookCountOut is dots to color.
const LookCountOut Look = "dots-to-color"

var _ = ownLook(LookCountOut, "dots of which to color so many", 10)

var countOutPattern = regexp.MustCompile(`^(?:count out|color|colour|colorea) ([0-9]{1,3}) (?:of|de) (?:the )?([0-9]{1,3})(?: dots)?$`)

func readCountOut(text string) (Task, error) {
	m := countOutPattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	var t CountOut
	t.Number, _ = strconv.Atoi(m[1])
	t.Of, _ = strconv.Atoi(m[2])
	if t.Of > 20 || t.Number < 1 || t.Number >= t.Of {
		return nil, words.Errorf("%q: some of up to 20 dots are counted out, fewer than there are, as in count out 7 of 12", text)
	}
	return t, nil
}

func (t CountOut) String() string { return fmt.Sprintf("count out %d of %d", t.Number, t.Of) }

// Key is how many are colored.
func (t CountOut) Key() string { return strconv.Itoa(t.Number) }

// Judge accepts the number of dots that are colored.
func (t CountOut) Judge(answer string) bool {
	r, ok := readReply(answer, vocabulary(t.Prompt, "colored"))
	return ok && r.equation == nil && r.number == t.Number
}

// Possible takes a number of dots.
func (t CountOut) Possible(answer string) bool {
	r, ok := readReply(answer, vocabulary(t.Prompt, "colored"))
	return ok && r.equation == nil
}

// Prompt says how many.
func (t CountOut) Prompt(lang string) string {
	if lang == "es" {
		return fmt.Sprintf("Colorea %d puntos.", t.Number)
	}
	return fmt.Sprintf("Color %d dots.", t.Number)
}

// Short tells how many dots there are.
func (t CountOut) Short(lang string) string {
	return shown(t, lang, fmt.Sprintf("%d / %d", t.Number, t.Of))
}

// Traits of counting out.
func (t CountOut) Traits() Traits {
	ts := numberTraits(t.Number)
	ts[Asks] = "counted out"
	return ts
}

// Codes of counting out: kindergarten.
func (t CountOut) Codes() []Code { return []Code{"K.CC.B.5"} }

var allColored = newMisstep("all of them counted out",
	"goes on to the last dot and does not stop at the number",
	"sigue hasta el último punto y no se detiene en el número",
	"say the number, count aloud, and stop when it is heard",
	"decir el número, contar en voz alta y parar al oírlo", "common practice")

// Missteps of counting out.
func (t CountOut) Missteps() []Misstep {
	return gather(t, []slip{{oneMissed, strconv.Itoa(t.Number + 1)}, {oneTwice, strconv.Itoa(t.Number - 1)}, {allColored, strconv.Itoa(t.Of)}})
}

// Clashes of counting out: the number.
func (t CountOut) Clashes() []string { return []string{"count:" + strconv.Itoa(t.Number)} }

// Fingerprint of counting out is its text.
func (t CountOut) Fingerprint() string { return t.String() }

// Looks of counting out.
func (t CountOut) Looks() []Look { return []Look{LookCountOut} }

// Answers to it are drawings.
func (t CountOut) Answers() Answers { return Drawn }
