package generate

import "evenhand/standards/task"

// shapesApart are two shapes in each place to each other.
func shapesApart() space {
	shapes := []task.Form{"circle", "triangle", "square", "rectangle", "hexagon"}
	places := task.Where{}.Offers()
	return product(func(c []int) task.Task {
		if c[0] == c[1] {
			return nil
		}
		return task.Where{Shape: shapes[c[0]], Other: shapes[c[1]], Place: places[c[2]]}
	}, len(shapes), len(shapes), len(places))
}

// countedOut are 3 to 15 dots to color of 2 to 5 more.
func countedOut() space {
	return product(func(c []int) task.Task { return task.CountOut{Number: c[0] + 3, Of: c[0] + c[1] + 5} }, 13, 4)
}

// countedOneByOne are 3 to 15 dots to number, 4 to 10 that are moved, and 2 to 19 of which one more comes.
func countedOneByOne() space {
	asks := []task.CountAsk{task.NumberDots, task.DotsMoved, task.OneMoreDot}
	fewest, most := []int{3, 4, 2}, []int{15, 10, 19}
	return product(func(c []int) task.Task {
		dots := c[0] + 2
		if dots < fewest[c[1]] || dots > most[c[1]] {
			return nil
		}
		return task.OneByOne{Dots: dots, Asks: asks[c[1]]}
	}, 18, 3)
}

// picturesOfSums are sums and differences of 1 to 10, to write for a picture and to draw.
func picturesOfSums() space {
	return product(func(c []int) task.Task {
		a, b := c[0]+1, c[1]+1
		if a+b > 10 {
			return nil
		}
		t := task.PictureSum{First: a, Second: b, Draw: c[3] == 1}
		if c[2] == 1 {
			t.First, t.Minus = a+b, true
		}
		return t
	}, 9, 9, 2, 2)
}

// countedOn are 2 to 4 steps on from 2 to 18 and back to 1 or more, within 20.
func countedOn() space {
	return product(func(c []int) task.Task {
		t := task.CountOn{Start: c[0] + 2, Steps: c[1] + 2, Back: c[2] == 1}
		if t.Back && t.Start <= t.Steps || !t.Back && t.Start+t.Steps > 20 {
			return nil
		}
		return t
	}, 19, 3, 2)
}

// parityGroups are groups of 2 to 20 dots, odd or even.
func parityGroups() space {
	return product(func(c []int) task.Task { return task.OddEven{Number: c[0] + 2, Dots: true} }, 19)
}

// halves are even numbers to 20 as two equal addends.
func halvesTo20() space {
	return product(func(c []int) task.Task { return task.EqualAddends{Number: 2*c[0] + 2} }, 10)
}

// arraySums are arrays as sums of their rows.
func arraySums() space {
	return product(func(c []int) task.Task { return task.EqualAddends{Rows: c[0] + 2, Columns: c[1] + 2} }, 4, 4)
}

// billsAndCoins are up to three bills and up to four coins.
func billsAndCoins() space {
	return product(func(c []int) task.Task {
		t := task.Bills{Bills: [4]int(c[:4]), Coins: [5]int{0, c[4], c[5], c[6], c[7]}}
		bills, coins := c[0]+c[1]+c[2]+c[3], c[4]+c[5]+c[6]+c[7]
		if bills < 1 || bills > 3 || coins < 1 || coins > 4 {
			return nil
		}
		asked, err := task.Parse(t.String())
		if err != nil {
			return nil
		}
		return asked
	}, 2, 2, 3, 3, 3, 3, 3, 3)
}

// jumpsOnLines are the lines of markedLines with a jump of 2 to 8 steps, on or back, to the mark.
func jumpsOnLines() space {
	lines := markedLines()
	return product(func(c []int) task.Task {
		line := lines.at(c[0]).(task.MarkedLine)
		by := line.Step * (c[1] + 2)
		if c[2] == 1 {
			by = -by
		}
		t := task.LineMark{Line: line, Start: line.Number - by}
		if t.Start < line.Step || t.Start > line.To {
			return nil
		}
		return t
	}, lines.size, 7, 2)
}

// linesToMark are the lines of markedLines with the number to mark.
func linesToMark() space {
	lines := markedLines()
	return space{lines.size, func(i int) task.Task { return task.LineMark{Line: lines.at(i).(task.MarkedLine)} }}
}
