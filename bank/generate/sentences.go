package generate

import "evenhand/standards/task"

// sums are the sums of k addends from low to high, the result asked for.
func sums(k, low, high int) space {
	return gather(func(addends []int) task.Task {
		return valid(task.NewAddition(k, addends...))
	}, low, high, k)
}

// sumsOfOnes are a two-digit number and 1 to 9.
func sumsOfOnes() space {
	return product(func(c []int) task.Task {
		return valid(task.NewAddition(2, c[0]+10, c[1]+1))
	}, 90, 9)
}

// differences are a − b with low ≤ b ≤ a ≤ high, the result asked for.
func differences(low, high int) space {
	return gather(func(n []int) task.Task {
		return valid(task.NewSubtraction(2, n[0], n[1]))
	}, low, high, 2)
}

// differencesOfTens are a − b for tens from 10 to 90.
func differencesOfTens() space {
	return gather(func(n []int) task.Task {
		return valid(task.NewSubtraction(2, 10*n[0], 10*n[1]))
	}, 1, 9, 2)
}

// differencesPast1000 are a − b for a from 1001 to 2000 and b of three digits.
func differencesPast1000() space {
	return product(func(c []int) task.Task {
		return valid(task.NewSubtraction(2, c[0]+1001, c[1]+100))
	}, 1000, 900)
}

// partners are a whole and two parts of at least 1, either part asked for:
// 6 + ? = 10 and ? + 4 = 10.
func partners(whole int) space {
	return product(func(c []int) task.Task {
		part := c[0] + 1
		return valid(task.NewAddition(c[1], part, whole-part))
	}, whole-1, 2)
}

// unknowns are the sums and differences of two numbers in which one of the two is
// asked for, 8 + ? = 11 or ? - 3 = 8. Both parts of the whole are at least 1, the
// whole is at most most.
func unknowns(most int) space {
	var all []space
	for blank := range 2 {
		all = append(all, choose(func(set []int) task.Task {
			whole, part := set[0]+1, set[1]+1
			return valid(task.NewAddition(blank, whole-part, part))
		}, most, 2))
		all = append(all, choose(func(set []int) task.Task {
			whole, part := set[0]+1, set[1]+1
			return valid(task.NewSubtraction(blank, whole, part))
		}, most, 2))
	}
	return join(all...)
}

// plusMinus are three numbers up to most, multiples of grain, with a plus and a minus or
// with two minuses; no value on the way is below 0 or above most.
func plusMinus(grain, most int) space {
	signs := [][3]int{{1, 1, -1}, {1, -1, 1}, {1, -1, -1}}
	return product(func(c []int) task.Task {
		sign, value := signs[c[0]], 0
		s := task.Sentence{N: 3, Blank: 3}
		for i := range s.N {
			s.Terms[i], s.Minus[i] = grain*(c[1+i]+1), sign[i] < 0
			value += sign[i] * s.Terms[i]
			if value < 0 || value > most {
				return nil
			}
		}
		return s
	}, len(signs), most/grain, most/grain, most/grain)
}

// valid is the sentence, or an empty place where the numbers make none.
func valid(s task.Sentence, err error) task.Task {
	if err != nil {
		return nil
	}
	return s
}
