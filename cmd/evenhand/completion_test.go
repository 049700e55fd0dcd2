package main

import (
	"slices"
	"strings"
	"testing"

	"evenhand/standards"

	"github.com/urfave/cli/v2"
)

func TestComplete(t *testing.T) {
	app := newApp()
	for _, c := range []struct{ words, want string }{
		{"gen", "generate"},
		{"generate --sk", "--skill"},
		{"generate --skill subtract-te", "subtract-tens"},
		{"--bank team.bank list --band ", "warm-up core stretch"},
		{"--bank=team.bank list --status re", "ready retired"},
		{"list --skill add-tens --layout col", "column"},
		{"help ba", "backup"},
		{"generate --count ", ""}, // any number
		{"assemble ", ""},         // a file
		{"nothing --sk", ""},
		{"complet", "completion"}, // never the hidden command
	} {
		got := complete(app, strings.Split(c.words, " "))
		if strings.Join(got, " ") != c.want {
			t.Errorf("%q offers %q, want %q", c.words, got, c.want)
		}
	}
}

// Every option that is followed by one of a few words offers words that the program takes.
func TestEveryOptionCompletes(t *testing.T) {
	app, seen := newApp(), map[string]bool{}
	for _, command := range app.Commands {
		for _, flag := range command.Flags {
			name := flag.Names()[0]
			seen[name] = true
			offered := complete(app, []string{command.Name, "--" + name[:1]})
			if !slices.Contains(offered, "--"+name) {
				t.Errorf("%s --%s is not offered in %q", command.Name, name, offered)
			}
			complete(app, []string{command.Name, "--" + name}) // the last word may be an option without its value
		}
	}
	for name, values := range valuesOf {
		if !seen[name] {
			t.Errorf("no command has the option --%s, whose values are offered", name)
		}
		if len(values()) == 0 {
			t.Errorf("--%s offers nothing", name)
		}
	}
	if skills := complete(app, []string{"generate", "--skill", ""}); len(skills) != len(standards.Catalogue()) {
		t.Errorf("%d skills are offered of %d", len(skills), len(standards.Catalogue()))
	}
}

// A flag of every kind names what it takes.
func TestKindsOfFlags(t *testing.T) {
	for _, command := range newApp().Commands {
		for _, flag := range command.Flags {
			_, text := flag.(*cli.StringFlag)
			_, texts := flag.(*cli.StringSliceFlag)
			if kind := kindOf(command.Flags, flag.Names()[0]); !text && !texts && kind == "another value" {
				t.Errorf("%s --%s (%T) does not say what it takes", command.Name, flag.Names()[0], flag)
			}
		}
	}
}
