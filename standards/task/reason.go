package task

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Reason asks to complete the words that say why a sum or difference with tens, "why 47 + 30", or hundreds, "why 347 +
// 200", comes out as it does: "4 tens + 3 tens = ? tens. The ones stay: ?. So 47 + 30 = ?".
type Reason struct {
	Start, Step int // Step is tens or hundreds; nothing is regrouped
	Minus       bool
}

// LookReason is a reason in words with numbers to write.
const LookReason Look = "reason"

var _ = ownLook(LookReason, "reason in words with numbers to write", 15)

var reasonPattern = regexp.MustCompile(`^(?:why|explain|explica|por qué) (?:is )?([0-9]{1,4}) ?([-+]) ?([0-9]{1,4})(?: ?= ?\??)?$`)

func readReason(text string) (Task, error) {
	m := reasonPattern.FindStringSubmatch(trimQuestion(text))
	if m == nil {
		return nil, errOther
	}
	t := Reason{Minus: m[2] == "-"}
	t.Start, _ = strconv.Atoi(m[1])
	t.Step, _ = strconv.Atoi(m[3])
	unit := t.unit()
	parts := []int{t.Start / unit, t.Step / unit, t.result() / unit}
	if t.Step%unit != 0 || slices.Min(parts) < 1 || slices.Max(parts) > 9 {
		return nil, words.Errorf("%q: tens are added to tens, or hundreds to hundreds, or taken away, "+
			"with some on each side and no more than 9, as in why 47 + 30", text)
	}
	return t, nil
}

// unit is a ten or a hundred: what there are so many of.
func (t Reason) unit() int {
	if t.Step >= 100 {
		return 100
	}
	return 10
}

func (t Reason) sentence() Sentence {
	return Sentence{Terms: [4]int{t.Start, t.Step}, Minus: [4]bool{1: t.Minus}, N: 2, Blank: 2}
}

func (t Reason) result() int { return t.sentence().Result() }

func (t Reason) String() string { return "why " + t.sentence().left(-1) }

// numbers are those to write: how many tens or hundreds, what stays where there is something, and what comes out.
func (t Reason) numbers() []int {
	list := []int{t.result() / t.unit()}
	if rest := t.Start % t.unit(); rest > 0 {
		list = append(list, rest)
	}
	return append(list, t.result())
}

// Key is the numbers in order.
func (t Reason) Key() string { return joinInts(t.numbers(), ", ") }

// Fills are the numbers, one for each place.
func (t Reason) Fills() []string { return strings.Split(t.Key(), ", ") }

// Steps are the tens or hundreds, "4 tens + 3 tens = ? tens", what is said of the rest, empty where there is none, and the
// sum.
func (t Reason) Steps(lang string) (units, rest, sum string) {
	name, stays := "tens", [2]string{"The ones stay", "Las unidades quedan igual"}
	if t.unit() == 100 {
		name, stays = "hundreds", [2]string{"The tens and ones stay", "Las decenas y unidades quedan igual"}
	}
	s := t.sentence()
	s.Terms[0], s.Terms[1] = t.Start/t.unit(), t.Step/t.unit()
	a, b, _ := strings.Cut(s.left(-1), " ")
	sign, c, _ := strings.Cut(b, " ")
	units = fmt.Sprintf("%s %s %s %s %s = ? %s", a, name, sign, c, name, name)
	if t.Start%t.unit() > 0 {
		rest = in(lang, stays)
	}
	return units, rest, t.sentence().String()
}

// Judge accepts the numbers in order.
func (t Reason) Judge(answer string) bool {
	numbers, ok := t.reply(answer)
	return ok && slices.Equal(numbers, t.numbers())
}

// Possible takes as many numbers as there are places, or fewer.
func (t Reason) Possible(answer string) bool { _, ok := t.reply(answer); return ok }

func (t Reason) reply(answer string) ([]int, bool) {
	numbers, ok := listOf(words.ListTokens(answer), ",;")
	return numbers, ok && len(numbers) <= len(t.numbers())
}

// oneOf names a single ten or hundred.
var oneOf = strings.NewReplacer("1 tens", "1 ten", "1 hundreds", "1 hundred", "1 decenas", "1 decena", "1 centenas", "1 centena")

// Prompt is the reason with its places.
func (t Reason) Prompt(lang string) string {
	units, rest, sum := t.Steps(lang)
	if rest != "" {
		rest += ": ?. "
	}
	if lang == "es" {
		return "Completa: " + oneOf.Replace(spanishPlaces(units)) + ". " + rest + "Entonces " + sum
	}
	return "Complete: " + oneOf.Replace(units) + ". " + rest + "So " + sum
}

// Traits of a reason are those of its sum or difference.
func (t Reason) Traits() Traits {
	ts := t.sentence().Traits()
	ts[Asks] = "a reason"
	return ts
}

// Codes of a reason: tens added to a number, ten more and ten less, tens from tens, grade 1; hundreds, and why ways of
// working go right, grade 2.
func (t Reason) Codes() (codes []Code) {
	if t.unit() == 100 {
		return []Code{"2.NBT.B.7", "2.NBT.B.9"}
	}
	if !t.Minus {
		codes = append(codes, "1.NBT.C.4")
	}
	if t.Step == 10 {
		codes = append(codes, "1.NBT.C.5")
	}
	if t.Minus && t.Start%10 == 0 {
		codes = append(codes, "1.NBT.C.6")
	}
	return append(codes, "2.NBT.B.9")
}

var placeAsOnes = newMisstep("tens or hundreds worked as ones",
	"works with the tens or hundreds as if they were ones",
	"trabaja con las decenas o centenas como si fueran unidades",
	"build both numbers with sticks and dots, and say what each stick is worth",
	"formar los dos números con barras y puntos y decir cuánto vale cada barra", "common practice")

// Missteps of a reason: tens worked as ones, and the other way.
func (t Reason) Missteps() []Misstep {
	small := t.sentence()
	small.Terms[1] = t.Step / t.unit()
	as := func(units, result int) string {
		list := t.numbers()
		list[0], list[len(list)-1] = units, result
		return joinInts(list, ", ")
	}
	other, kind := t.Start+t.Step, addedInstead
	if !t.Minus {
		other, kind = t.Start-t.Step, subtractedInstead
	}
	slips := []slip{{placeAsOnes, as(t.result()/t.unit(), small.Result())}}
	if other >= t.unit() {
		slips = append(slips, slip{kind, as(other/t.unit(), other)})
	}
	return gather(t, slips)
}

// Clashes of a reason: the fact family.
func (t Reason) Clashes() []string { return t.sentence().Clashes() }

// Fingerprint of a reason is its text.
func (t Reason) Fingerprint() string { return t.String() }

// Looks of a reason.
func (t Reason) Looks() []Look { return []Look{LookReason} }
