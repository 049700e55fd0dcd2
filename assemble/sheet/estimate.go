package sheet

import "evenhand/standards/task"

// estimate asks about a thing and gives three answers, each with a box to mark.
func estimate(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Estimate)
	if !ok {
		return drawing{}, false
	}
	question := k.paragraph(k.prompt(t), lettering{size: k.size})
	return stack(4, question, flow(k.width, 4*k.gap(), 3, k.fixed(t)...)), true
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
	return []string{asked.Prompt(k.lang), k.offersAloud(asked)}
}
