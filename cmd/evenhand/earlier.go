package main

import (
	"evenhand/assemble"
	"evenhand/assemble/export"
	"evenhand/standards/task"

	"github.com/urfave/cli/v2"
)

// earlierQuiz reads the quiz of --from and what to keep of it.
func earlierQuiz(c *cli.Context) (assemble.Earlier, error) {
	var earlier assemble.Earlier
	path := c.String("from")
	if path == "" {
		if c.IsSet("replace") || c.IsSet("keep") {
			return earlier, usagef("--replace and --keep need the quiz they speak of: --from quiz.csv")
		}
		return earlier, nil
	}
	rows, err := export.ReadQuizFile(path)
	if err != nil {
		return earlier, err
	}
	for _, row := range rows {
		earlier.Spots = append(earlier.Spots, assemble.Spot{Form: row.Form, Number: int(row.Number), ID: row.ID, Look: task.Look(row.Look)})
	}
	for _, places := range c.StringSlice("replace") {
		earlier.Replace = append(earlier.Replace, splitList(places)...)
	}
	earlier.Keep = splitList(c.String("keep"))
	return earlier, nil
}
