package standards

import "slices"

// storyThing is what a story is about, with the words that go with it. The words are
// short and known to six-year-olds; nobody buys, wins or goes without anything that
// only some families have.
type storyThing struct {
	name     string // as in the task's text: the English word
	measured bool   // a length in centimetres, else things to count
	money    bool
	en       thingWords
	es       thingWords
	feminine bool // in Spanish
}

// thingWords are the words for a thing in one language.
type thingWords struct {
	things string // the plural of what is counted, the singular of what is measured
	gets   string // "finds"
	get    string // as asked in the past: "find" (did ... find), "encontró"
	loses  string // "gives away"
	lose   string
	kinds  [2]string // two kinds that they come in; empty where stories don't put kinds together
}

var storyThings = []storyThing{
	{"shells", false, false,
		thingWords{"shells", "finds", "find", "loses", "lose", [2]string{"big", "small"}},
		thingWords{"caracoles", "encuentra", "encontró", "pierde", "perdió", [2]string{"grandes", "pequeños"}}, false},
	{"apples", false, false,
		thingWords{"apples", "picks", "pick", "gives away", "give away", [2]string{"red", "green"}},
		thingWords{"manzanas", "recoge", "recogió", "regala", "regaló", [2]string{"rojas", "verdes"}}, true},
	{"pencils", false, false,
		thingWords{"pencils", "gets", "get", "lends", "lend", [2]string{"red", "blue"}},
		thingWords{"lápices", "recibe", "recibió", "presta", "prestó", [2]string{"rojos", "azules"}}, false},
	{"books", false, false,
		thingWords{"books", "gets", "get", "gives back", "give back", [2]string{"old", "new"}},
		thingWords{"libros", "recibe", "recibió", "devuelve", "devolvió", [2]string{"viejos", "nuevos"}}, false},
	{"blocks", false, false,
		thingWords{"blocks", "gets", "get", "puts away", "put away", [2]string{"red", "blue"}},
		thingWords{"bloques", "recibe", "recibió", "guarda", "guardó", [2]string{"rojos", "azules"}}, false},
	{"stickers", false, false,
		thingWords{"stickers", "gets", "get", "uses", "use", [2]string{"round", "square"}},
		thingWords{"pegatinas", "recibe", "recibió", "usa", "usó", [2]string{"redondas", "cuadradas"}}, true},
	{"buttons", false, false,
		thingWords{"buttons", "finds", "find", "uses", "use", [2]string{"black", "white"}},
		thingWords{"botones", "encuentra", "encontró", "usa", "usó", [2]string{"negros", "blancos"}}, false},
	{"seeds", false, false,
		thingWords{"seeds", "gets", "get", "plants", "plant", [2]string{"long", "round"}},
		thingWords{"semillas", "recibe", "recibió", "planta", "plantó", [2]string{"largas", "redondas"}}, true},
	{"eggs", false, false,
		thingWords{"eggs", "finds", "find", "cooks", "cook", [2]string{"brown", "white"}},
		thingWords{"huevos", "encuentra", "encontró", "cocina", "cocinó", [2]string{"marrones", "blancos"}}, false},
	{"cards", false, false,
		thingWords{"cards", "makes", "make", "sends", "send", [2]string{"blue", "green"}},
		thingWords{"tarjetas", "hace", "hizo", "envía", "envió", [2]string{"azules", "verdes"}}, true},
	{"stones", false, false,
		thingWords{"stones", "finds", "find", "puts back", "put back", [2]string{"gray", "white"}},
		thingWords{"piedras", "encuentra", "encontró", "devuelve", "devolvió", [2]string{"grises", "blancas"}}, true},
	{"leaves", false, false,
		thingWords{"leaves", "finds", "find", "gives away", "give away", [2]string{"red", "green"}},
		thingWords{"hojas", "encuentra", "encontró", "regala", "regaló", [2]string{"rojas", "verdes"}}, true},
	{"cents", false, true,
		thingWords{"cents", "finds", "find", "spends", "spend", [2]string{}},
		thingWords{"centavos", "encuentra", "encontró", "gasta", "gastó", [2]string{}}, false},
	{"rope", true, false,
		thingWords{"rope", "ties on", "tie on", "cuts off", "cut off", [2]string{}},
		thingWords{"cuerda", "ata", "ató", "corta", "cortó", [2]string{}}, true},
	{"ribbon", true, false,
		thingWords{"ribbon", "sews on", "sew on", "cuts off", "cut off", [2]string{}},
		thingWords{"cinta", "cose", "cosió", "corta", "cortó", [2]string{}}, true},
	{"string", true, false,
		thingWords{"string", "ties on", "tie on", "cuts off", "cut off", [2]string{}},
		thingWords{"hilo", "ata", "ató", "corta", "cortó", [2]string{}}, false},
}

// storyNames are the children in stories: short, easy to read in both languages, from many
// parts of the world.
var storyNames = []string{"Mia", "Omar", "Ana", "Kofi", "Lin", "Sam", "Noor", "Leo", "Aiko", "Ravi", "Zoe", "Juan", "Ama", "Eli", "Tala", "Ivan"}

// StoryNames lists the children that stories tell of.
func StoryNames() []string { return slices.Clone(storyNames) }

// StoryThings lists what stories of the situation can be about.
func StoryThings(situation StorySituation) []string {
	var names []string
	for _, thing := range storyThings {
		if thing.suits(situation) {
			names = append(names, thing.name)
		}
	}
	return names
}

// suits says whether a thing can be told of in the situation: cents come in no two
// kinds, and a length can't be told as two unknown parts.
func (t storyThing) suits(situation StorySituation) bool {
	return !situation.isTogether() || t.en.kinds[0] != "" || t.measured && situation != TogetherBoth
}

func thingNamed(name string) storyThing {
	for _, thing := range storyThings {
		if thing.name == name {
			return thing
		}
	}
	return storyThing{}
}
