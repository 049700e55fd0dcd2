package task

import (
	"slices"
	"strings"

	"evenhand/standards/words"
)

// Look is a way to show an item on paper or screen.
type Look string

// The looks.
const (
	LookSentence      Look = "sentence"       // 47 + 36 = □
	LookColumn        Look = "column"         // one number under the other, a box a digit
	LookBond          Look = "bond"           // number bond: whole and parts
	LookExpanded      Look = "expanded"       // 142 = □ + □ + □
	LookTensAndOnes   Look = "tens-and-ones"  // sticks of ten and single dots
	LookFrame         Look = "frame"          // place-value frame with a column for each place
	LookCompare       Look = "compare"        // two numbers with a circle between
	LookSequence      Look = "sequence"       // numbers in a row, some left out
	LookClockFace     Look = "clock-face"     // a dial with its hands: write the time
	LookBlankFace     Look = "blank-face"     // a dial without hands: draw them
	LookSaidFace      Look = "said-face"      // the same, the time given in words
	LookSaidTime      Look = "said-time"      // a time in words: write it in digits
	LookMatch         Look = "match"          // dials on one side, times on the other
	LookWords         Look = "words"          // the question in words, a line to write on
	LookNumberLine    Look = "number-line"    // jumps on a number line
	LookHundredsChart Look = "hundreds-chart" // jumps on a chart to 120
	LookMakeTen       Look = "make-ten"       // one addend split to make the next ten
	LookBreakApart    Look = "break-apart"    // both addends split into tens and ones
	LookChoice        Look = "choice"         // three answers, one to mark
	LookTick          Look = "tick"           // two boxes: tick the right one
	LookDots          Look = "dots"           // dots to count
	LookGroups        Look = "groups"         // two groups of dots to compare
	LookArray         Look = "array"          // dots in equal rows
	LookCoins         Look = "coins"          // coins with what they are worth
	LookPairs         Look = "pairs"          // two pairs of boxes
	LookStory         Look = "story"          // a word problem with room to draw
	LookTwin          Look = "two-sentences"  // two number sentences that share a number
)

// looks lists every look with a short description and the seconds it adds to an
// item's usual working time (common practice, no source). The look of a single kind stands in
// the file of that kind.
var looks = []struct {
	look    Look
	title   string
	seconds int
}{
	{LookSentence, "number sentence with an answer box", 0},
	{LookColumn, "column sum with a box for each place", 10},
	{LookBond, "number bond", 5},
	{LookExpanded, "expanded form", 0},
	{LookTensAndOnes, "sticks of ten and single dots", 15},
	{LookFrame, "place-value frame", 15},
	{LookCompare, "two numbers with a circle between", 0},
	{LookSequence, "numbers in a row, some left out", 0},
	{LookClockFace, "clock face with its hands", 0},
	{LookBlankFace, "blank clock face to draw hands on", 10},
	{LookSaidFace, "blank clock face to draw on, the time in words", 15},
	{LookSaidTime, "time in words to write in digits", 0},
	{LookMatch, "clock faces to join with times", 0},
	{LookWords, "question in words with a line to write on", 5},
	{LookNumberLine, "jumps on a number line", 15},
	{LookHundredsChart, "jumps on a hundreds chart to 120", 20},
	{LookMakeTen, "one addend split to make the next ten", 15},
	{LookBreakApart, "both addends split into tens and ones", 30},
	{LookChoice, "three answers, one to mark", 0},
	{LookTick, "two boxes to tick", 0},
	{LookDots, "dots to count", 0},
	{LookGroups, "two groups of dots to compare", 0},
	{LookArray, "dots in equal rows", 0},
	{LookCoins, "coins with what they are worth", 0},
	{LookPairs, "two pairs of boxes", 0},
	{LookStory, "word problem with room to draw", 0},
	{LookTwin, "two number sentences that share a number", 0},
}

// ownLook adds the look of a single kind, in the file of that kind.
func ownLook(look Look, title string, seconds int) Look {
	looks = append(looks, struct {
		look    Look
		title   string
		seconds int
	}{look, title, seconds})
	return look
}

// AllLooks lists the looks.
func AllLooks() []Look {
	all := make([]Look, len(looks))
	for i, row := range looks {
		all[i] = row.look
	}
	return all
}

// Title describes the look in a few words.
func (l Look) Title() string {
	for _, row := range looks {
		if row.look == l {
			return row.title
		}
	}
	return string(l)
}

// ExtraSeconds is what the look adds to the usual working time of a skill.
func (l Look) ExtraSeconds() int {
	for _, row := range looks {
		if row.look == l {
			return row.seconds
		}
	}
	return 0
}

// ParseLook finds a look by its name; the error names the nearest.
func ParseLook(name string) (Look, error) {
	if slices.Contains(AllLooks(), Look(name)) {
		return Look(name), nil
	}
	names := make([]string, len(looks))
	for i, row := range looks {
		names[i] = string(row.look)
	}
	rest := words.Sayf("; the layouts are %s", strings.Join(names, ", "))
	return "", words.Errorf("no layout %q%s", name, words.SuggestOr(name, names, rest))
}
