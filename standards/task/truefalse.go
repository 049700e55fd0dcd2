package task

import (
	"strings"

	"evenhand/standards/words"
)

// TrueFalse asks whether two sides are worth the same: "true or false: 7 = 8 - 1".
// Each side is a number or up to three numbers with + and - between them.
type TrueFalse struct{ Left, Right Side }

// readTrueFalse reads the words and the sentence after them.
func readTrueFalse(text string) (Task, error) {
	rest, ok := strings.CutPrefix(text, "true or false")
	if !ok {
		rest, ok = strings.CutSuffix(strings.TrimRight(text, "? "), "true or false")
	}
	rest = strings.Trim(rest, ":?.; ")
	if !ok || !sentenceShape.MatchString(rest) {
		return nil, errOther
	}
	left, right, ok := strings.Cut(rest, "=")
	if !ok || strings.Contains(right, "=") {
		return nil, words.Errorf("%q needs one equal sign, as in true or false: 7 = 8 - 1", text)
	}
	var t TrueFalse
	for _, row := range []struct {
		side *Side
		text string
	}{{&t.Left, left}, {&t.Right, right}} {
		side, blank, err := readSide(row.text)
		if err == nil && blank >= 0 {
			err = words.Errorf("%q has a place to fill in; true or false is asked of a whole sentence", text)
		}
		if err == nil {
			err = side.check()
		}
		if err != nil {
			return nil, err
		}
		*row.side = side
	}
	return t, nil
}

// Sentence is the sentence to judge, "7 = 8 - 1".
func (t TrueFalse) Sentence() string { return t.Left.String() + " = " + t.Right.String() }

func (t TrueFalse) String() string { return "true or false: " + t.Sentence() }

// True says whether both sides are worth the same.
func (t TrueFalse) True() bool { return t.Left.Value() == t.Right.Value() }

// Key is "true" or "false".
func (t TrueFalse) Key() string { return truthWord(t.True()) }

func truthWord(is bool) string {
	if is {
		return "true"
	}
	return "false"
}

// truthWords are what people write for true and false.
var truthWords = map[string]string{
	"true": "true", "t": "true", "yes": "true", "y": "true", "right": "true", "correct": "true", "✓": "true",
	"verdadero": "true", "v": "true", "si": "true",
	"false": "false", "f": "false", "no": "false", "n": "false", "wrong": "false", "not true": "false", "✗": "false",
	"falso": "false",
}

// Judge accepts the word, its first letter, or yes and no, also in Spanish and after the
// sentence itself.
func (t TrueFalse) Judge(answer string) bool {
	said, ok := t.reply(answer)
	return ok && said == t.Key()
}

// Possible takes the words for true and false.
func (t TrueFalse) Possible(answer string) bool { _, ok := t.reply(answer); return ok }

// reply is the truth that an answer tells.
func (t TrueFalse) reply(answer string) (said string, ok bool) {
	clean := strings.TrimRight(words.Plain(answer), ".! ")
	if rest, whole := strings.CutPrefix(squeeze(clean), squeeze(t.Sentence())); whole && rest != "" {
		clean = strings.TrimPrefix(strings.TrimPrefix(rest, "is"), "es")
	}
	for _, opening := range []string{"it's ", "it is ", "that's ", "that is ", "this is ", "es "} {
		clean = strings.TrimPrefix(clean, opening)
	}
	said, ok = truthWords[words.Unaccented(clean)]
	return said, ok
}

// Prompt asks whether the sentence is true.
func (t TrueFalse) Prompt(lang string) string {
	if lang == "es" {
		return "¿Verdadero o falso? " + t.Sentence()
	}
	return "True or false? " + t.Sentence()
}

// Largest is the largest number of the sentence, the values of its sides included.
func (t TrueFalse) Largest() int { return largestOf(t.Left, t.Right) }

// Traits of a true or false sentence are those of both sides.
func (t TrueFalse) Traits() Traits {
	ts := sidesTraits(t.Left, t.Right)
	switch left, right := t.Left.N > 1, t.Right.N > 1; {
	case left && right:
		ts[Asks] = "both sides"
	case left:
		ts[Asks] = "result last"
	case right:
		ts[Asks] = "result first"
	default:
		ts[Asks] = "two numbers"
	}
	return ts
}

// Codes: what the equal sign means within 20, grade 1; larger numbers ask for the
// work of their size.
func (t TrueFalse) Codes() []Code {
	switch size := t.Largest(); {
	case size <= 20:
		return []Code{"1.OA.D.7"}
	case size <= 1000:
		return sizeCodes(size)
	}
	return nil
}

const equalSignSource = "Behr, Erlwanger & Nichols (1980)"

// The missteps with the equal sign.
var (
	answerFirst = newMisstep("equal sign read as makes",
		"takes a sentence as wrong when the operation does not stand on the left alone",
		"toma por falsa una igualdad cuando la operación no está sola a la izquierda",
		"both sides are worth the same: put each side on a balance",
		"los dos lados valen lo mismo: poner cada lado en una balanza", equalSignSource)
	answerNext = newMisstep("number after the equal sign as result",
		"takes the number right after the equal sign for the result and does not read on",
		"toma por resultado el número que sigue al signo igual y no lee lo demás",
		"both sides are worth the same: put each side on a balance",
		"los dos lados valen lo mismo: poner cada lado en una balanza", equalSignSource)
)

// Missteps of a true or false sentence: the misreadings of the equal sign, and the
// slips in working that make a false sentence look true.
func (t TrueFalse) Missteps() []Misstep {
	wrong := truthWord(!t.True())
	var slips []slip
	switch {
	case t.True() && t.Right.N > 1:
		slips = append(slips, slip{answerFirst, wrong})
	case !t.True() && t.Right.N > 1 && t.Left.N > 1 && t.Left.Value() == t.Right.Terms[0]:
		slips = append(slips, slip{answerNext, wrong})
	case !t.True():
		for _, kind := range append(slipsTo(t.Left, t.Right), slipsTo(t.Right, t.Left)...) {
			slips = append(slips, slip{kind, wrong})
		}
	}
	return gather(t, slips)
}

// slipsTo are the missteps by which one side comes out as the other, a number.
func slipsTo(side, number Side) []*MisstepKind {
	s, ok := side.sentence()
	if !ok || number.N > 1 {
		return nil
	}
	for _, m := range s.Missteps() {
		if m.Answer == number.String() {
			return m.Kinds
		}
	}
	return nil
}

// Clashes of a true or false sentence: the fact families of its sides, or its
// text where it has no operation.
func (t TrueFalse) Clashes() []string {
	if groups := sidesClashes(t.Left, t.Right); groups != nil {
		return groups
	}
	return []string{"truth:" + t.Sentence()}
}

// Fingerprint of a true or false sentence is its text: turned around it asks
// something else of the equal sign.
func (t TrueFalse) Fingerprint() string { return t.String() }

// Looks of a true or false sentence.
func (t TrueFalse) Looks() []Look { return []Look{LookTick} }

// Offers are the two words.
func (t TrueFalse) Offers() []string { return []string{"true", "false"} }

// Judged is the sentence.
func (t TrueFalse) Judged() string { return t.Sentence() }

// AnswerIn is true or false.
func (t TrueFalse) AnswerIn(answer, lang string) string {
	return inSpanish(answer, lang, map[string]string{"true": "verdadero", "false": "falso"})
}
