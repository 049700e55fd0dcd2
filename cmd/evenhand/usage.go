package main

import (
	"regexp"
	"strings"

	"evenhand/standards/words"

	"github.com/urfave/cli/v2"
)

// How the library says that a flag is unknown, misses its value, or has one it can't take.
var (
	unknownFlag  = regexp.MustCompile(`^flag provided but not defined: -+(\S+)$`)
	missingValue = regexp.MustCompile(`^flag needs an argument: -+(\S+)$`)
	wrongValue   = regexp.MustCompile(`^invalid (?:boolean )?value "(.*)" for (?:flag )?-+(\S+): .*$`)
)

// onUsageError says what is wrong with a call in a person's words.
func onUsageError(c *cli.Context, err error, _ bool) error {
	flags, help := c.App.Flags, "evenhand help"
	if c.Command.Name != c.App.Name {
		flags, help = append(c.Command.Flags, c.App.Flags...), "evenhand help "+c.Command.Name
	}
	said := err.Error()
	if found := unknownFlag.FindStringSubmatch(said); found != nil {
		if near, ok := words.Nearest(found[1], flagNames(flags)); ok && len(near) > 1 {
			return usagef("there is no option --%s here; did you mean --%s? See %s", found[1], near, help)
		}
		return usagef("there is no option --%s here; %s lists them all", found[1], help)
	}
	if found := missingValue.FindStringSubmatch(said); found != nil {
		return usagef("--%s needs a value behind it%s; see %s", found[1], valueOf(flags, found[1]), help)
	}
	if found := wrongValue.FindStringSubmatch(said); found != nil {
		return usagef("--%s takes %s, not %q; see %s", found[2], kindOf(flags, found[2]), found[1], help)
	}
	return usagef("%v; see %s", err, help)
}

func flagNames(flags []cli.Flag) []string {
	var names []string
	for _, flag := range flags {
		names = append(names, flag.Names()...)
	}
	return names
}

// valueOf tells what a flag's value is, from its description.
func valueOf(flags []cli.Flag, name string) string {
	flag, ok := flagNamed(flags, name).(cli.DocGenerationFlag)
	if !ok {
		return ""
	}
	return ": " + strings.ReplaceAll(flag.GetUsage(), "`", "")
}

// kindOf is what kind of value a flag takes.
func kindOf(flags []cli.Flag, name string) string {
	switch flagNamed(flags, name).(type) {
	case *cli.IntFlag:
		return "a whole number"
	case *cli.Uint64Flag:
		return "a whole number of 0 or more"
	case *cli.Float64Flag:
		return "a number such as -1.5"
	case *cli.DurationFlag:
		return "a time such as 30s or 2m"
	case *cli.BoolFlag:
		return "no value"
	}
	return "another value"
}

// unknownName is the error for a word that should be one of the commands.
func unknownName(app *cli.App, typed string) error {
	var names []string
	for _, command := range app.VisibleCommands() {
		names = append(names, command.Name)
	}
	if name, ok := words.Nearest(typed, names); ok {
		return usagef("no command %q; did you mean %q? See evenhand help", typed, name)
	}
	return usagef("no command %q; evenhand help lists them all", typed)
}
