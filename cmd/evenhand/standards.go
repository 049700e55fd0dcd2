package main

import (
	"fmt"
	"strings"

	"evenhand/standards"
	"evenhand/standards/task"

	"github.com/urfave/cli/v2"
)

func standardsCommand() *cli.Command {
	return &cli.Command{
		Name: "standards", Usage: "list the published standards and which of them items cover", ArgsUsage: "[--json]",
		Description: "The 69 Common Core State Standards for Mathematics (2010) from kindergarten to grade 2, by code, each with\n" +
			"our own short description, the skills that cover it, and what is missing where it is covered partly or not.\n\n" +
			"Example: evenhand standards",
		Flags:  []cli.Flag{jsonFlag},
		Action: listStandards,
	}
}

// codeRow is a standard as other programs read it.
type codeRow struct {
	Code   task.Code           `json:"code"`
	Topic  string              `json:"topic"`
	Cover  standards.Cover     `json:"cover"`
	Reason string              `json:"reason,omitempty"`
	Skills []standards.SkillID `json:"skills"`
}

// covered is what the list says of a standard.
var covered = map[standards.Cover]string{standards.Served: "yes", standards.Partly: "partly", standards.NotServed: "no"}

func listStandards(c *cli.Context) error {
	if err := noArguments(c); err != nil {
		return err
	}
	var list []codeRow
	tally := map[standards.Cover]int{}
	rows := [][]string{{"STANDARD", "COVERED", "WHAT IT IS", "SKILLS, OR WHAT IS MISSING"}}
	for _, cover := range standards.AllCoverage() {
		row := codeRow{cover.Code, standards.Topic(cover.Code), cover.Cover, cover.Reason, append([]standards.SkillID{}, cover.Skills...)}
		list = append(list, row)
		tally[row.Cover]++
		names := make([]string, len(row.Skills))
		for i, skill := range row.Skills {
			names[i] = string(skill)
		}
		last := strings.Join(names, " ")
		if row.Reason != "" {
			last = strings.TrimSpace(last + " (" + row.Reason + ")")
		}
		rows = append(rows, []string{string(row.Code), covered[row.Cover], row.Topic, last})
	}
	if c.Bool("json") {
		return printJSON(c, list)
	}
	if err := table(c.App.Writer, rows); err != nil {
		return err
	}
	_, err := fmt.Fprintf(c.App.Writer, "%d covered, %d partly, %d not\n", tally[standards.Served], tally[standards.Partly], tally[standards.NotServed])
	return err
}
