package generate

import "evenhand/standards/task"

// related are the differences within 20 as unknown addends: 8 + ? = 11, 11 - 8 = ?.
func related() space {
	return choose(func(set []int) task.Task {
		return task.Related{Whole: set[0] + 1, Part: set[1] + 1}
	}, 20, 2)
}

// side is two numbers added, or the second taken from the first.
func side(a, b int, minus bool) task.Side {
	return task.Side{Terms: [3]int{a, b}, Minus: [3]bool{1: minus}, N: 2}
}

// single is a number alone on its side.
func single(n int) task.Side { return task.Side{Terms: [3]int{n}, N: 1} }

// truths are sentences to judge, half of them true, of multiples of grain up to 20
// times grain: 8 - 1 = 7, 7 = 8 - 1 and 4 + 1 = 3 + 2. The false ones are wrong by one grain,
// too little or too much by turns, or, with operations on both sides, stop after the first
// number: 4 + 1 = 5 + 2.
func truths(grain int) space {
	return product(func(c []int) task.Task {
		a, b := c[0]+1, c[1]+1
		left := side(grain*a, grain*b, c[2] == 1)
		if left.Value() < grain || left.Value() > 20*grain {
			return nil
		}
		right, ok := otherSide(left.Value(), grain, c[3] == 1, c[4], (a+b)%2*2-1)
		if !ok {
			return nil
		}
		if c[4] == 1 {
			left, right = right, left
		}
		return task.TrueFalse{Left: left, Right: right}
	}, 20, 10, 2, 2, 6)
}

// otherSide is worth the value where the sentence is to be true. Form 0 and 1 is a
// number alone; the others add form − 1 from 1 to 4 grains.
func otherSide(value, grain int, right bool, form, wrongBy int) (task.Side, bool) {
	most, n := 20*grain, grain*(form-1)
	switch {
	case form < 2 && right:
		return single(value), true
	case form < 2:
		return single(value + grain*wrongBy), value+grain*wrongBy <= most
	case right:
		return side(value-n, n, false), value > n
	}
	return side(value, n, false), value+n <= most
}

// balances are sums on both sides within most: 8 + 3 = 3 + ? and 4 + 6 = 5 + ?. All
// numbers are multiples of grain; the two sides never show the same order, which would
// leave nothing to think about.
func balances(grain, most int) space {
	n := most / grain
	return product(func(c []int) task.Task {
		a, b, third := grain*(c[0]+1), grain*(c[1]+1), grain*(c[2]+1)
		if a+b > most || third >= a+b || third == a {
			return nil
		}
		return task.Balance{Left: side(a, b, false), Right: side(third, a+b-third, false), Blank: 3 * c[3]}
	}, n-1, n-1, n-1, 2)
}

// regrouped are three addends to 20 of which two are put together: 2 + 6 + 4 = 2 + ?.
func regrouped() space {
	return gather(func(n []int) task.Task {
		if n[0]+n[1]+n[2] > 20 {
			return nil
		}
		left := task.Side{Terms: [3]int{n[2], n[0], n[1]}, N: 3}
		return task.Balance{Left: left, Right: side(n[2], n[0]+n[1], false), Blank: 4}
	}, 1, 9, 3)
}
