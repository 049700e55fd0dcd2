package task

import (
	"regexp"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

var (
	sentenceShape  = regexp.MustCompile(`^[0-9 ?+=,-]*$`)
	thousands      = regexp.MustCompile(`([0-9]),([0-9]{3})\b`)
	otherOperation = regexp.MustCompile(`^[0-9 ?+=,-]*[0-9?](?: ?[×x*÷·] ?| / )[0-9?][0-9 ?+=×x*÷/·,-]*$`)
	termPattern    = regexp.MustCompile(`[0-9]+|\?|[-+=]`)
	twoNumbers     = regexp.MustCompile(`[0-9?]\s+[0-9?]`)
)

// readSentence reads a number sentence with at most one blank; without "=" or
// with nothing after it the result is asked for.
func readSentence(text string) (Task, error) {
	if strings.ContainsAny(text, "×x*÷/·") && otherOperation.MatchString(text) {
		return nil, words.Errorf("%q multiplies or divides; evenhand knows adding and taking away", text)
	}
	if !sentenceShape.MatchString(text) || !strings.ContainsAny(text, "+-") {
		return nil, errOther
	}
	text = thousands.ReplaceAllString(text, "$1$2")
	text = strings.TrimSpace(text)
	asked := strings.TrimRight(text, "? ")
	if strings.HasSuffix(text, "?") && !strings.Contains(text, "=") &&
		!strings.HasSuffix(asked, "+") && !strings.HasSuffix(asked, "-") {
		text = asked + " = ?" // "47 + 36 ?"
	}
	if strings.Contains(text, ",") || twoNumbers.MatchString(text) {
		return nil, errOther
	}
	left, right, both := strings.Cut(text, "=")
	if strings.Contains(right, "=") {
		return nil, words.Errorf("%q has more than one equal sign; write one, as in 47 + 36 = ?", text)
	}
	if !both || strings.TrimSpace(right) == "" {
		right = "?"
	}
	if both && strings.TrimSpace(left) == "" { // "= 47 + 36"
		left = "?"
	}
	resultFirst := !strings.ContainsAny(left, "+-")
	if resultFirst {
		left, right = right, left
	}
	s, err := readSides(left, right)
	if err != nil {
		return nil, err
	}
	s.ResultFirst = resultFirst
	return s, s.check()
}

// readSides reads "47 + ?" and "83" and works out the unknown.
func readSides(left, right string) (Sentence, error) {
	var s Sentence
	s.Blank = -1
	result, blankResult, err := readNumber(strings.TrimSpace(right))
	if err != nil {
		return s, err
	}
	tokens := termPattern.FindAllString(left, -1)
	if len(tokens)%2 == 0 {
		return s, words.Errorf("%q does not read as numbers with + or - between them", strings.TrimSpace(left))
	}
	for i, token := range tokens {
		if i%2 == 1 {
			if token != "+" && token != "-" {
				return s, words.Errorf("%q does not read as numbers with + or - between them", strings.TrimSpace(left))
			}
			continue
		}
		if s.N == 4 {
			return s, words.Errorf("this has more than four numbers; a number sentence here has 2 to 4")
		}
		n, blank, err := readNumber(token)
		if err != nil {
			return s, err
		}
		if blank && (s.Blank >= 0 || blankResult) {
			return s, words.Errorf("this has two places to fill in; a number sentence here has one, as in 47 + ? = 83")
		}
		if blank {
			s.Blank = s.N
		}
		s.Terms[s.N] = n
		s.Minus[s.N] = i > 0 && tokens[i-1] == "-"
		s.N++
	}
	return s.solve(result, blankResult)
}

// solve fills in the unknown term from the result.
func (s Sentence) solve(result int, blankResult bool) (Sentence, error) {
	switch {
	case s.N < 2:
		return s, words.Errorf("this has one number before the equal sign; a number sentence has 2 to 4, as in 47 + 36 = ?")
	case blankResult:
		s.Blank = s.N
	case s.Blank < 0:
		if s.Result() == result {
			return s, words.Errorf("%s = %d has nothing to fill in; write ? for the number that is asked for", s.left(-1), result)
		}
		return s, words.Errorf("%s = %d has nothing to fill in, and %s is %d", s.left(-1), result, s.left(-1), s.Result())
	default:
		s.Terms[s.Blank] = 0
		s.Terms[s.Blank] = (result - s.Result()) * s.sign(s.Blank)
		if s.Terms[s.Blank] < 0 {
			return s, words.Errorf("no number from 0 up makes %s = %d true", s.left(s.Blank), result)
		}
	}
	return s, nil
}

func readNumber(token string) (n int, blank bool, err error) {
	if token == "?" {
		return 0, true, nil
	}
	n, err = strconv.Atoi(token)
	if err != nil || n > MaxNumber || n < 0 || strings.HasPrefix(token, "+") {
		return 0, false, words.Errorf("%q is not a whole number from 0 to %d", token, MaxNumber)
	}
	return n, false, nil
}
