package sheet

import (
	"fmt"
	"strings"

	"evenhand/standards/task"
)

// Sizes of a bill in millimetres: smaller than a real one, in its proportion of 6.14 to 2.61 inches (U.S. Currency
// Education Program, from memory).
const (
	billWidth  = 40.0
	billHeight = 17.0
)

// bills draws bills and coins with what they are worth, and below boxes for dollars and cents.
func bills(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Bills)
	if !ok {
		return drawing{}, false
	}
	var papers, coins []drawing
	for _, worth := range t.BillList() {
		papers = append(papers, k.bill(worth))
	}
	for _, worth := range t.CoinList() {
		coins = append(coins, k.coin(worth, 1))
	}
	fills := t.Fills()
	answer := row(k.gap(), k.text("$"), k.answerBox(2, fills[0]), k.text(k.say(andWord)), k.answerBox(2, fills[1]), k.text("¢"))
	return stack(3, flow(k.width, coinGap, coinGap, papers...), flow(k.width, coinGap, coinGap, coins...), answer), true
}

func (k kit) bill(worth int) drawing {
	print := k.text(fmt.Sprintf("$%d", worth))
	return drawing{w: billWidth, h: billHeight, axis: billHeight / 2, paint: func(c canvas, at point) {
		c.rect(at, billWidth, billHeight, style{line: thin})
		c.rect(point{at.x + 1.5, at.y + 1.5}, billWidth-3, billHeight-3, style{line: thin})
		print.paint(c, point{at.x + (billWidth-print.w)/2, at.y + billHeight/2 - print.axis})
	}}
}

var billSaid = phrase{"%d-dollar bill", "billete de %d dólares"}

func billsAloud(k kit, asked task.Task) []string {
	t := asked.(task.Bills)
	var list []string
	for _, worth := range t.BillList() {
		list = append(list, strings.Replace(fmt.Sprintf(k.say(billSaid), worth), "1 dólares", "1 dólar", 1))
	}
	for _, worth := range t.CoinList() {
		list = append(list, fmt.Sprintf(k.say(coinSaid), worth))
	}
	return []string{k.say(countBills), strings.Join(list, ", ") + "."}
}

var countBills = phrase{"Count the money. Write how many dollars and how many cents.", "Cuenta el dinero. Escribe cuántos dólares y cuántos centavos hay."}
