package intake_test

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"evenhand/bank"
	"evenhand/bank/cells"
	intake "evenhand/import"
)

// failer is what testing.T and rapid.T have in common.
type failer interface {
	Helper()
	Fatalf(format string, args ...any)
}

// checkLines: every line of a list has exactly one place. What no line of the list
// covers is blank: nothing but spaces, delimiters and quotation marks.
func checkLines(t failer, l *intake.List, text string) {
	t.Helper()
	next, rows, blank := 1, 0, []int{}
	for _, line := range l.Lines {
		if line.First < next || line.Last < line.First || line.Last > l.Total {
			t.Fatalf("%s on lines %d to %d of %d, after line %d", line.Kind, line.First, line.Last, l.Total, next-1)
		}
		for ; next < line.First; next++ {
			blank = append(blank, next)
		}
		next = line.Last + 1
		if line.Kind == intake.RowLine {
			rows++
		}
	}
	for ; next <= l.Total; next++ {
		blank = append(blank, next)
	}
	abreast := slices.ContainsFunc(l.Columns, func(c intake.Column) bool { return strings.HasSuffix(c.Why, "items a row") })
	if rows > l.Rows() || rows != l.Rows() && !abreast {
		t.Fatalf("%d lines are rows, the list has %d rows", rows, l.Rows())
	}
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	for _, n := range blank {
		if strings.ContainsFunc(lines[n-1], func(r rune) bool { return !unicode.IsSpace(r) && !strings.ContainsRune(",;|\x1f\"", r) }) {
			t.Fatalf("line %d is lost: %q", n, lines[n-1])
		}
	}
}

// checkOutcomes: every row has exactly one end, and what belongs to it.
func checkOutcomes(t failer, r *intake.Report) {
	t.Helper()
	if len(r.Outcomes) != r.List.Rows() {
		t.Fatalf("%d rows have %d outcomes", r.List.Rows(), len(r.Outcomes))
	}
	if sum := r.Count(intake.Added) + r.Count(intake.Here) + r.Count(intake.SetAside); sum != r.List.Rows() {
		t.Fatalf("%d rows, but %s", r.List.Rows(), r.Summary())
	}
	for _, out := range r.Outcomes {
		aside := out.Fate == intake.SetAside
		switch {
		case aside != (out.Problem != nil):
			t.Fatalf("line %d: %s with problem %v", out.First, out.Fate, out.Problem)
		case aside && (out.Problem.Line != out.First || out.Problem.Reason == nil || out.ID != ""):
			t.Fatalf("line %d: %+v", out.First, out)
		case !aside && !r.DryRun && out.ID == "":
			t.Fatalf("line %d is %s without an ID", out.First, out.Fate)
		}
	}
}

// drawn are what rows are drawn from: good and bad questions, answers and marks.
var drawn = []string{
	"47 + 36", "36+47 =", "27 + 35", "5 - 8", "98, 99, ?, 101", "3:30", "read 4:00", "0.1458333", "2026-01-02", "46024", "4:75", "142 = ? hundreds ? tens ? ones",
	"How many legs has a dog?", "how many legs has a dog", "¿Cuántas patas?", "6 × 2 = ?", "=1+1", "-5", "'-5",
	"''=x", "Total", "Subtotal: 3", "a \"quoted\" word",
	"two\nlines", "\n\nthree\r\nlines\n", "83", "73", "62", "15", "100", "4", "four", "", "", " ",
	"add-two-digit", "clocks", "2.NBT.5", "column", "x;y", "t\tab", "\"", "\u00a0", "8\x00 + 7",
}

// lists draws untidy lists.
var lists = rapid.Custom(func(t *rapid.T) string {
	delimiter := rapid.SampledFrom([]string{",", ";", "\t"}).Draw(t, "delimiter")
	end := rapid.SampledFrom([]string{"\n", "\r\n"}).Draw(t, "end")
	var b strings.Builder
	b.WriteString(rapid.SampledFrom([]string{"", "\ufeff", "A title" + end + end}).Draw(t, "top"))
	headings := []string{"", "question,answer,skill" + end, "Key,Topic,Problem" + end, "Aufgabe,Wert,Art" + end}
	b.WriteString(strings.ReplaceAll(rapid.SampledFrom(headings).Draw(t, "heading"), ",", delimiter))
	for range rapid.IntRange(0, 12).Draw(t, "rows") {
		row := rapid.SliceOfN(rapid.OneOf(rapid.SampledFrom(drawn), rapid.SampledFrom(drawn), rapid.String()), 0, 5).Draw(t, "cells")
		for i, cell := range row {
			if rapid.IntRange(0, 9).Draw(t, "raw") > 0 { // now and then without the quotation marks it needs
				cell = quoted(cell, delimiter)
			}
			if i > 0 {
				b.WriteString(delimiter)
			}
			b.WriteString(cell)
		}
		b.WriteString(end)
	}
	return b.String()
})

