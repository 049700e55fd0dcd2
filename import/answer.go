package intake

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"evenhand/standards/task"
)

// longestQuestion is how many bytes a question, a story or an answer may have.
const longestQuestion = 2000

// taskOf reads a cell as a task.
func taskOf(cell string) (task.Task, bool) {
	if !isTask(cell) {
		return nil, false
	}
	asked, err := task.Parse(strings.TrimLeft(cell, "= "))
	return asked, err == nil
}

// judgeAnswer says whether a list's answer to a task is right, whatever spreadsheets and
// people did to its number.
func judgeAnswer(asked task.Task, answer string) bool {
	given := mendAnswer(asked, answer)
	if brokenNumber.MatchString(given) && wholeNumber.MatchString(asked.Key()) {
		return false // 9,3 is not 93
	}
	return asked.Judge(given)
}

var (
	wholeNumber  = regexp.MustCompile(`^\d+$`)
	plainNumber  = regexp.MustCompile(`^[=+]?\s*(\d+)(?:[.,]0{1,2}|[.,]0{4,})?$`)
	grouped      = regexp.MustCompile(`^[=+]?\s*(\d{1,3}(?:,\d{3})+|\d{1,3}(?:\.\d{3})+|\d{1,3}(?:['’ \x{00a0}\x{202f}]\d{3})+)(?:[.,]0{1,2})?$`)
	powerOfTen   = regexp.MustCompile(`^\d(?:[.,]\d+)?[eE]\+?\d{1,2}$`) // as a spreadsheet shows it
	notDigit     = regexp.MustCompile(`\D`)
	brokenNumber = regexp.MustCompile(`^[=+]?\s*\d+[.,' ]\d+$`)
)

// mendAnswer undoes what spreadsheets and people do to answers: times where a clock is
// asked about, and 83.0, =83, +83 or 8.3E+01 for 83,
// 1,000 or 1.000 for 1000.
func mendAnswer(asked task.Task, answer string) string {
	if answers := task.AnswersOf(asked); answers == task.OneTime || answers == task.SeveralTimes {
		mended, _ := mendTimes(answer, true)
		return mended
	}
	if m := grouped.FindStringSubmatch(answer); m != nil {
		return notDigit.ReplaceAllString(m[1], "")
	}
	if m := plainNumber.FindStringSubmatch(answer); m != nil {
		return m[1]
	}
	if powerOfTen.MatchString(answer) {
		if x, err := strconv.ParseFloat(strings.Replace(answer, ",", ".", 1), 64); err == nil && x == math.Trunc(x) && x < 1e6 {
			return strconv.Itoa(int(x))
		}
	}
	return answer
}

// wholeSentence is a number sentence with nothing left out.
var wholeSentence = regexp.MustCompile(`^\s*(?:(\d+)\s*([+−–-])\s*(\d+)\s*=\s*(\d+)|(\d+)\s*=\s*(\d+)\s*([+−–-])\s*(\d+))\s*\.?$`)

// LeaveOut names the number of a whole number sentence that an item asks for.
type LeaveOut string

// The numbers of 47 + 36 = 83: 83, 47 and 36.
const (
	LeaveOutResult LeaveOut = "result"
	LeaveOutFirst  LeaveOut = "first"
	LeaveOutSecond LeaveOut = "second"
)

// leaveOut makes a question of a true number sentence that has nothing left out: it asks
// for the number that the list gives as the answer, else for the one that is wanted. It
// is the sentence itself where neither says which.
func leaveOut(sentence, answer string, wanted LeaveOut) (question string, whole bool) {
	m := wholeSentence.FindStringSubmatch(sentence)
	if m == nil {
		return sentence, false
	}
	turned := m[1] == ""
	a, op, b, result := m[1], m[2], m[3], m[4]
	if turned {
		a, op, b, result = m[6], m[7], m[8], m[5]
	}
	asked, err := task.Parse(a + " " + op + " " + b + " = ?")
	if err != nil || asked.Key() != result {
		return sentence, false
	}
	switch answer {
	case result:
		wanted = LeaveOutResult
	case a:
		wanted = LeaveOutFirst
	case b:
		wanted = LeaveOutSecond
	}
	switch wanted {
	case LeaveOutResult:
		result = "?"
	case LeaveOutFirst:
		a = "?"
	case LeaveOutSecond:
		b = "?"
	default:
		return sentence, true
	}
	if turned {
		return fmt.Sprintf("%s = %s %s %s", result, a, op, b), true
	}
	return fmt.Sprintf("%s %s %s = %s", a, op, b, result), true
}

// answerInText is an answer written behind its question, as "Answer: 8".
var answerInText = regexp.MustCompile(`(?is)^(.*\S)\s*[\s(\[–—-]\s*(?:answer|ans|key|solution|respuesta|antwort|` +
	`lösung|réponse|risposta)\s*[:=.]\s*(.*?)[)\]]?\s*$`)
