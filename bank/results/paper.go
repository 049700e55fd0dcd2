package results

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"time"

	"evenhand/standards/words"
)

// Paper is what one pupil did with one form of a quiz, as marked.
type Paper struct {
	Quiz    string   `json:"Quiz"`    // its ID
	Class   string   `json:"Class"`   // such as "2A"; empty where there is only one
	Pupil   string   `json:"Pupil"`   // a code, such as "P07"
	Form    string   `json:"Form"`    // its name
	Answers []Answer `json:"Answers"` // one for each item of the form, in order

	Revision int       `json:"Revision"` // 1, 2, ...: how often it was marked
	By       string    `json:"By"`
	At       time.Time `json:"At"` // UTC
}

// Answer is what became of one item on a paper.
type Answer struct {
	State   State  `json:"State"`
	Written string `json:"Written,omitempty"` // what the pupil wrote, where the marking says
}

// Asked says that somebody has to say what the answer is: it was typed, is neither a mark nor a
// possible answer, and doesn't count until then.
func (a Answer) Asked() bool { return a.State == NotReached && a.Written != "" }

// State is how an answer counts.
type State string

// The states. What is absent or not reached counts neither for nor against.
const (
	Right      State = "right"
	Wrong      State = "wrong"
	Absent     State = "absent"
	NotReached State = "not reached"
)

// Answered is the answer that a pupil wrote to an item, judged.
func (it Item) Answered(written string) Answer {
	a := Answer{State: Wrong, Written: strings.TrimSpace(written)}
	if it.Judge(a.Written) {
		a.State = Right
	}
	return a
}

// Counts says that the pupil answered.
func (a Answer) Counts() bool { return a.State == Right || a.State == Wrong }

// String is the answer as a grid may hold it: what was written, else ✓, x, - or a dot.
func (a Answer) String() string {
	if a.Written != "" {
		return a.Written
	}
	return map[State]string{Right: "✓", Wrong: "x", Absent: "-", NotReached: "."}[a.State]
}

// Score is how many of the answers are right, of how many that count.
func (p Paper) Score() (right, of int) {
	for _, a := range p.Answers {
		if a.Counts() {
			of++
		}
		if a.State == Right {
			right++
		}
	}
	return right, of
}

// same says that two markings of a paper don't differ.
func (p Paper) same(other Paper) bool {
	return p.Form == other.Form && slices.Equal(p.Answers, other.Answers)
}

// fits says what is wrong with a paper of a quiz.
func (p Paper) fits(q Quiz) error {
	form, ok := q.Form(p.Form)
	switch {
	case !ok:
		return words.Errorf("the paper of %s is of form %q, but the quiz has %s", p.Pupil, p.Form, strings.Join(q.FormNames(), ", "))
	case len(p.Answers) != len(form.Items):
		return words.Errorf("the paper of %s has %d answers, but form %s has %d items", p.Pupil, len(p.Answers), form.Name, len(form.Items))
	}
	return CheckClass(p.Class)
}

var codeForm = regexp.MustCompile(`^(\pL{1,3})[-_ ]?(\d{1,4})$`)

// ParseCode reads a pupil's code: one to three letters and a number, written in
// capitals and, from 1 to 9, with a zero before it: "p7" is "P07". Anything else,
// such as a name, is an error.
func ParseCode(text string) (string, error) {
	m := codeForm.FindStringSubmatch(strings.ToUpper(strings.TrimSpace(text)))
	if m == nil {
		return "", words.Errorf("%q is no pupil's code; a code is letters and a number, such as P07, and names belong in your own roster", strings.TrimSpace(text))
	}
	number := strings.TrimLeft(m[2], "0")
	return m[1] + strings.Repeat("0", max(0, 2-len(number))) + number, nil
}

var (
	rangeForm = regexp.MustCompile(`^(\pL{1,3})(\d{1,4})-(\pL{0,3})(\d{1,4})$`)
	dashForm  = regexp.MustCompile(`\s*[-–]\s*`)
)

// ParseCodes reads codes as people list them: "P01-P24", "P01, P02 P05-P09".
func ParseCodes(text string) (codes []string, err error) {
	text = dashForm.ReplaceAllString(strings.ToUpper(text), "-")
	for _, part := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(",; \t\n", r) }) {
		some := []string{part}
		if m := rangeForm.FindStringSubmatch(part); m != nil {
			if some, err = countCodes(m); err != nil {
				return nil, err
			}
		}
		for _, one := range some {
			code, err := ParseCode(one)
			if err != nil {
				return nil, err
			}
			if !slices.Contains(codes, code) {
				codes = append(codes, code)
			}
		}
	}
	return codes, nil
}

// countCodes lists the codes of a range such as P01-P24.
func countCodes(m []string) (codes []string, err error) {
	var first, last int
	fmt.Sscan(m[2], &first)
	fmt.Sscan(m[4], &last)
	if m[3] != "" && m[3] != m[1] || last < first || last-first >= 1000 {
		return nil, words.Errorf("%q is no range of codes; one is P01-P24", m[0])
	}
	for n := first; n <= last; n++ {
		codes = append(codes, fmt.Sprintf("%s%02d", m[1], n))
	}
	return codes, nil
}

var classForm = regexp.MustCompile(`^[\pL\d][\pL\d ._-]{0,19}$`)

// CheckClass says what is wrong with the name of a class; the empty one is that of
// the only class.
func CheckClass(name string) error {
	if name != "" && !classForm.MatchString(name) {
		return words.Errorf("%q is no name of a class; give up to 20 letters and digits, such as 2A", name)
	}
	return nil
}
