package sheet

import (
	"strings"

	"evenhand/standards/task"
)

// shapeParts is a shape and a box for how many sides, corners or faces.
func shapeParts(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.ShapeParts)
	if !ok {
		return drawing{}, false
	}
	return row(4*k.gap(), k.figure(t.Figure, figureRadius), k.answerBox(2, t.Key())), true
}

// partsSaid are parts as they are met going round, to be counted by ear.
var partsSaid = map[string]struct{ way, one phrase }{
	"sides":   {phrase{"Going round the shape: ", "Alrededor de la figura: "}, phrase{"side", "lado"}},
	"corners": {phrase{"Going round the shape: ", "Alrededor de la figura: "}, phrase{"corner", "esquina"}},
	"faces":   {phrase{"The solid is like a box. Its faces: ", "El cuerpo es como una caja. Sus caras: "}, phrase{"face", "cara"}},
}

func shapePartsAloud(k kit, asked task.Task) []string {
	t := asked.(task.ShapeParts)
	said := partsSaid[t.Part]
	n := max(t.Figure.Sides(), t.Figure.Faces())
	return []string{k.say(said.way) + strings.TrimSpace(k.things(said.one, n, 0)), t.Prompt(k.lang)}
}
