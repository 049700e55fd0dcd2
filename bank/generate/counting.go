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

// linesToMark are the lines of markedLines with the number to mark.
func linesToMark() space {
	lines := markedLines()
	return space{lines.size, func(i int) task.Task { return task.LineMark{Line: lines.at(i).(task.MarkedLine)} }}
}
