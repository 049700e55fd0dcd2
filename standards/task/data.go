package task

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Data asks about things of two to four sorts that a graph, a chart, a table or a picture shows:
// "bar graph cats 4, dogs 7, birds 2: how many more dogs than cats".
type Data struct {
	Form          DataForm
	Sorts         [mostSorts]string // English words for several of one group; N of them
	Counts        [mostSorts]int    // 1 to 10
	N             int
	Ask           DataAsk
	First, Second int // places of the sorts asked about, where the question names them
}

const (
	mostSorts    = 4  // 2.MD.D.10: up to four categories
	mostOfASort  = 10 // K.MD.B.3: category counts up to ten
	mostOfThings = 20 // that lie here and there in one picture (common practice)
)

// DataForm is what shows the data.
type DataForm string

// The forms.
const (
	Things       DataForm = "things" // the things themselves, mixed
	TallyChart   DataForm = "tally chart"
	Table        DataForm = "table"
	PictureGraph DataForm = "picture graph" // a picture stands for one thing
	BarGraph     DataForm = "bar graph"     // with a scale of ones
)

// DataAsk is what is asked about the data.
type DataAsk string

// The questions.
const (
	HowManyOf   DataAsk = "how many"
	HowManyMore DataAsk = "how many more"
	HowManyLess DataAsk = "how many fewer"
	InAll       DataAsk = "how many in all"
	WhichMost   DataAsk = "which has the most"
	WhichFewest DataAsk = "which has the fewest"
	InOrder     DataAsk = "order from fewest" // number the sorts
	DrawIt      DataAsk = "draw"              // make the graph or chart from the data
)

// The looks of data.
const (
	LookThings       Look = "things-to-sort"
	LookTallyChart   Look = "tally-chart"
	LookTable        Look = "table"
	LookPictureGraph Look = "picture-graph"
	LookBarGraph     Look = "bar-graph"
)

var (
	_ = ownLook(LookThings, "mixed things to sort and count", 10)
	_ = ownLook(LookTallyChart, "tally chart", 0)
	_ = ownLook(LookTable, "table of counts", 0)
	_ = ownLook(LookPictureGraph, "picture graph, one picture for each", 0)
	_ = ownLook(LookBarGraph, "bar graph with a scale of ones", 0)
)

// dataForms are the forms with their Spanish names, their looks and what can be asked of them.
var dataForms = []struct {
	form DataForm
	es   string
	look Look
	asks []DataAsk
}{
	{Things, "cosas", LookThings, []DataAsk{HowManyOf, WhichMost, WhichFewest, InOrder}},
	{TallyChart, "tabla de conteo", LookTallyChart, []DataAsk{HowManyOf, HowManyMore, HowManyLess, InAll, WhichMost, WhichFewest, DrawIt}},
	{Table, "tabla", LookTable, []DataAsk{HowManyOf, HowManyMore, HowManyLess, InAll, WhichMost, WhichFewest}},
	{PictureGraph, "pictograma", LookPictureGraph, []DataAsk{HowManyOf, HowManyMore, HowManyLess, InAll, WhichMost, WhichFewest, DrawIt}},
	{BarGraph, "gráfica de barras", LookBarGraph, []DataAsk{HowManyOf, HowManyMore, HowManyLess, InAll, WhichMost, WhichFewest, DrawIt}},
}

const (
	dataExample = "bar graph cats 4, dogs 7, birds 2: how many more dogs than cats"
	sortPart    = `(\p{L}+) ([0-9]{1,3})`
)

var dataPattern = regexp.MustCompile(`^(things|cosas|tally chart|tabla de conteo|table|tabla|picture graph|pictograma|bar graph|gráfica de barras):? (` +
	sortPart + `(?:(?:,| and| y) ` + sortPart + `)+): ?(.+)$`)

var (
	sortCounts = regexp.MustCompile(sortPart)
	// asksOfData are the questions as they are typed; %s is a sort.
	asksOfData = []struct {
		pattern *regexp.Regexp
		ask     DataAsk
	}{
		{regexp.MustCompile(`^(?:how many more|cuánt[oa]s) (\p{L}+) (?:más que|than) (\p{L}+)(?: are there| hay)?$`), HowManyMore},
		{regexp.MustCompile(`^(?:how many fewer|cuánt[oa]s) (\p{L}+) (?:menos que|than) (\p{L}+)(?: are there| hay)?$`), HowManyLess},
		{regexp.MustCompile(`^(?:how many(?: \p{L}+)? (?:in all|altogether)|cuánt[oa]s(?: \p{L}+)?(?: hay)? en total)$`), InAll},
		{regexp.MustCompile(`^(?:which(?: has| have)?(?: the)? most|qué hay más|cuál tiene más)$`), WhichMost},
		{regexp.MustCompile(`^(?:which(?: has| have)?(?: the)? fewest|qué hay menos|cuál tiene menos)$`), WhichFewest},
		{regexp.MustCompile(`^(?:put in )?(?:order|orden)(?: from fewest| de menos a más)?$`), InOrder},
		{regexp.MustCompile(`^(?:draw|dibuja|make|complete)(?: it| the graph| the chart| la gráfica| la tabla)?$`), DrawIt},
		{regexp.MustCompile(`^(?:how many|cuánt[oa]s) (\p{L}+)(?: are there| hay)?$`), HowManyOf},
	}
)

