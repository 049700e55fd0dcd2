package marks

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	intake "evenhand/import"

	"evenhand/bank/results"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// longestAnswer is the most letters that a written answer may have.
const longestAnswer = 80

// wrote begins a cell that is what the child wrote, whatever it looks like.
var wrote = regexp.MustCompile(`(?i)^(?:wrote|escribió|escribio)\b[: ]*`)

// Written is the answer that a cell says a pupil wrote, judged; what a spreadsheet has
// made of it is undone. problem says why the cell can be no answer, or asks which of
// several it is.
func Written(item results.Item, cell string) (answer results.Answer, problem *words.Told) {
	cell = strings.TrimSpace(cell)
	if said := wrote.ReplaceAllString(cell, ""); said != cell && said != "" {
		return item.Answered(said), nil
	}
	if intake.SheetError(cell) {
		return answer, words.Sayf("this is what a spreadsheet writes when it can't work out a formula; write the pupil's " +
			"answer, with an apostrophe before it if it begins with =")
	}
	if utf8.RuneCountInString(cell) > longestAnswer {
		return answer, words.Sayf("this is too long for an answer; write only what the pupil answered")
	}
	var fit []results.Answer
	typed := typedAs(item, cell)
	for _, text := range typed {
		if possible(item, text) {
			fit = append(fit, item.Answered(text))
		}
	}
	if explained, dated := intake.Date(cell); dated && !item.Judge(cell) && (len(fit) != 1 || fit[0].Written == cell) {
		return answer, explained
	}
	switch {
	case len(fit) == 0:
		return answer, words.Sayf("this is no mark and can't be an answer to %s; write 1 or ✓ for right, 0 or "+
			"x for wrong, - for absent, . for not reached, or what the child wrote", item.Asks)
	case sameState(fit):
		return fit[0], nil
	}
	texts := make([]string, len(fit))
	for i, a := range fit {
		texts[i] = a.Written
	}
	which := words.Joined(texts, "%s or %s")
	return answer, words.Sayf("this can be %s; write which, such as: wrote %s", which, texts[0])
}

func sameState(answers []results.Answer) bool {
	for _, a := range answers {
		if a.State != answers[0].State {
			return false
		}
	}
	return true
}

var (
	plusBefore   = regexp.MustCompile(`^[+＋] ?(\d+)$`)
	whole        = regexp.MustCompile(`^(\d+)[.,]0+$`)
	powerOfTen   = regexp.MustCompile(`^\d(?:\.\d+)?[eE]\+?\d{1,2}$`)
	longFraction = regexp.MustCompile(`^\d+\.\d{6,}$`)
	hourAndParts = regexp.MustCompile(`^(\d{1,2})[.,](\d)(\d?)$`)
	money        = regexp.MustCompile(`^\$? ?(\d*)[.,](\d)(\d?)$`)
	dayOnly      = regexp.MustCompile(`^(?:19|20)\d\d-(\d{1,2})-(\d{1,2})(?:[ T]00:00(?::00)?.*)?$`)
	daySerial    = regexp.MustCompile(`^[45]\d{4}$`)
	numbers      = regexp.MustCompile(`\d+`)
)

