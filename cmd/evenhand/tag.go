package main

import (
	"bufio"
	"fmt"
	"io"
	"os"

	"evenhand/assemble/export"

	"github.com/urfave/cli/v2"
)

func tagCommand() *cli.Command {
	return &cli.Command{
		Name: "tag", Usage: "say skill, standards, key, traits and missteps of tasks, one a line", ArgsUsage: "[FILE|-]",
		Description: "Reads tasks from a file or stdin and writes CSV to stdout; no bank is needed. A line that it can't read\n" +
			"gives a row with the reason in the last column, and the exit code 3.\n\n" +
			"Example: echo '47 + 36 = ?' | evenhand tag",
		Action: tagTasks,
	}
}

func tagTasks(c *cli.Context) error {
	if c.NArg() > 1 {
		return usagef("tag takes one FILE, or - for stdin, but got %d", c.NArg())
	}
	in := c.App.Reader
	if path := c.Args().First(); path != "" && path != "-" {
		file, err := os.Open(path)
		if err != nil {
			return fmt.Errorf("can't read the tasks: %w", err)
		}
		defer file.Close()
		in = io.Reader(file)
	}
	problems := 0
	lines := bufio.NewScanner(in)
	lines.Buffer(nil, 1<<20)
	rows := func(yield func(export.TagRow) bool) {
		for lines.Scan() {
			row := export.Tag(lines.Text())
			if row.Problem != "" {
				problems++
			}
			if !yield(row) {
				return
			}
		}
	}
	if err := export.WriteTags(c.App.Writer, rows); err != nil {
		return err
	}
	if err := lines.Err(); err != nil {
		return fmt.Errorf("can't read the tasks: %w", err)
	}
	if problems > 0 {
		return inPartf("%s could not be read; the column problem says why", count(problems, "line"))
	}
	return nil
}