func readData(text string) (Task, error) {
	m := dataPattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	t := Data{}
	for _, row := range dataForms {
		if m[1] == string(row.form) || m[1] == row.es {
			t.Form = row.form
		}
	}
	group := ""
	for _, part := range sortCounts.FindAllStringSubmatch(m[2], -1) {
		sort, of, ok := words.SortCalled(part[1])
		switch {
		case !ok:
			return nil, words.Errorf("%q has %q, which no graph here shows; the sorts are %s", text, part[1], sortList())
		case group != "" && of.Name != group:
			return nil, words.Errorf("%q mixes %s and %s; take sorts of one group: %s", text, group, of.Name, sortList())
		case t.N == mostSorts || slices.Contains(t.Sorts[:], sort.Name):
			return nil, words.Errorf("%q needs two to four sorts, each once, as in %s", text, dataExample)
		}
		group, t.Sorts[t.N] = of.Name, sort.Name
		t.Counts[t.N], _ = strconv.Atoi(part[2])
		t.N++
	}
	if ask := strings.TrimRight(strings.TrimLeft(m[len(m)-1], "¿ "), "? "); !t.readAsk(ask) {
		return nil, words.Errorf("%q asks %q; ask as in %s, or for in all, which has the most, draw", text, ask, dataExample)
	}
	return t, t.mistake(text)
}

// readAsk reads the question.
func (t *Data) readAsk(text string) bool {
	for _, row := range asksOfData {
		m := row.pattern.FindStringSubmatch(text)
		if m == nil {
			continue
		}
		places := []*int{&t.First, &t.Second}
		for i, word := range m[1:] {
			sort, _, ok := words.SortCalled(word)
			at := slices.Index(t.Sorts[:t.N], sort.Name)
			if !ok || at < 0 {
				return false
			}
			*places[i] = at
		}
		t.Ask = row.ask
		return true
	}
	return false
}

// Valid says that the question has one answer and the form can show the data.
func (t Data) Valid() bool { return t.mistake("") == nil }

// mistake is why the data that were read from a text can't be asked about so.
func (t Data) mistake(text string) error {
	drawn := t.Form == Things || t.Form == TallyChart && t.Ask == DrawIt
	counts := slices.Sorted(slices.Values(t.Counts[:t.N]))
	switch {
	case counts[0] < 1 || counts[t.N-1] > mostOfASort:
		return words.Errorf("%q has a sort with none or more than %d; graphs here go from 1 to %d", text, mostOfASort, mostOfASort)
	case !slices.Contains(t.row().asks, t.Ask):
		return words.Errorf("%q can't be asked of %s; a bar graph can be, as in %s", text, t.Form, dataExample)
	case drawn && t.group().Name != words.Shapes:
		return words.Errorf("%q needs things that can be drawn: circles, squares, triangles, stars", text)
	case drawn && sum(t.Counts[:]) > mostOfThings:
		return words.Errorf("%q has more than %d things, too many to sort in one picture", text, mostOfThings)
	case t.Ask == HowManyMore && t.Counts[t.First] <= t.Counts[t.Second], t.Ask == HowManyLess && t.Counts[t.First] >= t.Counts[t.Second]:
		return words.Errorf("%q compares the other way round than the numbers are", text)
	case t.Ask == WhichMost && counts[t.N-1] == counts[t.N-2], t.Ask == WhichFewest && counts[0] == counts[1]:
		return words.Errorf("%q has two sorts with as many, so there are two answers; change one number", text)
	case t.Ask == InOrder && len(slices.Compact(counts)) < t.N:
		return words.Errorf("%q has two sorts with as many, which no order has; change one number", text)
	}
	return nil
}

// sortList is the sorts by groups, for messages.
func sortList() string {
	var list []string
	for _, group := range words.SortGroups {
		names := make([]string, len(group.Sorts))
		for i, s := range group.Sorts {
			names[i] = s.Name
		}
		list = append(list, strings.Join(names, ", "))
	}
	return strings.Join(list, "; ")
}

func (t Data) row() (found struct {
	form DataForm
	es   string
	look Look
	asks []DataAsk
}) {
	for _, row := range dataForms {
		if row.form == t.Form {
			found = row
		}
	}
	return found
}

