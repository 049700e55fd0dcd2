package main

import (
	"fmt"
	"os"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"
)

// rule refuses a call in which an option would say nothing and be passed over in silence.
type rule func(*cli.Context) error

// together holds a call to rules before anything is opened; a command has it as what comes before it.
func together(all ...rule) cli.BeforeFunc { return cli.BeforeFunc(rules(all...)) }

// rules are several as one.
func rules(all ...rule) rule {
	return func(c *cli.Context) error {
		for _, broken := range all {
			if err := broken(c); err != nil {
				return err
			}
		}
		return nil
	}
}

// either are options of which each is a thing to do of its own.
func either(options ...string) rule {
	return func(c *cli.Context) error {
		if said := givenOf(c, options); len(said) > 1 {
			return usagef("--%s and --%s are two things to do; say one of the two", said[0], said[1])
		}
		return nil
	}
}

// apart are options that say nothing beside the main one, and why.
func apart(main, why string, options ...string) rule {
	return func(c *cli.Context) error {
		if said := givenOf(c, options); len(said) > 0 && given(c, main) {
			return usagef("--%s can't stand beside --%s: %s", said[0], main, why)
		}
		return nil
	}
}

// only are options that say something beside one of the main ones alone, and why.
func only(mains []string, why string, options ...string) rule {
	return func(c *cli.Context) error {
		has := func(main string) bool { return given(c, main) && fmt.Sprint(c.Value(main)) != "" }
		if said := givenOf(c, options); len(said) > 0 && !slices.ContainsFunc(mains, has) {
			return usagef("--%s goes with --%s: %s", said[0], strings.Join(mains, " or --"), why)
		}
		return nil
	}
}

func givenOf(c *cli.Context, options []string) (said []string) {
	for _, option := range options {
		if given(c, option) {
			said = append(said, option)
		}
	}
	return said
}

// given says whether this very call has the option: what the environment sets for all calls is no wish about one.
func given(c *cli.Context, option string) bool {
	flag := flagNamed(c.Command.Flags, option)
	if yes, ok := flag.(*cli.BoolFlag); ok {
		return c.Bool(yes.Name)
	}
	said := c.IsSet(option)
	if from, ok := flag.(cli.DocGenerationFlag); ok && said {
		for _, variable := range from.GetEnvVars() {
			said = said && os.Getenv(variable) != fmt.Sprint(c.Value(option))
		}
	}
	return said
}
