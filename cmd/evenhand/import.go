package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"

	"evenhand/assemble/export/qti"
	"evenhand/bank"
	intake "evenhand/import"
	"evenhand/standards"

	"github.com/urfave/cli/v2"
)

func importCommand() *cli.Command {
	return &cli.Command{
		Name: "import", Usage: "bring a colleague's list into the bank", ArgsUsage: "LIST [--column MEANING=HEADING ...] [--dry-run]",
		Description: "LIST is CSV as it comes, in any usual encoding, a workbook (.xlsx), or a package of QTI 3.0 (.zip). It says how\n" +
			"each column was understood; --column corrects a wrong guess. Each row is added, already here, or set aside with the\n" +
			"reason. Rows set aside go to a CSV file that can be mended and imported again; the exit code is then 3. It is 3 as\n" +
			"well when a column or a sheet was left out that may matter: say what it is, or that it is unused.\n" +
			"An export of this very bank that was edited shows what is different; --revise makes it so.\n\n" +
			"Example: evenhand import demo/sv-friday-mix.csv --by SV\n" +
			"         evenhand import demo/sv-friday-mix.csv --column answer=B --dry-run\n" +
			"         evenhand import demo/jk-clocks.txt --undo --by JK",
		Flags: []cli.Flag{
			&cli.StringSliceFlag{Name: "column", Usage: "`MEANING=HEADING` of a column, such as 'answer=Result', answer=3 or answer=C; may be given again"},
			&cli.StringSliceFlag{Name: "sheet", Usage: "read the `SHEET` of a workbook, or all; may be given again"},
			&cli.StringFlag{Name: "encoding", Usage: "`NAME` of the list's encoding where it is found wrongly, such as windows-1250 or mac-roman"},
			&cli.StringFlag{Name: "leave-out", Usage: "`WHICH` number to ask for in whole sentences such as 47 + 36 = 83: result, first or second"},
			&cli.StringFlag{Name: "set-aside", Usage: "write the rows set aside to `FILE`; else beside the list"},
			&cli.StringFlag{Name: "skill", Usage: "`SKILL` of questions that name none and aren't understood"},
			&cli.BoolFlag{Name: "revise", Usage: "make revisions of what was edited in an export of this bank"},
			&cli.BoolFlag{Name: "undo", Usage: "take the whole list out of use again, if none of its items was used"},
			&cli.BoolFlag{Name: "dry-run", Usage: "only say what would happen"},
			byFlag, jsonFlag,
		},
		Before: together(apart("undo", "the whole list is taken out of use, by its name alone",
			"column", "sheet", "encoding", "leave-out", "set-aside", "skill", "revise", "json")),
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
	if c.Bool("undo") {
		return undoImport(c, path, options)
	}
	if err := errors.Join(csvFile.named(c.String("set-aside")), checkSetAside(c)); err != nil {
		return err
	}
	book, err := openBook(c, path)
	if err != nil {
		return err
	}
	if err := fitsBook(c, book, listName(path)); err != nil {
		return err
	}
	open := withBank
	if options.DryRun {
		open = readingBank
	}
	return open(c, func(b *bank.Bank) error {
		var reports []*intake.Report
		for _, list := range book.Lists {
			advance, end := progress(c, "importing")
			options.Progress = advance
			report, err := intake.Import(b, list, options)
			end()
			if err != nil {
				return err
			}
			reports = append(reports, report)
		}
		return reportImport(c, path, book, reports)
	})
}

// fitsBook refuses options that would say nothing about what the file holds.
func fitsBook(c *cli.Context, book *intake.Book, name string) error {
	switch {
	case c.Bool("revise") && !slices.ContainsFunc(book.Lists, (*intake.List).OwnExport):
		return usagef("--revise is for an export of this bank that was edited, and %s is none; leave it off", name)
	case c.String("set-aside") != "" && len(book.Lists) > 1:
		return usagef("--set-aside names one file, but %s has %s, each of which gets its own; leave it off, or "+
			"read one sheet with --sheet", name, count(len(book.Lists), "sheet"))
	}
	return nil
}

func importOptions(c *cli.Context) (intake.ImportOptions, error) {
	o := intake.ImportOptions{By: author(c), At: now(), DryRun: c.Bool("dry-run"), Revise: c.Bool("revise")}
	if name := c.String("skill"); name != "" {
		skill, err := skillNamed(name)
		if err != nil {
			return o, err
		}
		o.Skill = skill
	}
	if c.IsSet("leave-out") {
		which, err := choices("leave-out", []string{c.String("leave-out")}, []intake.LeaveOut{intake.LeaveOutResult, intake.LeaveOutFirst, intake.LeaveOutSecond})
		if err != nil {
			return o, err
		}
		o.LeaveOut = which[0]
	}
	return o, nil
}

func openBook(c *cli.Context, path string) (*intake.Book, error) {
	o := intake.Options{Columns: map[string]string{}, Sheets: c.StringSlice("sheet"), Encoding: c.String("encoding")}
	for _, text := range c.StringSlice("column") {
		meaning, heading, ok := strings.Cut(text, "=")
		switch {
		case !ok:
			return nil, usagef("--column %q: write MEANING=HEADING, such as question=\"Their heading\"", text)
		case meaning == string(intake.Unused):
			o.Unused = append(o.Unused, heading)
		default:
			o.Columns[meaning] = heading
		}
	}
	data, err := readList(c, path)
	if err != nil {
		return nil, fmt.Errorf("can't read the list: %w", err)
	}
	if len(data) > largeList {
		debug.SetGCPercent(20) // some more time for half the memory
	}
	book, err := openList(listName(path), data, o)
	if errors.As(err, new(*intake.WrongOptionsError)) {
		return nil, usagef("%v", err)
	}
	return book, err
}

// openList opens a list, which may be a package of QTI 3.0.
func openList(name string, data []byte, o intake.Options) (*intake.Book, error) {
	if !qti.IsPackage(data) {
		return intake.OpenBook(name, data, o)
	}
	if len(o.Columns) > 0 || len(o.Unused) > 0 || len(o.Sheets) > 0 || o.Encoding != "" {
		return nil, usagef("%s is a package of items, which has no columns, sheets or encoding to name", name)
	}
	items, err := qti.Rows(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	rows := make([]intake.PackagedRow, len(items))
	for i, it := range items {
		rows[i] = intake.PackagedRow{
			Question: it.Question, Lang: it.Lang, Answer: it.Answer, Skill: string(it.Skill),
			Where: it.File, Problem: it.Problem,
		}
		if len(it.Codes) > 0 {
			rows[i].Codes = standards.JoinCodes(it.Codes, it.Skill)
		}
	}
	return intake.OpenPackaged(name, "package of QTI 3.0", rows)
}

// listName is the name of a list without its folder.
func listName(path string) string {
	if path == "-" {
		return "pasted"
	}
	return filepath.Base(path)
}

// checkSetAside sees to it that what stands where the rows set aside are wanted is such
// rows, if anything.
func checkSetAside(c *cli.Context) error {
	path := c.String("set-aside")
	if path == "" {
		return nil
	}
	switch data, err := readStart(path); {
	case errors.Is(err, fs.ErrNotExist):
	case err != nil:
		return fmt.Errorf("can't write the rows set aside: %w", err)
	case !intake.IsSetAside(data):
		return usagef("--set-aside %s: this file holds something else; name a new one", path)
	}
	return nil
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

// largestList is how many bytes a list may have: a hundred times what a list of 10,000
// items takes.
const largestList = 64 << 20

// largeList is from how many bytes on a list is read with little memory to spare.
const largeList = 4 << 20

// readList reads a list to its end, which a pipe or a device may not have.
func readList(c *cli.Context, path string) ([]byte, error) {
	in := c.App.Reader
	if path != "-" {
		file, err := os.Open(path)
		if err != nil {
			return nil, err
		}
		defer file.Close()
		in = file
	}
	data, err := io.ReadAll(io.LimitReader(in, largestList+1))
	if err == nil && len(data) > largestList {
		err = fmt.Errorf("%s is larger than %d MB, which no list of items is; take it apart, or see whether it is the right file", path, largestList>>20)
	}
	return data, err
}
