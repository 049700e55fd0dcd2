package words

// Sort is a sort of things that are counted and compared in graphs, with its words in English and
// Spanish, as they are said in Mexico and in the United States.
type Sort struct {
	Name     string // "cats", as in the task's text: the English word for several
	one      string
	es, esA  string // "gatos", "gato"
	Feminine bool   // in Spanish
}

// SortGroup is what sorts have in common, and its sorts. A graph shows sorts of one group.
type SortGroup struct {
	Name     string // "pets"
	es       string
	Feminine bool // in Spanish
	Sorts    [4]Sort
}

// Shapes is the name of the group whose sorts can be drawn.
const Shapes = "shapes"

// SortGroups are the groups, in a fixed order.
var SortGroups = []SortGroup{
	{"pets", "mascotas", true, [4]Sort{
		{"cats", "cat", "gatos", "gato", false}, {"dogs", "dog", "perros", "perro", false},
		{"birds", "bird", "pájaros", "pájaro", false}, {"fish", "fish", "peces", "pez", false}}},
	{"fruits", "frutas", true, [4]Sort{
		{"apples", "apple", "manzanas", "manzana", true}, {"pears", "pear", "peras", "pera", true},
		{"bananas", "banana", "plátanos", "plátano", false}, {"oranges", "orange", "naranjas", "naranja", true}}},
	{"toys", "juguetes", false, [4]Sort{
		{"balls", "ball", "pelotas", "pelota", true}, {"kites", "kite", "cometas", "cometa", true},
		{"trucks", "truck", "camiones", "camión", false}, {"boats", "boat", "barcos", "barco", false}}},
	{"animals", "animales", false, [4]Sort{
		{"cows", "cow", "vacas", "vaca", true}, {"ducks", "duck", "patos", "pato", false},
		{"horses", "horse", "caballos", "caballo", false}, {"hens", "hen", "gallinas", "gallina", true}}},
	{"supplies", "útiles", false, [4]Sort{
		{"books", "book", "libros", "libro", false}, {"pens", "pen", "bolígrafos", "bolígrafo", false},
		{"erasers", "eraser", "borradores", "borrador", false}, {"rulers", "ruler", "reglas", "regla", true}}},
	{Shapes, "figuras", true, [4]Sort{
		{"circles", "circle", "círculos", "círculo", false}, {"squares", "square", "cuadrados", "cuadrado", false},
		{"triangles", "triangle", "triángulos", "triángulo", false}, {"stars", "star", "estrellas", "estrella", true}}},
}

// In is the group's name in the language ("en" or "es"; any other reads as "en").
func (g SortGroup) In(lang string) string {
	if lang == "es" {
		return g.es
	}
	return g.Name
}

// In is the word for several of the sort in the language.
func (s Sort) In(lang string) string {
	if lang == "es" {
		return s.es
	}
	return s.Name
}

// OneIn is the word for one of the sort in the language.
func (s Sort) OneIn(lang string) string {
	if lang == "es" {
		return s.esA
	}
	return s.one
}

// earlierSorts are Spanish words that sheets had for sorts before; what is written with them is still read.
var earlierSorts = map[string]string{"gomas": "erasers", "goma": "erasers", "plumas": "pens", "pluma": "pens"}

// SortCalled finds a sort by any of its words, with or without accents, and its group; ok is false where there is none.
func SortCalled(word string) (s Sort, group SortGroup, ok bool) {
	word = Unaccented(word)
	if name, earlier := earlierSorts[word]; earlier {
		word = name
	}
	for _, group := range SortGroups {
		for _, s := range group.Sorts {
			if word == s.Name || word == s.one || word == Unaccented(s.es) || word == Unaccented(s.esA) {
				return s, group, true
			}
		}
	}
	return Sort{}, SortGroup{}, false
}
