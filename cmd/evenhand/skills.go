package main

import (
	"strings"

	"evenhand/standards"
	"evenhand/standards/task"

	"github.com/urfave/cli/v2"
)

func skillsCommand() *cli.Command {
	return &cli.Command{
		Name: "skills", Usage: "list the skills of the catalogue", ArgsUsage: "[--json]",
		Description: "Each skill with its grade, the published standards it serves, the looks its items can take\nand what it is. Plans and other commands name skills as in the first column.\n\nExample: evenhand skills",
		Flags:       []cli.Flag{jsonFlag},
		Action:      listSkills,
	}
}

// skillRow is a skill as other programs read it.
type skillRow struct {
	Skill       standards.SkillID `json:"skill"`
	Grade       string            `json:"grade"`
	Standards   []task.Code       `json:"standards"`
	Looks       []task.Look       `json:"looks"`
	Seconds     int               `json:"seconds"`
	Description string            `json:"description"`
	Example     string            `json:"example"`
}

func listSkills(c *cli.Context) error {
	if err := noArguments(c); err != nil {
		return err
	}
	var list []skillRow
	rows := [][]string{{"SKILL", "GRADE", "STANDARDS", "EXAMPLE", "WHAT IT IS", "LOOKS"}}
	for _, s := range standards.Catalogue() {
		list = append(list, skillRow{s.ID, s.GradeName(), s.Codes, s.Looks, s.Seconds, s.Description, s.Example})
		looks := make([]string, len(s.Looks))
		for i, look := range s.Looks {
			looks[i] = string(look)
		}
		rows = append(rows, []string{string(s.ID), s.GradeName(), standards.JoinCodes(s.Codes, s.ID), s.Example, s.Description, strings.Join(looks, " ")})
	}
	if c.Bool("json") {
		return printJSON(c, list)
	}
	return table(c.App.Writer, rows)
}

// noArguments refuses arguments.
func noArguments(c *cli.Context) error {
	if c.Args().Present() {
		return usagef("%s takes no arguments, but got %q; see evenhand help %s", c.Command.Name, c.Args().First(), c.Command.Name)
	}
	return nil
}

// oneArgument wants exactly one argument, a thing such as "FILE".
func oneArgument(c *cli.Context, thing string) (string, error) {
	if c.NArg() != 1 {
		return "", usagef("%s takes one %s, but got %d; see evenhand help %s", c.Command.Name, thing, c.NArg(), c.Command.Name)
	}
	return c.Args().First(), nil
}
