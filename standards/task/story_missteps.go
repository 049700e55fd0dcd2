package task

import "strconv"

// The missteps in stories.
var (
	wordFollowed = newMisstep("went by one word",
		"adds because the story says more, or takes away because it says fewer",
		"suma porque el problema dice más, o resta porque dice menos",
		"tell the story again in your own words, draw it, then choose the sign",
		"contar el problema con palabras propias, dibujarlo y luego elegir el signo", "Lewis & Mayer (1987)")
	otherSign = newMisstep("other operation",
		"adds where the story takes away, or takes away where it adds",
		"suma cuando en el problema se quita, o resta cuando se agrega",
		"tell the story again in your own words, draw it, then choose the sign",
		"contar el problema con palabras propias, dibujarlo y luego elegir el signo", "common practice")
	numberCopied = newMisstep("number copied",
		"writes a number of the story as the answer",
		"escribe como respuesta un número del problema",
		"underline the question and say what the answer will tell",
		"subrayar la pregunta y decir qué dirá la respuesta", "common practice")
	firstStepOnly = newMisstep("first step only",
		"stops after the first step",
		"se detiene después del primer paso",
		"draw each step and tick it once it is worked",
		"dibujar cada paso y palomearlo cuando ya está hecho", "common practice")
)

// Missteps of a story: the wrong operation, a number of the story, a step left out, and
// the column slips of the work.
func (t Story) Missteps() []Misstep {
	switch t.Situation {
	case TogetherBoth:
		whole := t.Sentence.Result()
		return gather(t, []slip{{wholeAsPart, strconv.Itoa(whole) + " + 1"}})
	case TwoSteps:
		return gather(t, t.twoStepSlips())
	}
	x, y, adds := t.work()
	slips := []slip{{t.wrongSign(), strconv.Itoa(max(x-y, y-x))}, {numberCopied, strconv.Itoa(x)}, {numberCopied, strconv.Itoa(y)}}
	if !adds {
		slips[0].answer = strconv.Itoa(x + y)
		return gather(t, append(slips, workSlips(x, y)...))
	}
	work, _ := NewAddition(2, x, y)
	column := work.additionSlips()
	return gather(t, append(slips, column[:len(column)-1]...)) // the wrong sign is told above
}

// work is the two numbers of the story and whether the answer is their sum or x − y.
func (t Story) work() (x, y int, adds bool) {
	s := t.Sentence
	a, b, result := s.Terms[0], s.Terms[1], s.Result()
	switch {
	case s.Blank == 2:
		return a, b, !s.Minus[1]
	case s.Minus[1] && s.Blank == 0: // ? − b = c
		return b, result, true
	case s.Minus[1]: // a − ? = c
		return a, result, false
	case s.Blank == 0: // ? + b = c
		return result, b, false
	}
	return result, a, false // a + ? = c
}

// wrongSign is why a child would choose the other operation: a word of the story says it,
// or nothing does.
func (t Story) wrongSign() *MisstepKind {
	switch t.Situation {
	case AddToChange, AddToStart, CompareDifference, CompareBiggerLess, CompareSmallerMore:
		return wordFollowed
	}
	return otherSign
}

func (t Story) twoStepSlips() []slip {
	s := t.Sentence
	first := s.Terms[0] + s.sign(1)*s.Terms[1]
	slips := []slip{{firstStepOnly, strconv.Itoa(first)}}
	for i := 1; i < 3; i++ {
		turned := s
		turned.Minus[i] = !s.Minus[i]
		if n := turned.Result(); n >= 0 {
			slips = append(slips, slip{otherSign, strconv.Itoa(n)})
		}
	}
	return append(slips, s.leftOutSlips()...)
}
