package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"evenhand/bank"
	intake "evenhand/import"
	"evenhand/standards"

	"github.com/urfave/cli/v2"
)

func importCommand() *cli.Command {
	return &cli.Command{
		Name: "import", Usage: "bring a colleague's list into the bank", ArgsUsage: "LIST [--column MEANING=HEADING ...] [--dry-run]",
		Description: "LIST is CSV as it comes, in any usual encoding, or a workbook (.xlsx). It says how each column was understood;\n" +
			"--column corrects a wrong guess. Each row is added, already here, or set aside with the reason. Rows set aside\n" +
			"go to a CSV file that can be mended and imported again; the exit code is then 3.\n\n" +
			"Example: evenhand import reyes.csv --by MK\n" +
			"         evenhand import reyes.csv --column 'question=Their heading' --dry-run",
		Flags: []cli.Flag{
			&cli.StringSliceFlag{Name: "column", Usage: "`MEANING=HEADING` of a column, such as 'answer=Result', answer=3 or answer=C; may be given again"},
			&cli.StringFlag{Name: "set-aside", Usage: "write the rows set aside to `FILE`; else beside the list"},
			&cli.StringFlag{Name: "skill", Usage: "`SKILL` of questions that name none and aren't understood"},
			&cli.BoolFlag{Name: "dry-run", Usage: "only say what would happen"},
			byFlag, jsonFlag,
		},
		Action: importList,
	}
}

func importList(c *cli.Context) error {
	path, err := oneArgument(c, "LIST")
	if err != nil {
		return err
	}
	options, err := importOptions(c)
	if err != nil {
		return err
	}
	setAside, err := setAsidePath(c, path)
	if err != nil {
		return err
	}
	list, err := openList(c, path)
	if err != nil {
		return err
	}
	open := withBank
	if options.DryRun {
		open = readingBank
	}
	return open(c, func(b *bank.Bank) error {
		advance, end := progress(c, "importing")
		options.Progress = advance
		report, err := intake.Import(b, list, options)
		end()
		if err != nil {
			return err
		}
		return reportImport(c, report, setAside)
	})
}

func importOptions(c *cli.Context) (intake.ImportOptions, error) {
	o := intake.ImportOptions{By: author(c), At: now(), DryRun: c.Bool("dry-run")}
	if name := c.String("skill"); name != "" {
		skill, err := standards.ParseSkill(name)
		if err != nil {
			return o, usagef("%v; evenhand skills lists them all", err)
		}
		o.Skill = skill
	}
	return o, nil
}

func openList(c *cli.Context, path string) (*intake.List, error) {
	columns := map[string]string{}
	for _, text := range c.StringSlice("column") {
		meaning, heading, ok := strings.Cut(text, "=")
		if !ok {
			return nil, usagef("--column %q: write MEANING=HEADING, such as question=\"Their heading\"", text)
		}
		columns[meaning] = heading
	}
	data, err := readList(c, path)
	if err != nil {
		return nil, fmt.Errorf("can't read the list: %w", err)
	}
	return intake.Open(listName(path), data, intake.Options{Columns: columns})
}

// listName is the name of a list without its folder.
func listName(path string) string {
	if path == "-" {
		return "pasted"
	}
	return filepath.Base(path)
}

// setAsidePath is where the rows set aside go. What stands there must be such rows.
func setAsidePath(c *cli.Context, list string) (string, error) {
	path := c.String("set-aside")
	if path == "" {
		return intake.SetAsidePath(filepath.Join(filepath.Dir(list), listName(list))), nil
	}
	switch data, err := readStart(path); {
	case errors.Is(err, fs.ErrNotExist):
	case err != nil:
		return "", fmt.Errorf("can't write the rows set aside: %w", err)
	case !intake.IsSetAside(data):
		return "", usagef("--set-aside %s: this file holds something else; name a new one", path)
	}
	return path, nil
}

// readStart reads as much of a file as holds its first line.
func readStart(path string) ([]byte, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	return io.ReadAll(io.LimitReader(file, 64<<10))
}

func readList(c *cli.Context, path string) ([]byte, error) {
	if path == "-" {
		return io.ReadAll(c.App.Reader)
	}
	return os.ReadFile(path)
}

// reportImport shows what became of a list and writes the rows set aside.
func reportImport(c *cli.Context, report *intake.Report, setAside string) error {
	describeList(c, report)
	if c.Bool("json") {
		if err := printJSON(c, importJSON(report)); err != nil {
			return err
		}
	} else {
		fmt.Fprintln(c.App.Writer, report.Summary())
	}
	aside := report.Count(intake.SetAside)
	if aside == 0 {
		return nil
	}
	if report.DryRun {
		return inPartf("%s would be set aside", count(aside, "row"))
	}
	written, err := report.WriteSetAside(setAside)
	if err != nil {
		return fmt.Errorf("the other rows are in the bank; import the list again to have these: %w", err)
	}
	if written != setAside {
		say(c, "%s is there already, and somebody may be mending it; it stays as it is", setAside)
	}
	return inPartf("%s set aside in %s; mend them there and import that file", count(aside, "row"), written)
}

func describeList(c *cli.Context, report *intake.Report) {
	list := report.List
	say(c, "%s: %s", list.Name, list.Written())
	for _, column := range list.Columns {
		say(c, "  column %s", column)
	}
	for _, line := range list.Skipped() {
		say(c, "  line %d is no item (%s): %s", line.First, line.Kind, line.Text)
	}
	for _, note := range report.Notes {
		say(c, "%s", note)
	}
	for _, problem := range report.Problems() {
		say(c, "%s", problem)
	}
	if n := report.ByHand(); n > 0 {
		say(c, "%s not understood as mathematics and kept with traits by hand; evenhand list --by-hand shows them", count(n, "question"))
	}
}

// importedRow is what became of a row, for other programs.
type importedRow struct {
	Line   int    `json:"line"`
	Fate   string `json:"fate"`
	ID     string `json:"id,omitempty"`
	Column string `json:"column,omitempty"`
	Reason string `json:"reason,omitempty"`
}

func importJSON(report *intake.Report) []importedRow {
	rows := []importedRow{}
	for _, out := range report.Outcomes {
		row := importedRow{Line: out.First, Fate: string(out.Fate), ID: out.ID}
		if out.Problem != nil {
			row.Line, row.Column, row.Reason = out.Problem.Line, out.Problem.Column, out.Problem.Reason
		}
		rows = append(rows, row)
	}
	return rows
}
