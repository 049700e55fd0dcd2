package sheet

import (
	"fmt"
	"slices"
	"strings"

	"evenhand/standards/task"
	"evenhand/standards/words"
)

// Words that stand in place of something to write on.
var (
	lineToWrite = phrase{"A line to write on.", "Una línea para escribir."}
	boxToWrite  = phrase{"A box for a number:", "Un cuadro para un número:"}
	answerSaid  = phrase{"Answer: %s.", "Respuesta: %s."}
	blankSaid   = phrase{"blank", "espacio en blanco"}
)

// saidOn is what a screen reader says of a thing; on the key with the answer in it.
func (k kit) saidOn(thing, answer string) string {
	if !k.key {
		return thing
	}
	return thing + " " + fmt.Sprintf(k.say(answerSaid), answer)
}

// aloud is an item in words, as a screen reader says it in place of its picture: what is asked and what
// the picture shows, so that a child who can't see it can work on it, and never what is right. On
// the key the answer follows.
func (k kit) aloud(q Question) string {
	var parts []string
	if q.Text != "" {
		parts = append(parts, q.Text)
	}
	if q.Task != nil {
		parts = append(parts, k.shows(q)...)
	}
	parts = slices.DeleteFunc(parts, func(s string) bool { return s == "" })
	return k.saidOn(strings.Join(parts, " "), k.answerText(q))
}

// shows is what the picture of a task shows.
func (k kit) shows(q Question) []string {
	if q.Look == task.LookChoice {
		return k.choiceAloud(q)
	}
	switch t := q.Task.(type) {
	case task.Clock:
		return k.clockAloud(t, q.Look)
	case task.Match:
		return k.matchAloud(t)
	case task.HowMany:
		return []string{t.Prompt(k.lang), k.things(dotSaid, t.Number, 5)}
	case task.Groups:
		return []string{t.Prompt(k.lang), k.say(leftSaid), k.things(dotSaid, t.Left, 0), k.say(rightSaid), k.things(dotSaid, t.Right, 0)}
	case task.Array:
		return []string{k.say(looks[q.Look].direction), k.things(dotSaid, t.Rows*t.Columns, t.Columns)}
	case task.Coins:
		return []string{k.say(looks[q.Look].direction), k.coinsAloud(t)}
	case task.PlaceValue:
		if q.Look == task.LookTensAndOnes {
			return []string{k.blocksAloud(t.Number), k.sentenceAloud(t.String())}
		}
	}
	said := []string{k.questionAloud(q)}
	if w, ok := wayOf(q.Task, task.HundredsChartEnd); ok {
		switch q.Look {
		case task.LookHundredsChart:
			said = append(said, fmt.Sprintf(k.say(chartSaid), w.start))
		case task.LookNumberLine:
			from, to := k.stretchOf(w)
			said = append(said, fmt.Sprintf(k.say(lineSaid), from, to, w.start))
		}
	}
	return said
}

// questionAloud is a question without a picture: a sentence as it is said, else the question in words.
func (k kit) questionAloud(q Question) string {
	switch t := q.Task.(type) {
	case task.Sentence, task.Balance, task.Expanded, task.PlaceValue, task.Related, task.Compare, task.Sequence:
		return k.sentenceAloud(t.String())
	}
	return q.Task.Prompt(k.lang)
}

// signWords are the signs of sentences as they are said.
var signWords = map[string]phrase{
	"+": {"plus", "más"}, "-": {"minus", "menos"}, "=": {"equals", "es igual a"},
	"hundreds": {"hundreds", "centenas"}, "tens": {"tens", "decenas"}, "ones": {"ones", "unidades"},
}

// sentenceAloud is a sentence with its signs in words: "47 plus blank equals 83."
func (k kit) sentenceAloud(sentence string) string {
	var said []string
	for _, token := range strings.Fields(sentence) {
		word := strings.TrimRight(token, ",")
		switch sign, ok := signWords[word]; {
		case word == "?":
			token = strings.Replace(token, "?", k.say(blankSaid), 1)
		case ok:
			token = k.say(sign) + token[len(word):]
		}
		said = append(said, token)
	}
	return strings.Join(said, " ") + "."
}

var optionsSaid = phrase{"Answers to choose from: %s.", "Respuestas para elegir: %s."}

func (k kit) choiceAloud(q Question) []string {
	var list []string
	for _, option := range Choices(q) {
		list = append(list, OptionText(q.Task, option))
	}
	var asked []string
	if t, ok := q.Task.(task.Clock); ok {
		asked = k.clockAloud(t, task.LookClockFace)
	} else {
		asked = []string{k.questionAloud(q)}
	}
	return append(asked, fmt.Sprintf(k.say(optionsSaid), strings.Join(list, "; ")))
}

