package sheet

import "evenhand/standards/task"

// equalAddends is dots, and below them the sum to write.
func equalAddends(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.EqualAddends)
	if !ok {
		return drawing{}, false
	}
	n, each := t.Dots()
	return stack(4, rings(n, each), k.sentenceOf(t.Written(), t.Fills(), 2)), true
}

func equalAddendsAloud(k kit, asked task.Task) []string {
	t := asked.(task.EqualAddends)
	n, each := t.Dots()
	return []string{k.things(dotSaid, n, each), k.say(equalSaid[t.Number > 0]), k.sentenceAloud(t.Written())}
}

// equalSaid is what is to be written, for a number and for an array.
var equalSaid = map[bool]phrase{
	true:  {"Write the number as a sum of two equal numbers.", "Escribe el número como suma de dos números iguales."},
	false: {"Add the rows. Write the number of each row, and how many in all.", "Suma las filas. Escribe el número de cada fila y cuántos hay en total."},
}

func equalDirection(asked task.Task) (phrase, bool) {
	t, ok := asked.(task.EqualAddends)
	return equalSaid[t.Number > 0], ok
}

// parityDots is a group of dots, and the words odd and even to choose from.
func parityDots(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.OddEven)
	if !ok || !t.Dots {
		return drawing{}, false
	}
	return k.choosing(rings(t.Number, 5), asked), true
}

func parityDotsAloud(k kit, asked task.Task) []string {
	return []string{asked.Prompt(k.lang), k.things(dotSaid, asked.(task.OddEven).Number, 5), k.offersAloud(asked)}
}
