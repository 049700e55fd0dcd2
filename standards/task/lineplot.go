package task

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// LinePlot asks about lengths of things, each an x over a scale of whole units: "line plot cm 4: 2, 5: 3, 6: 0, 7: 1:
// how many 5". The numbers are a length and how many things are so long, for lengths that follow each other.
type LinePlot struct {
	Inches bool
	First  int              // the first length of the scale
	Counts [mostOfScale]int // how many things have each length from there on
	N      int              // lengths on the scale
	Ask    PlotAsk
	Length int // the length asked about, where one is
}

// PlotAsk is what is asked about a line plot.
type PlotAsk string

// The questions.
const (
	PlotHowMany  PlotAsk = "how many"                   // of one length
	PlotLonger   PlotAsk = "how many longer than"       // than one length
	PlotInAll    PlotAsk = "how many in all"            // things measured
	PlotMostOf   PlotAsk = "which length is most often" // one only
	PlotDistance PlotAsk = "how much longer"            // the longest than the shortest
	PlotDraw     PlotAsk = "draw"                       // from a list of the lengths
)

// What a line plot has room for.
const (
	leastOfScale = 4
	mostOfScale  = 7
	mostOfLength = 5  // things of one length
	mostLengthOf = 20 // the last length of a scale
	mostInPlot   = 15 // things in all
)

// LookLinePlot is a line plot.
const LookLinePlot Look = "line-plot"

var _ = ownLook(LookLinePlot, "line plot of lengths", 0)

const linePlotExample = "line plot cm 4: 2, 5: 3, 6: 1, 7: 1: how many 5"

var (
	linePlotPattern = regexp.MustCompile(`^(?:line plot|diagrama de (?:puntos|dots))(?: in| en)? (cm|centimeters|centímetros|inches|in|pulgadas):? ` +
		`((?:[0-9]{1,2}: ?[0-9]{1,2}(?:, | and | y )?)+): ?¿?(.+)$`)
	lengthCount = regexp.MustCompile(`([0-9]{1,2}): ?([0-9]{1,2})`)
	// asksOfPlot are the questions as they are typed.
	asksOfPlot = []struct {
		pattern *regexp.Regexp
		ask     PlotAsk
	}{
		{regexp.MustCompile(`^(?:how many|cuántas) (?:are |cosas miden )?([0-9]{1,2})(?: cm| inches| pulgadas)?(?: long)?$`), PlotHowMany},
		{regexp.MustCompile(`^(?:how many|cuántas) (?:are |miden )?(?:longer than|más de) ([0-9]{1,2})(?: cm| inches| pulgadas)?$`), PlotLonger},
		{regexp.MustCompile(`^(?:how many(?: things)? in all|cuántas(?: cosas)?(?: hay)? en total)$`), PlotInAll},
		{regexp.MustCompile(`^(?:which length is(?: the)? most often|qué medida se repite más)$`), PlotMostOf},
		{regexp.MustCompile(`^(?:how much longer(?: is the longest(?: than the shortest)?)?|cuánto más mide la más larga)$`), PlotDistance},
		{regexp.MustCompile(`^(?:draw|dibuja|make|complete)(?: it| the line plot)?$`), PlotDraw},
	}
)

func readLinePlot(text string) (Task, error) {
	m := linePlotPattern.FindStringSubmatch(trimQuestion(text))
	if m == nil {
		return nil, errOther
	}
	t := LinePlot{Inches: m[1][0] == 'i' || m[1][0] == 'p'}
	for _, part := range lengthCount.FindAllStringSubmatch(m[2], -1) {
		length, _ := strconv.Atoi(part[1])
		count, _ := strconv.Atoi(part[2])
		switch {
		case t.N == 0:
			t.First = length
		case length != t.First+t.N:
			return nil, words.Errorf("%q leaves out a length or turns them round; the scale goes on by ones, "+
				"with 0 where nothing is so long, as in %s", text, linePlotExample)
		case t.N == mostOfScale:
			return nil, words.Errorf("%q has more than %d lengths, too many for a sheet", text, mostOfScale)
		}
		t.Counts[t.N] = count
		t.N++
	}
	for _, row := range asksOfPlot {
		if found := row.pattern.FindStringSubmatch(m[3]); found != nil {
			if t.Ask = row.ask; len(found) > 1 {
				t.Length, _ = strconv.Atoi(found[1])
			}
			break
		}
	}
	return t, t.mistake(text)
}

// Valid says that the plot can be drawn and its question has one answer.
func (t LinePlot) Valid() bool { return t.mistake("") == nil }

