package sheet

import (
	"slices"

	"evenhand/standards/task"
)

// choice asks a question and gives three answers, each with a box to mark. The wrong ones are
// those of known missteps.
func choice(k kit, asked task.Task) (drawing, bool) {
	if !slices.Contains(asked.Looks(), task.LookChoice) {
		return drawing{}, false
	}
	options, at, _ := task.OptionsAt(asked, k.place)
	answers := make([]drawing, len(options))
	for i, option := range options {
		answers[i] = row(k.gap(), k.markBox(i == at), k.text(option))
	}
	return stack(4, k.questionAlone(asked), flow(k.width, 4*k.gap(), 3, answers...)), true
}

// keyPlaces is where the right answer of the first, second, ... item of a form stands among
// three, as far as its missteps allow: each place once in three items, in no simple order
// (Haladyna, Downing & Rodriguez 2002: vary the place of the key).
var keyPlaces = [...]int{1, 0, 2, 0, 2, 1, 2, 1, 0}

func keyPlace(number int) int { return keyPlaces[max(0, number-1)%len(keyPlaces)] }

// questionAlone is what a task asks, without room for an answer.
func (k kit) questionAlone(asked task.Task) drawing {
	switch t := asked.(type) {
	case task.Clock:
		return k.dial(dialRadius, &t.Time)
	case task.Sentence, task.Balance:
		return k.text(printed(asked.String()))
	}
	return k.paragraph(asked.Prompt(k.lang), lettering{size: k.size})
}
