package sheet

import (
	"strings"

	"evenhand/standards/task"
	"evenhand/standards/words"
)

// look is how one kind of item stands on the sheet.
type look struct {
	name      phrase // what a screen reader calls the picture; it never tells the answer
	direction phrase // one short sentence that the teacher reads aloud
	// draw lays the item out; false when the task has no such look.
	draw func(k kit, posed task.Task) (drawing, bool)
	// directionFor is the direction of tasks that need another than the look's; false for all others.
	directionFor func(posed task.Task) (phrase, bool)
	// aloud is what the picture shows, in words to work by, and never what is right; nil where the question
	// says it all.
	aloud func(k kit, posed task.Task) []string
}

// draw lays out a question in its look.
func (k kit) draw(q Question) (drawing, error) {
	if q.Task == nil {
		return k.asked(q.Text, q.Key), nil
	}
	l, ok := looks[q.Look]
	if !ok {
		return drawing{}, words.Errorf("item %d: no look %q; %q can be shown as %s", q.Number, q.Look, q.Task, lookNames(q.Task))
	}
	k.choices, k.words = Choices(q), &ownWords{text: q.Text}
	d, ok := l.draw(k, q.Task)
	if !ok {
		return drawing{}, words.Errorf("item %d: %q can't be shown as %s; it can be shown as %s", q.Number, q.Task, q.Look, lookNames(q.Task))
	}
	if q.Text != "" && !k.words.printed {
		d = stack(3, tagged(tagText, "", k.paragraph(q.Text, lettering{size: k.size})), tagged(tagFigure, k.aloud(q), d))
		d.speaks = true
	}
	return d, nil
}

func lookNames(posed task.Task) string {
	var names []string
	for _, l := range posed.Looks() {
		names = append(names, string(l))
	}
	return strings.Join(names, ", ")
}
