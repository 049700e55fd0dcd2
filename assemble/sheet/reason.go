package sheet

import "evenhand/standards/task"

// reason is its steps one below the other, each with a box to write in.
func reason(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Reason)
	if !ok {
		return drawing{}, false
	}
	units, rest, sum := t.Steps(k.lang)
	fills := t.Fills()
	steps := []drawing{k.sentenceOf(units, fills[:1], 2)}
	if rest != "" {
		said := k.paragraph(rest+":", lettering{size: k.size})
		steps = append(steps, flow(k.width, k.gap(), k.gap(), said, k.answerBox(2, fills[1])))
	}
	return stack(3, append(steps, k.sentenceOf(sum, fills[len(fills)-1:], 3))...), true
}

func reasonAloud(k kit, asked task.Task) []string {
	units, rest, sum := asked.(task.Reason).Steps(k.lang)
	if rest != "" {
		rest += ": " + k.say(blankSaid) + "."
	}
	return []string{k.sentenceAloud(units), rest, k.sentenceAloud(sum)}
}
