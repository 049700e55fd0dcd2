package task

import (
	"fmt"
	"regexp"
	"strconv"

	"evenhand/standards/words"
)

// Shares asks about a shape that is cut: whether the shares are equal, what one of them is called, or how many
// make the whole: "equal shares: circle pie 3", "name share: square corners 4", "shares in all: rectangle down 3".
type Shares struct {
	Cut  Cut
	Asks string // one of sharesAsked
}

// LookShares is a shape that is cut, with boxes to mark or a box for a number.
const LookShares Look = "shares"

var _ = ownLook(LookShares, "shape cut into shares", 0)

var sharesPattern = regexp.MustCompile(`^(equal shares|name share|shares in all)[:?] ?(.+)$`)

// sharesAsked are the questions, by how they are typed.
var sharesAsked = map[string][2]string{
	"equal shares": {"Are all the shares the same size?", "¿Son todas las partes del mismo tamaño?"},
	"name share":   {"The shares are equal. What is one share of the whole called?", "Las partes son iguales. ¿Cómo se llama una parte del entero?"},
}

func readShares(text string) (Task, error) {
	m := sharesPattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	c, err := readCut(m[2])
	if err != nil {
		return nil, err
	}
	t := Shares{c, m[1]}
	if t.Asks != "equal shares" && !c.Equal() {
		return nil, words.Errorf("%q: only equal shares have such a name; ask for equal shares, as in equal shares: %s", text, c)
	}
	return t, nil
}

func (t Shares) String() string { return t.Asks + ": " + t.Cut.String() }

// shareNames are the names of one of so many equal shares, and of all of them together.
var (
	shareNames = map[int]string{2: "half", 3: "third", 4: "fourth"}
	manyShares = map[int][2]string{2: {"halves", "mitades"}, 3: {"thirds", "tercios"}, 4: {"fourths", "cuartos"}}
)

// Key is "yes" or "no", the name of a share, or how many shares.
func (t Shares) Key() string {
	switch {
	case t.Asks == "name share":
		return shareNames[t.Cut.N]
	case t.Asks == "shares in all":
		return strconv.Itoa(t.Cut.N)
	case t.Cut.Equal():
		return "yes"
	}
	return "no"
}

// What people write for yes and no, and for shares.
var (
	yesWords = map[string]string{
		"yes": "yes", "y": "yes", "true": "yes", "equal": "yes", "same": "yes", "si": "yes", "iguales": "yes",
		"no": "no", "n": "no", "not": "no", "false": "no", "not equal": "no", "unequal": "no", "desiguales": "no",
	}
	shareWords = map[string]string{
		"half": "half", "halves": "half", "one half": "half", "1/2": "half", "1 / 2": "half", "mitad": "half",
		"una mitad": "half", "medio": "half", "half of": "half", "one - half": "half", "½": "half", "mitades": "half",
		"third": "third", "thirds": "third", "one third": "third", "1/3": "third", "1 / 3": "third",
		"tercio": "third", "un tercio": "third", "third of": "third", "one - third": "third", "⅓": "third",
		"tercios": "third", "tercera parte": "third",
		"fourth": "fourth", "fourths": "fourth", "one fourth": "fourth", "quarter": "fourth", "quarters": "fourth",
		"one quarter": "fourth", "1/4": "fourth", "1 / 4": "fourth",
		"cuarto": "fourth", "un cuarto": "fourth", "cuarta parte": "fourth", "fourth of": "fourth",
		"one - fourth": "fourth", "one - quarter": "fourth", "¼": "fourth", "cuartos": "fourth",
		"quarter of": "fourth",
	}
)

// Judge accepts yes and no; half, third, fourth and quarter; a number.
func (t Shares) Judge(answer string) bool { said, ok := t.reply(answer); return ok && said == t.Key() }

// Possible takes what fits the question.
func (t Shares) Possible(answer string) bool { _, ok := t.reply(answer); return ok }

func (t Shares) reply(answer string) (string, bool) {
	switch t.Asks {
	case "equal shares":
		return oneWord(answer, yesWords)
	case "name share":
		return oneWord(answer, shareWords)
	}
	r, ok := readReply(answer, vocabulary(t.Prompt, "shares share partes parte quarters halves half thirds fourths"))
	return strconv.Itoa(r.number), ok && r.equation == nil
}

