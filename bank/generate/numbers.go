package generate

import "evenhand/standards/task"

// placeValues are the numbers of 2 or 3 digits, taken apart and put together.
func placeValues(places int) space {
	low := map[int]int{2: 10, 3: 100}[places]
	return product(func(c []int) task.Task {
		return task.PlaceValue{Number: low + c[0], Places: places, Compose: c[1] == 1}
	}, 9*low, 2)
}

// reasons are two-digit numbers and tens, or three-digit numbers and hundreds, added and taken away without regrouping;
// of differences of tens those of tens from tens and of ten less.
func reasons(unit int) space {
	return product(func(c []int) task.Task {
		t := task.Reason{Start: unit + c[0], Step: unit * (c[1] + 1), Minus: c[2] == 1}
		result := t.Start/unit + c[1] + 1
		if t.Minus {
			result = t.Start/unit - c[1] - 1
		}
		if result < 1 || result > 9 || unit == 10 && t.Minus && t.Step > 10 && t.Start%10 > 0 {
			return nil
		}
		return t
	}, 9*unit, 8, 2)
}

// takenApart are the numbers from 11 to 999 as sums of their parts. Numbers of one
// part, such as 300, make no item.
func takenApart() space {
	return product(func(c []int) task.Task {
		e := task.Expanded{Number: c[0] + 11}
		if len(digitParts(e.Number)) < 2 {
			return nil
		}
		return e
	}, 989)
}

// putTogether are the sums 100 + 40 + 2 of hundreds, tens and ones, none of them zero.
func putTogether() space {
	return product(func(c []int) task.Task {
		return valid(task.NewAddition(3, 100*(c[0]+1), 10*(c[1]+1), c[2]+1))
	}, 9, 9, 9)
}

// digitParts are what the digits of n other than 0 are worth.
func digitParts(n int) []int {
	var parts []int
	for place := 1; place <= n; place *= 10 {
		if part := n / place % 10 * place; part > 0 {
			parts = append(parts, part)
		}
	}
	return parts
}

// comparisons are all pairs of numbers from low to high, in both orders.
func comparisons(low, high int) space {
	n := high - low + 1
	return product(func(c []int) task.Task {
		return task.Compare{A: low + c[0], B: low + c[1]}
	}, n, n)
}

// moreOrLess are the numbers from low to high with each step more and less.
func moreOrLess(low, high int, steps ...int) space {
	return product(func(c []int) task.Task {
		return task.MoreLess{Number: low + c[0], Step: steps[c[1]], Less: c[2] == 1}
	}, high-low+1, len(steps), 2)
}

// rowLength is how many numbers a row of counting shows.
const rowLength = 5

// rows are five numbers in equal steps from 0 to most, counting up and back. The
// first number is shown and one to three of the others are left out. The smallest
// number is a multiple of grain.
func rows(step, grain, most int) space {
	starts := (most-(rowLength-1)*step)/grain + 1
	patterns := 1<<(rowLength-1) - 2 // any of the last four left out, but not none and not all
	return product(func(c []int) task.Task {
		row := task.Sequence{First: grain * c[0], Step: step, N: rowLength, Blanks: uint16(c[1]+1) << 1}
		if c[2] == 1 {
			row.First, row.Step = row.First+(rowLength-1)*step, -step
		}
		return row
	}, starts, patterns, 2)
}
