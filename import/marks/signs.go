package marks

import (
	"maps"
	"strings"

	"evenhand/bank/results"
)

// family is a way of marking: who ticks doesn't write 1 for right.
type family string

const (
	digitFamily  family = "1 and 0"
	tickFamily   family = "ticks"
	letterFamily family = "letters"
	wordFamily   family = "words"
	pointFamily  family = "points" // 1 pt, 0/1, 100%
	boxFamily    family = "boxes"  // TRUE and FALSE, as spreadsheets keep ticked boxes
	noneFamily   family = "absent or not reached"
)

// sign is what a mark means. Most mean one thing; the others one of several, told by
// the signs beside them.
type sign struct {
	family   family
	readings []reading
}

// reading is one meaning of a sign.
type reading struct {
	state results.State
	with  string // signs one of which stands in the row, where the meaning needs one
	// unless is a state for which a plain sign stands in the row: who ticks what is
	// right doesn't also cross it.
	unless results.State
}

// Classes of signs, for reading.with: any sign that plainly says right or wrong.
const (
	anyRight = "<right>"
	anyWrong = "<wrong>"
)

// signs are the signs by their plain form (see plain). What schools and spreadsheets
// use is common practice; there is no published list.
var signs = allSigns()

func allSigns() map[string]sign {
	all := map[string]sign{}
	addSigns := func(f family, state results.State, list string) {
		for _, text := range strings.Split(list, " | ") {
			all[text] = sign{f, []reading{{state: state}}}
		}
	}
	addSigns(tickFamily, results.Right, "✓ | ✔ | √ | ☑ | ✅ | 🗸 | 🗹 | ⍻ | + | 👍 | 👌 | 💯 | 🟢 | 🟩 | 🆗 | ü | þ | 🙆")
	addSigns(tickFamily, results.Wrong,
		"✗ | ✘ | × | ✕ | ✖ | ⨯ | ╳ | ❌ | ❎ | 🗙 | 🗴 | 🗵 | 🗶 | 🗷 | 🞩 | 👎 | 🔴 | 🟥 | 🙅 | û | ý | х | χ")
	// English and Spanish first, then the words of other languages and what their
	// spreadsheets call TRUE and FALSE.
	addSigns(wordFamily, results.Right,
		"right | correct | corr | yes | ok | okay | good | got it | pass | passed | rt | "+
			"correcto | correcta | bien | sí | si | cierto | acierto | acertó | buena | bueno | "+
			"richtig | ja | juste | exact | oui | bon | giusto | corretto | certo | sim | goed | juist | rätt | "+
			"riktig | rigtig | tak | dobrze | да | верно | правильно | doğru | 对 | 正确 | 正 | 正解 | 맞음 | đúng | tama")
	addSigns(wordFamily, results.Wrong,
		"wrong | incorrect | incorr | no | not right | not correct | bad | fail | failed | miss | missed | "+
			"error | nope | "+
			"incorrecto | incorrecta | mal | equivocado | equivocada | fallo | falló | mala | malo | "+
			"nein | faux | incorrect | non | sbagliato | errato | errado | não | fout | fel | feil | forkert | nie | "+
			"źle | нет | неверно | неправильно | yanlış | 错 | 错误 | 誤 | 不正解 | 틀림 | sai | mali")
	addSigns(boxFamily, results.Right,
		"true | verdadero | wahr | vrai | vero | verdadeiro | waar | prawda | sant | sand | sann | tosi | "+
			"истина | pravda | igaz | adevărat | αληθησ | αληθής")
	addSigns(boxFamily, results.Wrong,
		"false | falso | falsch | faux | onwaar | fałsz | falskt | falsk | usann | epätosi | ложь | nepravda | "+
			"hamis | fals | ψευδησ | ψευδής")
	addSigns(noneFamily, results.Absent,
		"- | -- | --- | absent | abs | ab | away | out | out sick | ill | sick | unwell | not here | "+
			"wasn't here | was not here | not present | not in | no show | no-show | didn't come | did not come | "+
			"excused | exc | at home | "+
			"ausente | aus | enfermo | enferma | falta | faltó | no vino | no asistió | no está | no estuvo | "+
			"no presente | no presentado | np | inasistencia | "+
			"abwesend | fehlt | krank | malade | absente | assente | afwezig | ziek")
	addSigns(noneFamily, results.NotReached,
		". | .. | ... | .... | · | nr | n/r | not reached | didn't reach | did not reach | not got to | "+
			"not done | not finished | didn't finish | did not finish | unfinished | dnf | not attempted | no time | "+
			"ran out of time | time ran out | na | n/a | nan | null | "+
			"no alcanzado | no alcanzada | no alcanzó | no llegó | no hecho | no hecha | sin hacer | no terminó | "+
			"sin terminar | no terminado | sin tiempo | no le dio tiempo | "+
			"nicht erreicht | nicht bearbeitet | non fait | non atteint")
	maps.Copy(all, mixed)
	return all
}

