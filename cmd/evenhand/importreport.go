package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"evenhand/bank"
	intake "evenhand/import"

	"github.com/urfave/cli/v2"
)

// reportImport shows what became of the lists of a file and writes the rows set aside.
func reportImport(c *cli.Context, path string, book *intake.Book, reports []*intake.Report) error {
	rows := []importedRow{}
	for _, report := range reports {
		describeList(c, report)
		if c.Bool("json") {
			rows = append(rows, importJSON(report, len(reports) > 1)...)
			continue
		}
		if len(reports) > 1 {
			fmt.Fprintf(c.App.Writer, "%s: ", report.List.Name)
		}
		fmt.Fprintln(c.App.Writer, report.Summary())
	}
	if c.Bool("json") {
		if err := printJSON(c, rows); err != nil {
			return err
		}
	}
	undone, done, err := finishImport(c, path, reports)
	if err != nil {
		return err
	}
	for _, left := range book.Left {
		say(c, "%s", left)
		undone = append(undone, "not every sheet was read")
	}
	for _, report := range reports {
		for _, question := range report.List.Asked {
			say(c, "%s", question)
			undone = append(undone, "something was left out that may matter")
		}
	}
	switch {
	case done == 0 && len(undone) == 0:
		return errors.New("nothing came in: the list has no rows below its headings")
	case len(undone) > 0:
		return inPartf("%s", strings.Join(eachOnce(undone), "; "))
	}
	return nil
}

// finishImport writes the rows set aside; it says what was not done, and how many rows
// came in or were here.
func finishImport(c *cli.Context, path string, reports []*intake.Report) (undone []string, done int, err error) {
	for _, report := range reports {
		aside := report.Count(intake.SetAside)
		done += len(report.Outcomes) - aside
		if n := report.Count(intake.Differs); n > 0 {
			undone = append(undone, fmt.Sprintf("%s different from the bank; --revise brings in what was changed", count(n, "row")))
		}
		switch {
		case aside == 0:
		case report.DryRun:
			undone = append(undone, fmt.Sprintf("%s would be set aside", count(aside, "row")))
		default:
			written, err := writeSetAside(c, path, report, len(reports) > 1)
			if err != nil {
				return nil, 0, err
			}
			undone = append(undone, fmt.Sprintf("%s set aside in %s; mend %s there and import that file", count(aside, "row"), written, them(aside)))
		}
	}
	return undone, done, nil
}

// writeSetAside writes the rows set aside of one list and says where.
func writeSetAside(c *cli.Context, path string, report *intake.Report, several bool) (string, error) {
	to := c.String("set-aside")
	if to == "" || several {
		to = filepath.Join(filepath.Dir(path), intake.SetAsidePath(report.List.Name))
	}
	written, err := report.WriteSetAside(to)
	if err != nil {
		return "", fmt.Errorf("the other rows are in the bank; import the list again to have these: %w", err)
	}
	if written != to {
		say(c, "%s is there already, and somebody may be mending it; it stays as it is", to)
	}
	return written, nil
}

func eachOnce(texts []string) (once []string) {
	seen := map[string]bool{}
	for _, text := range texts {
		if !seen[text] {
			seen[text] = true
			once = append(once, text)
		}
	}
	return once
}

func describeList(c *cli.Context, report *intake.Report) {
	list := report.List
	say(c, "%s: %s", list.Name, list.Written())
	if len(list.Foreign) > 0 {
		say(c, "  its encoding was guessed; where %s is wrong, name it, as in --encoding windows-1250", strings.Join(list.Foreign, ", "))
	}
	if list.OwnExport() {
		say(c, "  an export of a bank, read column by column")
	} else {
		for _, column := range list.Columns {
			say(c, "  column %s", column)
		}
	}
	for _, line := range list.Skipped() {
		say(c, "  line %d is no item (%s): %s", line.First, line.Kind, line.Text)
	}
	for _, note := range report.Notes {
		say(c, "%s", note)
	}
	if !list.OwnExport() { // each row of which names its item
		here, more := report.AlreadyHere(mostHere)
		for _, text := range here {
			say(c, "%s", text)
		}
		if more > 0 {
			say(c, "%d more ask what is here already; --json names them all", more)
		}
	}
	whole := report.Whole()
	for _, out := range report.Outcomes {
		if out.Problem != nil && (!out.Whole || whole < 3) {
			say(c, "%s", out.Problem)
		}
	}
	if whole > 0 {
		say(c, "%s such as 47 + 36 = 83, with nothing to fill in; --leave-out result asks for the "+
			"83, first for the 47, second for the 36", rowsSay(whole))
	}
	if n := report.ByHand(); n > 0 {
		say(c, "%s not understood as mathematics and kept in words; evenhand list --by-hand shows what is", count(n, "question"))
	}
	if n := report.Proposed(); n > 0 {
		waits := "waits as a draft"
		if n > 1 {
			waits = "wait as drafts"
		}
		say(c, "%s got a skill by the numbers in the story and %s: evenhand list --status draft shows "+
			"which, evenhand revise ID --status ready lets one in", count(n, "question"), waits)
	}
}

// mostHere is how many rows that were here already are named one by one.
const mostHere = 20

func rowsSay(n int) string {
	if n == 1 {
		return "1 row says a whole sentence"
	}
	return fmt.Sprintf("%d rows say whole sentences", n)
}

// importedRow is what became of a row, for other programs.
type importedRow struct {
	List   string `json:"list,omitempty"` // where a file holds several
	Line   int    `json:"line"`
	Fate   string `json:"fate"`
	ID     string `json:"id,omitempty"`
	Column string `json:"column,omitempty"`
	Reason string `json:"reason,omitempty"`
}

func importJSON(report *intake.Report, several bool) []importedRow {
	rows := []importedRow{}
	for _, out := range report.Outcomes {
		row := importedRow{Line: out.First, Fate: string(out.Fate), ID: out.ID}
		if several {
			row.List = report.List.Name
		}
		if out.Problem != nil {
			row.Line, row.Column, row.Reason = out.Problem.Line, out.Problem.Column, out.Problem.Reason.String()
		}
		rows = append(rows, row)
	}
	return rows
}

// undoImport takes a list out of use again.
func undoImport(c *cli.Context, path string, o intake.ImportOptions) error {
	if o.By == "" {
		return usagef("say who you are: --by MK, or set EVENHAND_BY")
	}
	return withBank(c, func(b *bank.Bank) error {
		name := listName(path)
		found, retired, err := intake.Undo(b, name, o)
		switch {
		case err != nil:
			return err
		case found == 0:
			return fmt.Errorf("no item of the bank came in by a list named %s; evenhand lists names them", name)
		case o.DryRun:
			say(c, "%s of %s would be taken out of use", count(found, "item"), name)
		default:
			say(c, "%s of %s taken out of use; they keep their history, and importing the list again brings them back", count(retired, "item"), name)
		}
		return nil
	})
}
