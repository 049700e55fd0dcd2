package task

import (
	"fmt"
	"regexp"

	"evenhand/standards/words"
)

// LargerShare asks which of two shares of the same shape is larger: "larger share: circle pie 2 or circle pie 4".
type LargerShare struct{ Left, Right Cut }

// LookLargerShare is two shapes that are cut, one share of each gray.
const LookLargerShare Look = "two-shares"

var _ = ownLook(LookLargerShare, "two shapes, one share of each gray", 0)

var largerSharePattern = regexp.MustCompile(`^larger share:? ?(.+) or (.+)$`)

func readLargerShare(text string) (Task, error) {
	m := largerSharePattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	left, err := readCut(m[1])
	if err != nil {
		return nil, err
	}
	right, err := readCut(m[2])
	switch {
	case err != nil:
		return nil, err
	case left.Shape != right.Shape || !left.Equal() || !right.Equal() || left == right:
		return nil, words.Errorf("%q: two equal cuts of the same shape are compared, as in larger share: circle pie 2 or circle pie 4", text)
	}
	return LargerShare{left, right}, nil
}

func (t LargerShare) String() string { return fmt.Sprintf("larger share: %s or %s", t.Left, t.Right) }

// Key is "left", "right" or "same".
func (t LargerShare) Key() string {
	switch {
	case t.Left.N < t.Right.N:
		return "left"
	case t.Left.N > t.Right.N:
		return "right"
	}
	return "same"
}

// Judge accepts the side, or the words for the same.
func (t LargerShare) Judge(answer string) bool {
	said, ok := oneWord(answer, groupWords)
	return ok && said == t.Key()
}

// Possible takes a side, and the words for the same.
func (t LargerShare) Possible(answer string) bool { _, ok := oneWord(answer, groupWords); return ok }

// Prompt asks which share.
func (t LargerShare) Prompt(lang string) string {
	if lang == "es" {
		return "Las dos figuras son iguales. ¿Qué parte gris es más grande, o son iguales?"
	}
	return "Both shapes are the same. Which gray share is larger, or are they the same size?"
}

// Short tells the cuts.
func (t LargerShare) Short(lang string) string {
	return shown(t, lang, t.Left.Told(lang)+"; "+t.Right.Told(lang))
}

// Traits of comparing shares.
func (t LargerShare) Traits() Traits {
	var ts Traits
	ts[Asks] = "larger share"
	ts.setNumber(Largest, max(t.Left.N, t.Right.N))
	ts.setFlag(Misleads, t.Left.Way != t.Right.Way) // shares of two forms
	return ts
}

// Codes of comparing shares: more shares are smaller, grade 1; equal shares of other forms, grade 2.
func (t LargerShare) Codes() []Code {
	if t.Left.N == t.Right.N {
		return []Code{"2.G.A.3"}
	}
	return cutCodes(t.Left, t.Right)
}

var moreIsLarger = newMisstep("more shares taken for larger",
	"takes a share of the shape with more shares for the larger one",
	"cree que es más grande la parte de la figura con más partes",
	"share one cracker among two, then among four: who gets more?",
	"repartir una galleta entre dos y luego entre cuatro: ¿a quién le toca más?", "common practice")

// Missteps of comparing shares.
func (t LargerShare) Missteps() []Misstep {
	if t.Key() == "same" {
		return gather(t, []slip{{formsUnlike, "left"}, {formsUnlike, "right"}})
	}
	other := map[string]string{"left": "right", "right": "left"}
	return gather(t, []slip{{moreIsLarger, other[t.Key()]}})
}

// Clashes of comparing shares: the shape.
func (t LargerShare) Clashes() []string {
	return []string{fmt.Sprintf("shares:%s %d,%d", t.Left.Shape, min(t.Left.N, t.Right.N), max(t.Left.N, t.Right.N))}
}

// Fingerprint of comparing shares is its text.
func (t LargerShare) Fingerprint() string { return t.String() }

// Looks of comparing shares.
func (t LargerShare) Looks() []Look { return []Look{LookLargerShare} }

// Offers are the sides, and neither.
func (t LargerShare) Offers() []string { return []string{"left", "same", "right"} }

// AnswerIn is the side.
func (t LargerShare) AnswerIn(answer, lang string) string {
	return inSpanish(answer, lang, map[string]string{"left": "izquierda", "right": "derecha", "same": "igual"})
}
