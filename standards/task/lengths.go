package task

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Lengths asks to compare bars A, B and C: two of them, "bars 5, 8: which is longer"; three in order,
// "bars 5, 8, 3: order from shortest"; or two by a third that each was laid beside, "bars 9, 6, 4: which is
// longer of A and C by B".
type Lengths struct {
	Bars [3]int // how long they are, 1 to 10, in a unit of the drawing's
	N    int    // how many there are
	Ask  LengthAsk
}

// LengthAsk is what is asked about lengths.
type LengthAsk string

// The questions.
const (
	WhichLonger      LengthAsk = "which is longer"
	WhichShorter     LengthAsk = "which is shorter"
	WhichTaller      LengthAsk = "which is taller" // the bars stand
	LengthOrder      LengthAsk = "order from shortest"
	LongerByAThird   LengthAsk = "which is longer of a and c by b"
	ShorterByAThird  LengthAsk = "which is shorter of a and c by b"
	mostLength                 = 10
	lengthsOfExample           = "bars 5, 8: which is longer"
)

// The looks of lengths.
const (
	LookTwoBars   Look = "two-bars"
	LookThreeBars Look = "three-bars"
	LookBarPairs  Look = "two-pairs-of-bars"
)

var (
	_ = ownLook(LookTwoBars, "two bars to compare", 0)
	_ = ownLook(LookThreeBars, "three bars to put in order", 0)
	_ = ownLook(LookBarPairs, "two pairs of bars that share one", 0)
)

// lengthAsks are the questions with how many bars each is about, and as they are typed in Spanish.
var lengthAsks = []struct {
	ask  LengthAsk
	bars int
	es   string
}{
	{WhichLonger, 2, "cuál es más larga"}, {WhichShorter, 2, "cuál es más corta"}, {WhichTaller, 2, "cuál es más alta"},
	{LengthOrder, 3, "orden desde la más corta"},
	{LongerByAThird, 3, "cuál es más larga de a y c por b"}, {ShorterByAThird, 3, "cuál es más corta de a y c por b"},
}

var lengthsPattern = regexp.MustCompile(`^(?:bars|barras) ([0-9]{1,2}), ([0-9]{1,2})(?:, ([0-9]{1,2}))?: ?¿?([\p{L} ]+)$`)

func readLengths(text string) (Task, error) {
	m := lengthsPattern.FindStringSubmatch(trimQuestion(text))
	if m == nil {
		return nil, errOther
	}
	t := Lengths{N: 2}
	for i := range t.Bars {
		t.Bars[i], _ = strconv.Atoi(m[i+1])
	}
	if m[3] != "" {
		t.N = 3
	}
	bars := 0
	for _, row := range lengthAsks {
		if m[4] == string(row.ask) || m[4] == row.es {
			t.Ask, bars = row.ask, row.bars
		}
	}
	lengths := slices.Sorted(slices.Values(t.Bars[:t.N]))
	switch {
	case bars != t.N:
		return nil, words.Errorf("%q can't be asked of %d bars; write for example %s or bars 5, 8, 3: order from shortest", text, t.N, lengthsOfExample)
	case lengths[0] < 1 || lengths[t.N-1] > mostLength:
		return nil, words.Errorf("%q has a bar that is not 1 to %d long; write for example %s", text, mostLength, lengthsOfExample)
	case len(slices.Compact(lengths)) < t.N:
		return nil, words.Errorf("%q has two bars of one length; make one longer", text)
	case t.byThird() && (t.Bars[1]-t.Bars[0] > 0) != (t.Bars[2]-t.Bars[1] > 0):
		return nil, words.Errorf("%q can't be told by B; its length must lie between those of A and C", text)
	}
	return t, nil
}

func (t Lengths) String() string {
	return fmt.Sprintf("bars %s: %s", joinNumbers(t.Bars[:t.N]), t.Ask)
}

func (t Lengths) byThird() bool { return t.Ask == LongerByAThird || t.Ask == ShorterByAThird }

// Key is the letter of a bar, or the places of the bars A, B, C from the shortest.
func (t Lengths) Key() string {
	switch t.Ask {
	case LengthOrder:
		return joinNumbers(t.places())
	case WhichLonger, WhichTaller, LongerByAThird:
		return t.letterOf(slices.Max(t.Bars[:t.N]))
	}
	return t.letterOf(slices.Min(t.Bars[:t.N]))
}

func (t Lengths) letterOf(length int) string {
	at := slices.Index(t.Bars[:], length)
	return "ABC"[at : at+1]
}

func (t Lengths) places() []int {
	order := slices.Sorted(slices.Values(t.Bars[:t.N]))
	list := make([]int, t.N)
	for i := range list {
		list[i] = slices.Index(order, t.Bars[i]) + 1
	}
	return list
}

// Fills are the places of the bars.
func (t Lengths) Fills() []string { return strings.Split(t.Key(), ", ") }

// Offers are the two bars compared.
func (t Lengths) Offers() []string {
	switch {
	case t.byThird():
		return []string{"A", "C"}
	case t.N == 2:
		return []string{"A", "B"}
	}
	return nil
}

// Judge accepts the letter or place of the bar; of an order the places, or the letters from the shortest.
func (t Lengths) Judge(answer string) bool {
	if t.Ask == LengthOrder {
		said, ok := readPlaces(answer)
		return ok && slices.Equal(said, t.places())
	}
	said, ok := readPicture(answer, t.Offers()...)
	return ok && said == t.Key()
}

