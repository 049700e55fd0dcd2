package sheet

import "evenhand/standards"

// blankFace gives a time and a clock face to draw its hands on.
func blankFace(k kit, task standards.Task) (drawing, bool) {
	t, ok := task.(standards.Clock)
	if !ok || t.Verb != standards.Draw {
		return drawing{}, false
	}
	var hands *standards.Time
	if k.key {
		hands = &t.Time
	}
	return centred(3, k.bold(t.Time.String()), k.dial(dialRadius, hands)), true
}
