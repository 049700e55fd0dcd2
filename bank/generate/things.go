package generate

import "evenhand/standards/task"

// dotsToCount are 0 to 20 dots in rows, 1 to 10 scattered, and 5 to 20 in a circle.
func dotsToCount() space {
	return product(func(c []int) task.Task {
		if c[1] == 1 && (c[0] < 1 || c[0] > 10) || c[1] == 2 && c[0] < 5 {
			return nil
		}
		return task.HowMany{Number: c[0], Scattered: c[1] == 1, Circle: c[1] == 2}
	}, 21, 3)
}

// groups are two groups of 1 to 10 dots, with more and with fewer asked for.
func groups() space {
	return product(func(c []int) task.Task {
		return task.Groups{Left: c[0] + 1, Right: c[1] + 1, Fewer: c[2] == 1}
	}, 10, 10, 2)
}

// pairs are the numbers from low to high to take apart.
func pairs(low, high int) space {
	return product(func(c []int) task.Task { return task.Pairs{Whole: low + c[0]} }, high-low+1)
}

// arrays are equal rows, 2 by 2 to 5 by 5.
func arrays() space {
	return product(func(c []int) task.Task { return task.Array{Rows: c[0] + 2, Columns: c[1] + 2} }, 4, 4)
}

// coins are 2 to 8 coins worth up to a dollar, at most four of a kind.
func coins() space {
	return product(func(c []int) task.Task {
		t, count, worth := task.Coins{}, 0, 0
		for i, n := range c {
			t.Counts[i] = n
			count, worth = count+n, worth+n*task.CoinValues[i]
		}
		if count < 2 || count > 8 || worth > 100 {
			return nil
		}
		return t
	}, 3, 5, 5, 5, 5)
}

// numbersToWrite are the numbers from low to high, in digits or in words.
func numbersToWrite(low, high int, inWords bool) space {
	return product(func(c []int) task.Task {
		return task.WriteNumber{Number: low + c[0], InWords: inWords}
	}, high-low+1)
}

// parities are the numbers from 1 to most, odd or even.
func parities(most int) space {
	return product(func(c []int) task.Task { return task.OddEven{Number: c[0] + 1} }, most)
}
