package sheet

import "evenhand/standards/task"

// saidFace gives a time in words and a clock face to draw its hands on.
func saidFace(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Clock)
	if !ok || t.Verb != task.Draw {
		return drawing{}, false
	}
	return k.faceToDraw(t.Time.Words(k.lang), t.Time), true
}

// saidTime gives a time in words, to be written in digits.
func saidTime(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Clock)
	if !ok || t.Verb != task.Read {
		return drawing{}, false
	}
	said := t.Time
	said.Half = "" // told beside the boxes
	return stack(3, k.bold(said.Words(k.lang)), k.digitalTime(t.Time)), true
}

var writeSaid = phrase{"Read the time. Write it in digits.", "Lee la hora. Escríbela con números."}

func saidTimeDirection(asked task.Task) (phrase, bool) { return halfDirection(asked, writeSaid) }
