package report

import (
	"fmt"
	"slices"
	"strings"

	"evenhand/standards"
)

// Section is one part of the report for a terminal: rows of cells, the heading first.
type Section struct {
	Title string
	Note  string // below the title; may be empty
	Rows  [][]string
}

// Sections are the report for a terminal. Names stand beside codes where Names has them.
func (r *Report) Sections() []Section {
	return []Section{r.quizSection(), r.groupSection(), r.pupilSection(), r.standoutSection(), r.skillSection(), r.itemSection(), r.standardSection()}
}

func (r *Report) quizSection() Section {
	s := Section{Title: "Quizzes", Note: strings.TrimSpace(Caution + "\n" + r.luck()), Rows: [][]string{nil}}
	for _, q := range r.Quizzes {
		s.Rows = append(s.Rows, []string{q.String()})
	}
	return s
}

func (r *Report) groupSection() Section {
	s := Section{Title: "Who could work together this week", Note: r.recentInWords(), Rows: [][]string{nil}}
	for _, g := range r.Groups {
		s.Rows = append(s.Rows, []string{fmt.Sprintf("%s: %s", strings.TrimSpace(g.Class+" "+g.Title), r.members(g))}, []string{"    " + g.Why})
		if g.Next != "" {
			s.Rows = append(s.Rows, []string{"    to begin: " + g.Next})
		}
	}
	for _, command := range r.practice() {
		s.Rows = append(s.Rows, []string{practiceNote + " " + command})
	}
	if len(r.Others) > 0 {
		s.Rows = append(s.Rows, []string{"no pattern so far, or too few answers to tell: " + r.list(r.Others, r.who)})
	}
	return s
}

// practiceNote stands before the command that practice gives.
const practiceNote = "sheets to practice with on Monday, one for each group:"

// practice is the command that prints what the groups could work on, one for each class that has some.
func (r *Report) practice() (commands []string) {
	for _, class := range r.Classes {
		if !slices.ContainsFunc(r.Groups, func(g Group) bool { return g.Class == class }) {
			continue
		}
		command := "evenhand practice"
		if len(r.Weeks) == 1 {
			command += " " + r.Weeks[0]
		}
		if len(r.Classes) > 1 {
			command += fmt.Sprintf(" --class %q", class)
		}
		commands = append(commands, command+" --out monday --fill")
	}
	return commands
}

// members lists the pupils of a group, all of one class, each with what was counted.
func (r *Report) members(g Group) string {
	texts := make([]string, len(g.Members))
	for i, m := range g.Members {
		texts[i] = fmt.Sprintf("%s (%s)", strings.TrimSpace(m.Code+" "+r.Names[m.Code]), m.Count)
	}
	return strings.Join(texts, ", ")
}

// shownWeeks is how many weeks back a terminal shows; CSV and page have them all.
const shownWeeks = 6

func (r *Report) pupilSection() Section {
	from := max(0, len(r.Weeks)-shownWeeks)
	s := Section{Title: "Pupils", Rows: [][]string{append([]string{"PUPIL"}, r.Weeks[from:]...)}}
	for _, p := range r.Pupils {
		row := []string{r.who(p.Who)}
		for _, week := range p.Weeks[from:] {
			row = append(row, rightOf(week))
		}
		s.Rows = append(s.Rows, row)
	}
	return s
}

func (r *Report) standoutSection() Section {
	s := Section{Title: "What stands out", Rows: [][]string{nil}}
	for _, line := range r.standoutLines(r.who) {
		s.Rows = append(s.Rows, []string{line})
	}
	return s
}

// standoutLines are all missteps that stand out, a sentence each.
func (r *Report) standoutLines(name func(Who) string) (lines []string) {
	for _, p := range r.Pupils {
		for _, standout := range p.Standouts {
			lines = append(lines, name(p.Who)+" "+standout.String())
		}
	}
	return lines
}

// rightOf is "7 of 10", or a dash where nothing was answered.
func rightOf(p Part) string {
	if p.Of == 0 {
		return "-"
	}
	return fmt.Sprintf("%d of %d", p.Right, p.Of)
}

func standoutText(p Pupil) string {
	texts := make([]string, len(p.Standouts))
	for i, s := range p.Standouts {
		texts[i] = s.String()
	}
	return strings.Join(texts, "; ")
}

func (r *Report) skillSection() Section {
	s := Section{Title: "Skills", Note: rangeNote, Rows: [][]string{{"SKILL", "CLASS", "RIGHT ANSWERS", "PUPILS"}}}
	for _, row := range r.Skills {
		s.Rows = append(s.Rows, []string{string(row.ID), row.Class, row.Marked(), fmt.Sprint(row.Pupils)})
	}
	return s
}

// rangeNote says what "could be" means.
const rangeNote = "Right answers as counted; could be is the range that chance alone explains (95 of 100 times)."

func (r *Report) itemSection() Section {
	s := Section{
		Title: "Items of " + strings.Join(r.lastWeeks(), ", ") + ", easiest to hardest",
		Rows:  [][]string{{"PLACE", "QUESTION", "EXPECTED", "RIGHT ANSWERS", "WORTH A LOOK"}},
	}
	for _, it := range r.LastItems() {
		s.Rows = append(s.Rows, []string{it.Place(), it.Asks, it.ExpectedInTen(), it.Marked(), strings.Join(it.Look(), "; ")})
	}
	return s
}

func (r *Report) standardSection() Section {
	s := Section{
		Title: "Standards so far", Note: standardsNote,
		Rows: [][]string{{"STANDARD", "WHAT IT IS", "CLASS", "MOSTLY RIGHT", "NOT YET", "TOO EARLY TO SAY"}},
	}
	for _, row := range r.Standards {
		s.Rows = append(s.Rows, []string{
			string(row.Code), standards.Topic(row.Code), row.Part.String(), pupilCount(row.MostlyRight),
			or(r.list(row.NotYet, r.who), "-"), pupilCount(row.TooEarly),
		})
	}
	return s
}

// standardsNote says what the words of the standards mean.
var standardsNote = fmt.Sprintf("Mostly right: at least %d answers, three in four of them right. That is what "+
	"these quizzes saw so far, no certificate that a standard is met.", leastSeen)

func pupilCount(n int) string {
	if n == 0 {
		return "-"
	}
	return plural(n, "pupil")
}

func or(a, b string) string {
	if a != "" {
		return a
	}
	return b
}
