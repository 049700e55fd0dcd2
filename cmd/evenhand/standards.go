package main

import (
	"evenhand/standards"

	"github.com/urfave/cli/v2"
)

func standardsCommand() *cli.Command {
	return &cli.Command{
		Name: "standards", Usage: "list the published standards and the skills that serve them", ArgsUsage: "[--json]",
		Description: "The 69 Common Core State Standards for Mathematics (2010) from kindergarten to grade 2, by code, each with\nour own short description.\n\nExample: evenhand standards",
		Flags:       []cli.Flag{jsonFlag},
		Action:      listStandards,
	}
}

// codeRow is a standard as other programs read it.
type codeRow struct {
	Code   standards.Code      `json:"code"`
	Topic  string              `json:"topic"`
	Skills []standards.SkillID `json:"skills"`
}

func listStandards(c *cli.Context) error {
	if err := noArguments(c); err != nil {
		return err
	}
	var list []codeRow
	rows := [][]string{{"STANDARD", "WHAT IT IS", "SKILLS"}}
	for _, code := range standards.AllCodes() {
		row := codeRow{Code: code, Topic: code.Topic(), Skills: standards.Catalogue().Serving(code)}
		list = append(list, row)
		names := ""
		for _, skill := range row.Skills {
			names += string(skill) + " "
		}
		rows = append(rows, []string{string(code), row.Topic, or(names, "none")})
	}
	if c.Bool("json") {
		return printJSON(c, list)
	}
	return table(c.App.Writer, rows)
}
