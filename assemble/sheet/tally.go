package sheet

import (
	"strings"

	"evenhand/standards/task"
)

// Sizes of tally marks in millimetres.
const (
	tallyRow   = 12.0
	tallyTall  = 7.0
	tallyPitch = 2.6
	bundleGap  = 5.0
)

// tallyChart draws a row of marks for each sort, in bundles of five. A chart to be made stands
// below the things to sort.
func tallyChart(k kit, t task.Data) drawing {
	chart := k.ruled(t, tallyRow, tallyWidth(10)+2*namesGap, func(i int) drawing {
		n := t.Counts[i]
		if !k.made(t) {
			n = 0
		}
		return tallies(n)
	})
	if t.Ask != task.DrawIt {
		return chart
	}
	return k.besideSource(thingsToSort(k, t), chart)
}

func tallyWidth(n int) float64 { return float64((n+4)/5) * (3*tallyPitch + bundleGap) }

// tallies are so many marks, every fifth across the four before it.
func tallies(n int) drawing {
	return drawing{w: tallyWidth(n), h: tallyTall, axis: tallyTall / 2, paint: func(c canvas, at point) {
		for i := range n {
			bundle := at.x + 1.5 + float64(i/5)*(3*tallyPitch+bundleGap)
			if i%5 == 4 {
				c.line(point{bundle - 1.5, at.y + tallyTall - 1}, point{bundle + 3*tallyPitch + 1.5, at.y + 1}, style{line: plain})
				continue
			}
			x := bundle + tallyPitch*float64(i%5)
			c.line(point{x, at.y}, point{x, at.y + tallyTall}, style{line: plain})
		}
	}}
}

// marksHeard are marks as they are heard: bundles of five and single marks.
func marksHeard(k kit, n int) string {
	var list []string
	for range n / 5 {
		list = append(list, k.say(bundleSaid))
	}
	for range n % 5 {
		list = append(list, k.say(markTallied))
	}
	return strings.Join(list, ", ") + "."
}

var drawTallies = phrase{"Sort the shapes. Make a mark in the chart for each one.", "Clasifica las figuras. Haz en la tabla una marca por cada una."}

// tallyAloud tells the marks; of a chart to be made, the things as they lie.
func tallyAloud(k kit, asked task.Task) []string {
	if t := asked.(task.Data); t.Ask == task.DrawIt {
		return thingsAloud(k, asked)
	}
	return dataAloud(tallyName, marksHeard)(k, asked)
}
