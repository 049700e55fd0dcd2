package task

import "strconv"

// The wrong ways to work columns. Each gives the answer as a pupil would
// write it.

// columnSums are the sums of the ones, the tens, ... of the numbers, from the right.
func columnSums(numbers []int) []int {
	var sums []int
	for place := 1; ; place *= 10 {
		sum, more := 0, false
		for _, n := range numbers {
			sum += n / place % 10
			more = more || n >= place
		}
		if !more && place > 1 {
			return sums
		}
		sums = append(sums, sum)
	}
}

// columnsDropped writes the ones digit of each column's sum and forgets the ten;
// the leftmost column is written whole.
func columnsDropped(numbers []int) string {
	sums := columnSums(numbers)
	value, place := 0, 1
	for i, sum := range sums {
		if i < len(sums)-1 {
			sum %= 10
		}
		value += sum * place
		place *= 10
	}
	return strconv.Itoa(value)
}

// columnsWrittenOut writes every column's sum side by side.
func columnsWrittenOut(numbers []int) string {
	text := ""
	for _, sum := range columnSums(numbers) {
		text = strconv.Itoa(sum) + text
	}
	return text
}

// columnsSwapped writes the tens digit of a column's sum and carries its ones
// digit; the leftmost column is written whole.
func columnsSwapped(numbers []int) string {
	sums := columnSums(numbers)
	text, carry := "", 0
	for i, sum := range sums {
		sum += carry
		carry = 0
		if sum >= 10 && i < len(sums)-1 {
			sum, carry = sum/10, sum%10
		}
		text = strconv.Itoa(sum) + text
	}
	return text
}

// columnwise works each column of a − b by itself.
func columnwise(a, b int, column func(top, bottom int) int) string {
	value := 0
	for place := 1; place <= a; place *= 10 {
		value += place * column(a/place%10, b/place%10)
	}
	return strconv.Itoa(value)
}

func largerMinusSmaller(top, bottom int) int { return max(top-bottom, bottom-top) }

func unpaid(top, bottom int) int { return (top - bottom + 10) % 10 }

func zeroIfSmaller(top, bottom int) int { return max(top-bottom, 0) }

// buggyBorrow works a − b with a wrong borrow at a zero: stopping there with a
// nine (stop), or jumping over it to the next place. Empty when no zero is borrowed
// from.
func buggyBorrow(a, b int, stop bool) string {
	if !zeroCrossed(a, b) {
		return ""
	}
	var top [5]int
	for i, n := 0, a; n > 0; i, n = i+1, n/10 {
		top[i] = n % 10
	}
	value, place := 0, 1
	for i := range digitCount(a) {
		bottom := b / place % 10
		if top[i] < bottom {
			top[i] += 10
			if !borrowAt(&top, i+1, stop) {
				return ""
			}
		}
		value += place * (top[i] - bottom)
		place *= 10
	}
	return strconv.Itoa(value)
}

// borrowAt takes one from place i, wrongly where there is a zero; false when
// there is nothing to take from.
func borrowAt(top *[5]int, i int, stop bool) bool {
	for ; i < len(top); i++ {
		if top[i] > 0 {
			top[i]--
			return true
		}
		if stop {
			top[i] = 9
			return true
		}
	}
	return false
}

// alignedLeft works a sum (sign 1) or difference (sign -1) with the shorter number under the
// left end of the longer one: 47 + 5 as 47 + 50. Empty where both are as long, or where more
// would be taken away than there is.
func alignedLeft(longer, shorter, sign int) string {
	shift := digitCount(longer) - digitCount(shorter)
	if shift == 0 || shorter == 0 {
		return ""
	}
	for range shift {
		shorter *= 10
	}
	if longer+sign*shorter < 0 {
		return ""
	}
	return strconv.Itoa(longer + sign*shorter)
}

// withoutZero adds tens as if they were ones, 47 + 30 as 47 + 3; empty where no number is tens
// alone beside one that is not.
func withoutZero(a, b int) string {
	if a%10 == 0 {
		a, b = b, a
	}
	if b < 10 || b > 90 || b%10 != 0 || a%10 == 0 {
		return ""
	}
	return strconv.Itoa(a + b/10)
}
