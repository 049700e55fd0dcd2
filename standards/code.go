package standards

import (
	"regexp"
	"slices"
	"strings"

	"evenhand/standards/task"
	"evenhand/standards/words"
)

// What stands where codes are shown and there is none.
const (
	BeyondK2     = "beyond K-2"               // the skill comes after grade 2
	NoneNamesIt  = "no K-2 standard names it" // the skill is taught up to grade 2, but no standard asks for just this
	CodeNotKnown = "standard not known"       // an item kept by hand, whose mathematics nobody has read
)

// Topic describes a standard in our own few words.
func Topic(c task.Code) string {
	for _, row := range codeTable {
		if row.code == c {
			return row.topic
		}
	}
	return ""
}

// AllCodes lists the 69 standards in the order of the document.
func AllCodes() []task.Code {
	all := make([]task.Code, len(codeTable))
	for i, row := range codeTable {
		all[i] = row.code
	}
	return all
}

var codePattern = regexp.MustCompile(`^(K|1|2)\.([A-Z]+)\.(?:([A-D])\.)?([0-9]+)$`)

// identifier begins a code in full, as the standards' own site writes it:
// CCSS.MATH.CONTENT.2.NBT.B.5.
var identifier = regexp.MustCompile(`^CCSS\.(?:MATH\.)?(?:CONTENT\.)?`)

// ParseCode reads a code with or without its cluster letter ("2.NBT.B.5", "2.NBT.5") or as
// an identifier (CCSS.MATH.CONTENT.2.NBT.B.5) and gives it in full.
func ParseCode(text string) (task.Code, error) {
	clean := identifier.ReplaceAllString(strings.ToUpper(strings.TrimSpace(text)), "")
	if codePattern.MatchString(clean) {
		for _, c := range AllCodes() {
			if string(c) == clean || c.Short() == clean {
				return c, nil
			}
		}
	}
	var names []string
	for _, c := range AllCodes() {
		names = append(names, string(c), c.Short())
	}
	return "", words.Errorf("no standard %q from kindergarten to grade 2%s", text, words.Suggest(clean, names))
}

// JoinCodes shows the codes of an item of a skill in one cell, separated by a space, or says why
// there is none. The skill is empty for an item whose mathematics isn't understood.
func JoinCodes(codes []task.Code, skill SkillID) string {
	if len(codes) == 0 {
		s, known := catalogue.Skill(skill)
		switch {
		case !known:
			return CodeNotKnown
		case s.Grade > 2:
			return BeyondK2
		}
		return NoneNamesIt
	}
	parts := make([]string, len(codes))
	for i, c := range codes {
		parts[i] = string(c)
	}
	return strings.Join(parts, " ")
}

// SplitCodes reads what JoinCodes wrote, skipping what is no code.
func SplitCodes(cell string) []task.Code {
	var codes []task.Code
	for part := range strings.FieldsFuncSeq(cell, func(r rune) bool { return strings.ContainsRune(" ,;", r) }) {
		if c, err := ParseCode(part); err == nil && !slices.Contains(codes, c) {
			codes = append(codes, c)
		}
	}
	return codes
}

// codeTable holds the standards, Common Core State Standards for Mathematics
// (2010), with topics in our own words.
var codeTable = []struct {
	code  task.Code
	topic string
}{
	{"K.CC.A.1", "count to 100 by ones and tens"},
	{"K.CC.A.2", "count on from a given number"},
	{"K.CC.A.3", "write numbers to 20"},
	{"K.CC.B.4", "link counting to how many"},
	{"K.CC.B.5", "count how many"},
	{"K.CC.C.6", "compare two groups of things"},
	{"K.CC.C.7", "compare written numbers to 10"},
	{"K.OA.A.1", "show adding and taking away"},
	{"K.OA.A.2", "add and subtract within 10, stories too"},
	{"K.OA.A.3", "break numbers to 10 into pairs"},
	{"K.OA.A.4", "partners that make 10"},
	{"K.OA.A.5", "quick sums and differences within 5"},
	{"K.NBT.A.1", "11 to 19 as ten and ones"},
	{"K.MD.A.1", "describe length and weight"},
	{"K.MD.A.2", "compare two things by size"},
	{"K.MD.B.3", "sort and count things"},
	{"K.G.A.1", "name shapes and where they are"},
	{"K.G.A.2", "name shapes at any size or turn"},
	{"K.G.A.3", "flat or solid shapes"},
	{"K.G.B.4", "compare shapes"},
	{"K.G.B.5", "build and draw shapes"},
	{"K.G.B.6", "join shapes to larger ones"},
	{"1.OA.A.1", "stories within 20"},
	{"1.OA.A.2", "stories with three addends to 20"},
	{"1.OA.B.3", "turn around and regroup addends"},
	{"1.OA.B.4", "subtraction as an unknown addend"},
	{"1.OA.C.5", "counting and adding"},
	{"1.OA.C.6", "add and subtract within 20"},
	{"1.OA.D.7", "what the equal sign means"},
	{"1.OA.D.8", "unknown number in a sentence"},
	{"1.NBT.A.1", "count, read and write to 120"},
	{"1.NBT.B.2", "tens and ones"},
	{"1.NBT.B.3", "compare two-digit numbers"},
	{"1.NBT.C.4", "two-digit plus ones or tens, within 100"},
	{"1.NBT.C.5", "ten more, ten less"},
	{"1.NBT.C.6", "subtract tens from tens"},
	{"1.MD.A.1", "order three lengths"},
	{"1.MD.A.2", "measure with equal units"},
	{"1.MD.B.3", "hours and half hours"},
	{"1.MD.C.4", "sort and read data"},
	{"1.G.A.1", "what makes a shape that shape"},
	{"1.G.A.2", "put shapes together"},
	{"1.G.A.3", "halves and quarters of shapes"},
	{"2.OA.A.1", "one- and two-step stories within 100"},
	{"2.OA.B.2", "sums and differences within 20 from memory"},
	{"2.OA.C.3", "odd and even"},
	{"2.OA.C.4", "small arrays as equal addends"},
	{"2.NBT.A.1", "hundreds, tens and ones"},
	{"2.NBT.A.2", "count within 1000, by 5s, 10s, 100s"},
	{"2.NBT.A.3", "read and write to 1000, expanded form"},
	{"2.NBT.A.4", "compare three-digit numbers"},
	{"2.NBT.B.5", "add and subtract within 100"},
	{"2.NBT.B.6", "up to four two-digit addends"},
	{"2.NBT.B.7", "add and subtract within 1000"},
	{"2.NBT.B.8", "ten or a hundred more or less"},
	{"2.NBT.B.9", "explain why a way of adding works"},
	{"2.MD.A.1", "measure with a ruler"},
	{"2.MD.A.2", "measure twice with two units"},
	{"2.MD.A.3", "estimate lengths"},
	{"2.MD.A.4", "how much longer"},
	{"2.MD.B.5", "stories about lengths"},
	{"2.MD.B.6", "number line sums"},
	{"2.MD.C.7", "time to five minutes, a.m. and p.m."},
	{"2.MD.C.8", "money stories"},
	{"2.MD.D.9", "line plots of lengths"},
	{"2.MD.D.10", "picture and bar graphs"},
	{"2.G.A.1", "shapes by their sides and angles"},
	{"2.G.A.2", "rows and columns of squares"},
	{"2.G.A.3", "halves, thirds and quarters"},
}
