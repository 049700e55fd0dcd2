package sheet

import "evenhand/standards/task"

// shape is a shape alone, and its names to choose from.
func shape(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.NameShape)
	if !ok {
		return drawing{}, false
	}
	return k.choosing(k.figure(t.Figure, figureRadius), asked), true
}

func shapeAloud(k kit, asked task.Task) []string {
	return k.choosingAloud(asked.(task.NameShape).Figure, asked)
}

// choosingAloud is a question about a shape, the shape and the answers that are offered.
func (k kit) choosingAloud(f task.Figure, asked task.Task) []string {
	return []string{asked.Prompt(k.lang), upper(f.Told(k.lang)) + ".", k.offersAloud(asked)}
}

// flatSolid is a shape alone, and the words flat and solid to choose from.
func flatSolid(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.FlatSolid)
	if !ok {
		return drawing{}, false
	}
	return k.choosing(k.figure(t.Figure, figureRadius), asked), true
}

func flatSolidAloud(k kit, asked task.Task) []string {
	return k.choosingAloud(asked.(task.FlatSolid).Figure, asked)
}
