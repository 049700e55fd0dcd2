package task

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// CutShape asks to cut a shape into equal shares with a pencil: "cut: circle into 4". What a child drew is its answer:
// how many shares, and whether they are equal.
type CutShape struct {
	Shape string
	N     int
}

// LookCutShape is a shape to cut.
const LookCutShape Look = "cut-shape"

var _ = ownLook(LookCutShape, "shape to cut into shares", 15)

var cutShapePattern = regexp.MustCompile(`^cut:? ?(?:a |the )?(circle|square|rectangle) into ` +
	`([2-9]|halves|thirds|fourths|quarters)(?: equal)?(?: shares| parts)?$`)

func readCutShape(text string) (Task, error) {
	m := cutShapePattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	t := CutShape{Shape: m[1], N: map[string]int{"halves": 2, "thirds": 3, "fourths": 4, "quarters": 4}[m[2]]}
	if t.N == 0 {
		t.N, _ = strconv.Atoi(m[2])
	}
	if t.N > 4 {
		return nil, words.Errorf("%q: grades 1 and 2 cut into 2, 3 or 4 equal shares, as in cut: circle into 4", text)
	}
	return t, nil
}

func (t CutShape) String() string { return fmt.Sprintf("cut: %s into %d", t.Shape, t.N) }

// Solution is one right way to cut.
func (t CutShape) Solution() Cut {
	if t.Shape == "circle" {
		return Cut{t.Shape, "pie", t.N}
	}
	return Cut{t.Shape, "down", t.N}
}

// Key is the number of shares, "4 equal".
func (t CutShape) Key() string { return fmt.Sprintf("%d equal", t.N) }

// Judge accepts so many shares that are said to be equal.
func (t CutShape) Judge(answer string) bool {
	n, equal, ok := t.reply(answer)
	return ok && n == t.N && equal
}

// Possible takes a number of shares with the word for equal or unequal.
func (t CutShape) Possible(answer string) bool { _, _, ok := t.reply(answer); return ok }

// equalWords are what people write for equal and unequal shares.
var equalWords = map[string]string{"equal": "equal", "same": "equal", "even": "equal", "iguales": "equal", "igual": "equal",
	"unequal": "unequal", "uneven": "unequal", "not": "unequal", "desiguales": "unequal", "no": "unequal", "different": "unequal"}

func (t CutShape) reply(answer string) (n int, equal, ok bool) {
	said, numbers := "", 0
	for _, token := range trimmed(words.Tokens(answer)) {
		word := equalWords[token.Text]
		switch {
		case token.IsNumber():
			n, numbers = token.Number, numbers+1
		case word != "" && said != "unequal":
			said = word
		case token.Text == "," || besideWords[token.Text] || word != "" || strings.Contains(" shares parts share part partes parte pieces size ", " "+token.Text+" "):
		default:
			return 0, false, false
		}
	}
	return n, said == "equal", numbers == 1 && said != ""
}

// Prompt asks for the cuts.
func (t CutShape) Prompt(lang string) string {
	if lang == "es" {
		return fmt.Sprintf("Dibuja líneas para cortar el %s en %s.", in(lang, cutShapes[t.Shape]), manyShares[t.N][1])
	}
	return fmt.Sprintf("Draw lines to cut the %s into %s.", t.Shape, manyShares[t.N][0])
}

// Traits of cutting a shape.
func (t CutShape) Traits() Traits {
	var ts Traits
	ts[Asks] = "a cut"
	ts.setNumber(Largest, t.N)
	return ts
}

// Codes of cutting a shape.
func (t CutShape) Codes() []Code { return cutCodes(t.Solution()) }

var cutsForShares = newMisstep("as many cuts as shares",
	"draws as many lines as shares are asked for, which makes one share more",
	"traza tantas líneas como partes se piden, y sale una parte de más",
	"one cut makes two shares: cut a strip of paper and count the pieces",
	"un corte hace dos partes: cortar una tira de papel y contar los pedazos", "common practice")

// Missteps of cutting a shape.
func (t CutShape) Missteps() []Misstep {
	return gather(t, []slip{{sharesCounted, fmt.Sprintf("%d unequal", t.N)}, {cutsForShares, fmt.Sprintf("%d equal", t.N+1)}})
}

// Clashes of cutting a shape: the number of shares.
func (t CutShape) Clashes() []string { return []string{fmt.Sprintf("cutting:%d", t.N)} }

// Fingerprint of cutting a shape is its text.
func (t CutShape) Fingerprint() string { return t.String() }

// Looks of cutting a shape.
func (t CutShape) Looks() []Look { return []Look{LookCutShape} }

// AnswerIn is a number of shares.
func (t CutShape) AnswerIn(answer, lang string) string {
	if lang == "es" {
		answer = strings.NewReplacer("unequal", "desiguales", "equal", "iguales").Replace(answer)
	}
	return answer
}

// Answers to it are drawings.
func (t CutShape) Answers() Answers { return Drawn }
