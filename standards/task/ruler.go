package task

import (
	"fmt"
	"regexp"
	"strconv"

	"evenhand/standards/words"
)

// Ruler asks how long a bar beside a ruler is, or how much longer one of two bars is:
// "ruler cm 2 to 9: how long", "ruler inches 0 to 5 and 0 to 2: how much longer".
type Ruler struct {
	Inches   bool
	From, To int // where the bar begins and ends
	// Where the other bar begins and ends; both 0 where there is one bar.
	OtherFrom, OtherTo int
}

// The looks of a ruler.
const (
	LookCentimeters Look = "centimeter-ruler"
	LookInches      Look = "inch-ruler"
)

var (
	_ = ownLook(LookCentimeters, "ruler with centimeters in true size", 0)
	_ = ownLook(LookInches, "ruler with inches in true size", 0)
)

// How far rulers go, so that they lie on a sheet in true size, in large print, too.
const (
	mostCentimeters = 14
	mostInches      = 6
)

const rulerExample = "ruler cm 2 to 9: how long"

var rulerPattern = regexp.MustCompile(`^(?:ruler|regla)(?: in| en)? (cm|centimeters|centímetros|inches|in|pulgadas):? ?` +
	`(?:from |de )?([0-9]{1,2}) (?:to|a) ([0-9]{1,2})(?: (?:and|y) ([0-9]{1,2}) (?:to|a) ([0-9]{1,2}))?: ?¿?` +
	`(how long|how much longer|cuánto mide|cuánto más mide)$`)

func readRuler(text string) (Task, error) {
	m := rulerPattern.FindStringSubmatch(trimQuestion(text))
	if m == nil {
		return nil, errOther
	}
	t := Ruler{Inches: m[1][0] == 'i' || m[1][0] == 'p'}
	for i, place := range []*int{&t.From, &t.To, &t.OtherFrom, &t.OtherTo} {
		*place, _ = strconv.Atoi(m[2+i])
	}
	two := m[4] != ""
	switch asksMore := m[6] == "how much longer" || m[6] == "cuánto más mide"; {
	case t.From >= t.To, two && t.OtherFrom >= t.OtherTo:
		return nil, words.Errorf("%q has a bar that ends before it begins; write for example %s", text, rulerExample)
	case max(t.To, t.OtherTo) > t.Reach():
		return nil, words.Errorf("%q goes past the ruler, which ends at %d %s on a sheet", text, t.Reach(), t.unit())
	case two != asksMore:
		return nil, words.Errorf("%q needs one bar for how long and two for how much longer, as in ruler cm 0 to 9 and 0 to 4: how much longer", text)
	case two && t.Length() == t.OtherLength():
		return nil, words.Errorf("%q has two bars of one length; none is longer", text)
	}
	return t, nil
}

// trimQuestion is a text without a question mark at its end.
func trimQuestion(text string) string {
	for len(text) > 0 && (text[len(text)-1] == '?' || text[len(text)-1] == ' ') {
		text = text[:len(text)-1]
	}
	return text
}

func (t Ruler) String() string {
	if t.Two() {
		return fmt.Sprintf("ruler %s %d to %d and %d to %d: how much longer", t.unit(), t.From, t.To, t.OtherFrom, t.OtherTo)
	}
	return fmt.Sprintf("ruler %s %d to %d: how long", t.unit(), t.From, t.To)
}

func (t Ruler) unit() string {
	if t.Inches {
		return "inches"
	}
	return "cm"
}

// Two says that two bars are compared.
func (t Ruler) Two() bool { return t.OtherTo > 0 }

// Reach is the last number of the ruler.
func (t Ruler) Reach() int {
	if t.Inches {
		return mostInches
	}
	return mostCentimeters
}

// Length is how long the bar is in the ruler's unit.
func (t Ruler) Length() int { return t.To - t.From }

// OtherLength is how long the other bar is; 0 where there is one.
func (t Ruler) OtherLength() int { return t.OtherTo - t.OtherFrom }

func (t Ruler) answer() int { return max(t.Length()-t.OtherLength(), t.OtherLength()-t.Length()) }

// Key is a whole number of the ruler's unit.
func (t Ruler) Key() string { return strconv.Itoa(t.answer()) }

// Judge accepts the number, with its unit or without; of two bars also the subtraction.
func (t Ruler) Judge(answer string) bool {
	r, ok := t.reply(answer)
	switch {
	case !ok:
		return false
	case r.equation != nil && t.Two():
		return r.equation.finds(t.answer(), []int{t.Length(), t.OtherLength(), t.answer()})
	case r.equation != nil:
		return t.From > 0 && r.equation.finds(t.answer(), []int{t.From, t.To, t.answer()})
	}
	return r.number == t.answer()
}