// What clocks, dots, coins and charts show.
var (
	handAt      = phrase{"The short hand points to the %d.", "La manecilla corta apunta al %d."}
	handBetween = phrase{"The short hand is between the %d and the %d.", "La manecilla corta está entre el %d y el %d."}
	longAt      = phrase{"The long hand points to the %d.", "La manecilla larga apunta al %d."}
	longPast    = phrase{"The long hand is %d small marks past the %d.", "La manecilla larga está %d rayitas después del %d."}
	clockSaid   = phrase{"A clock face.", "Un reloj."}
	blankClock  = phrase{"A clock face without hands.", "Un reloj sin manecillas."}
	timesSaid   = phrase{"The times: %s.", "Las horas: %s."}
	clockNumber = phrase{"Clock %d.", "Reloj %d."}
	dotSaid     = phrase{"dot", "punto"}
	leftSaid    = phrase{"Left:", "A la izquierda:"}
	rightSaid   = phrase{"Right:", "A la derecha:"}
	hundredSaid = phrase{"square of a hundred", "cuadro de cien"}
	tenSaid     = phrase{"stick of ten", "barra de diez"}
	coinSaid    = phrase{"%d-cent coin", "moneda de %d centavos"}
	chartSaid   = phrase{"A chart of the numbers from 1 to 120, with %d in a frame.", "Una tabla de los números del 1 al 120, con el %d enmarcado."}
	lineSaid    = phrase{"A number line from %d to %d, with a dot at %d.", "Una recta numérica del %d al %d, con un punto en el %d."}
)

// clockAloud says where the hands are, not what time that is.
func (k kit) clockAloud(t task.Clock, l task.Look) []string {
	switch {
	case l == task.LookSaidTime:
		return []string{t.Time.DayHint(k.lang), sayWithoutHalf(t.Time, k.lang) + "."}
	case l == task.LookSaidFace:
		return []string{k.say(blankClock), t.Time.Words(k.lang) + "."}
	case t.Verb == task.Draw:
		return []string{k.say(blankClock), t.Time.Printed() + "."}
	}
	return []string{k.say(clockSaid), k.handsAloud(t.Time), t.Prompt(k.lang)}
}

func sayWithoutHalf(t words.Time, lang string) string {
	t.Half = ""
	return t.Words(lang)
}

func (k kit) handsAloud(t words.Time) string {
	short := fmt.Sprintf(k.say(handAt), t.Hour)
	if t.Minute > 0 {
		short = fmt.Sprintf(k.say(handBetween), t.Hour, t.Hour%12+1)
	}
	numeral := (t.Minute/5+11)%12 + 1
	long := fmt.Sprintf(k.say(longAt), numeral)
	if past := t.Minute % 5; past > 0 {
		long = fmt.Sprintf(k.say(longPast), past, numeral)
	}
	return short + " " + long
}

func (k kit) matchAloud(m task.Match) []string {
	said := []string{m.Prompt(k.lang)}
	for i, t := range m.List() {
		said = append(said, fmt.Sprintf(k.say(clockNumber), i+1), k.handsAloud(t))
	}
	var times []string
	for _, i := range shuffled(m) {
		times = append(times, m.Times[i].Printed())
	}
	return append(said, fmt.Sprintf(k.say(timesSaid), strings.Join(times, ", ")))
}

// things names each of so many things, to be counted by ear, with a stop after each row of so many.
func (k kit) things(name phrase, n, each int) string {
	var b strings.Builder
	for i := 1; i <= n; i++ {
		b.WriteString(k.say(name))
		switch {
		case i == n:
			b.WriteString(".")
		case each > 0 && i%each == 0:
			b.WriteString("; ")
		default:
			b.WriteString(", ")
		}
	}
	return b.String()
}

func (k kit) coinsAloud(t task.Coins) string {
	var list []string
	for _, worth := range t.List() {
		list = append(list, fmt.Sprintf(k.say(coinSaid), worth))
	}
	return strings.Join(list, ", ") + "."
}

func (k kit) blocksAloud(n int) string {
	all := slices.Concat(slices.Repeat([]string{k.say(hundredSaid)}, n/100), slices.Repeat([]string{k.say(tenSaid)}, n/10%10), slices.Repeat([]string{k.say(dotSaid)}, n%10))
	return strings.Join(all, ", ") + "."
}