func quoted(cell, delimiter string) string {
	if strings.ContainsAny(cell, "\"\r\n"+delimiter) {
		return `"` + strings.ReplaceAll(cell, `"`, `""`) + `"`
	}
	return cell
}

// For any list: lines and rows add up; a dry run changes nothing and foretells what
// happens; importing again adds nothing; the rows set aside are all in their file.
func TestEveryRowHasOneEnd(t *testing.T) {
	folder := t.TempDir()
	rapid.Check(t, func(t *rapid.T) {
		text := lists.Draw(t, "list")
		l, err := intake.Open("list.csv", []byte(text), intake.Options{})
		if err != nil {
			return // an empty list, or one without questions
		}
		checkLines(t, l, plain(text))

		path := filepath.Join(folder, "bank")
		os.Remove(path)
		b, err := bank.Create(path)
		if err != nil {
			t.Fatal(err)
		}
		defer b.Close()
		run := func(dry bool) *intake.Report {
			r, err := intake.Import(b, l, intake.ImportOptions{By: "M.O.", At: monday, DryRun: dry})
			if err != nil {
				t.Fatal(err)
			}
			checkOutcomes(t, r)
			return r
		}
		foretold := run(true)
		if n := count(t, b); n != 0 {
			t.Fatalf("a dry run put %d items into the bank", n)
		}
		first := run(false)
		for i, out := range first.Outcomes {
			if out.Fate != foretold.Outcomes[i].Fate {
				t.Fatalf("line %d is %s, but %s was foretold", out.First, out.Fate, foretold.Outcomes[i].Fate)
			}
		}
		if n := count(t, b); n != first.Count(intake.Added) {
			t.Fatalf("the bank holds %d items after %s", n, first.Summary())
		}
		for _, dry := range []bool{true, false} {
			if again := run(dry); again.Count(intake.Added) != 0 || again.Count(intake.SetAside) != first.Count(intake.SetAside) {
				t.Fatalf("first %s, then %s", first.Summary(), again.Summary())
			}
		}
		checkSetAside(t, first, filepath.Join(folder, "mend.csv"))
	})
}

// plain is a text as lines are counted in it: without byte-order mark and NULs, and with
// lone carriage returns as line ends, but within quotation marks where there are others.
func plain(text string) string {
	text = strings.ReplaceAll(strings.TrimPrefix(text, "\ufeff"), "\x00", "")
	if !strings.Contains(text, "\n") {
		return strings.ReplaceAll(text, "\r", "\n")
	}
	parts := strings.Split(strings.ReplaceAll(text, "\r\n", "\x00"), `"`)
	for i := 0; i < len(parts); i += 2 {
		parts[i] = strings.ReplaceAll(parts[i], "\r", "\n")
	}
	return strings.ReplaceAll(strings.Join(parts, `"`), "\x00", "\r\n")
}

func count(t *rapid.T, b *bank.Bank) int {
	counts, err := b.Count()
	if err != nil {
		t.Fatal(err)
	}
	sum := 0
	for _, n := range counts {
		sum += n
	}
	return sum
}

func checkSetAside(t *rapid.T, r *intake.Report, path string) {
	os.Remove(path)
	if _, err := r.WriteSetAside(path); err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(path)
	if r.Count(intake.SetAside) == 0 {
		if !os.IsNotExist(err) {
			t.Fatalf("nothing was set aside, yet there is a file: %v", err)
		}
		return
	}
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(string(data), "\ufeff"))).ReadAll()
	if err != nil || len(rows) != r.Count(intake.SetAside)+1 {
		t.Fatalf("%d rows in the file, %v, of %s", len(rows)-1, err, r.Summary())
	}
	for _, row := range rows[1:] {
		for _, cell := range row {
			if cell != cells.Guard(cells.Unguard(cell)) {
				t.Fatalf("the cell %q would run in a spreadsheet", cell)
			}
		}
	}
}
