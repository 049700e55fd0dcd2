package task

import "slices"

// Traits of a number sentence are those of the complete sentence, the unknown
// filled in, worked from left to right in columns.
func (s Sentence) Traits() Traits {
	var ts Traits
	operands, result := s.Operands(), s.Result()
	s.regroupTraits(&ts)
	crosses, reaches := s.aroundHundred()
	ts.setFlag(Crosses100, crosses)
	ts.setFlag(Reaches100, reaches)
	ts.setNumber(Digits, digitCount(slices.Max(operands)))
	ts.setNumber(Largest, max(result, slices.Max(operands)))
	ts[Unknown] = s.unknown()
	if s.N == 2 {
		ts.setNumber(CountSteps, s.countSteps())
	}
	if s.IsAddition() {
		s.additionTraits(&ts)
	}
	return ts
}

// aroundHundred says whether a hundred is crossed, and whether it is reached. A sum crosses it when
// every addend is below 100 and the sum above; a difference when what is taken from is above 100
// and what is left below. With more signs than one, each step is looked at.
func (s Sentence) aroundHundred() (crosses, reaches bool) {
	if s.IsAddition() {
		return slices.Max(s.Operands()) < 100 && s.Result() > 100, s.Result() == 100
	}
	before := s.Terms[0]
	for i := 1; i < s.N; i++ {
		after := before + s.sign(i)*s.Terms[i]
		if s.Minus[i] {
			crosses = crosses || before > 100 && after < 100
			reaches = reaches || before == 100
		} else {
			crosses = crosses || max(before, s.Terms[i]) < 100 && after > 100
		}
		reaches = reaches || after == 100
		before = after
	}
	return crosses, reaches
}

// countSteps are those of the fact family of two numbers.
func (s Sentence) countSteps() int {
	if s.Minus[1] {
		return countSteps(s.Terms[1], s.Result())
	}
	return countSteps(s.Terms[0], s.Terms[1])
}

func (s Sentence) regroupTraits(ts *Traits) {
	var columns [4]bool
	regroups, sum, zero := 0, s.Terms[0], false
	for i := 1; i < s.N; i++ {
		n := s.Terms[i]
		if s.Minus[i] {
			regroups += SubtractionRegroups(sum, n)
			regroupPlaces(&columns, sum-n, n)
			zero = zero || zeroCrossed(sum, n)
			sum -= n
		} else {
			regroups += AdditionRegroups(sum, n)
			regroupPlaces(&columns, sum, n)
			sum += n
		}
	}
	ts.setNumber(Regroups, regroups)
	ts[RegroupPlaces] = placeNames(columns)
	if !s.IsAddition() {
		ts.setFlag(ZeroCrossed, zero)
	}
}

func (s Sentence) additionTraits(ts *Traits) {
	ts.setNumber(Addends, s.N)
	ten := false
	for i := range s.N {
		for j := range i {
			ten = ten || s.Terms[i]%10+s.Terms[j]%10 == 10
		}
	}
	ts.setFlag(MakesTen, ten)
	if s.N == 2 {
		gap := s.Terms[0] - s.Terms[1]
		ts.setFlag(Doubles, gap == 0)
		ts.setFlag(NearDoubles, gap == 1 || gap == -1)
	}
}

// unknown is the part asked for, in the words of Table 1 of the standards.
func (s Sentence) unknown() string {
	switch s.Blank {
	case s.N:
		return "result"
	case 0:
		return "start"
	}
	return "change"
}

// Codes of a number sentence follow from its numbers alone: a sum past 100 is
// never a grade-1 standard. The limits are those of the Common Core State
// Standards for Mathematics (2010).
func (s Sentence) Codes() []Code {
	switch size := s.Size(); {
	case size > 1000:
		return nil
	case s.IsExpanded():
		return []Code{"2.NBT.A.3"}
	case s.Blank != s.N:
		return s.unknownCodes(size)
	case s.N > 2 && s.IsAddition():
		return s.severalCodes(size)
	case s.N > 2:
		return largerCodes(size)
	case s.IsAddition():
		return s.sumCodes(size)
	case s.IsTens() && size > 20:
		return []Code{"1.NBT.C.6"}
	case s.IsTens():
		return append([]Code{"1.NBT.C.6"}, sizeCodes(size)...)
	default:
		return sizeCodes(size)
	}
}

// unknownCodes: the partner of 1 to 9 that makes 10, ten and some ones, then by size.
func (s Sentence) unknownCodes(size int) []Code {
	small, large := min(s.Terms[0], s.Terms[1]), max(s.Terms[0], s.Terms[1])
	switch pair := s.N == 2 && s.IsAddition() && small >= 1 && small <= 9; {
	case size == 10 && pair:
		return []Code{"K.OA.A.4", "1.OA.D.8"}
	case size <= 20 && pair && large == 10:
		return []Code{"K.NBT.A.1", "1.OA.D.8"}
	case size <= 20:
		return []Code{"1.OA.D.8"}
	case size <= 100:
		return []Code{"2.NBT.B.5"}
	}
	return []Code{"2.NBT.B.7"}
}

// severalCodes: three numbers to 20 are grade 1, by any order and by putting two of them
// together first; only sums of two-digit numbers are the standard about four of them.
func (s Sentence) severalCodes(size int) []Code {
	switch {
	case size <= 20 && s.N == 3:
		return []Code{"1.OA.B.3", "1.OA.C.6"}
	case size <= 20:
		return []Code{"1.OA.C.6"}
	case slices.Min(s.Operands()) >= 10 && slices.Max(s.Operands()) <= 99:
		return []Code{"2.NBT.B.6"}
	}
	return largerCodes(size)
}

func (s Sentence) sumCodes(size int) []Code {
	a, b := s.Terms[0], s.Terms[1]
	small, large := min(a, b), max(a, b)
	switch {
	case size <= 20 && large == 10 && small >= 1 && small <= 9:
		return append([]Code{"K.NBT.A.1"}, sizeCodes(size)...)
	case size <= 20:
		return sizeCodes(size)
	case size <= 100 && large < 100 && (small < 10 || a%10 == 0 || b%10 == 0):
		return []Code{"1.NBT.C.4"}
	}
	return sizeCodes(size)
}

// largerCodes are those of sizeCodes for more than two numbers, which kindergarten doesn't add.
func largerCodes(size int) []Code { return sizeCodes(max(size, 11)) }

// sizeCodes are the standards for adding and subtracting within a size.
func sizeCodes(size int) []Code {
	switch {
	case size <= 5:
		return []Code{"K.OA.A.5", "K.OA.A.2", "1.OA.C.6", "2.OA.B.2"}
	case size <= 10:
		return []Code{"K.OA.A.2", "1.OA.C.6", "2.OA.B.2"}
	case size <= 20:
		return []Code{"1.OA.C.6", "2.OA.B.2"}
	case size <= 100:
		return []Code{"2.NBT.B.5"}
	}
	return []Code{"2.NBT.B.7"}
}

// IsTens says that the sentence takes tens from tens, 10 to 90.
func (s Sentence) IsTens() bool {
	a, b := s.Terms[0], s.Terms[1]
	return s.Minus[1] && a%10 == 0 && b%10 == 0 && a >= 10 && a <= 90 && b >= 10
}
