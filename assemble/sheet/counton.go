package sheet

import (
	"fmt"
	"strconv"

	"evenhand/standards/task"
)

// countOn is a number and boxes for those that are counted after it, and below the sum or difference that they make.
func countOn(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.CountOn)
	if !ok {
		return drawing{}, false
	}
	fills := t.Fills()
	w := 4 + digitRoom*2
	numbers := []drawing{k.given(w, strconv.Itoa(t.Start))}
	for _, n := range fills[:t.Steps] {
		numbers = append(numbers, k.box(w, boxHeight, n))
	}
	return stack(4, flow(k.width, boxGap, boxGap, numbers...), k.sentenceOf(t.Sum(), fills[t.Steps:], 2)), true
}

func countOnAloud(k kit, asked task.Task) []string {
	t := asked.(task.CountOn)
	return []string{
		k.say(countOnSaid[t.Back]), fmt.Sprintf(k.say(countOnSteps[t.Back]), t.Start, t.Steps), k.sentenceAloud(t.Sum()),
	}
}

// countOnSaid is what is to be written, on and back.
var countOnSaid = map[bool]phrase{
	false: {"Count on from the number. Then write the sum.", "Sigue contando desde el número. Luego escribe la suma."},
	true:  {"Count back from the number. Then write what is left.", "Cuenta hacia atrás desde el número. Luego escribe lo que queda."},
}

var countOnSteps = map[bool]phrase{
	false: {"Start at %d and count on %d.", "Empieza en %d y cuenta %d más."},
	true:  {"Start at %d and count back %d.", "Empieza en %d y cuenta %d hacia atrás."},
}

func countOnDirection(asked task.Task) (phrase, bool) {
	t, ok := asked.(task.CountOn)
	return countOnSaid[t.Back], ok
}
