package sheet

import (
	"fmt"

	"evenhand/standards/task"
)

// coinDiameters are the coins of the United States in millimetres, by their worth in
// cents (the Mint's published specifications, from memory): a dime is smaller than a
// nickel, and pupils must not go by size.
var coinDiameters = map[int]float64{50: 30.61, 25: 24.26, 10: 17.91, 5: 21.21, 1: 19.05}

// coins draws coins in their true size with what they are worth, and a box for the cents.
func coins(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Coins)
	if !ok {
		return drawing{}, false
	}
	var all []drawing
	for _, worth := range t.List() {
		all = append(all, k.coin(worth))
	}
	answer := row(k.gap(), k.answerBox(3, t.Key()), k.text("¢"))
	return flow(k.width, 3, 3, append(all, answer)...), true
}

func (k kit) coin(worth int) drawing {
	radius := coinDiameters[worth] / 2
	print := k.print(fmt.Sprintf("%d¢", worth), lettering{size: .8 * k.size})
	return drawing{2 * radius, 2 * radius, radius, func(c canvas, at point) {
		c.circle(point{at.x + radius, at.y + radius}, radius, style{line: plain})
		print.paint(c, point{at.x + radius - print.w/2, at.y + radius - print.axis})
	}}
}
