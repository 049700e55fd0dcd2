package main

import (
	"encoding/csv"
	"errors"
	"os"
	"os/exec"
	"runtime"
	"slices"
	"strconv"
	"strings"

	"evenhand/testdata/outside"

	"github.com/rogpeppe/go-internal/testscript"
)

// scriptCommands are the words of the scripts beside evenhand and testscript's own.
var scriptCommands = map[string]func(ts *testscript.TestScript, neg bool, args []string){
	"exits":  exits,
	"rows":   rows,
	"column": column,
	"alike":  alike,
	"isPDF":  isPDF,

	"keep":     keep,
	"repeated": repeated,
	"changed":  changed,
	"private":  private,
	"edit":     edit,
}

// edit FILE NEW OLD-TEXT NEW-TEXT writes a file with a text replaced wherever it stands, as a
// person's editor does.
func edit(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 4 {
		ts.Fatalf("usage: edit FILE NEW OLD-TEXT NEW-TEXT")
	}
	text := ts.ReadFile(args[0])
	if !strings.Contains(text, args[2]) {
		ts.Fatalf("%s doesn't hold %q", args[0], args[2])
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(strings.ReplaceAll(text, args[2], args[3])), 0o644))
}

// exits CODE COMMAND ARGS... runs a command and checks its exit code; its output is kept in the files
// "out" and "err".
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits CODE COMMAND ARGS...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	code := 0
	var exit *exec.ExitError
	if err := ts.Exec(args[1], args[2:]...); errors.As(err, &exit) {
		code = exit.ExitCode()
	} else {
		ts.Check(err)
	}
	ts.Check(os.WriteFile(ts.MkAbs("out"), []byte(ts.ReadFile("stdout")), 0o600))
	ts.Check(os.WriteFile(ts.MkAbs("err"), []byte(ts.ReadFile("stderr")), 0o600))
	if code != want {
		ts.Fatalf("exit code %d, want %d", code, want)
	}
}

// rows FILE N checks how many records a CSV file has below its heading.
func rows(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: rows FILE N")
	}
	records := readCSV(ts, args[0])
	if got := strconv.Itoa(len(records) - 1); got != args[1] {
		ts.Fatalf("%s has %s rows, want %s", args[0], got, args[1])
	}
}

// column FILE NAME VALUE... checks the cells of a CSV column from the top.
func column(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 3 {
		ts.Fatalf("usage: column FILE NAME VALUE...")
	}
	cells := cellsOf(ts, args[0], args[1])
	for i, want := range args[2:] {
		if i >= len(cells) || cells[i] != want {
			ts.Fatalf("%s, row %d, %s: want %q in %q", args[0], i+1, args[1], want, cells)
		}
	}
}

// alike FILE FILE but COLUMN... checks that two CSV files hold the same rows, in any order, the named
// columns aside.
func alike(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: alike FILE FILE but COLUMN...")
	}
	rows := func(name string) []string {
		records := readCSV(ts, name)
		var lines []string
		for _, record := range records {
			line := ""
			for i, cell := range record {
				if !slices.Contains(args[2:], records[0][i]) {
					line += cell + "|"
				}
			}
			lines = append(lines, line)
		}
		slices.Sort(lines)
		return lines
	}
	a, b := rows(args[0]), rows(args[1])
	for i := range a {
		if i >= len(b) || a[i] != b[i] {
			ts.Fatalf("%s and %s differ:\n%s\n%s", args[0], args[1], a[i:], b[min(i, len(b)):])
		}
	}
	if len(a) != len(b) {
		ts.Fatalf("%s has %d rows, %s has %d", args[0], len(a), args[1], len(b))
	}
}

func readCSV(ts *testscript.TestScript, name string) [][]string {
	records, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(ts.ReadFile(name), "\ufeff"))).ReadAll()
	ts.Check(err)
	if len(records) == 0 {
		ts.Fatalf("%s is empty", name)
	}
	return records
}

// isPDF FILE WORDS... checks that a PDF holds the words, read by poppler's pdftotext where it is
// installed.
func isPDF(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) == 0 {
		ts.Fatalf("usage: isPDF FILE WORDS...")
	}
	if !strings.HasPrefix(ts.ReadFile(args[0]), "%PDF-") {
		ts.Fatalf("%s is no PDF", args[0])
	}
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		outside.Note("reading printed text with pdftotext")
		return
	}
	text, err := exec.Command(tool, ts.MkAbs(args[0]), "-").Output()
	ts.Check(err)
	for _, words := range args[1:] {
		if !strings.Contains(string(text), words) {
			ts.Fatalf("%s does not hold %q:\n%s", args[0], words, text)
		}
	}
}

// keep VARIABLE FILE COLUMN ROW keeps a cell of a CSV file for later lines, as $VARIABLE; the row below
// the heading is row 1.
func keep(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 4 {
		ts.Fatalf("usage: keep VARIABLE FILE COLUMN ROW")
	}
	row, err := strconv.Atoi(args[3])
	ts.Check(err)
	cells := cellsOf(ts, args[1], args[2])
	if row < 1 || row > len(cells) {
		ts.Fatalf("%s has %d rows, none of them row %d", args[1], len(cells), row)
	}
	ts.Setenv(args[0], cells[row-1])
}

// repeated N COLUMN FILE... checks that N values stand more than once in a column of the files.
func repeated(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 3 {
		ts.Fatalf("usage: repeated N COLUMN FILE...")
	}
	times := map[string]int{}
	for _, file := range args[2:] {
		for _, cell := range cellsOf(ts, file, args[1]) {
			times[cell]++
		}
	}
	n := 0
	for _, count := range times {
		if count > 1 {
			n++
		}
	}
	if strconv.Itoa(n) != args[0] {
		ts.Fatalf("%d values of %s stand more than once, want %s", n, args[1], args[0])
	}
}

// changed N COLUMN FILE FILE checks that N cells of a column differ between two files, row by row.
func changed(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 4 {
		ts.Fatalf("usage: changed N COLUMN FILE FILE")
	}
	a, b := cellsOf(ts, args[2], args[1]), cellsOf(ts, args[3], args[1])
	if len(a) != len(b) {
		ts.Fatalf("%s has %d rows, %s has %d", args[2], len(a), args[3], len(b))
	}
	n := 0
	for i := range a {
		if a[i] != b[i] {
			n++
		}
	}
	if strconv.Itoa(n) != args[0] {
		ts.Fatalf("%d cells of %s differ, want %s", n, args[1], args[0])
	}
}

// private FILE... checks that only its owner can read a file; Windows keeps no such modes.
func private(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) == 0 {
		ts.Fatalf("usage: private FILE...")
	}
	for _, file := range args {
		info, err := os.Stat(ts.MkAbs(file))
		ts.Check(err)
		if mode := info.Mode().Perm(); mode != 0o600 && runtime.GOOS != "windows" {
			ts.Fatalf("%s has mode %o, want 600", file, mode)
		}
	}
}

// cellsOf is a column of a CSV file below its heading.
func cellsOf(ts *testscript.TestScript, file, name string) []string {
	records := readCSV(ts, file)
	at := slices.Index(records[0], name)
	if at < 0 {
		ts.Fatalf("%s has no column %q: %q", file, name, records[0])
	}
	var cells []string
	for _, record := range records[1:] {
		cells = append(cells, record[at])
	}
	return cells
}
