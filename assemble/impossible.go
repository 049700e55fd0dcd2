package assemble

import (
	"fmt"
	"slices"
	"strings"

	"evenhand/standards"
)

// ImpossibleError says that no quiz keeps all the rules of the plan, why, and
// what would help.
type ImpossibleError struct {
	// Clashes are in each other's way one by one: all of them must be mended. With the first way
	// of each the plan can be met. It is empty when the time ran out before any was found.
	Clashes []Clash
	// Generate is items to make: with all of them in the bank the clashes are mended that
	// list some. It is empty when making items doesn't help.
	Generate []Generate
	// Items is how many items a form holds by the plan's own word, which changes, too, with a row's count; 0
	// where the plan doesn't say it, or no way changes it.
	Items int
	// CutShort says that the time ran out before all was looked at: more may be in the way, and more may
	// help, than is told.
	CutShort bool
}

// ByMaking says that with all the items of Generate in the bank the plan can be met.
func (e *ImpossibleError) ByMaking() bool {
	none := func(c Clash) bool { return len(c.Generate) == 0 }
	return len(e.Generate) > 0 && !slices.ContainsFunc(e.Clashes, none)
}

// FirstWays says that several clashes are told and the first way of each is enough for all.
func (e *ImpossibleError) FirstWays() bool {
	none := func(c Clash) bool { return len(c.Ways) == 0 }
	return len(e.Clashes) > 1 && !e.CutShort && !slices.ContainsFunc(e.Clashes, none)
}

// Clash is rules that can't be kept together; without any one of them the others can.
type Clash struct {
	Rules    []Rule
	Ways     []Way      // changes of the plan, the smallest first; each mends this clash by itself
	Generate []Generate // items to make that mend it, too
}

// Way is a change of the plan.
type Way struct {
	Text   string // for people
	Change Change
	Row    int // of the plan, from 0, whose count changes
	To     int // what the number becomes
	// Grade is to be written into the plan, too, where the row left out alone made it one for these pupils:
	// for others, items are in other bands. Empty where nothing is.
	Grade string
	Says  Saying
}

func (w Way) String() string { return w.Text }

// Change is what a way changes in a plan.
type Change int

// The changes that are one number of the plan; any other is told in words alone.
const (
	ChangeOther Change = iota
	ChangeCount        // the items of a row; 0 leaves it out
	ChangeMinutes
	ChangeForms
	ChangeRest // weeks
)

// Rule is one rule of a plan in a teacher's words.
type Rule struct {
	Text  string
	Offer int // how many items the bank has for it, −1 where that says nothing
	Says  Saying
}

// Generate is one call of evenhand generate.
type Generate struct {
	Skill standards.SkillID
	Where standards.Where
	Count int
	Seed  uint64
}

// Command is the call as it is typed.
func (g Generate) Command() string {
	command := "evenhand generate --skill " + string(g.Skill)
	for _, c := range g.Where {
		command += fmt.Sprintf(" --where '%s%s%s'", c.Trait, c.Op, c.Value)
	}
	command += fmt.Sprintf(" --count %d", g.Count)
	if g.Seed != 1 {
		command += fmt.Sprintf(" --seed %d", g.Seed)
	}
	return command
}

func (e *ImpossibleError) Error() string {
	if len(e.Clashes) == 0 {
		return "no quiz keeps all the rules of the plan together; the time ran out before it was clear which of them are in the way (--limit gives more)"
	}
	var text strings.Builder
	text.WriteString("no quiz keeps all the rules of the plan. ")
	for i, c := range e.Clashes {
		e.clash(&text, c, i)
	}
	if e.Items > 0 {
		fmt.Fprintf(&text, "Where the count of a row changes, change items = %d in the plan as well, or take that line out.\n", e.Items)
	}
	switch {
	case e.CutShort:
		text.WriteString("The time ran out before all was looked at; --limit gives more.")
	case e.FirstWays():
		text.WriteString("With the first change of each the plan can be met.")
	}
	return strings.TrimRight(text.String(), "\n")
}

// clash writes one clash and what mends it.
func (e *ImpossibleError) clash(text *strings.Builder, c Clash, i int) {
	switch {
	case i > 0:
		text.WriteString("Nor can these be kept together:\n")
	default:
		text.WriteString("These can't be kept together:\n")
	}
	for _, r := range c.Rules {
		fmt.Fprintf(text, "  - %s\n", r.Text)
	}
	switch {
	case len(c.Ways) > 0 && len(e.Clashes) == 1:
		text.WriteString("Any one of these changes is enough:\n")
	case len(c.Ways) > 0:
		text.WriteString("Any one of these changes mends it:\n")
	case !e.CutShort && len(c.Generate) == 0 && len(e.Clashes) == 1:
		text.WriteString("No change of one number mends it: write items for it, or ask for something else.\n")
	case !e.CutShort && len(c.Generate) == 0:
		text.WriteString("No change of one number mends it beside the first change of the others: " +
			"write items for it, or ask for something else.\n")
	}
	for _, way := range c.Ways {
		fmt.Fprintf(text, "  - %s\n", way)
	}
	switch {
	case len(c.Generate) == 0:
		return
	case len(c.Ways) > 0:
		text.WriteString("Or make the missing items (--fill does it):\n")
	default:
		text.WriteString("Make the missing items (--fill does it):\n")
	}
	for _, g := range c.Generate {
		fmt.Fprintf(text, "      %s\n", g.Command())
	}
}
