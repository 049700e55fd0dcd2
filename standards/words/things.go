package words

import "strconv"

// Thing is what a story is about, with the words that go with it. The words are
// short and known to six-year-olds; nobody wins or goes without anything that
// only some families have.
type Thing struct {
	Name string // as in the task's text: the English word
	Kind ThingKind
	Most int // the largest number of them that a child would meet; stories made to order stay below
	En   ThingWords
	Es   ThingWords
	// Feminine says that the Spanish word is; of what is measured, UnitFeminine says it of the unit.
	Feminine, UnitFeminine bool
}

// ThingKind is how there can be more or less of a thing.
type ThingKind int

// The kinds of things.
const (
	Counted  ThingKind = iota // shells
	Measured                  // a length of rope
	Money
)

// ThingWords are the words for a thing in one language.
type ThingWords struct {
	One    string    // "shell"; of what is measured, its unit for one: "inch"
	Things string    // "shells"; its unit for more: "inches"
	Whole  string    // what is measured: "rope"
	Gets   string    // "finds"
	Get    string    // as asked in the past: "find" (did ... find), "encontró"
	Loses  string    // "gives away"
	Lose   string    // as Get
	Kinds  [2]string // two kinds that they come in; empty where stories don't put kinds together
}

// Amount is so many of the thing with its unit or word: "5 shells", "1 shell", "60¢", "$25",
// "12 inches".
func (t Thing) Amount(n int, lang string) string {
	number := strconv.Itoa(n)
	switch t.Name {
	case "cents":
		return number + "¢"
	case "dollars":
		return "$" + number
	}
	said := t.In(lang)
	if n == 1 {
		return number + " " + said.One
	}
	return number + " " + said.Things
}

// In is the words of the language; any other than "es" reads English.
func (t Thing) In(lang string) ThingWords {
	if lang == "es" {
		return t.Es
	}
	return t.En
}

// Child is a child in a story.
type Child struct {
	Name string // as in the task's text
	Es   string // as it is written in Spanish, where that differs
	Girl bool
}

// Children are the children in stories: their names are short, easy to read in both languages,
// and from many parts of the world.
var Children = []Child{
	{"Mia", "", true}, {"Omar", "", false}, {"Ana", "", true}, {"Kofi", "", false}, {"Lin", "", true}, {"Sam", "", false},
	{"Noor", "", true}, {"Leo", "", false}, {"Aiko", "", true}, {"Ravi", "", false}, {"Zoe", "", true}, {"Juan", "", false},
	{"Ama", "", true}, {"Eli", "", false}, {"Tala", "", true}, {"Ivan", "Iván", false}, {"Eva", "", true}, {"Hugo", "", false},
	{"Maya", "", true}, {"Kai", "", false}, {"Luz", "", true}, {"Dev", "", false}, {"Nia", "", true}, {"Paco", "", false},
}

// ChildNamed is the child of the name; the zero child where there is none.
func ChildNamed(name string) Child {
	for _, child := range Children {
		if child.Name == name {
			return child
		}
	}
	return Child{}
}

// NameIn is the child's name as it is written in the language.
func (c Child) NameIn(lang string) string {
	if lang == "es" && c.Es != "" {
		return c.Es
	}
	return c.Name
}

// ThingNamed is the thing of the name; the zero thing where there is none.
func ThingNamed(name string) Thing {
	for _, thing := range Things {
		if thing.Name == name {
			return thing
		}
	}
	return Thing{}
}
