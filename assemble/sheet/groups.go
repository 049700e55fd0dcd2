package sheet

import "evenhand/standards/task"

// dotGroups draws two groups of dots, a box to mark under each, and a box between for
// groups of the same size. Such groups are drawn so that the right one takes more room.
func dotGroups(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Groups)
	if !ok {
		return drawing{}, false
	}
	leftDots, rightDots := field(scattered(t.Left, t.String()+" left")), field(scattered(t.Right, t.String()+" right"))
	if t.Left == t.Right {
		leftDots = within(fieldWidth, fieldHeight, rings(t.Left, 4))
	}
	leftDots, rightDots = framed(leftDots), framed(rightDots)
	box := func(name string) drawing { return k.markBox(t.Key() == name) }
	same := k.text(task.AnswerIn(asked, "same", k.lang))
	abreast := row(5, centred(3, leftDots, box("left")), centred(3, within(same.w, fieldHeight, same), box("same")), centred(3, rightDots, box("right")))
	if abreast.w <= k.width {
		return abreast, true
	}
	// In large print the middle box stands between the two others, its word below.
	fields := row(5, leftDots, rightDots)
	apart := (fields.w - leftDots.w - 2*placeWidth) / 2
	boxes := row(apart, box("left"), box("same"), box("right"))
	return centred(3, fields, boxes, same), true
}

// within sets a drawing in the middle of a room.
func within(w, h float64, d drawing) drawing {
	return drawing{w: w, h: h, axis: h / 2, paint: func(c canvas, at point) {
		d.paint(c, point{at.x + (w-d.w)/2, at.y + (h-d.h)/2})
	}}
}

// framed puts a thin line around a drawing.
func framed(d drawing) drawing {
	inside := d.paint
	d.paint = func(c canvas, at point) {
		c.rect(at, d.w, d.h, style{line: thin})
		inside(c, at)
	}
	return d
}

var fewerDots = phrase{
	"Mark the group with fewer dots, or the middle box if they are the same.",
	"Marca el grupo con menos puntos, o el cuadro del medio si son iguales."}

func groupsDirection(asked task.Task) (phrase, bool) {
	t, ok := asked.(task.Groups)
	return fewerDots, ok && t.Fewer
}

var (
	leftSaid  = phrase{"Left:", "A la izquierda:"}
	rightSaid = phrase{"Right:", "A la derecha:"}
)

func groupsAloud(k kit, asked task.Task) []string {
	t := asked.(task.Groups)
	return []string{t.Prompt(k.lang), k.say(leftSaid), k.things(dotSaid, t.Left, 0), k.say(rightSaid), k.things(dotSaid, t.Right, 0)}
}