// Prompt asks.
func (t Shares) Prompt(lang string) string {
	if t.Asks != "shares in all" {
		return in(lang, sharesAsked[t.Asks])
	}
	if lang == "es" {
		return fmt.Sprintf("Las partes son %s. ¿Cuántas partes forman el entero?", manyShares[t.Cut.N][1])
	}
	return fmt.Sprintf("The shares are %s. How many shares make the whole?", manyShares[t.Cut.N][0])
}

// Short tells the cut.
func (t Shares) Short(lang string) string { return shown(t, lang, t.Cut.Told(lang)) }

// Traits of shares.
func (t Shares) Traits() Traits {
	var ts Traits
	ts.setNumber(Largest, t.Cut.N)
	ts[Asks] = t.Asks
	ts.setFlag(Misleads, t.Cut.Way == "mixed" || t.Cut.Way == "strips" || t.Cut.Way == "corners")
	return ts
}

// Codes of shares: two and four in grade 1; three, and equal shares of other forms, in grade 2.
func (t Shares) Codes() []Code { return cutCodes(t.Cut) }

func cutCodes(cuts ...Cut) []Code {
	for _, c := range cuts {
		if c.N == 3 || c.Way == "mixed" || c == (Cut{"rectangle", "corners", 4}) {
			return []Code{"2.G.A.3"}
		}
	}
	return []Code{"1.G.A.3", "2.G.A.3"}
}

// The missteps with shares.
var (
	sharesCounted = newMisstep("any shares taken for equal",
		"counts the shares and does not look whether they are the same size",
		"cuenta las partes y no mira si son del mismo tamaño",
		"fold or cut a paper and lay the shares on top of each other",
		"doblar o cortar un papel y poner las partes una sobre otra", "common practice")
	formsUnlike = newMisstep("equal shares of one form only",
		"takes shares of two forms for unequal, though they are the same size",
		"cree que partes de dos formas no son iguales, aunque son del mismo tamaño",
		"cut one share and lay its pieces on the other",
		"cortar una parte y poner sus pedazos sobre la otra", "common practice")
	sharesNamed = newMisstep("share named by another number",
		"mixes up the words half, third and fourth",
		"confunde las palabras mitad, tercio y cuarto",
		"count the equal shares of the whole first, then say the word",
		"contar primero las partes iguales del entero y luego decir la palabra", "common practice")
	cutsCounted = newMisstep("cuts counted",
		"counts the lines and not the shares",
		"cuenta las líneas y no las partes",
		"color each share in its own color and count the colors",
		"pintar cada parte de un color y contar los colores", "common practice")
)

// Missteps of shares.
func (t Shares) Missteps() []Misstep {
	switch {
	case t.Asks == "name share":
		var slips []slip
		for n := 2; n <= 4; n++ {
			slips = append(slips, slip{sharesNamed, shareNames[n]})
		}
		return gather(t, slips)
	case t.Asks == "shares in all":
		return gather(t, []slip{{cutsCounted, strconv.Itoa(t.Cut.N - 1)}})
	case !t.Cut.Equal():
		return gather(t, []slip{{sharesCounted, "yes"}})
	case t.Cut.Way == "mixed":
		return gather(t, []slip{{formsUnlike, "no"}})
	}
	return nil
}

// Clashes of shares: the cut.
func (t Shares) Clashes() []string { return []string{"cut:" + t.Cut.String()} }

// Fingerprint of shares is its text.
func (t Shares) Fingerprint() string { return t.String() }

// Looks of shares.
func (t Shares) Looks() []Look { return []Look{LookShares} }

// Offers are yes and no, or the names.
func (t Shares) Offers() []string {
	switch t.Asks {
	case "equal shares":
		return []string{"yes", "no"}
	case "name share":
		return []string{"half", "third", "fourth"}
	}
	return nil
}

// AnswerIn is yes, no or a share.
func (t Shares) AnswerIn(answer, lang string) string {
	return inSpanish(answer, lang, map[string]string{"yes": "sí", "half": "mitad", "third": "tercio", "fourth": "cuarto"})
}
