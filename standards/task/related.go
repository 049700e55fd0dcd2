package task

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Related asks for a difference as the unknown addend of a sum: one number makes both
// sentences of "8 + ? = 11, 11 - 8 = ?" true.
type Related struct {
	Whole int // 2 to 20
	Part  int // the part that is known, 1 to Whole − 1
}

var relatedPattern = regexp.MustCompile(`^([0-9]{1,4}) ?\+ ?\? ?= ?([0-9]{1,4}) ?(?:,|;|so|and|, so) ?([0-9]{1,4}) ?- ?([0-9]{1,4}) ?= ?\?$`)

func readRelated(text string) (Task, error) {
	m := relatedPattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	var t Related
	t.Part, _ = strconv.Atoi(m[1])
	t.Whole, _ = strconv.Atoi(m[2])
	if m[1] != m[4] || m[2] != m[3] {
		return nil, words.Errorf("%q has two sentences that are not about the same numbers; write for example 8 + ? = 11, 11 - 8 = ?", text)
	}
	if t.Part < 1 || t.Part >= t.Whole || t.Whole > 20 {
		return nil, words.Errorf("%q is for wholes of 2 to 20 and a part of at least 1 that is smaller than the whole", text)
	}
	return t, nil
}

func (t Related) answer() int { return t.Whole - t.Part }

func (t Related) String() string {
	return fmt.Sprintf("%d + ? = %d, %d - %d = ?", t.Part, t.Whole, t.Whole, t.Part)
}

// Key is the number that fills both places.
func (t Related) Key() string { return strconv.Itoa(t.answer()) }

// Judge accepts the number, once or twice, or both whole sentences.
func (t Related) Judge(answer string) bool {
	replies, ok := t.replies(answer)
	for _, r := range replies {
		if r.equation == nil && r.number != t.answer() {
			return false
		}
		if r.equation != nil && !r.equation.says([]int{t.Part, t.answer()}, t.Whole) && !r.equation.says([]int{t.Whole, -t.Part}, t.answer()) {
			return false
		}
	}
	return ok
}

// Possible takes one or two numbers or number sentences.
func (t Related) Possible(answer string) bool { _, ok := t.replies(answer); return ok }

var numbersOnly = regexp.MustCompile(`^[0-9 ]+$`)

func (t Related) replies(answer string) (list []reply, ok bool) {
	text := strings.NewReplacer(";", ",", " and ", ",", " y ", ",", " so ", ",").Replace(words.Plain(answer))
	if numbersOnly.MatchString(text) {
		text = strings.ReplaceAll(text, " ", ",")
	}
	for cell := range strings.SplitSeq(text, ",") {
		r, ok := readReply(strings.TrimSpace(cell), noWords)
		if !ok || len(list) == 2 {
			return nil, false
		}
		list = append(list, r)
	}
	return list, true
}

// Prompt asks for the number that makes both sentences true.
func (t Related) Prompt(lang string) string {
	if lang == "es" {
		return "El mismo número va en los dos lugares. ¿Cuál es? " + t.String()
	}
	return "The same number goes in both places. What is it? " + t.String()
}

// Traits of related facts are those of the difference.
func (t Related) Traits() Traits { return t.difference().Traits() }

func (t Related) difference() Sentence {
	return Sentence{Terms: [4]int{t.Whole, t.Part}, Minus: [4]bool{1: true}, N: 2, Blank: 2}
}

// Codes of related facts: subtraction as an unknown addend, grade 1.
func (t Related) Codes() []Code { return []Code{"1.OA.B.4"} }

// Missteps of related facts: both numbers put together, the whole copied, counting
// that begins at the wrong number.
func (t Related) Missteps() []Misstep {
	return gather(t, []slip{
		{operatedSeen, strconv.Itoa(t.Whole + t.Part)},
		{copiedSeen, strconv.Itoa(t.Whole)},
		{countedFirst, strconv.Itoa(t.answer() + 1)},
	})
}

// Clashes of related facts: the fact family.
func (t Related) Clashes() []string { return t.difference().Clashes() }

// Fingerprint of related facts is their text.
func (t Related) Fingerprint() string { return t.String() }

// Looks of related facts.
func (t Related) Looks() []Look { return []Look{LookTwin} }

// Short is both sentences.
func (t Related) Short(string) string { return t.String() }

// Fills are the number twice.
func (t Related) Fills() []string { return []string{t.Key(), t.Key()} }

// Written is the text itself.
func (t Related) Written() string { return t.String() }
