package main

import (
	"encoding/csv"
	"errors"
	"os"
	"os/exec"
	"slices"
	"strconv"
	"strings"

	"github.com/rogpeppe/go-internal/testscript"
)

// scriptCommands are the words of the scripts beside evenhand and testscript's own.
var scriptCommands = map[string]func(ts *testscript.TestScript, neg bool, args []string){
	"exits":  exits,
	"rows":   rows,
	"column": column,
	"alike":  alike,
	"isPDF":  isPDF,
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
	records := readCSV(ts, args[0])
	for i, name := range records[0] {
		if name != args[1] {
			continue
		}
		for j, want := range args[2:] {
			if j+1 >= len(records) || records[j+1][i] != want {
				ts.Fatalf("%s, row %d, %s: want %q in %q", args[0], j+1, name, want, records[1:])
			}
		}
		return
	}
	ts.Fatalf("%s has no column %q: %q", args[0], args[1], records[0])
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
		ts.Logf("skipped reading %s: pdftotext is not installed", args[0])
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