// typedAs is what may have been typed where a spreadsheet now shows the cell: 9.3 for
// a time was 9.30, 66.00 was 66, 2026-06-02 was 6/2 or 2/6. Without a spreadsheet's
// hand in it that is the cell itself.
func typedAs(item results.Item, cell string) []string {
	cell = strings.TrimLeft(cell, "'’")
	if longFraction.MatchString(cell) { // 9.3000000000000007
		if x, err := strconv.ParseFloat(cell, 64); err == nil && math.Abs(100*x-math.Round(100*x)) < 1e-6 && x > 1 {
			cell = strconv.FormatFloat(math.Round(100*x)/100, 'f', -1, 64)
		}
	}
	asked, _ := item.Task()
	switch task.AnswersOf(asked) {
	case task.OneTime:
		if m := hourAndParts.FindStringSubmatch(cell); m != nil && m[1] != "0" {
			return timesOf(item, m)
		}
		return []string{intake.Times(cell)}
	case task.SeveralTimes:
		return []string{intake.Times(cell)}
	case task.Money:
		if m := money.FindStringSubmatch(cell); m != nil {
			dollars := "$" + orZero(m[1]) + "." + m[2] + orZero(m[3])
			if m := whole.FindStringSubmatch(cell); m != nil {
				return []string{m[1], dollars}
			}
			return []string{dollars}
		}
	}
	if m := plusBefore.FindStringSubmatch(cell); m != nil {
		return []string{m[1]}
	}
	if m := whole.FindStringSubmatch(cell); m != nil {
		return []string{m[1]}
	}
	if powerOfTen.MatchString(cell) {
		if x, err := strconv.ParseFloat(cell, 64); err == nil && x == math.Trunc(x) && x < 1e6 {
			return []string{strconv.Itoa(int(x))}
		}
	}
	if several := numbers.FindAllString(item.Key, -1); len(several) > 1 {
		return ofSeveral(several, cell)
	}
	return []string{cell}
}

// timesOf is the time of hours and parts after a point: 9.3 was 9.30. Where that is wrong and
// another way to write so is right, it is both: 9.5 for half past 9, 9.5 for 5 past.
func timesOf(item results.Item, m []string) []string {
	times := []string{m[1] + ":" + m[2] + orZero(m[3])}
	others := []string{m[1] + ":0" + m[2]}
	if m[3] == "" && m[2] == "5" {
		others = append(others, m[1]+":30")
	}
	for _, other := range others {
		if m[3] == "" && !item.Judge(times[0]) && item.Judge(other) {
			return append(times, other)
		}
	}
	return times
}

func orZero(digits string) string {
	if digits == "" {
		return "0"
	}
	return digits
}

// ofSeveral undoes what becomes of several numbers: 6/2 is made a date, and "99, 100"
// one number.
func ofSeveral(key []string, cell string) []string {
	if month, day, ok := monthAndDay(cell); ok && len(key) == 2 {
		if month == day {
			return []string{fmt.Sprintf("%d, %d", month, day)}
		}
		return []string{fmt.Sprintf("%d, %d", month, day), fmt.Sprintf("%d, %d", day, month)}
	}
	if cell == strings.Join(key, "") && len(cell) > 3 {
		return []string{strings.Join(key, ", ")}
	}
	if cell == strings.Join(key, "") { // the boxes typed without a gap, or one number
		return []string{cell, strings.Join(key, ", ")}
	}
	return []string{cell}
}

// monthAndDay are those of a date as a spreadsheet keeps it, if they can both be typed
// numbers.
func monthAndDay(cell string) (month, day int, ok bool) {
	if m := dayOnly.FindStringSubmatch(cell); m != nil {
		month, _ = strconv.Atoi(m[1])
		day, _ = strconv.Atoi(m[2])
		return month, day, true
	}
	if daySerial.MatchString(cell) {
		days, _ := strconv.Atoi(cell)
		date := time.Date(1899, 12, 30+days, 0, 0, 0, 0, time.UTC)
		return int(date.Month()), date.Day(), true
	}
	return 0, 0, false
}

// possible says whether a text can be somebody's answer to the item, right or wrong.
func possible(item results.Item, text string) bool {
	if text == "" {
		return false
	}
	if asked, ok := item.Task(); ok {
		return asked.Possible(text)
	}
	return item.Judge(text) || possibleByHand(item.Key, text)
}

// possibleByHand says whether a text can be an answer to an item by hand, by its key: a
// number where that is one, letters where that is a word.
func possibleByHand(key, text string) bool {
	digits, letters := strings.ContainsFunc(key, unicode.IsDigit), strings.ContainsFunc(key, unicode.IsLetter)
	if _, looksLikeMark := signOf(plain(text)); looksLikeMark && !strings.ContainsFunc(text, unicode.IsDigit) {
		return false
	}
	return digits && strings.ContainsFunc(text, unicode.IsDigit) || letters && strings.ContainsFunc(text, unicode.IsLetter) || !digits && !letters
}
