package task

import "slices"

// Traits of a number sentence are those of the complete sentence, the unknown
// filled in, worked from left to right in columns.
func (s Sentence) Traits() Traits {
	var ts Traits
	operands, result := s.Operands(), s.Result()
	s.regroupTraits(&ts)
	low, high := slices.Min(operands) < 100, slices.Max(operands) > 100
	ts.setFlag(Crosses100, low && result > 100 || high && result < 100)
	ts.setFlag(Reaches100, result == 100 || s.Terms[0] == 100 && s.Minus[1])
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
	size := max(s.Result(), slices.Max(s.Operands()))
	switch {
	case size > 1000:
		return nil
	case s.IsExpanded():
		return []Code{"2.NBT.A.3"}
	case s.Blank != s.N:
		return s.unknownCodes(size)
	case s.N > 2 && s.IsAddition():
		return s.severalCodes(size)
	case s.N == 2 && s.IsAddition():
		return s.sumCodes(size)
	case s.N == 2 && s.IsTens():
		return []Code{"1.NBT.C.6"}
	}
	return sizeCodes(size)
}

func (s Sentence) unknownCodes(size int) []Code {
	switch {
	case size == 10 && s.N == 2 && s.IsAddition() && !s.ResultFirst:
		return []Code{"K.OA.A.4", "1.OA.D.8"}
	case size <= 20:
		return []Code{"1.OA.D.8"}
	case size <= 100:
		return []Code{"2.NBT.B.5"}
	}
	return []Code{"2.NBT.B.7"}
}

func (s Sentence) severalCodes(size int) []Code {
	switch {
	case size <= 20 && s.N == 3:
		return []Code{"1.OA.A.2"}
	case slices.Max(s.Operands()) <= 99:
		return []Code{"2.NBT.B.6"}
	}
	return []Code{"2.NBT.B.7"}
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
