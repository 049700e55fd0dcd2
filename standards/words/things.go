package words

// Thing is what a story is about, with the words that go with it. The words are
// short and known to six-year-olds; nobody buys, wins or goes without anything that
// only some families have.
type Thing struct {
	Name     string // as in the task's text: the English word
	Measured bool   // a length in centimetres, else things to count
	Money    bool
	En       ThingWords
	Es       ThingWords
	Feminine bool // in Spanish
}

// ThingWords are the words for a thing in one language.
type ThingWords struct {
	Things string // the plural of what is counted, the singular of what is measured
	Gets   string // "finds"
	Get    string // as asked in the past: "find" (did ... find), "encontró"
	Loses  string // "gives away"
	Lose   string
	Kinds  [2]string // two kinds that they come in; empty where stories don't put kinds together
}

// Things are what stories can be about.
var Things = []Thing{
	{"shells", false, false,
		ThingWords{"shells", "finds", "find", "loses", "lose", [2]string{"big", "small"}},
		ThingWords{"caracoles", "encuentra", "encontró", "pierde", "perdió", [2]string{"grandes", "pequeños"}}, false},
	{"apples", false, false,
		ThingWords{"apples", "picks", "pick", "gives away", "give away", [2]string{"red", "green"}},
		ThingWords{"manzanas", "recoge", "recogió", "regala", "regaló", [2]string{"rojas", "verdes"}}, true},
	{"pencils", false, false,
		ThingWords{"pencils", "gets", "get", "lends", "lend", [2]string{"red", "blue"}},
		ThingWords{"lápices", "recibe", "recibió", "presta", "prestó", [2]string{"rojos", "azules"}}, false},
	{"books", false, false,
		ThingWords{"books", "gets", "get", "gives back", "give back", [2]string{"old", "new"}},
		ThingWords{"libros", "recibe", "recibió", "devuelve", "devolvió", [2]string{"viejos", "nuevos"}}, false},
	{"blocks", false, false,
		ThingWords{"blocks", "gets", "get", "puts away", "put away", [2]string{"red", "blue"}},
		ThingWords{"bloques", "recibe", "recibió", "guarda", "guardó", [2]string{"rojos", "azules"}}, false},
	{"stickers", false, false,
		ThingWords{"stickers", "gets", "get", "uses", "use", [2]string{"round", "square"}},
		ThingWords{"pegatinas", "recibe", "recibió", "usa", "usó", [2]string{"redondas", "cuadradas"}}, true},
	{"buttons", false, false,
		ThingWords{"buttons", "finds", "find", "uses", "use", [2]string{"black", "white"}},
		ThingWords{"botones", "encuentra", "encontró", "usa", "usó", [2]string{"negros", "blancos"}}, false},
	{"seeds", false, false,
		ThingWords{"seeds", "gets", "get", "plants", "plant", [2]string{"long", "round"}},
		ThingWords{"semillas", "recibe", "recibió", "planta", "plantó", [2]string{"largas", "redondas"}}, true},
	{"eggs", false, false,
		ThingWords{"eggs", "finds", "find", "cooks", "cook", [2]string{"brown", "white"}},
		ThingWords{"huevos", "encuentra", "encontró", "cocina", "cocinó", [2]string{"marrones", "blancos"}}, false},
	{"cards", false, false,
		ThingWords{"cards", "makes", "make", "sends", "send", [2]string{"blue", "green"}},
		ThingWords{"tarjetas", "hace", "hizo", "envía", "envió", [2]string{"azules", "verdes"}}, true},
	{"stones", false, false,
		ThingWords{"stones", "finds", "find", "puts back", "put back", [2]string{"gray", "white"}},
		ThingWords{"piedras", "encuentra", "encontró", "devuelve", "devolvió", [2]string{"grises", "blancas"}}, true},
	{"leaves", false, false,
		ThingWords{"leaves", "finds", "find", "gives away", "give away", [2]string{"red", "green"}},
		ThingWords{"hojas", "encuentra", "encontró", "regala", "regaló", [2]string{"rojas", "verdes"}}, true},
	{"cents", false, true,
		ThingWords{"cents", "finds", "find", "spends", "spend", [2]string{}},
		ThingWords{"centavos", "encuentra", "encontró", "gasta", "gastó", [2]string{}}, false},
	{"rope", true, false,
		ThingWords{"rope", "ties on", "tie on", "cuts off", "cut off", [2]string{}},
		ThingWords{"cuerda", "ata", "ató", "corta", "cortó", [2]string{}}, true},
	{"ribbon", true, false,
		ThingWords{"ribbon", "sews on", "sew on", "cuts off", "cut off", [2]string{}},
		ThingWords{"cinta", "cose", "cosió", "corta", "cortó", [2]string{}}, true},
	{"string", true, false,
		ThingWords{"string", "ties on", "tie on", "cuts off", "cut off", [2]string{}},
		ThingWords{"hilo", "ata", "ató", "corta", "cortó", [2]string{}}, false},
}

// Children are the children in stories: short, easy to read in both languages, from many
// parts of the world.
var Children = []string{"Mia", "Omar", "Ana", "Kofi", "Lin", "Sam", "Noor", "Leo", "Aiko", "Ravi", "Zoe", "Juan", "Ama", "Eli", "Tala", "Ivan"}

// ThingNamed finds a thing by its name; the zero thing for none.
func ThingNamed(name string) Thing {
	for _, thing := range Things {
		if thing.Name == name {
			return thing
		}
	}
	return Thing{}
}
