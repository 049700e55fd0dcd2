package sheet

import "evenhand/standards/words"

// halvesOfDay is the part of the day, which a dial can't show, beside "a.m." and "p.m.", one
// of them to be circled; on the key it has its ring.
func (k kit) halvesOfDay(t words.Time) drawing {
	hint := k.print(t.DayHint(k.lang), lettering{size: .78 * k.size})
	return row(k.gap(), hint, k.toCircle("a.m.", t.Half == words.Morning), k.toCircle("p.m.", t.Half == words.Afternoon))
}

// toCircle is a word with room for a ring around it.
func (k kit) toCircle(s string, right bool) drawing {
	word := k.print(s, lettering{size: .9 * k.size})
	w, h := word.w+7, 1.15*word.h+2
	return drawing{w: w, h: h, axis: h / 2, paint: func(c canvas, at point) {
		if k.key && right {
			oval(c, at, w, h, style{line: thick})
		}
		word.paint(c, point{at.x + (w-word.w)/2, at.y + h/2 - word.axis})
	}}
}
