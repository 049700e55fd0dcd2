package task

import (
	"cmp"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Estimate asks which of three lengths fits a thing that children know, "estimate bed: 6 feet", or with which
// tool it is best measured, "tool for hallway: measuring tape".
type Estimate struct {
	Thing string // in English, one of the table's
	Tool  bool
}

// LookEstimate is a question with answers to mark.
const LookEstimate Look = "estimate"

var _ = ownLook(LookEstimate, "length or tool to choose for a thing", 0)

// estimated are things with a length that fits, a wrong unit and a number of the wrong size (common knowledge,
// rounded).
var estimated = []struct {
	thing, es     string // with the article: "a bed", "una cama"
	fits          string
	unit, size    string // what is wrong about it
	tall          bool
	name, spanish string // of the thing alone
}{
	{"a new pencil", "un lápiz nuevo", "7 inches", "7 feet", "70 inches", false, "pencil", "lápiz"},
	{"a bed", "una cama", "6 feet", "6 inches", "60 feet", false, "bed", "cama"},
	{"a door", "una puerta", "2 meters", "2 centimeters", "20 meters", true, "door", "puerta"},
	{"a crayon", "un crayón", "9 centimeters", "9 meters", "90 centimeters", false, "crayon", "crayón"},
	{"a car", "un auto", "5 meters", "5 centimeters", "50 meters", false, "car", "auto"},
	{"a school bus", "un autobús escolar", "40 feet", "40 inches", "4 feet", false, "bus", "autobús"},
	{"a key", "una llave", "2 inches", "2 feet", "20 inches", false, "key", "llave"},
	{"a paper clip", "un clip", "3 centimeters", "3 meters", "30 centimeters", false, "clip", "clip"},
	{"a jump rope", "una cuerda de saltar", "7 feet", "7 inches", "70 feet", false, "rope", "cuerda"},
	{"a toothbrush", "un cepillo de dientes", "18 centimeters", "18 meters", "2 centimeters", false, "toothbrush", "cepillo"},
	{"a bathtub", "una bañera", "5 feet", "5 inches", "50 feet", false, "bathtub", "bañera"},
	{"a child's shoe", "un zapato de niño", "20 centimeters", "20 meters", "2 centimeters", false, "shoe", "zapato"},
	{"a classroom", "un salón de clase", "9 meters", "9 centimeters", "90 meters", false, "classroom", "salón"},
	{"a spoon", "una cuchara", "6 inches", "6 feet", "60 inches", false, "spoon", "cuchara"},
	{"a grown-up", "una persona adulta", "170 centimeters", "170 meters", "17 centimeters", true, "adult", "adulto"},
	{"a baseball bat", "un bate de béisbol", "30 inches", "30 feet", "3 inches", false, "bat", "bate"},
}

// earlierThings are Spanish words that sheets had for things before, and others say.
var earlierThings = map[string]string{"carro": "car", "coche": "car"}

// The tools, and which other one stands beside them though it measures no length.
const (
	shortTool = "ruler"
	longTool  = "measuring tape"
	otherTool = "scale"
)

// measuredWith are things with the tool that is best for their length: what is short and straight with a ruler,
// what is long or round with a tape (common practice).
var measuredWith = []struct{ name, thing, es, shape, tool string }{
	{"crayon", "the length of a crayon", "el largo de un crayón", "short", shortTool},
	{"hallway", "the length of a hallway", "el largo de un pasillo", "long", longTool},
	{"card", "the length of a playing card", "el largo de un naipe", "short", shortTool},
	{"playground", "the length of a playground", "el largo de un patio de recreo", "long", longTool},
	{"head", "the length around your head", "el contorno de tu cabeza", "round", longTool},
	{"book", "the length of a small book", "el largo de un libro pequeño", "short", shortTool},
	{"pumpkin", "the length around a pumpkin", "el contorno de una calabaza", "round", longTool},
	{"eraser", "the length of an eraser", "el largo de una goma de borrar", "short", shortTool},
	{"room", "the length of a room", "el largo de un cuarto", "long", longTool},
	{"leaf", "the length of a leaf", "el largo de una hoja", "short", shortTool},
	{"tree", "the length around a tree", "el contorno de un árbol", "round", longTool},
	{"key", "the length of a key", "el largo de una llave", "short", shortTool},
}

var estimatePattern = regexp.MustCompile(`^(estimate|estima|tool for|instrumento para) (?:the length of )?` +
	`(?:an? |the |un |una |el |la )?(\p{L}+)(?:: ([\p{L}0-9 ]+))?$`)

func readEstimate(text string) (Task, error) {
	m := estimatePattern.FindStringSubmatch(trimQuestion(text))
	if m == nil {
		return nil, errOther
	}
	t := Estimate{Tool: m[1] == "tool for" || m[1] == "instrumento para"}
	for _, row := range estimated {
		if !t.Tool && (row.name == m[2] || row.spanish == m[2] || row.name == earlierThings[m[2]]) {
			t.Thing = row.name
		}
	}
	for _, row := range measuredWith {
		if t.Tool && row.name == m[2] {
			t.Thing = row.name
		}
	}
	if t.Thing == "" { // a thing that only the person who typed it knows: a question of their own
		return nil, errOther
	}
	if m[3] != "" && !t.Judge(m[3]) {
		return nil, errOther // another length is theirs
	}
	return t, nil
}

// EstimatedThings are the things whose length can be estimated, or measured with a tool.
func EstimatedThings(tool bool) (names []string) {
	if tool {
		for _, row := range measuredWith {
			names = append(names, row.name)
		}
		return names
	}
	for _, row := range estimated {
		names = append(names, row.name)
	}
	return names
}

func (t Estimate) row() int {
	return slices.Index(EstimatedThings(t.Tool), t.Thing)
}

func (t Estimate) String() string {
	if t.Tool {
		return "tool for " + t.Thing + ": " + t.Key()
	}
	return "estimate " + t.Thing + ": " + t.Key()
}

// Key is the length that fits, or the tool.
func (t Estimate) Key() string {
	if t.Tool {
		return measuredWith[t.row()].tool
	}
	return estimated[t.row()].fits
}

// Offers are the three lengths, shortest number first, or the tools.
func (t Estimate) Offers() []string {
	if t.Tool {
		return []string{shortTool, longTool, otherTool}
	}
	row := estimated[t.row()]
	offers := []string{row.fits, row.unit, row.size}
	number := func(s string) int { n, _ := strconv.Atoi(strings.Fields(s)[0]); return n }
	slices.SortFunc(offers, func(a, b string) int {
		return cmp.Or(cmp.Compare(number(a), number(b)), cmp.Compare(a, b))
	})
	return offers
}

// unitNames are units as they are written, with their full English name.
var unitNames = map[string]string{
	"inches": "inches", "inch": "inches", "in": "inches", "pulgadas": "inches", "pulgada": "inches", "feet": "feet",
	"foot": "feet", "ft": "feet", "pies": "feet", "pie": "feet",
	"centimeters": "centimeters", "centimeter": "centimeters", "centimetres": "centimeters", "cm": "centimeters",
	"centimetros": "centimeters", "centimetro": "centimeters",
	"meters": "meters", "meter": "meters", "metres": "meters", "m": "meters", "metros": "meters", "metro": "meters",
}

// toolNames are tools as they are written.
var toolNames = map[string]string{
	"ruler": shortTool, "regla": shortTool, "tape": longTool, "cinta": longTool, "scale": otherTool, "balanza": otherTool,
}

var besideEstimates = wordSet("about it it's is long tall the a an with measuring métrica mide es de " +
	"largo alto como unos unas la una el un con measure answer")

// Judge accepts the length with its unit, or the tool, in English or Spanish.
func (t Estimate) Judge(answer string) bool {
	said, ok := t.said(answer)
	return ok && said == t.Key()
}

// Possible takes a length with its unit, or a tool.
func (t Estimate) Possible(answer string) bool { _, ok := t.said(answer); return ok }

func (t Estimate) said(answer string) (said string, ok bool) {
	number, unit, tool := -1, "", ""
	for _, token := range trimmed(words.Tokens(answer)) {
		switch {
		case token.IsNumber() && number < 0 && !t.Tool:
			number = token.Number
		case unitNames[token.Text] != "" && unit == "" && number >= 0:
			unit = unitNames[token.Text]
		case toolNames[token.Text] != "" && tool == "" && t.Tool:
			tool = toolNames[token.Text]
		case besideEstimates[token.Text]:
		default:
			return "", false
		}
	}
	if t.Tool {
		return tool, tool != ""
	}
	return strconv.Itoa(number) + " " + unit, number >= 0 && unit != ""
}

var spanishUnits = strings.NewReplacer("inches", "pulgadas", "feet", "pies", "centimeters", "centímetros", "meters", "metros")

// AnswerIn is a length or a tool in the language.
func (t Estimate) AnswerIn(answer, lang string) string {
	if lang != "es" {
		return answer
	}
	if tool, ok := map[string]string{shortTool: "regla", longTool: "cinta métrica", otherTool: "balanza"}[answer]; ok {
		return tool
	}
	return spanishUnits.Replace(answer)
}

// Prompt asks which fits.
func (t Estimate) Prompt(lang string) string {
	if t.Tool {
		row := measuredWith[t.row()]
		if lang == "es" {
			return "¿Con qué se mide mejor " + row.es + "?"
		}
		return "Which is best to measure " + row.thing + "?"
	}
	row := estimated[t.row()]
	switch {
	case lang == "es" && row.tall:
		return "¿Cuánto mide más o menos de alto " + row.es + "?"
	case lang == "es":
		return "¿Cuánto mide más o menos de largo " + row.es + "?"
	case row.tall:
		return "About how tall is " + row.thing + "?"
	}
	return "About how long is " + row.thing + "?"
}

// Traits of an estimate: the size of its unit and its number; of a tool, what is measured: something short, long or
// round.
func (t Estimate) Traits() (ts Traits) {
	if t.Tool {
		ts[Asks] = "tool for what is " + measuredWith[t.row()].shape
		return ts
	}
	ts[Asks] = "estimate in a small unit"
	number, unit, _ := strings.Cut(t.Key(), " ")
	if unit == "feet" || unit == "meters" {
		ts[Asks] = "estimate in a large unit"
	}
	ts[Largest] = number
	return ts
}

// Codes of an estimate: tools for measuring, estimating in four units, grade 2.
func (t Estimate) Codes() []Code {
	if t.Tool {
		return []Code{"2.MD.A.1"}
	}
	return []Code{"2.MD.A.3"}
}

// The missteps in estimating.
var (
	otherUnit = newMisstep("unit of another size",
		"takes a unit that is far too long or too short for the thing",
		"toma una unidad demasiado larga o demasiado corta para la cosa",
		"show a centimeter, an inch, a foot and a meter with fingers and arms",
		"mostrar un centímetro, una pulgada, un pie y un metro con dedos y brazos", "common practice")
	otherSize = newMisstep("number of another size",
		"takes a number that is far too large or too small for the unit",
		"toma un número demasiado grande o demasiado pequeño para la unidad",
		"find things that are about 1, 10 and 100 of the unit long and compare with them",
		"buscar cosas que midan más o menos 1, 10 y 100 de esa unidad y comparar con ellas", "common practice")
	toolMixed = newMisstep("tool for another length",
		"takes the ruler for what is long or round, or the tape for what is short",
		"toma la regla para lo que es largo o redondo, o la cinta para lo que es corto",
		"measure a desk, a hallway and a ball with both and talk about which was easier",
		"medir un pupitre, un pasillo y una pelota con las dos y platicar cuál fue más fácil", "common practice")
	toolOfWeight = newMisstep("tool for weight",
		"takes a tool that tells how heavy a thing is",
		"toma un instrumento que dice cuánto pesa una cosa",
		"sort tools by what they tell: how long, how heavy, how late",
		"clasificar instrumentos por lo que dicen: cuánto mide, cuánto pesa, qué hora es", "common practice")
)

// Missteps of an estimate.
func (t Estimate) Missteps() []Misstep {
	if !t.Tool {
		row := estimated[t.row()]
		return gather(t, []slip{{otherUnit, row.unit}, {otherSize, row.size}})
	}
	other := shortTool
	if t.Key() == shortTool {
		other = longTool
	}
	return gather(t, []slip{{toolMixed, other}, {toolOfWeight, otherTool}})
}

// Clashes of an estimate: the thing.
func (t Estimate) Clashes() []string { return []string{"estimate:" + t.Thing} }

// Fingerprint of an estimate is its text.
func (t Estimate) Fingerprint() string { return t.String() }

// Looks of an estimate.
func (t Estimate) Looks() []Look { return []Look{LookEstimate} }
