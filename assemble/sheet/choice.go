package sheet

import (
	"fmt"
	"slices"
	"strings"

	"evenhand/standards/task"
)

// choice asks a question and gives three answers, each with a box to mark. The wrong ones are
// those of known missteps.
func choice(k kit, posed task.Task) (drawing, bool) {
	if !slices.Contains(posed.Looks(), task.LookChoice) {
		return drawing{}, false
	}
	answers := make([]drawing, len(k.choices))
	for i, option := range k.choices {
		answers[i] = row(k.gap(), k.markBox(option == posed.Key()), k.text(task.Offered(posed, option)))
	}
	parts := []drawing{k.questionAlone(posed), flow(k.width, 4*k.gap(), 3, answers...)}
	if t, ok := posed.(task.Clock); ok && t.Time.Half != "" {
		parts = append(parts, k.halvesOfDay(t.Time))
	}
	return stack(4, parts...), true
}

// Choices are the answers that a question offers to choose from, in order: those it was given with,
// else the rule's. Questions in another look have none.
func Choices(q Question) []string {
	switch {
	case q.Task == nil || q.Look != task.LookChoice:
		return nil
	case len(q.Choices) > 0:
		return q.Choices
	}
	options, _, _ := task.OptionsAt(q.Task, keyPlace(q.Number))
	return options[:]
}

// keyPlaces is where the right answer of the first, second, ... item of a form stands among
// three, as far as its missteps allow: each place once in three items, in no simple order
// (Haladyna, Downing & Rodriguez 2002: vary the place of the key).
var keyPlaces = [...]int{1, 0, 2, 0, 2, 1, 2, 1, 0}

func keyPlace(number int) int { return keyPlaces[max(0, number-1)%len(keyPlaces)] }

// questionAlone is what a task asks, without room for an answer and without a word of
// writing it.
func (k kit) questionAlone(posed task.Task) drawing {
	if t, ok := posed.(task.Clock); ok {
		return k.dial(k.radius, &t.Time)
	}
	if sentence, ok := task.Written(posed); ok {
		return k.sentenceOf(sentence, nil, 0)
	}
	if _, alone, ok := strings.Cut(posed.Prompt(k.lang), ": "); ok { // nothing is written there
		return k.paragraph(alone, lettering{size: k.size, bold: true})
	}
	return k.paragraph(k.prompt(posed), lettering{size: k.size})
}

var markRight = phrase{"Mark the box of the right answer.", "Marca el cuadro de la respuesta correcta."}

func choiceDirection(asked task.Task) (phrase, bool) { return halfDirection(asked, markRight) }

var optionsSaid = phrase{"Answers to choose from: %s.", "Respuestas para elegir: %s."}

// optionsAloud names the answers of an item to choose from.
func (k kit) optionsAloud(q Question) string {
	var list []string
	for _, option := range Choices(q) {
		list = append(list, task.Offered(q.Task, option))
	}
	return fmt.Sprintf(k.say(optionsSaid), strings.Join(list, "; "))
}
