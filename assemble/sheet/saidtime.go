package sheet

import "evenhand/standards"

// saidFace gives a time in words and a clock face to draw its hands on.
func saidFace(k kit, task standards.Task) (drawing, bool) {
	t, ok := task.(standards.Clock)
	if !ok || t.Verb != standards.Draw {
		return drawing{}, false
	}
	return k.faceToDraw(t.Time.Words(k.lang), t.Time), true
}

// saidTime gives a time in words, to be written in digits.
func saidTime(k kit, task standards.Task) (drawing, bool) {
	t, ok := task.(standards.Clock)
	if !ok || t.Verb != standards.Read {
		return drawing{}, false
	}
	said := t.Time
	said.Half = "" // told beside the boxes
	return stack(3, k.bold(said.Words(k.lang)), k.digitalTime(t.Time)), true
}
