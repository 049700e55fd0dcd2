package task

import (
	"slices"
	"strconv"
)

// The missteps in stories.
var (
	wordToAdd = newMisstep("added because of a word",
		"adds because of a word such as more, though the story needs taking away",
		"suma por una palabra como más, aunque en el problema hay que restar",
		"tell the story again in your own words, draw it, then choose the sign",
		"contar el problema con palabras propias, dibujarlo y luego elegir el signo", "Lewis & Mayer (1987)")
	wordToTake = newMisstep("took away because of a word",
		"takes away because of a word such as fewer or loses, though the story needs adding",
		"resta por una palabra como menos o pierde, aunque en el problema hay que sumar",
		"tell the story again in your own words, draw it, then choose the sign",
		"contar el problema con palabras propias, dibujarlo y luego elegir el signo", "Lewis & Mayer (1987)")
	storyAdded = newMisstep("added in a story",
		"adds where the story needs taking away",
		"suma donde en el problema hay que restar",
		"draw what the story tells: is the answer a part or the whole",
		"dibujar lo que cuenta el problema: ¿la respuesta es una parte o el todo?", "common practice")
	storyTaken = newMisstep("took away in a story",
		"takes away where the story needs adding",
		"resta donde en el problema hay que sumar",
		"draw what the story tells: is the answer a part or the whole",
		"dibujar lo que cuenta el problema: ¿la respuesta es una parte o el todo?", "common practice")
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
	case ThreeAddends:
		return gather(t, append(t.Sentence.additionSlips(), slip{numberCopied, strconv.Itoa(slices.Max(t.Sentence.Operands()))}))
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
	case AddToChange, AddToStart, CompareDifference, CompareSmallerMore:
		return wordToAdd
	case TakeFromStart, CompareBiggerLess:
		return wordToTake
	}
	_, _, adds := t.work()
	return signChosen(!adds)
}

// signChosen is the misstep of a step in which adding was chosen, or taking away.
func signChosen(adding bool) *MisstepKind {
	if adding {
		return storyAdded
	}
	return storyTaken
}

func (t Story) twoStepSlips() []slip {
	s := t.Sentence
	first := s.Terms[0] + s.sign(1)*s.Terms[1]
	slips := []slip{{firstStepOnly, strconv.Itoa(first)}}
	for i := 1; i < 3; i++ {
		turned := s
		turned.Minus[i] = !s.Minus[i]
		if n := turned.Result(); n >= 0 {
			slips = append(slips, slip{signChosen(!turned.Minus[i]), strconv.Itoa(n)})
		}
	}
	return append(slips, s.leftOutSlips()...)
}
