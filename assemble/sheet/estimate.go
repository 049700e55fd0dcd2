package sheet

import (
	"strings"

	"evenhand/standards/task"
)

// estimate asks about a thing and gives three answers, each with a box to mark.
func estimate(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Estimate)
	if !ok {
		return drawing{}, false
	}
	var answers []drawing
	for _, answer := range t.Offers() {
		answers = append(answers, row(k.gap(), k.markBox(answer == t.Key()), k.text(t.AnswerIn(answer, k.lang))))
	}
	question := k.paragraph(k.prompt(t), lettering{size: k.size})
	return stack(4, question, flow(k.width, 4*k.gap(), 3, answers...)), true
}

var (
	lengthFits = phrase{"Mark the length that fits.", "Marca la medida que le corresponde."}
	toolFits   = phrase{"Mark the best tool.", "Marca el mejor instrumento."}
)

func estimateDirection(asked task.Task) (phrase, bool) {
	t, ok := asked.(task.Estimate)
	return toolFits, ok && t.Tool
}

func estimateAloud(k kit, asked task.Task) []string {
	t := asked.(task.Estimate)
	var answers []string
	for _, answer := range t.Offers() {
		answers = append(answers, t.AnswerIn(answer, k.lang))
	}
	return []string{t.Prompt(k.lang), strings.Replace(k.say(optionsSaid), "%s", strings.Join(answers, "; "), 1)}
}
