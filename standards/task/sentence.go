package task

import (
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Sentence is a number sentence of two to four numbers added or subtracted from
// left to right, with one place to fill in: "47 + 36 = ?", "47 + ? = 83",
// "83 - 47 = ?", "83 = 47 + ?", "12 + 5 - 3 = ?". No number on the way is negative.
type Sentence struct {
	Terms       [4]int  // the numbers, the one to fill in included
	Minus       [4]bool // term i is taken away; never term 0
	N           int     // how many numbers, 2 to 4
	Blank       int     // which term is to fill in; N for the result
	ResultFirst bool    // the result stands on the left of the equal sign
}

// MaxNumber is the largest number a task may hold.
const MaxNumber = 9999

// NewAddition is a sum of two to four addends with the unknown at place blank, len(addends) for
// the result.
func NewAddition(blank int, addends ...int) (Sentence, error) {
	s := Sentence{N: len(addends), Blank: blank}
	if s.N < 2 || s.N > 4 {
		return s, words.Errorf("a number sentence has 2 to 4 numbers, not %d", s.N)
	}
	copy(s.Terms[:], addends)
	return s, s.check()
}

// NewSubtraction is a − b with the unknown at place blank: 0 start, 1 change, 2 result.
func NewSubtraction(blank, a, b int) (Sentence, error) {
	s := Sentence{Terms: [4]int{a, b}, Minus: [4]bool{1: true}, N: 2, Blank: blank}
	return s, s.check()
}

func (s Sentence) check() error {
	sum := 0
	for i, n := range s.Operands() {
		if n < 0 || n > MaxNumber {
			return words.Errorf("%d is outside 0 to %d", n, MaxNumber)
		}
		if sum += s.sign(i) * n; sum < 0 {
			return words.Errorf("%s is less than 0; quizzes for these grades stay with 0 and more", s.left(-1))
		}
	}
	if sum > MaxNumber {
		return words.Errorf("%s is more than %d", s.left(-1), MaxNumber)
	}
	return nil
}

// Operands are the numbers before the equal sign, the unknown included.
func (s Sentence) Operands() []int { return s.Terms[:s.N] }

// Result is the value of the sentence.
func (s Sentence) Result() int {
	sum := 0
	for i, n := range s.Operands() {
		sum += s.sign(i) * n
	}
	return sum
}

// Size is the largest number of the sentence, the answer and the values on the way included:
// 22 for 18 + 4 - 20.
func (s Sentence) Size() int {
	size, value := slices.Max(s.Operands()), 0
	for i, n := range s.Operands() {
		value += s.sign(i) * n
		size = max(size, value)
	}
	return size
}

// IsAddition says that nothing is taken away.
func (s Sentence) IsAddition() bool { return s.Minus == [4]bool{} }

func (s Sentence) sign(i int) int {
	if s.Minus[i] {
		return -1
	}
	return 1
}

// answer is the number to fill in.
func (s Sentence) answer() int {
	if s.Blank == s.N {
		return s.Result()
	}
	return s.Terms[s.Blank]
}

// left is the side with the operations, with a mark at place blank.
func (s Sentence) left(blank int) string { return written(s.Operands(), s.Minus[:], blank) }

// written is numbers with + and - between them, with a mark at place blank.
func written(numbers []int, minus []bool, blank int) string {
	var room [32]byte
	text := room[:0]
	for i, n := range numbers {
		switch {
		case i > 0 && minus[i]:
			text = append(text, " - "...)
		case i > 0:
			text = append(text, " + "...)
		}
		if i == blank {
			text = append(text, '?')
		} else {
			text = strconv.AppendInt(text, int64(n), 10)
		}
	}
	return string(text)
}

func (s Sentence) String() string {
	result := "?"
	if s.Blank != s.N {
		result = strconv.Itoa(s.Result())
	}
	if s.ResultFirst {
		return result + " = " + s.left(s.Blank)
	}
	return s.left(s.Blank) + " = " + result
}

// Key is the number to fill in.
func (s Sentence) Key() string { return strconv.Itoa(s.answer()) }

// Judge accepts the number, also in words or within the whole sentence ("36 + 47 = 83").
func (s Sentence) Judge(answer string) bool {
	r, ok := readReply(answer, noWords)
	return ok && s.isRight(r)
}

// Possible takes a number, alone or in a few words, and number sentences.
func (s Sentence) Possible(answer string) bool { _, ok := readReply(answer, noWords); return ok }

func (s Sentence) isRight(r reply) bool {
	switch {
	case r.equation == nil:
		return r.number == s.answer()
	case r.equation.says(s.signed(), s.Result()):
		return true
	}
	return s.Blank != s.N && r.equation.finds(s.answer(), append(slices.Clone(s.Operands()), s.Result()))
}

// signed is the operands, those taken away negative.
func (s Sentence) signed() []int { return signed(s.Operands(), s.Minus[:]) }

func signed(numbers []int, minus []bool) []int {
	list := slices.Clone(numbers)
	for i := range list {
		if minus[i] {
			list[i] = -list[i]
		}
	}
	return list
}

// Prompt asks for the missing number or the result.
func (s Sentence) Prompt(lang string) string { return fillIn(s.String(), lang) }

// fillIn asks for the missing number of a sentence.
func fillIn(question, lang string) string {
	if lang == "es" {
		return "Escribe el número que falta: " + question
	}
	return "Write the missing number: " + question
}

// Clashes is the fact family: the same numbers, the result included.
func (s Sentence) Clashes() []string {
	numbers := append(slices.Clone(s.Operands()), s.Result())
	slices.Sort(numbers)
	return []string{"family:" + joinInts(numbers, ",")}
}

// Fingerprint puts addends in order where the result is asked for, and sets the
// side of the equal sign aside.
func (s Sentence) Fingerprint() string {
	s.ResultFirst = false
	if s.IsAddition() && s.Blank == s.N {
		slices.Sort(s.Terms[:s.N])
	}
	return s.String()
}

// Looks puts written-out columns second, and a bond where there are two parts.
func (s Sentence) Looks() []Look {
	if s.IsExpanded() {
		return withChoice(s, LookSentence, LookFrame)
	}
	list := []Look{LookSentence}
	column := s.Blank == s.N && !s.ResultFirst && (s.IsAddition() || s.N == 2 && s.Minus[1])
	if column && slices.Max(s.Operands()) >= 10 {
		list = append(list, LookColumn)
	}
	if s.N == 2 && s.Result() <= 100 {
		list = append(list, LookBond)
	}
	return withChoice(s, append(list, s.strategyLooks()...)...)
}

// IsExpanded says that the sentence puts hundreds, tens and ones together: 100 + 40 + 2 = ?.
func (s Sentence) IsExpanded() bool {
	n := s.Result()
	return s.N == 3 && s.Blank == 3 && s.IsAddition() && n <= 999 && slices.Equal(s.Operands(), expandedParts(n))
}

func joinInts(numbers []int, separator string) string {
	parts := make([]string, len(numbers))
	for i, n := range numbers {
		parts[i] = strconv.Itoa(n)
	}
	return strings.Join(parts, separator)
}

// Short is the question alone.
func (s Sentence) Short(lang string) string { return alone(s, lang) }

// Written is the text itself.
func (s Sentence) Written() string { return s.String() }