func (t LinePlot) mistake(text string) error {
	counts := slices.Sorted(slices.Values(t.Counts[:t.N]))
	last := t.First + t.N - 1
	asked := t.Ask == PlotHowMany || t.Ask == PlotLonger
	switch {
	case t.Ask == "":
		return words.Errorf("%q asks what no line plot is asked; ask as in %s, or for in all, which length is most often, "+
			"how much longer, draw", text, linePlotExample)
	case t.N < leastOfScale || t.First < 1 || last > mostLengthOf:
		return words.Errorf("%q needs %d to %d lengths from 1 to %d, as in %s", text, leastOfScale, mostOfScale, mostLengthOf, linePlotExample)
	case counts[t.N-1] > mostOfLength || t.total() > mostInPlot:
		return words.Errorf("%q has more than %d things of one length or more than %d in all", text, mostOfLength, mostInPlot)
	case t.Counts[0] == 0 || t.Counts[t.N-1] == 0:
		return words.Errorf("%q has nothing at an end of the scale; leave that length out", text)
	case asked && (t.Length < t.First || t.Length > last), t.Ask == PlotLonger && t.Length == last:
		return words.Errorf("%q asks about a length that the scale doesn't have", text)
	case t.Ask == PlotMostOf && counts[t.N-1] == counts[t.N-2]:
		return words.Errorf("%q has two lengths as often, so there are two answers; change one number", text)
	}
	return nil
}

func (t LinePlot) String() string {
	text := "line plot " + t.unit() + " " + t.list() + ": " + string(t.Ask)
	if t.Ask == PlotHowMany || t.Ask == PlotLonger {
		text += " " + strconv.Itoa(t.Length)
	}
	return text
}

func (t LinePlot) unit() string {
	if t.Inches {
		return "inches"
	}
	return "cm"
}

func (t LinePlot) list() string {
	parts := make([]string, t.N)
	for i := range parts {
		parts[i] = fmt.Sprintf("%d: %d", t.First+i, t.Counts[i])
	}
	return strings.Join(parts, ", ")
}

func (t LinePlot) total() int { return sum(t.Counts[:]) }

// often is the length that most things have.
func (t LinePlot) often() int {
	return t.First + slices.Index(t.Counts[:t.N], slices.Max(t.Counts[:t.N]))
}

// longer is how many things are longer than a length.
func (t LinePlot) longer(length int) int { return sum(t.Counts[length-t.First+1:]) }

func (t LinePlot) answer() int {
	switch t.Ask {
	case PlotHowMany:
		return t.Counts[t.Length-t.First]
	case PlotLonger:
		return t.longer(t.Length)
	case PlotInAll:
		return t.total()
	case PlotMostOf:
		return t.often()
	}
	return t.N - 1
}

// Lengths are the lengths of all things, shuffled, always in the same way for the same plot.
func (t LinePlot) Lengths() []int {
	var list []int
	seed := uint64(t.First)
	for i, count := range t.Counts[:t.N] {
		seed = 10*seed + uint64(count)
		list = append(list, slices.Repeat([]int{t.First + i}, count)...)
	}
	rand.New(rand.NewPCG(seed, 0)).Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
	return list
}

// Key is a number, or how many things have each length of the scale.
func (t LinePlot) Key() string {
	if t.Ask == PlotDraw {
		return joinNumbers(t.Counts[:t.N])
	}
	return strconv.Itoa(t.answer())
}

// Answers says whether the answer is drawn.
func (t LinePlot) Answers() Answers {
	if t.Ask == PlotDraw {
		return Drawn
	}
	return Numbers
}

// Judge accepts the number, with its unit or without; of a plot that is drawn how many stand over each length.
func (t LinePlot) Judge(answer string) bool {
	if t.Ask == PlotDraw {
		list, ok := t.drawnSaid(answer)
		return ok && slices.Equal(list, t.Counts[:t.N])
	}
	r, ok := t.reply(answer)
	return ok && r.number == t.answer()
}

// Possible takes a number, or numbers for a plot that is drawn.
func (t LinePlot) Possible(answer string) (ok bool) {
	if t.Ask == PlotDraw {
		_, ok = t.drawnSaid(answer)
	} else {
		_, ok = t.reply(answer)
	}
	return ok
}

func (t LinePlot) reply(answer string) (reply, bool) {
	units := "cm centimeter centimetre centimetres centímetro"
	if t.Inches {
		units = "in inch pulgada"
	}
	r, ok := readReply(answer, vocabulary(t.Prompt, units, "thing things long cosa cosas"))
	return r, ok && r.equation == nil
}

// drawnSaid is how many stand over each length: "2, 3, 1, 1", or with the lengths, "4: 2, 5: 3, 6: 1, 7: 1".
func (t LinePlot) drawnSaid(answer string) ([]int, bool) {
	if pairs := lengthCount.FindAllStringSubmatch(answer, -1); len(pairs) == t.N {
		var list []int
		for i, pair := range pairs {
			if pair[1] != strconv.Itoa(t.First+i) {
				return nil, false
			}
			count, _ := strconv.Atoi(pair[2])
			list = append(list, count)
		}
		return list, true
	}
	return listOf(words.ListTokens(answer), ",;")
}

