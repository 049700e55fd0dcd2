package sheet

import "evenhand/standards/task"

// array draws dots in equal rows and a box for how many there are in all.
func array(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Array)
	if !ok {
		return drawing{}, false
	}
	return row(4*k.gap(), rings(t.Rows*t.Columns, t.Columns), k.answerBox(2, t.Key())), true
}

var addRows = phrase{"Add the rows. Write how many dots in all.", "Suma las filas. Escribe cuántos puntos hay en total."}

func arrayAloud(k kit, asked task.Task) []string {
	t := asked.(task.Array)
	return []string{k.say(addRows), k.things(dotSaid, t.Rows*t.Columns, t.Columns)}
}
