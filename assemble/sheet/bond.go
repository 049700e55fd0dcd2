package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"evenhand/standards/task"
)

// bondRadius is half a ring of a number bond, in millimetres.
const bondRadius = 10.0

// bond draws the whole over its parts, joined by lines; the ring of an unknown is
// left empty.
func bond(k kit, asked task.Task) (drawing, bool) {
	whole, parts, ok := bondParts(asked)
	if !ok {
		return drawing{}, false
	}
	top := k.member(whole)
	rings := make([]drawing, len(parts))
	for i, part := range parts {
		rings[i] = k.member(part)
	}
	bottom := row(bondRadius, rings...)
	d := drawing{w: bottom.w, h: 5 * bondRadius, axis: bondRadius}
	d.paint = func(c canvas, at point) {
		head := point{at.x + d.w/2, at.y + bondRadius}
		for i := range parts {
			foot := point{at.x + bondRadius + 3*bondRadius*float64(i), at.y + 4*bondRadius}
			c.line(head, foot, style{line: plain})
		}
		top.paint(c, point{head.x - bondRadius, at.y})
		bottom.paint(c, point{at.x, at.y + 3*bondRadius})
	}
	return d, true
}

// member is one number of a bond.
type member struct {
	number string
	blank  bool
}

func (k kit) member(m member) drawing {
	if m.blank {
		return k.ring(bondRadius, m.number)
	}
	print := k.text(m.number)
	return drawing{w: 2 * bondRadius, h: 2 * bondRadius, axis: bondRadius, paint: func(c canvas, at point) {
		middle := point{at.x + bondRadius, at.y + bondRadius}
		c.circle(middle, bondRadius, style{line: plain, fill: white})
		print.paint(c, point{middle.x - print.w/2, middle.y - print.axis})
	}}
}

// bondParts are the whole and its parts: the sum and its addends, the number
// taken from and what it falls into, or a number and its hundreds, tens and ones.
func bondParts(asked task.Task) (whole member, parts []member, ok bool) {
	switch t := asked.(type) {
	case task.Sentence:
		return sentenceBond(t)
	case task.Expanded:
		for _, part := range strings.Split(t.Key(), " + ") {
			parts = append(parts, member{part, true})
		}
		return member{strconv.Itoa(t.Number), false}, parts, true
	}
	return whole, nil, false
}

func sentenceBond(s task.Sentence) (whole member, parts []member, ok bool) {
	var all []member
	for i, n := range s.Operands() {
		all = append(all, member{strconv.Itoa(n), i == s.Blank})
	}
	all = append(all, member{strconv.Itoa(s.Result()), s.Blank == s.N})
	last := len(all) - 1
	switch {
	case s.IsAddition():
		return all[last], all[:last], true
	case s.N == 2:
		return all[0], all[1:], true
	}
	return whole, nil, false
}

// What is said of a bond, which has no sign.
var (
	wholeSaid     = phrase{"The whole: %s.", "El todo: %s."}
	bondPartsSaid = phrase{"The parts: %s.", "Las partes: %s."}
)

func bondAloud(k kit, asked task.Task) []string {
	whole, parts, _ := bondParts(asked)
	said := func(m member) string {
		if m.blank {
			return k.say(blankSaid)
		}
		return m.number
	}
	var list []string
	for _, part := range parts {
		list = append(list, said(part))
	}
	return []string{fmt.Sprintf(k.say(wholeSaid), said(whole)), fmt.Sprintf(k.say(bondPartsSaid), strings.Join(list, ", "))}
}

var andSign = phrase{" and ", " y "}

func bondDirection(asked task.Task) (phrase, bool) {
	t, ok := asked.(task.Expanded)
	if !ok {
		return phrase{}, false
	}
	return partsOf(t), true
}

// partsOf names the places that a number falls into: "Break the number into tens and ones."
func partsOf(t task.Expanded) phrase {
	var en, es []string
	parts := strings.Split(t.Key(), " + ")
	for i, part := range parts {
		name := placeNames[len(part)-1]
		if en, es = append(en, name.en), append(es, name.es); i == len(parts)-2 {
			en[i] += andSign.en + placeNames[len(parts[i+1])-1].en
			es[i] += andSign.es + placeNames[len(parts[i+1])-1].es
			break
		}
	}
	return phrase{
		"Break the number into " + strings.Join(en, ", ") + ". Write how much each part is worth.",
		"Separa el número en " + strings.Join(es, ", ") + ". Escribe cuánto vale cada parte.",
	}
}