// Prompt asks the question.
func (t LinePlot) Prompt(lang string) string {
	unit, unitEs := "centimeters", "centímetros"
	if t.Inches {
		unit, unitEs = "inches", "pulgadas"
	}
	if lang == "es" {
		many := map[bool]string{false: "Cuántos", true: "Cuántas"}[t.Inches]
		switch t.Ask {
		case PlotHowMany:
			return fmt.Sprintf("¿Cuántas cosas miden %d %s?", t.Length, unitEs)
		case PlotLonger:
			return fmt.Sprintf("¿Cuántas cosas miden más de %d %s?", t.Length, unitEs)
		case PlotInAll:
			return "¿Cuántas cosas se midieron en total?"
		case PlotMostOf:
			return fmt.Sprintf("¿Qué medida se repite más, en %s?", unitEs)
		case PlotDistance:
			return fmt.Sprintf("¿%s %s más mide la cosa más larga que la más corta?", many, unitEs)
		}
		return "Dibuja una x por cada medida de la lista."
	}
	switch t.Ask {
	case PlotHowMany:
		return fmt.Sprintf("How many things are %d %s long?", t.Length, unit)
	case PlotLonger:
		return fmt.Sprintf("How many things are longer than %d %s?", t.Length, unit)
	case PlotInAll:
		return "How many things were measured in all?"
	case PlotMostOf:
		return fmt.Sprintf("Which length is there most often, in %s?", unit)
	case PlotDistance:
		return fmt.Sprintf("How many %s longer is the longest thing than the shortest?", unit)
	}
	return "Draw an x for each length of the list."
}

// Short tells the lengths, too.
func (t LinePlot) Short(lang string) string { return shown(t, lang, t.list()) }

// Traits of a line plot: what is asked, and its largest number.
func (t LinePlot) Traits() Traits {
	ts := numberTraits(max(t.First+t.N-1, t.total()))
	ts[Asks] = "plot " + string(t.Ask)
	return ts
}

// Codes of a line plot: grade 2.
func (t LinePlot) Codes() []Code { return []Code{"2.MD.D.9"} }

// The missteps at a line plot.
var (
	marksForLengths = newMisstep("number of marks for the length",
		"takes how many marks there are for a length, or a length for how many there are",
		"toma cuántas marcas hay por una medida, o una medida por cuántas hay",
		"let each child put a mark over the length of a ribbon in hand: one mark is one ribbon",
		"cada niño pone una marca sobre la medida de su listón: una marca es un listón", "common practice")
	oneLengthOnly = newMisstep("only the next length",
		"counts the marks of the next length and not of all longer ones",
		"cuenta las marcas de la medida siguiente y no las de todas las más largas",
		"cover all lengths that are not longer and count every mark that is left",
		"tapar todas las medidas que no son mayores y contar las marcas que quedan", "common practice")
	lengthIncluded = newMisstep("the length itself counted too",
		"counts what is just so long among what is longer",
		"cuenta entre las más largas las que miden justo eso",
		"ask of each mark: is it longer, yes or no",
		"preguntar por cada marca: ¿es más larga, sí o no?", "common practice")
	scaleCounted = newMisstep("lengths of the scale counted",
		"counts the numbers of the scale and not the marks above them",
		"cuenta los números de la escala y no las marcas que tienen encima",
		"touch each mark while counting, never the numbers below",
		"tocar cada marca al contar, nunca los números de abajo", "common practice")
)

// Missteps of a line plot.
func (t LinePlot) Missteps() []Misstep {
	answer := t.answer()
	switch t.Ask {
	case PlotHowMany:
		next := t.Length - t.First + 1
		if next == t.N {
			next = t.N - 2
		}
		return gather(t, []slip{{otherSortRead, strconv.Itoa(t.Counts[next])}, {marksForLengths, strconv.Itoa(t.Length)}})
	case PlotLonger:
		at := t.Length - t.First
		return gather(t, []slip{{lengthIncluded, strconv.Itoa(answer + t.Counts[at])}, {oneLengthOnly, strconv.Itoa(t.Counts[at+1])}})
	case PlotInAll:
		return gather(t, []slip{{scaleCounted, strconv.Itoa(t.N)}, {oneMissed, strconv.Itoa(answer - 1)}})
	case PlotMostOf:
		return gather(t, []slip{{marksForLengths, strconv.Itoa(slices.Max(t.Counts[:t.N]))}})
	case PlotDistance:
		return gather(t, []slip{{largerGiven, strconv.Itoa(t.First + t.N - 1)}, {scaleCounted, strconv.Itoa(t.N)}})
	}
	mixed := slices.Clone(t.Counts[:t.N])
	mixed[0], mixed[1] = mixed[1], mixed[0]
	return gather(t, []slip{{barsExchanged, joinNumbers(mixed)}})
}

// Clashes of a line plot: its lengths.
func (t LinePlot) Clashes() []string { return []string{"plot:" + t.list()} }

// Fingerprint of a line plot is its text.
func (t LinePlot) Fingerprint() string { return t.String() }

// Looks of a line plot.
func (t LinePlot) Looks() []Look { return []Look{LookLinePlot} }
