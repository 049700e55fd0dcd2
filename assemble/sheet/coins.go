package sheet

import (
	"fmt"
	"strings"

	"evenhand/standards/task"
)

// coinDiameters are the coins of the United States in millimetres, by their worth in
// cents (the Mint's published specifications, from memory): a dime is smaller than a
// nickel, and pupils must not go by size.
var coinDiameters = map[int]float64{50: 30.61, 25: 24.26, 10: 17.91, 5: 21.21, 1: 19.05}

// coinGap is the space between coins in a row, in millimetres, and smallestCoins how far all may
// shrink together so that they lie in one line.
const (
	coinGap       = 2.0
	smallestCoins = .8
)

// coins draws coins, large and small in true proportion, in one line where they fit, with what
// they are worth, and below a box for the cents.
func coins(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Coins)
	if !ok {
		return drawing{}, false
	}
	line := k.coinRow(t.List(), 1)
	for share := .95; line.w > k.width && share >= smallestCoins; share -= .05 {
		line = k.coinRow(t.List(), share)
	}
	if line.w > k.width {
		half := (len(t.List()) + 1) / 2
		line = stack(coinGap, k.coinRow(t.List()[:half], 1), k.coinRow(t.List()[half:], 1))
	}
	return stack(3, line, row(k.gap(), k.answerBox(3, t.Key()), k.text("¢"))), true
}

// coinRow is coins side by side at a share of their true size.
func (k kit) coinRow(worths []int, share float64) drawing {
	all := make([]drawing, len(worths))
	for i, worth := range worths {
		all[i] = k.coin(worth, share)
	}
	return row(coinGap, all...)
}

func (k kit) coin(worth int, share float64) drawing {
	radius := share * coinDiameters[worth] / 2
	print := k.fitting(fmt.Sprintf("%d¢", worth), lettering{size: .8 * k.size}, 1.7*radius)
	return drawing{w: 2 * radius, h: 2 * radius, axis: radius, paint: func(c canvas, at point) {
		c.circle(point{at.x + radius, at.y + radius}, radius, style{line: plain})
		print.paint(c, point{at.x + radius - print.w/2, at.y + radius - print.axis})
	}}
}

var (
	countMoney = phrase{"Count the money. Write how many cents.", "Cuenta el dinero. Escribe cuántos centavos hay."}
	coinSaid   = phrase{"%d-cent coin", "moneda de %d centavos"}
)

func coinsAloud(k kit, asked task.Task) []string {
	var list []string
	for _, worth := range asked.(task.Coins).List() {
		list = append(list, fmt.Sprintf(k.say(coinSaid), worth))
	}
	return []string{k.say(countMoney), strings.Join(list, ", ") + "."}
}