// Possible takes a number, and an equation where one can be asked for.
func (t Ruler) Possible(answer string) bool { _, ok := t.reply(answer); return ok }

func (t Ruler) reply(answer string) (reply, bool) {
	units := "cm cms centimeter centimetre centimetres centimetros measures"
	if t.Inches {
		units = "in inch pulgada measures"
		answer = inchMark.ReplaceAllString(answer, "$1 in")
	}
	r, ok := readReply(answer, vocabulary(t.Prompt, units))
	return r, ok && (r.equation == nil || t.Two() || t.From > 0)
}

// inchMark is the sign for inches behind a number, as in 5".
var inchMark = regexp.MustCompile(`^(\d+) ?("|”|″|''|’’)\.?$`)

// Prompt asks how long, without saying where the bar lies.
func (t Ruler) Prompt(lang string) string {
	unit := map[bool]telling{false: {"centimeters", "centímetros"}, true: {"inches", "pulgadas"}}[t.Inches]
	switch {
	case lang == "es" && t.Inches && t.Two():
		return "¿Cuántas pulgadas más mide la barra más larga?"
	case lang == "es" && t.Inches:
		return "¿Cuántas pulgadas mide la barra?"
	case lang == "es" && t.Two():
		return "¿Cuántos centímetros más mide la barra más larga?"
	case lang == "es":
		return "¿Cuántos centímetros mide la barra?"
	case t.Two():
		return "How many " + unit.en + " longer is the longer bar?"
	}
	return "How many " + unit.en + " long is the bar?"
}

// Short tells where the bars begin and end.
func (t Ruler) Short(lang string) string {
	picture := fmt.Sprintf("%d–%d", t.From, t.To)
	if t.Two() {
		picture += fmt.Sprintf(", %d–%d", t.OtherFrom, t.OtherTo)
	}
	return shown(t, lang, picture)
}

// Traits of a ruler: whether the bars begin at 0, the length, and how many steps count the difference.
func (t Ruler) Traits() Traits {
	ts := numberTraits(max(t.To, t.OtherTo))
	switch {
	case t.Two():
		ts[Asks] = "how much longer"
		if max(t.From, t.OtherFrom) > 0 {
			ts[Asks] = "how much longer not from 0"
		}
		ts.setNumber(CountSteps, min(t.answer(), min(t.Length(), t.OtherLength())))
	case t.From == 0:
		ts[Asks] = "length from 0"
	default:
		ts[Asks] = "length not from 0"
	}
	return ts
}

// Codes of a ruler: measuring, and measuring how much longer, grade 2.
func (t Ruler) Codes() []Code {
	if t.Two() {
		return []Code{"2.MD.A.4"}
	}
	return []Code{"2.MD.A.1"}
}

// The missteps at a ruler.
var (
	endRead = newMisstep("end of the bar read",
		"reads the number at the end of the bar, wherever the bar begins",
		"lee el número donde termina la barra, sin mirar dónde empieza",
		"lay a strip at 3 and count the spaces it covers, one by one",
		"poner una tira en el 3 y contar uno por uno los espacios que cubre",
		"Lehrer (2003), A Research Companion to Principles and Standards, from memory")
	marksCounted = newMisstep("marks counted, not spaces",
		"counts the marks of the ruler under the bar and not the spaces between them",
		"cuenta las rayas de la regla debajo de la barra y no los espacios entre ellas",
		"put a finger in each space between two marks and count the spaces",
		"poner un dedo en cada espacio entre dos marcas y contar los espacios",
		"Lehrer (2003), A Research Companion to Principles and Standards, from memory")
)

// Missteps of a ruler.
func (t Ruler) Missteps() []Misstep {
	a, b := t.Length(), t.OtherLength()
	if t.Two() {
		return gather(t, []slip{{largerGiven, strconv.Itoa(max(a, b))}, {bothTogether, strconv.Itoa(a + b)}, {marksCounted, strconv.Itoa(t.answer() + 1)}})
	}
	slips := []slip{{marksCounted, strconv.Itoa(a + 1)}}
	if t.From > 0 {
		slips = append([]slip{{endRead, strconv.Itoa(t.To)}}, slips...)
	}
	return gather(t, slips)
}

// Clashes of a ruler: one bar is in one form once.
func (t Ruler) Clashes() []string {
	return []string{fmt.Sprintf("ruler:%s %d-%d", t.unit(), t.From, t.To)}
}

// Fingerprint of a ruler is its text.
func (t Ruler) Fingerprint() string { return t.String() }

// Looks of a ruler: that of its unit.
func (t Ruler) Looks() []Look {
	if t.Inches {
		return []Look{LookInches}
	}
	return []Look{LookCentimeters}
}
