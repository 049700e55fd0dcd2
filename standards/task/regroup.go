package task

import "strings"

// DigitSum is the sum of the decimal digits of n, which is not negative.
func DigitSum(n int) int {
	sum := 0
	for ; n > 0; n /= 10 {
		sum += n % 10
	}
	return sum
}

// AdditionRegroups counts the regroupings in adding the addends in columns:
// every ten ones made into a ten, every ten tens into a hundred, and so on.
// Carrying two counts as two.
//
// It uses the digit-sum identity of Legendre and Kummer, (Σ s(aᵢ) − s(Σ aᵢ)) / 9,
// so no column is ever walked. Addends are not negative.
func AdditionRegroups(addends ...int) int {
	sum, digits := 0, 0
	for _, a := range addends {
		sum += a
		digits += DigitSum(a)
	}
	return (digits - DigitSum(sum)) / 9
}

// SubtractionRegroups counts the regroupings in a − b in columns: every ten
// taken apart into ones, every hundred into tens. It is the number of
// regroupings in adding the difference to b. It needs 0 ≤ b ≤ a.
func SubtractionRegroups(a, b int) int { return AdditionRegroups(b, a-b) }

// places names the columns from the right.
var places = []string{"ones", "tens", "hundreds", "thousands"}

// regroupPlaces adds the names of the columns that regroup in x + y to the set.
func regroupPlaces(set *[4]bool, x, y int) {
	carry := 0
	for i := range set {
		carry = (x%10 + y%10 + carry) / 10
		set[i] = set[i] || carry > 0
		x, y = x/10, y/10
	}
}

func placeNames(set [4]bool) string {
	var names []string
	for i, in := range set {
		if in {
			names = append(names, places[i])
		}
	}
	if names == nil {
		return "none"
	}
	return strings.Join(names, "+")
}

// zeroCrossed says whether a − b in columns borrows from a place whose digit in a is 0, so
// that the borrow goes on to the next place.
func zeroCrossed(a, b int) bool {
	borrow := false
	for ; a > 0; a, b = a/10, b/10 {
		digit := a % 10
		if borrow && digit == 0 {
			return true
		}
		need := b % 10
		if borrow {
			need++
		}
		borrow = digit < need
	}
	return false
}

func digitCount(n int) int {
	count := 1
	for ; n >= 10; n /= 10 {
		count++
	}
	return count
}
