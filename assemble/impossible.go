package assemble

import (
	"fmt"
	"strings"

	"evenhand/standards"
)

// ImpossibleError says that no quiz keeps all the rules of the plan, why, and
// what would help.
type ImpossibleError struct {
	// Rules can't be kept together; without any one of them the others can.
	Rules []Rule
	// Ways are changes of the plan, the smallest first; each is enough by itself.
	Ways []string
	// Generate is items to make: with all of them in the bank the plan can be
	// met. It is empty when making items doesn't help.
	Generate []Generate
}

// Rule is one rule of a plan in a teacher's words.
type Rule struct {
	Text  string
	Offer int // how many items the bank has for it, −1 where that says nothing
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
	if len(e.Rules) == 0 {
		return "no quiz keeps all the rules of the plan together; the time ran out before it was clear which of them are in the way"
	}
	var text strings.Builder
	text.WriteString("no quiz keeps all the rules of the plan. These can't be kept together:\n")
	for _, r := range e.Rules {
		fmt.Fprintf(&text, "  - %s\n", r.Text)
	}
	switch {
	case len(e.Ways) > 0:
		text.WriteString("Any one of these changes is enough:\n")
	case len(e.Generate) == 0:
		text.WriteString("Loosening one of them is not enough, as others are in the way too; mend these first and try again.")
	}
	for _, way := range e.Ways {
		fmt.Fprintf(&text, "  - %s\n", way)
	}
	if len(e.Generate) > 0 {
		if len(e.Ways) > 0 {
			text.WriteString("Or make the items that lack (--fill does it):\n")
		} else {
			text.WriteString("Make the items that lack (--fill does it):\n")
		}
		for _, g := range e.Generate {
			fmt.Fprintf(&text, "      %s\n", g.Command())
		}
	}
	return strings.TrimRight(text.String(), "\n")
}
