package task

import (
	"regexp"
	"slices"
	"strings"

	"evenhand/standards/words"
)

// placeAsked is a number, or a blank that stands by itself, as no question mark behind a word or a number does.
var placeAsked = regexp.MustCompile(`[0-9]+|(?:^|[ ,;])\?`)

// What is said around a sequence: where it is to go on, where it is to begin earlier, which way it counts, and the
// words beside, which alone say nothing.
var (
	asksOn     = wordSet("next after then continue extend continues sigue siguen siguiente siguientes continua viene vienen despues proximo")
	asksBefore = wordSet("before antes")
	asksGap    = wordSet("missing blank blanks gap gaps left pattern sequence series count counting skip skip-count " +
		"falta faltan hueco huecos serie secuencia sucesion patron cuenta contando completa")
	countsUp   = wordSet("up on forward forwards adelante")
	countsDown = wordSet("back backward backwards down atras")
	besideAsks = wordSet("what what's whats which number numbers come comes goes go going is are the in into of this that these " +
		"find write fill say tell give name put complete finish keep row list out order for each every place places spaces space line box " +
		"boxes belongs should would will be it here there please look at with to a one ones and now let's you we can " +
		"que cual cuales numero numeros va van es son el la los las en de del esta este estos estas escribe continuar completar " +
		"halla encuentra busca di rellena llena espacio espacios fila lista y a cada un una hacia se")
)

// askedSequence is a sequence with what teachers say around it taken off: "what comes next? 97, 98, 99, ?". Where it is
// asked how the numbers go on and there is no blank, that is behind the last; where what is said and the blanks don't
// agree, ok is false.
func askedSequence(text string) (s Sequence, ok bool) {
	places := placeAsked.FindAllStringIndex(text, -1)
	if len(places) < 2 {
		return s, false
	}
	from, to := places[0][0], places[len(places)-1][1]
	before, run := strings.TrimSpace(text[:from]), strings.Trim(text[from:to], " ,;")
	if mark, rest, _ := strings.Cut(run, " "); mark == "?" && before != "" && !strings.HasSuffix(before, ":") {
		if !strings.Contains(rest, ",") {
			return s, false // a blank, or the end of the question: "the missing number ? 98 99"
		}
		run = rest
	}
	a, ok := whatIsAsked(before + " " + text[to:])
	if !ok {
		return s, false
	}
	cells := strings.FieldsFunc(run, func(r rune) bool { return r == ',' || r == ';' || r == ' ' })
	blank := func(cell string) bool { return cell == "?" }
	if a.on && !slices.ContainsFunc(cells, blank) {
		cells = append(cells, slices.Repeat([]string{"?"}, max(a.places, 1))...)
	}
	first, blanks := slices.IndexFunc(cells, blank), 0
	for _, cell := range cells {
		if blank(cell) {
			blanks++
		}
	}
	if a.places > 0 && a.places != blanks || a.on && first+blanks != len(cells) || a.before && first != 0 {
		return s, false
	}
	read, err := readSequence(strings.Join(cells, ", "))
	if err != nil {
		return s, false
	}
	s = read.(Sequence)
	return s, !(a.up && s.Step < 0 || a.down && s.Step > 0)
}

// askedWords is what is said around a sequence.
type askedWords struct {
	on, before, up, down bool
	places               int // how many numbers are asked for; 0 where that isn't said
}

// whatIsAsked reads it; ok is false where any word says something else.
func whatIsAsked(said string) (a askedWords, ok bool) {
	for _, t := range words.Tokens(said) {
		switch {
		case t.Kind == words.Spoken && a.places == 0:
			a.places = t.Number
		case asksOn[t.Text]:
			a.on, ok = true, true
		case asksBefore[t.Text]:
			a.before, ok = true, true
		case countsUp[t.Text]:
			a.up = true
		case countsDown[t.Text]:
			a.down = true
		case asksGap[t.Text]:
			ok = true
		case t.Kind == words.Word && besideAsks[t.Text], t.Kind == words.Sign && strings.Contains("?¿:.,;!", t.Text):
		default:
			return a, false
		}
	}
	return a, ok && !(a.on && a.before)
}
