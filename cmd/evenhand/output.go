package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"github.com/urfave/cli/v2"
)

// jsonFlag asks for JSON on stdout.
var jsonFlag = &cli.BoolFlag{Name: "json", Usage: "print JSON for other programs"}

// say writes a line of talk to stderr.
func say(c *cli.Context, format string, args ...any) {
	fmt.Fprintf(c.App.ErrWriter, format+"\n", args...)
}

// printJSON writes a value to stdout, two spaces a level.
func printJSON(c *cli.Context, value any) error {
	encoder := json.NewEncoder(c.App.Writer)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	return encoder.Encode(value)
}

// table prints rows in columns; the first row is the heading.
func table(w io.Writer, rows [][]string) error {
	var text bytes.Buffer
	tabs := tabwriter.NewWriter(&text, 0, 0, 2, ' ', 0)
	for _, row := range rows {
		fmt.Fprintln(tabs, strings.ReplaceAll(strings.Join(row, "\t"), "\n", " / ")) // a cell of two lines would tear the table
	}
	if err := tabs.Flush(); err != nil {
		return err
	}
	for line := range strings.Lines(text.String()) {
		if _, err := fmt.Fprintln(w, strings.TrimRight(line, " \n")); err != nil {
			return err
		}
	}
	return nil
}

// count is "1 item" or "3 items".
func count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// them is how so many things are spoken of once they were named.
func them(n int) string {
	if n == 1 {
		return "it"
	}
	return "them"
}
