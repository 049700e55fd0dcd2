package task

import (
	"regexp"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Expanded asks for a number as a sum of its parts: "142 = ? + ? + ?". Places
// with a zero have no part.
type Expanded struct{ Number int }

var expandedPattern = regexp.MustCompile(`^([0-9]+) ?= ?\?(( ?\+ ?\?)+)$`)

func readExpanded(text string) (Task, error) {
	m := expandedPattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	n, err := strconv.Atoi(m[1])
	if n < 11 {
		return nil, errOther // "7 = ? + ?" has no one answer
	}
	if err != nil || n < 11 || n > 999 {
		return nil, words.Errorf("expanded form is for numbers from 11 to 999, not %s", m[1])
	}
	asked, parts := 1+strings.Count(m[2], "?"), len(expandedParts(n))
	if asked != parts {
		return nil, words.Errorf("%d has %d parts in expanded form, but there is room for %d", n, parts, asked)
	}
	return Expanded{n}, nil
}

// expandedParts are the hundreds, tens and ones of n that are not zero.
func expandedParts(n int) []int {
	var parts []int
	for _, part := range []int{n / 1000 * 1000, n / 100 % 10 * 100, n / 10 % 10 * 10, n % 10} {
		if part > 0 {
			parts = append(parts, part)
		}
	}
	return parts
}

func (e Expanded) String() string {
	return strconv.Itoa(e.Number) + " = ?" + strings.Repeat(" + ?", len(expandedParts(e.Number))-1)
}

// Key is the sum of the parts, "100 + 40 + 2".
func (e Expanded) Key() string { return joinInts(expandedParts(e.Number), " + ") }

// Judge accepts the parts in any order, with plus signs, commas or spaces between, and the
// whole sentence.
func (e Expanded) Judge(answer string) bool {
	parts, ok := e.reply(answer)
	return ok && sameTerms(parts, expandedParts(e.Number))
}

// Possible takes numbers with plus signs, commas or spaces between.
func (e Expanded) Possible(answer string) bool { _, ok := e.reply(answer); return ok }

// reply is the parts that an answer gives.
func (e Expanded) reply(answer string) ([]int, bool) {
	clean, whole := words.Plain(answer), strconv.Itoa(e.Number)
	if left, right, both := strings.Cut(clean, "="); both {
		switch {
		case strings.TrimSpace(left) == "" || strings.TrimSpace(left) == whole:
			clean = right
		case strings.Trim(right, " .") == whole:
			clean = left
		}
	}
	return listOf(words.ListTokens(clean), "+,;&")
}

// Prompt asks for the parts.
func (e Expanded) Prompt(lang string) string {
	if lang == "es" {
		return "Escribe el número como suma de sus partes: " + e.String()
	}
	return "Write the number as a sum of its parts: " + e.String()
}

// Traits of expanded form.
func (e Expanded) Traits() Traits {
	var ts Traits
	ts.setNumber(Digits, digitCount(e.Number))
	ts.setNumber(Largest, e.Number)
	ts[Asks] = "parts"
	return ts
}

// Codes: expanded form is grade 2; teen numbers as ten and ones are kindergarten,
// other two-digit numbers grade 1.
func (e Expanded) Codes() []Code {
	switch {
	case e.Number < 20:
		return []Code{"K.NBT.A.1", "2.NBT.A.3"}
	case e.Number < 100:
		return []Code{"1.NBT.B.2", "2.NBT.A.3"}
	}
	return []Code{"2.NBT.A.3"}
}

var digitsAsParts = newMisstep("digits as parts",
	"splits the number into its digits and not what they are worth",
	"separa el número en sus dígitos y no en lo que vale cada uno",
	"what each digit is worth: build the number with sticks and dots",
	"cuánto vale cada dígito: formar el número con barras y puntos", "common practice")

// Missteps of expanded form.
func (e Expanded) Missteps() []Misstep {
	var digits []int
	for _, part := range expandedParts(e.Number) {
		for part >= 10 {
			part /= 10
		}
		digits = append(digits, part)
	}
	return gather(e, []slip{{digitsAsParts, joinInts(digits, " + ")}})
}

// Clashes of expanded form: the number itself.
func (e Expanded) Clashes() []string { return []string{"parts:" + strconv.Itoa(e.Number)} }

// Fingerprint of expanded form is its text.
func (e Expanded) Fingerprint() string { return e.String() }

// Looks of expanded form.
func (e Expanded) Looks() []Look {
	if len(expandedParts(e.Number)) == 2 {
		return []Look{LookExpanded, LookBond}
	}
	return []Look{LookExpanded}
}

// Short is the question alone.
func (e Expanded) Short(lang string) string { return alone(e, lang) }

// Fills are the parts.
func (e Expanded) Fills() []string { return strings.Split(e.Key(), " + ") }

// Written is the text itself.
func (e Expanded) Written() string { return e.String() }
