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
		Name: "standards", Usage: "list the published standards and which of them items serve", ArgsUsage: "[--json]",
		Description: "The 69 Common Core State Standards for Mathematics (2010) from kindergarten to grade 2, by code, each with\n" +
			"our own short description, the skills that serve it, and what is missing where it is served\n" +
			"partly or seen by watching only.\n\n" +
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

func listStandards(c *cli.Context) error {
	if err := noArguments(c); err != nil {
		return err
	}
	var list []codeRow
	tally := map[standards.Cover]int{}
	rows := [][]string{{"STANDARD", "SERVED", "WHAT IT IS", "SKILLS, OR WHAT IS MISSING"}}
	for _, cover := range standards.AllCoverage() {
		row := codeRow{cover.Code, standards.Topic(cover.Code), cover.Cover, cover.Reason, append([]standards.SkillID{}, cover.Skills...)}
		list = append(list, row)
		tally[row.Cover]++
		names := make([]string, len(row.Skills))
		for i, skill := range row.Skills {
			names[i] = string(skill)
		}
		served := string(row.Cover)
		if row.Cover == standards.Served {
			served = "yes"
		}
		last := strings.Join(names, " ")
		if row.Reason != "" {
			last = strings.TrimSpace(last + " (" + row.Reason + ")")
		}
		rows = append(rows, []string{string(row.Code), served, row.Topic, last})
	}
	if c.Bool("json") {
		return printJSON(c, list)
	}
	if err := table(c.App.Writer, rows); err != nil {
		return err
	}
	_, err := fmt.Fprintf(c.App.Writer, "%d served, %d partly, %d by watching only\n", tally[standards.Served],
		tally[standards.Partly], tally[standards.ByWatching])
	return err
}
