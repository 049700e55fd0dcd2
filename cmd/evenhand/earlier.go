package main

import (
	"os"
	"path/filepath"

	"evenhand/assemble"
	"evenhand/assemble/export"
	"evenhand/bank"
	"evenhand/standards/task"

	"github.com/urfave/cli/v2"
)

// earlierQuiz reads the quiz of --from and what to keep of it.
func earlierQuiz(c *cli.Context) (assemble.Earlier, error) {
	var earlier assemble.Earlier
	path := c.String("from")
	if path == "" {
		return earlier, nil
	}
	earlier, err := spotsOf(c, path)
	if err != nil {
		return earlier, err
	}
	for _, places := range c.StringSlice("replace") {
		earlier.Replace = append(earlier.Replace, splitList(places)...)
	}
	earlier.Keep = splitList(c.String("keep"))
	return earlier, nil
}

// spotsOf are the places of the quiz: of its quiz.csv or folder, else as the bank keeps it.
func spotsOf(c *cli.Context, name string) (earlier assemble.Earlier, err error) {
	if !isQuizFolder(name) {
		err := readingBank(c, func(b *bank.Bank) error {
			kept, err := b.Quiz(name)
			earlier = assemble.EarlierOf(kept)
			return err
		})
		return earlier, err
	}
	if info, err := os.Stat(name); err == nil && info.IsDir() {
		name = filepath.Join(name, "quiz.csv")
	}
	rows, err := export.ReadQuizFile(name)
	if given, wrong := export.Given(name, c.String("week")); wrong == nil {
		earlier.Quiz = given.ID
	}
	for _, row := range rows {
		earlier.Spots = append(earlier.Spots, assemble.Spot{Form: string(row.Form), Number: int(row.Number), ID: row.ID, Look: task.Look(row.Look)})
	}
	return earlier, err
}
