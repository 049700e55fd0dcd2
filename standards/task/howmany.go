package task

import (
	"fmt"
	"regexp"
	"strconv"

	"evenhand/standards/words"
)

// HowMany asks to count dots: "count 13" in rows, "count 8 scattered" here and there, "count 12 in a circle", and none in
// an empty frame, "count 0".
type HowMany struct {
	Number    int // 0 to 20, scattered 1 to 10
	Scattered bool
	Circle    bool // 3 or more
}

var howManyPattern = regexp.MustCompile(`^count(?: the)?:? ?([0-9]{1,4}) ?(?:dots)?(?:( ?,? ?scattered)|( in a circle))?$`)

func readHowMany(text string) (Task, error) {
	m := howManyPattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	t := HowMany{Scattered: m[2] != "", Circle: m[3] != ""}
	t.Number, _ = strconv.Atoi(m[1])
	if most := t.most(); t.Number < t.least() || t.Number > most {
		return nil, words.Errorf("%q is not %d to %d; count up to 20 dots in rows or up to 10 scattered, as in count 8 scattered", text, t.least(), most)
	}
	if t.Circle && t.Number < 3 {
		return nil, words.Errorf("%q: a circle needs 3 dots or more, as in count 12 in a circle", text)
	}
	return t, nil
}

// least is the smallest number to count: an empty frame is not scattered.
func (t HowMany) least() int {
	if t.Scattered {
		return 1
	}
	return 0
}

// most is the largest number to count, from the published standard: 20 in order, 10 scattered.
func (t HowMany) most() int {
	if t.Scattered {
		return 10
	}
	return 20
}

func (t HowMany) String() string {
	if t.Scattered {
		return fmt.Sprintf("count %d scattered", t.Number)
	}
	if t.Circle {
		return fmt.Sprintf("count %d in a circle", t.Number)
	}
	return fmt.Sprintf("count %d", t.Number)
}

// Key is the number of dots.
func (t HowMany) Key() string { return strconv.Itoa(t.Number) }

// Judge accepts the number, in digits or in words.
func (t HowMany) Judge(answer string) bool {
	r, ok := readReply(answer, vocabulary(t.Prompt))
	return ok && r.equation == nil && r.number == t.Number
}

// Possible takes a number of dots.
func (t HowMany) Possible(answer string) bool {
	r, ok := readReply(answer, vocabulary(t.Prompt))
	return ok && r.equation == nil
}

// Prompt asks how many there are, without saying it.
func (t HowMany) Prompt(lang string) string {
	if lang == "es" {
		return "¿Cuántos puntos hay?"
	}
	return "How many dots are there?"
}

// Traits of counting.
func (t HowMany) Traits() Traits {
	ts := numberTraits(t.Number)
	ts[Asks] = "in rows"
	if t.Scattered {
		ts[Asks] = "scattered"
	}
	if t.Circle {
		ts[Asks] = "in a circle"
	}
	return ts
}

// Codes of counting: how many, and writing it, kindergarten and grade 1; that none is written 0.
func (t HowMany) Codes() []Code {
	if t.Number == 0 {
		return []Code{"K.CC.A.3"}
	}
	return []Code{"K.CC.B.5", "K.CC.A.3", "1.NBT.A.1"}
}

// The missteps in counting things; Gelman & Gallistel (1978) describe them.
var (
	oneMissed = newMisstep("one thing missed",
		"says the numbers in order but leaves a thing out",
		"dice los números en orden, pero deja una cosa sin contar",
		"move or mark each thing as it is counted",
		"mover o marcar cada cosa al contarla", "Gelman & Gallistel (1978)")
	oneTwice = newMisstep("one thing counted twice",
		"says the numbers in order but counts a thing twice",
		"dice los números en orden, pero cuenta una cosa dos veces",
		"move or mark each thing as it is counted",
		"mover o marcar cada cosa al contarla", "Gelman & Gallistel (1978)")
	noneAsOne = newMisstep("none written as 1",
		"writes 1 where there is nothing to count",
		"escribe 1 donde no hay nada que contar",
		"take things away one by one, down to none, and write each number",
		"quitar cosas una por una, hasta que no quede ninguna, y escribir cada número", "common practice")
	teenReversed = newMisstep("teen turned around",
		"writes the digit that is heard first in front, 31 for thirteen",
		"pone delante el dígito que se oye primero, 31 en lugar de trece",
		"lay the parts on top of each other: 13 is 10 under 3",
		"poner una parte sobre la otra: 13 es 10 debajo de 3", "common practice")
)

// Missteps of counting.
func (t HowMany) Missteps() []Misstep {
	if t.Number == 0 {
		return gather(t, []slip{{noneAsOne, "1"}})
	}
	slips := []slip{{oneMissed, strconv.Itoa(t.Number - 1)}, {oneTwice, strconv.Itoa(t.Number + 1)}}
	if t.Number > 12 && t.Number < 20 {
		slips = append(slips, slip{teenReversed, strconv.Itoa(t.Number%10*10 + 1)})
	}
	return gather(t, slips)
}

// Clashes of counting: the number.
func (t HowMany) Clashes() []string { return []string{"count:" + strconv.Itoa(t.Number)} }

// Fingerprint of counting is its text.
func (t HowMany) Fingerprint() string { return t.String() }

// Looks of counting.
func (t HowMany) Looks() []Look { return []Look{LookDots} }

// Short tells how many dots there are.
func (t HowMany) Short(lang string) string { return shown(t, lang, t.Number) }