// Possible takes a bar, or places.
func (t Lengths) Possible(answer string) (ok bool) {
	if t.Ask == LengthOrder {
		_, ok = readPlaces(answer)
	} else {
		_, ok = readPicture(answer, t.Offers()...)
	}
	return ok
}

// lengthPrompts are the questions in words.
var lengthPrompts = map[LengthAsk]telling{
	WhichLonger:  {"Which bar is longer?", "¿Qué barra es más larga?"},
	WhichShorter: {"Which bar is shorter?", "¿Qué barra es más corta?"},
	WhichTaller:  {"Which bar is taller?", "¿Qué barra es más alta?"},
	LengthOrder: {"Number the bars from the shortest, 1, to the longest, 3: A ?, B ?, C ?",
		"Numera las barras desde la más corta, 1, hasta la más larga, 3: A ?, B ?, C ?"},
	LongerByAThird: {"Bar B is the same in both pictures. Which is longer, bar A or bar C?",
		"La barra B es la misma en los dos dibujos. ¿Cuál es más larga, la barra A o la barra C?"},
	ShorterByAThird: {"Bar B is the same in both pictures. Which is shorter, bar A or bar C?",
		"La barra B es la misma en los dos dibujos. ¿Cuál es más corta, la barra A o la barra C?"},
}

// Prompt asks the question.
func (t Lengths) Prompt(lang string) string {
	if lang == "es" {
		return lengthPrompts[t.Ask].es
	}
	return lengthPrompts[t.Ask].en
}

// Said asks for the order of the bars without the places for their numbers.
func (t Lengths) Said(lang string) string {
	if t.Ask == LengthOrder {
		return withoutPlaces(t.Prompt(lang))
	}
	return t.Prompt(lang)
}

// Short tells how long the bars are.
func (t Lengths) Short(lang string) string {
	question := strings.TrimSuffix(t.Prompt(lang), ": A ?, B ?, C ?")
	return fmt.Sprintf("%s (%s)", question, joinNumbers(t.Bars[:t.N]))
}

// Traits of lengths: what is asked, and how far the nearest two are apart.
func (t Lengths) Traits() Traits {
	ts := numberTraits(slices.Max(t.Bars[:t.N]))
	ts[Asks] = map[LengthAsk]string{LengthOrder: "length order", LongerByAThird: "longer by a third", ShorterByAThird: "shorter by a third"}[t.Ask]
	if ts[Asks] == "" {
		ts[Asks] = strings.TrimPrefix(string(t.Ask), "which is ")
	}
	near := mostSteps
	for i := range t.N {
		for j := range i {
			near = min(near, gap(t.Bars[i], t.Bars[j]))
		}
	}
	ts.setNumber(Apart, near)
	return ts
}

// Codes of lengths: two compared directly, kindergarten; three, and by a third, grade 1.
func (t Lengths) Codes() []Code {
	if t.N == 2 {
		return []Code{"K.MD.A.2"}
	}
	return []Code{"1.MD.A.1"}
}

// The missteps in comparing lengths.
var (
	longShortMixed = newMisstep("longer and shorter mixed up",
		"chooses the shorter one where the longer is asked, or the other way round",
		"elige la más corta cuando se pide la más larga, o al revés",
		"the words longer and shorter, with two ribbons laid side by side",
		"las palabras «más largo» y «más corto», con dos listones uno junto al otro", "common practice")
	longestFirst = newMisstep("longest first",
		"begins with the longest where the shortest comes first",
		"empieza por la más larga cuando primero va la más corta",
		"line up three ribbons at one edge and say shortest, longer, longest",
		"alinear tres listones en un borde y decir el más corto, el siguiente, el más largo", "common practice")
	middleExchanged = newMisstep("middle one exchanged",
		"compares only with one neighbor, so that the middle one stands at an end",
		"compara solo con una vecina y pone la del medio en un extremo",
		"compare each new ribbon with both that are in order already",
		"comparar cada listón nuevo con los dos que ya están en orden",
		"Piaget, Inhelder & Szeminska (1960), from memory")
)

// Missteps of lengths.
func (t Lengths) Missteps() []Misstep {
	if t.Ask != LengthOrder {
		other := slices.Max(t.Bars[:t.N])
		if t.letterOf(other) == t.Key() {
			other = slices.Min(t.Bars[:t.N])
		}
		return gather(t, []slip{{longShortMixed, t.letterOf(other)}})
	}
	turned, mixed := t.places(), t.places()
	for i := range turned {
		turned[i] = t.N + 1 - turned[i]
		mixed[i] = map[int]int{1: 2, 2: 1, 3: 3}[mixed[i]]
	}
	return gather(t, []slip{{longestFirst, joinNumbers(turned)}, {middleExchanged, joinNumbers(mixed)}})
}

// Clashes of lengths: the bars.
func (t Lengths) Clashes() []string { return []string{"bars:" + joinNumbers(t.Bars[:t.N])} }

// Fingerprint of lengths is their text.
func (t Lengths) Fingerprint() string { return t.String() }

// Looks of lengths.
func (t Lengths) Looks() []Look {
	switch {
	case t.byThird():
		return []Look{LookBarPairs}
	case t.N == 3:
		return []Look{LookThreeBars}
	}
	return []Look{LookTwoBars}
}
