package task_test

import (
	"testing"

	"evenhand/standards/task"
	"evenhand/standards/words"
)

func TestNumberNames(t *testing.T) {
	// The names as dictionaries spell them; Spanish: Real Academia Española, Ortografía (2010), from
	// memory: one word to thirty, accents on dieciséis, veintidós, veintitrés, veintiséis.
	for n, want := range map[int][2]string{
		0: {"zero", "cero"}, 12: {"twelve", "doce"}, 15: {"fifteen", "quince"}, 16: {"sixteen", "dieciséis"}, 18: {"eighteen", "dieciocho"},
		20: {"twenty", "veinte"}, 21: {"twenty-one", "veintiuno"}, 22: {"twenty-two", "veintidós"},
		23: {"twenty-three", "veintitrés"}, 26: {"twenty-six", "veintiséis"},
		30: {"thirty", "treinta"}, 40: {"forty", "cuarenta"}, 42: {"forty-two", "cuarenta y dos"}, 80: {"eighty", "ochenta"}, 99: {"ninety-nine", "noventa y nueve"},
		100: {"one hundred", "cien"}, 101: {"one hundred one", "ciento uno"}, 116: {"one hundred sixteen", "ciento dieciséis"}, 200: {"two hundred", "doscientos"},
		342: {"three hundred forty-two", "trescientos cuarenta y dos"}, 500: {"five hundred", "quinientos"}, 700: {"seven hundred", "setecientos"},
		905: {"nine hundred five", "novecientos cinco"}, 1000: {"one thousand", "mil"},
	} {
		if en, es := words.NumberName(n, "en"), words.NumberName(n, "es"); en != want[0] || es != want[1] {
			t.Errorf("%d is named %q and %q, want %q and %q", n, en, es, want[0], want[1])
		}
	}
}

func TestEveryNumberIsReadBackFromItsName(t *testing.T) {
	for n := range 1001 {
		for _, lang := range []string{"en", "es"} {
			asked, err := task.Parse("write " + words.NumberName(n, lang))
			if err != nil || asked != (task.WriteNumber{Number: n}) {
				t.Errorf("%q is read as %v, %v", words.NumberName(n, lang), asked, err)
			}
			if !(task.WriteNumber{Number: n, InWords: true}).Judge(words.NumberName(n, lang)) {
				t.Errorf("%q is judged wrong for %d", words.NumberName(n, lang), n)
			}
		}
	}
}

func TestRenameNumbers(t *testing.T) {
	// The names as in TestNumberNames.
	for text, want := range map[string]string{
		"two hundred forty-three": "doscientos cuarenta y tres", "three four two": "tres cuatro dos",
		"thirty": "treinta", "cien": "cien", "two shells": "two shells", "": "",
	} {
		if got := words.RenameNumbers(text, "es"); got != want {
			t.Errorf("%q is %q in Spanish, want %q", text, got, want)
		}
	}
	if got := words.RenameNumbers("tres cuatro dos", "en"); got != "three four two" {
		t.Errorf("tres cuatro dos is %q in English", got)
	}
}
