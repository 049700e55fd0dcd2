package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"evenhand/standards"
	"evenhand/standards/task"

	"github.com/urfave/cli/v2"
)

func skillsCommand() *cli.Command {
	return &cli.Command{
		Name: "skills", Usage: "list the skills of the catalogue, or tell all of one", ArgsUsage: "[SKILL] [--json]",
		Description: "By grade, in the order of teaching. Plans and other commands name skills as in the column SKILL. With SKILL,\n" +
			"tells all of it: the published standards, an example, and the layouts, how its items can be shown.\n\n" +
			"Example: evenhand skills\n" +
			"         evenhand skills add-two-digit",
		Flags:  []cli.Flag{jsonFlag},
		Action: listSkills,
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
	skills := slices.Clone(standards.Catalogue())
	slices.SortStableFunc(skills, func(a, b standards.Skill) int { return a.Grade - b.Grade })
	if c.Args().Present() {
		name, err := oneArgument(c, "SKILL")
		if err != nil {
			return err
		}
		id, err := skillNamed(name)
		if err != nil {
			return err
		}
		skills = slices.DeleteFunc(skills, func(s standards.Skill) bool { return s.ID != id })
	}
	list := make([]skillRow, len(skills))
	rows := [][]string{{"GRADE", "SKILL", "WHAT IT IS"}}
	for i, s := range skills {
		list[i] = skillRow{s.ID, s.GradeName(), s.Codes, s.Looks, s.Seconds, s.Description, s.Example}
		rows = append(rows, []string{s.GradeName(), string(s.ID), s.Description})
	}
	switch {
	case c.Bool("json"):
		return printJSON(c, list)
	case c.Args().Present():
		return table(c.App.Writer, aboutSkill(skills[0]))
	}
	return table(c.App.Writer, rows)
}

// skillNamed is the skill of a name on the command line.
func skillNamed(name string) (standards.SkillID, error) {
	skill, err := standards.ParseSkill(name)
	if err == nil {
		return skill, nil
	}
	said := err.Error()
	if !strings.HasSuffix(said, "?") {
		said += ";"
	}
	return skill, usagef("%s evenhand skills lists them all", said)
}

// aboutSkill is all that is known of a skill, a row each.
func aboutSkill(s standards.Skill) [][]string {
	rows := [][]string{
		{"skill", string(s.ID)}, {"grade", s.GradeName()}, {"what it is", s.Description}, {"example", s.Example},
		{"standards", standards.JoinCodes(s.Codes, s.ID)}, {"time", fmt.Sprintf("about %d seconds", s.Seconds)},
	}
	for i, look := range s.Looks {
		rows = append(rows, []string{[...]string{"layouts", ""}[min(i, 1)], fmt.Sprintf("%s: %s", look, look.Title())})
	}
	return rows
}

// noArguments refuses arguments.
func noArguments(c *cli.Context) error {
	if c.Args().Present() {
		name, first := c.Command.Name, c.Args().First()
		if filepath.Ext(first) == ".bank" {
			return usagef("%s takes the bank in front: evenhand --bank %s %s", name, inShell(first), name)
		}
		return usagef("%s takes no arguments, but got %q; see evenhand help %s", name, first, name)
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
