package task

// What a number sentence can be worked with: the ways of working that teaching moves
// through, each with its look.

// NextTen splits the smaller of two addends so that its first part fills the larger up to
// the next ten: 8 + 5 is 8 + 2 + 3. ok is false where no ten is passed, or where the smaller
// addend has two digits.
func (s Sentence) NextTen() (first, rest int, ok bool) {
	if s.N != 2 || s.Blank != 2 || !s.IsAddition() || s.Result() > 100 {
		return 0, 0, false
	}
	larger, smaller := max(s.Terms[0], s.Terms[1]), min(s.Terms[0], s.Terms[1])
	first = 10 - larger%10
	return first, smaller - first, smaller <= 9 && larger%10 > 0 && smaller > first
}

// BreaksApart says that both of two addends have tens and ones to work by themselves:
// 47 + 36 is 40 + 30 and 7 + 6.
func (s Sentence) BreaksApart() bool {
	if s.N != 2 || s.Blank != 2 || !s.IsAddition() {
		return false
	}
	for _, n := range s.Operands() {
		if n < 11 || n > 99 || n%10 == 0 {
			return false
		}
	}
	return true
}

// Jumps are the start and the signed length of the way on a number line or hundreds chart
// that finds the answer: from 47 on by 36, or from 83 back by 47. ok is false where the
// start is not known, there are more than two numbers, or the way leaves 0 to most.
func (s Sentence) Jumps(most int) (start, by int, ok bool) {
	ok = s.N == 2 && s.Blank != 0 && s.Terms[1] > 0 && s.Size() <= most
	return s.Terms[0], s.sign(1) * s.Terms[1], ok
}

// The ends of the number line and the hundreds chart.
const (
	NumberLineEnd    = 100
	HundredsChartEnd = 120
)

// strategyLooks are the looks of the ways of working that fit.
func (s Sentence) strategyLooks() []Look {
	var list []Look
	if _, _, ok := s.NextTen(); ok {
		list = append(list, LookMakeTen)
	}
	if s.BreaksApart() {
		list = append(list, LookBreakApart)
	}
	if _, _, ok := s.Jumps(NumberLineEnd); ok {
		list = append(list, LookNumberLine)
	}
	if start, by, ok := s.Jumps(HundredsChartEnd); ok && start >= 1 && start+by >= 1 {
		list = append(list, LookHundredsChart)
	}
	return list
}

// Jumps are those of a step of ten within the hundreds chart.
func (t MoreLess) Jumps() (start, by int, ok bool) {
	by = t.answer() - t.Number
	return t.Number, by, t.Step == 10 && min(t.Number, t.answer()) >= 1 && max(t.Number, t.answer()) <= HundredsChartEnd
}
