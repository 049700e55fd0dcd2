package sheet

import "math"

// ovalCorners is how many straight pieces an oval is drawn in.
const ovalCorners = 48

// oval draws an ellipse in a rectangle: a ring round a word or a number.
func oval(c canvas, at point, w, h float64, s style) {
	corners := make([]point, ovalCorners)
	for i := range corners {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / ovalCorners)
		corners[i] = point{at.x + w/2*(1+cos), at.y + h/2*(1+sin)}
	}
	c.polygon(corners, s)
}
