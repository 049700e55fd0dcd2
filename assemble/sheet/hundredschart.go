package sheet

import (
	"fmt"
	"slices"
	"strconv"

	"evenhand/standards/task"
)

// Sizes of a cell of the hundreds chart in millimetres.
const (
	chartWidth  = 13.0 // at most
	chartHeight = 6.8
)

// hundredsChart is the numbers from 1 to 120 in rows of ten, the start in a frame, an end
// that is given in a ring, and the question below. On the key the numbers that the jumps land on are grey.
func hundredsChart(k kit, asked task.Task) (drawing, bool) {
	w, ok := wayOf(asked, task.HundredsChartEnd)
	if !ok {
		return drawing{}, false
	}
	below, ok := sentence(k, asked)
	if t, isWords := asked.(task.MoreLess); isWords {
		below = flow(k.width, 2*k.gap(), k.gap(), k.paragraph(k.prompt(t), lettering{size: k.size}), k.answerBox(3, t.Key()))
	}
	return stack(5, k.chart(w), below), ok
}

// chart is the table of numbers.
func (k kit) chart(w way) drawing {
	rows := float64(task.HundredsChartEnd / 10)
	d := drawing{w: 10 * k.chartCellWidth(), h: rows * chartHeight, axis: k.size / 2}
	d.paint = func(c canvas, at point) {
		stops := w.stops(true)
		for n := 1; n <= task.HundredsChartEnd; n++ {
			inside := hollow
			if k.key && slices.Contains(stops, n) {
				inside = pale
			}
			k.chartCell(c, k.chartPlace(at, n), n, style{line: thin, fill: inside})
		}
		heavy := style{line: 1.2}
		c.rect(k.chartPlace(at, w.start), k.chartCellWidth(), chartHeight, heavy)
		if w.endGiven {
			oval(c, k.chartPlace(at, w.end()), k.chartCellWidth(), chartHeight, heavy)
		}
	}
	return d
}

func (k kit) chartCell(c canvas, at point, n int, s style) {
	print := k.print(strconv.Itoa(n), lettering{size: 13 * pointSize})
	c.rect(at, k.chartCellWidth(), chartHeight, s)
	print.paint(c, point{at.x + (k.chartCellWidth()-print.w)/2, at.y + chartHeight/2 - print.axis})
}

// chartPlace is the corner of a number's cell.
func (k kit) chartPlace(at point, n int) point {
	return point{at.x + k.chartCellWidth()*float64((n-1)%10), at.y + chartHeight*float64((n-1)/10)}
}

// chartCellWidth is the width of a cell where the page has room for ten.
func (k kit) chartCellWidth() float64 { return min(chartWidth, k.width/10) }

var (
	toTheRing = phrase{
		"Start at the number in the frame. Jump to the number in the ring. Write the missing number.",
		"Empieza en el número enmarcado. Salta hasta el número del óvalo. Escribe el número que falta."}
	chartSaid = phrase{"A chart of the numbers from 1 to 120, with %d in a frame.", "Una tabla de los números del 1 al 120, con el %d enmarcado."}
)

func chartDirection(asked task.Task) (phrase, bool) { return toTheRing, endGiven(asked) }

func chartAloud(k kit, asked task.Task) []string {
	w, _ := wayOf(asked, task.HundredsChartEnd)
	return []string{k.questionAloud(asked), fmt.Sprintf(k.say(chartSaid), w.start)}
}
