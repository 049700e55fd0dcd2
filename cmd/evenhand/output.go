package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"strings"
	"text/tabwriter"
	"time"

	"evenhand/bank"

	"github.com/urfave/cli/v2"
	"github.com/vbauerster/mpb/v8"
	"github.com/vbauerster/mpb/v8/decor"
	"golang.org/x/term"
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
		fmt.Fprintln(tabs, strings.Join(row, "\t"))
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

// progress is a bar on stderr that appears when the work takes over two seconds
// and stderr is a terminal. The functions advance it and end it.
func progress(c *cli.Context, what string) (advance func(done, total int), end func()) {
	file, ok := c.App.ErrWriter.(*os.File)
	if !ok || !term.IsTerminal(int(file.Fd())) {
		return func(int, int) {}, func() {}
	}
	started := time.Now()
	var bars *mpb.Progress
	var bar *mpb.Bar
	advance = func(done, total int) {
		if bar == nil && time.Since(started) > 2*time.Second {
			bars = mpb.New(mpb.WithOutput(file))
			bar = bars.AddBar(int64(total), mpb.PrependDecorators(decor.Name(what+" ")), mpb.AppendDecorators(decor.Percentage()))
		}
		if bar != nil {
			bar.SetCurrent(int64(done))
		}
	}
	return advance, func() {
		if bar != nil {
			bar.Abort(false)
			bars.Wait()
		}
	}
}

// writeFile writes a file whole or not at all: into a temporary file beside it,
// made safe on the disk, then renamed.
func writeFile(path string, write func(io.Writer) error) error {
	return writeAs(0o644, path, write)
}

// writePrivate writes a file that only its owner can read, as writeFile does.
func writePrivate(path string, write func(io.Writer) error) error {
	return writeAs(0o600, path, write)
}

func writeAs(mode os.FileMode, path string, write func(io.Writer) error) error {
	if err := bank.WriteFile(path, mode, write); err != nil {
		return fmt.Errorf("can't write %s: %w", path, err)
	}
	return nil
}