func (t Data) String() string {
	text := string(t.Form) + " " + t.list("en") + ": " + string(t.Ask)
	switch t.Ask {
	case HowManyOf:
		text += " " + t.Sorts[t.First]
	case HowManyMore, HowManyLess:
		text += " " + t.Sorts[t.First] + " than " + t.Sorts[t.Second]
	}
	return text
}

// list is the sorts with their numbers.
func (t Data) list(lang string) string {
	parts := make([]string, t.N)
	for i := range parts {
		parts[i] = fmt.Sprintf("%s %d", t.SortIn(i, lang), t.Counts[i])
	}
	return strings.Join(parts, ", ")
}

// SortIn is the word for several of the sort at a place.
func (t Data) SortIn(place int, lang string) string { return t.sort(place).In(lang) }

// OneIn is the word for one of the sort at a place.
func (t Data) OneIn(place int, lang string) string { return t.sort(place).OneIn(lang) }

func (t Data) sort(place int) words.Sort {
	s, _, _ := words.SortCalled(t.Sorts[place])
	return s
}

// Group is what the sorts are: "pets".
func (t Data) Group(lang string) string { return t.group().In(lang) }

func (t Data) group() words.SortGroup {
	_, group, _ := words.SortCalled(t.Sorts[0])
	return group
}

// Prompt asks the question, without the numbers.
func (t Data) Prompt(lang string) string {
	first, second := t.SortIn(t.First, lang), t.SortIn(t.Second, lang)
	if lang == "es" {
		return t.spanishPrompt(first, second)
	}
	switch t.Ask {
	case HowManyOf:
		return fmt.Sprintf("How many %s are there?", first)
	case HowManyMore, HowManyLess:
		return fmt.Sprintf("%s %s than %s are there?", capital(string(t.Ask)), first, second)
	case InAll:
		return fmt.Sprintf("How many %s are there in all?", t.Group(lang))
	case WhichMost:
		return "Which are there the most of?"
	case WhichFewest:
		return "Which are there the fewest of?"
	case InOrder:
		return "Number them from the fewest, 1, to the most: " + t.blanks(lang)
	}
	return drawPrompts[t.Form].en
}

func (t Data) spanishPrompt(first, second string) string {
	many := func(feminine bool) string {
		if feminine {
			return "Cuántas"
		}
		return "Cuántos"
	}
	switch t.Ask {
	case HowManyOf:
		return fmt.Sprintf("¿%s %s hay?", many(t.sort(t.First).Feminine), first)
	case HowManyMore:
		return fmt.Sprintf("¿%s %s más que %s hay?", many(t.sort(t.First).Feminine), first, second)
	case HowManyLess:
		return fmt.Sprintf("¿%s %s menos que %s hay?", many(t.sort(t.First).Feminine), first, second)
	case InAll:
		return fmt.Sprintf("¿%s %s hay en total?", many(t.group().Feminine), t.Group("es"))
	case WhichMost:
		return "¿De qué hay más?"
	case WhichFewest:
		return "¿De qué hay menos?"
	case InOrder:
		return "Numéralos desde el 1, de lo que hay menos a lo que hay más: " + t.blanks("es")
	}
	return drawPrompts[t.Form].es
}

// drawPrompts ask to make a graph or chart.
var drawPrompts = map[DataForm]telling{
	TallyChart:   {"Sort the shapes. Make a mark for each one.", "Clasifica las figuras. Haz una marca por cada una."},
	PictureGraph: {"Draw one circle for each one in the table.", "Dibuja un círculo por cada uno de la tabla."},
	BarGraph:     {"Draw a bar for each number in the table.", "Dibuja una barra para cada número de la tabla."},
}

// Said asks for the order of the sorts without the places for their numbers.
func (t Data) Said(lang string) string {
	if t.Ask == InOrder {
		return withoutPlaces(t.Prompt(lang))
	}
	return t.Prompt(lang)
}

// blanks are the sorts with a place for a number behind each.
func (t Data) blanks(lang string) string {
	parts := make([]string, t.N)
	for i := range parts {
		parts[i] = t.SortIn(i, lang) + " ?"
	}
	return strings.Join(parts, ", ")
}

// Short tells the data, too.
func (t Data) Short(lang string) string {
	question := t.Prompt(lang)
	if t.Ask == InOrder {
		question, _, _ = strings.Cut(question, ":")
	}
	form := string(t.Form)
	if lang == "es" {
		form = t.row().es
	}
	return fmt.Sprintf("%s (%s: %s)", question, form, t.list(lang))
}

// Looks of data: that of its form.
func (t Data) Looks() []Look { return []Look{t.row().look} }

// Fingerprint of data is its text.
func (t Data) Fingerprint() string { return t.String() }

// Clashes of data: the sorts with their numbers, however they are shown.
func (t Data) Clashes() []string { return []string{"data:" + t.list("en")} }