// mixed are the signs that mean one thing beside some signs and another beside others.
var mixed = map[string]sign{
	// Crossed for wrong; where boxes or noughts stand for wrong, a cross may be the tick.
	"x":   {tickFamily, []reading{{state: results.Wrong}, {results.Right, "o | 0 | ○ | ☐ | [ ]", results.Right}}},
	"☒":   {tickFamily, []reading{{state: results.Wrong}, {results.Right, "☐", results.Right}}},
	"☐":   {tickFamily, []reading{{state: results.Wrong, with: "☑ | ✓ | ✔ | ✅ | 🗹 | þ"}}},
	"¨":   {tickFamily, []reading{{state: results.Wrong, with: "þ | ü"}}}, // the symbol font's empty box
	"[x]": {tickFamily, []reading{{state: results.Right, with: "[ ]"}}},
	"[ ]": {tickFamily, []reading{{state: results.Wrong, with: "[x] | [✓]"}}},
	"[✓]": {tickFamily, []reading{{state: results.Right}}},
	"○": {tickFamily, []reading{
		{state: results.Right, with: "× | ❌ | ✕ | ✖ | x | △"},
		{state: results.Wrong, with: "● | ✓ | ✔"},
		{state: results.Right, with: "●"},
	}},
	// A filled box, or the black mark.
	"●": {tickFamily, []reading{{state: results.Right, with: "○"}, {state: results.Wrong, with: "○"}}},
	"/": {tickFamily, []reading{{state: results.Right, with: "x | " + anyWrong}, {state: results.Wrong, with: anyRight}}},
	"o": {letterFamily, []reading{{state: results.Right, with: "x"}, {state: results.Wrong, with: "x | p | " + anyRight}}},
	"a": {letterFamily, []reading{{state: results.Absent}, {state: results.Right, with: "e | f | r | i"}}},
	"b": {letterFamily, []reading{{state: results.Right, with: "m"}}},
	"c": {letterFamily, []reading{{state: results.Right}}},
	"e": {letterFamily, []reading{{state: results.Wrong, with: "a | c"}}},
	"f": {letterFamily, []reading{{state: results.Wrong, with: "t | v | r | w | p | " + anyRight}, {state: results.Right, with: "n"}}},
	"i": {letterFamily, []reading{{state: results.Wrong, with: "c | r"}}},
	"j": {letterFamily, []reading{{state: results.Right, with: "n"}}},
	"m": {letterFamily, []reading{{state: results.Wrong, with: "b"}}},
	"n": {letterFamily, []reading{{state: results.Wrong, with: "y | s | j"}}},
	"p": {letterFamily, []reading{{state: results.Right, with: "f | o"}}},
	"r": {letterFamily, []reading{{state: results.Right}, {state: results.Wrong, with: "a"}}},
	"s": {letterFamily, []reading{{state: results.Right, with: "n"}}},
	"t": {letterFamily, []reading{{state: results.Right, with: "f | x | " + anyWrong}}},
	"v": {letterFamily, []reading{{state: results.Right}}},
	"w": {letterFamily, []reading{{state: results.Wrong}, {results.Right, "f", results.Right}}},
	"y": {letterFamily, []reading{{state: results.Right}}},

	// A child may have left it out or not have come to it, or not have been there.
	"missing": eitherOf(results.Absent, results.NotReached), "m/a": eitherOf(results.Absent, results.NotReached),
	"none":  eitherOf(results.Wrong, results.NotReached),
	"blank": leftOut, "left blank": leftOut, "empty": leftOut, "skip": leftOut, "skipped": leftOut,
	"omitted": leftOut, "left out": leftOut, "no answer": leftOut, "no response": leftOut, "unanswered": leftOut,
	"nothing": leftOut, "didn't answer": leftOut, "did not answer": leftOut, "en blanco": leftOut,
	"vacío": leftOut, "sin respuesta": leftOut, "sin contestar": leftOut, "no contestó": leftOut,
	"no respondió": leftOut, "omitido": leftOut, "nada": leftOut, "∅": leftOut,
}

// judging are words that judge an answer rather than give one, though children write them, too: under a
// true-or-false item "wrong" hardly is the answer "false".
var judging = map[string]bool{"right": true, "correct": true, "wrong": true, "incorrect": true}

var leftOut = eitherOf(results.NotReached, results.Wrong)

func eitherOf(states ...results.State) sign {
	s := sign{family: noneFamily}
	for _, state := range states {
		s.readings = append(s.readings, reading{state: state})
	}
	return s
}
