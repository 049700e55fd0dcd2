package task

import (
	"fmt"
	"regexp"
	"strings"

	"evenhand/standards/words"
)

// FindCuts asks which of some shapes are cut into equal shares of a name, cut however:
// "find fourths: square crossed 4, square uneven down 4, square corners 4".
type FindCuts struct {
	Shares int // 2 halves, 3 thirds, 4 fourths
	Cuts   [4]Cut
	N      int // 3 or 4
}

// LookFindCuts is shapes that are cut, with a box to mark under each.
const LookFindCuts Look = "find-shares"

var _ = ownLook(LookFindCuts, "shapes cut into shares, each with a box to mark", 0)

var findCutsPattern = regexp.MustCompile(`^(?:find )?(?:(?:each|every|all) )?(halves|thirds|fourths|quarters): ?(.+)$`)

func readFindCuts(text string) (Task, error) {
	m := findCutsPattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	t := FindCuts{Shares: map[string]int{"halves": 2, "thirds": 3, "fourths": 4, "quarters": 4}[m[1]]}
	cells := strings.Split(m[2], ",")
	if t.N = len(cells); t.N < 3 || t.N > len(t.Cuts) {
		return nil, words.Errorf("%q has %d shapes; a row here has 3 or 4", text, t.N)
	}
	for i, cell := range cells {
		c, err := readCut(cell)
		if err != nil {
			return nil, err
		}
		t.Cuts[i] = c
	}
	if key := t.Key(); key == "" || len(key) == 3*t.N-2 {
		return nil, words.Errorf("%q: some of the shapes have to be cut into %s, and some not", text, m[1])
	}
	return t, nil
}

func (t FindCuts) String() string {
	list := make([]string, t.N)
	for i, c := range t.List() {
		list[i] = c.String()
	}
	return fmt.Sprintf("find %s: %s", manyShares[t.Shares][0], strings.Join(list, ", "))
}

// List is the shapes in their order.
func (t FindCuts) List() []Cut { return append([]Cut(nil), t.Cuts[:t.N]...) }

// Right says that the shape at a place is one to find.
func (t FindCuts) Right(i int) bool { return t.Cuts[i].Equal() && t.Cuts[i].N == t.Shares }

// Key is the letters of the shapes to find.
func (t FindCuts) Key() string { return lettersOf(t.N, t.Right) }

// Judge accepts the letters in any order.
func (t FindCuts) Judge(answer string) bool {
	said, ok := readLetters(answer, t.N)
	return ok && said == t.Key()
}

// Possible takes letters of the shapes.
func (t FindCuts) Possible(answer string) bool { _, ok := readLetters(answer, t.N); return ok }

// Prompt asks which shapes are cut so.
func (t FindCuts) Prompt(lang string) string {
	if lang == "es" {
		return fmt.Sprintf("Marca cada figura cortada en %s.", manyShares[t.Shares][1])
	}
	return fmt.Sprintf("Mark each shape that is cut into %s.", manyShares[t.Shares][0])
}

// Short tells the shapes.
func (t FindCuts) Short(lang string) string {
	list := make([]string, t.N)
	for i, c := range t.List() {
		list[i] = c.Told(lang)
	}
	return shown(t, lang, strings.Join(list, "; "))
}

// Traits of finding shares.
func (t FindCuts) Traits() Traits {
	var ts Traits
	ts[Asks] = "which shares"
	ts.setNumber(Largest, t.Shares)
	ts.setFlag(Misleads, len(t.Missteps()) > 1)
	return ts
}

// Codes of finding shares.
func (t FindCuts) Codes() []Code { return cutCodes(t.List()...) }

// Missteps of finding shares.
func (t FindCuts) Missteps() []Misstep {
	return gather(t, []slip{
		{sharesCounted, lettersOf(t.N, func(i int) bool { return t.Cuts[i].N == t.Shares })},
		{formsUnlike, lettersOf(t.N, func(i int) bool { return t.Right(i) && t.Cuts[i].Way != "mixed" })},
		{sharesNamed, lettersOf(t.N, func(i int) bool { return t.Cuts[i].Equal() && t.Cuts[i].N != t.Shares })},
	})
}

// Clashes of finding shares: how many.
func (t FindCuts) Clashes() []string { return []string{"find:" + manyShares[t.Shares][0]} }

// Fingerprint of finding shares is its text.
func (t FindCuts) Fingerprint() string { return t.String() }

// Looks of finding shares.
func (t FindCuts) Looks() []Look { return []Look{LookFindCuts} }

// Accepted are usual ways to write the letters.
func (t FindCuts) Accepted(string) []string { return letterTexts(t.Key()) }
