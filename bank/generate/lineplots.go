package generate

import "evenhand/standards/task"

// linePlots are plots of four and five lengths, in centimeters and inches, with every question. Where the scale begins
// and which length is asked about follows from the numbers.
func linePlots() space {
	asks := []task.PlotAsk{task.PlotHowMany, task.PlotLonger, task.PlotInAll, task.PlotMostOf, task.PlotDistance, task.PlotDraw}
	plots := func(n int) space {
		lengths := []int{len(asks), 2}
		for range n {
			lengths = append(lengths, 5)
		}
		return product(func(c []int) task.Task {
			t := task.LinePlot{Ask: asks[c[0]], Inches: c[1] == 1, N: n}
			weighed := 0
			for i, count := range c[2:] {
				t.Counts[i] = count
				weighed += (i + 2) * count
			}
			t.First = 2 + weighed%5
			switch t.Ask {
			case task.PlotHowMany:
				t.Length = t.First + weighed%n
			case task.PlotLonger:
				t.Length = t.First + weighed%(n-1)
			}
			if !t.Valid() {
				return nil
			}
			return t
		}, lengths...)
	}
	return join(plots(4), plots(5))
}
