package main

import (
	_ "embed"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"time"

	"evenhand/assemble"
	"evenhand/assemble/export"
	"evenhand/assemble/plan"
	"evenhand/assemble/sheet"
	"evenhand/bank"
	"evenhand/bank/generate"
	intake "evenhand/import"
	"evenhand/standards"
	"evenhand/testdata"

	"github.com/urfave/cli/v2"
)

// demoPlan is the plan of the demo's Friday quiz.
//
//go:embed demo_plan.toml
var demoPlan []byte

// The demo stands in one week, and its bank's IDs come from a seed, so that it is the same each time.
const demoWeek = "2026-W48"

var demoTime = time.Date(2026, time.November, 23, 16, 0, 0, 0, time.UTC)

func demoCommand() *cli.Command {
	return &cli.Command{
		Name: "demo", Usage: "try everything on a made-up school: lists, items, a quiz in two forms", ArgsUsage: "[--dir DIR]",
		Description: "Alder Hill School's grade team of four makes a bank, brings in three colleagues' lists, generates items,\n" +
			"prints and exports Friday's quiz, marks an invented class's papers and reports on them. All of it lands in DIR,\n" +
			"which must not be there yet.\n\n" +
			"Example: evenhand demo --dir demo",
		Flags:  append([]cli.Flag{&cli.StringFlag{Name: "dir", Usage: "the `DIR` to make", Value: "demo"}}, printFlags...),
		Before: together(onSheets, onStrips),
		Action: runDemo,
	}
}

func runDemo(c *cli.Context) error {
	if err := noArguments(c); err != nil {
		return err
	}
	dir := c.String("dir")
	if err := errors.Join(checkPrint(c), folder.named(dir)); err != nil {
		return err
	}
	if exists(dir) {
		return fmt.Errorf("%s is there already; name another folder with --dir, or remove it", dir)
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	path := filepath.Join(dir, "alder-hill.bank")
	b, err := demoBank(path)
	if err != nil {
		return err
	}
	tell(c, "Alder Hill School, grade team of four: a new bank in %s", path)
	err = errors.Join(demoSteps(c, b, dir), b.Close())
	if err != nil {
		return err
	}
	tell(c, "Now try: evenhand --bank %s list --skill add-two-digit", path)
	return nil
}

// demoBank makes the bank and opens it with a seed for its IDs.
func demoBank(path string) (*bank.Bank, error) {
	b, err := bank.Create(path)
	if err != nil {
		return nil, err
	}
	if err := b.Close(); err != nil {
		return nil, err
	}
	return bank.Open(path, bank.Options{Entropy: rand.NewChaCha8([32]byte{})})
}

// tell writes a line of the demo to stdout.
func tell(c *cli.Context, format string, args ...any) {
	fmt.Fprintf(c.App.Writer, format+"\n", args...)
}

func demoSteps(c *cli.Context, b *bank.Bank, dir string) error {
	if err := demoLists(c, b, dir); err != nil {
		return err
	}
	if err := demoItems(c, b); err != nil {
		return err
	}
	if err := demoQuiz(c, b, dir); err != nil {
		return err
	}
	return demoMarks(c, b, dir)
}

// demoLists imports the three sample lists.
func demoLists(c *cli.Context, b *bank.Bank, dir string) error {
	files, err := fs.Glob(testdata.Lists, "lists/*")
	if err != nil {
		return err
	}
	for _, file := range files {
		data, err := testdata.Lists.ReadFile(file)
		if err != nil {
			return err
		}
		name := filepath.Base(file)
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o644); err != nil {
			return err
		}
		list, err := intake.Open(name, data, intake.Options{})
		if err != nil {
			return err
		}
		report, err := intake.Import(b, list, intake.ImportOptions{By: "grade team", At: demoTime})
		if err != nil {
			return err
		}
		tell(c, "Imported %s (%s): %s", name, list.Written(), report.Summary())
		for _, problem := range report.Problems() {
			tell(c, "    set aside: %s", problem)
		}
		aside := filepath.Join(dir, intake.SetAsidePath(name))
		if _, err := report.WriteSetAside(aside); err != nil {
			return err
		}
	}
	return nil
}

// demoWishes are the items that the demo generates.
var demoWishes = []struct {
	skill standards.SkillID
	where []string
	count int
}{
	{"add-two-digit", []string{"regroups = 1"}, 60},
	{"add-past-100", nil, 60},
	{"subtract-regrouping", nil, 60},
	{"three-addends", nil, 30},
	{"hundreds-tens-ones", nil, 30},
	{"compare-two-digit", nil, 30},
	{"clock-hour", nil, 20},
	{"clock-half-hour", nil, 30},
	{"clock-five-minutes", nil, 30},
	{"match-clocks", nil, 20},
}

func demoItems(c *cli.Context, b *bank.Bank) error {
	total := 0
	for i, wish := range demoWishes {
		where, err := standards.ParseWhere(wish.where)
		if err != nil {
			return err
		}
		request := generate.Request{Skill: wish.skill, Where: where, Count: wish.count, Seed: uint64(i + 1)}
		result, err := generate.Into(b, request, bank.Ready, "grade team", demoTime)
		if err != nil {
			return err
		}
		total += len(result.Tasks)
	}
	tell(c, "Generated %d items of %d skills", total, len(demoWishes))
	return nil
}

func demoQuiz(c *cli.Context, b *bank.Bank, dir string) error {
	planPath := filepath.Join(dir, "friday.toml")
	if err := os.WriteFile(planPath, demoPlan, 0o644); err != nil {
		return err
	}
	plan, err := plan.Parse(demoPlan, planPath)
	if err != nil {
		return err
	}
	listed := map[string]bool{} // stay out, so that a list can be taken back whole
	for item, err := range b.Find(bank.Query{Kind: "imported"}) {
		if err != nil {
			return err
		}
		listed[item.ID] = true
	}
	quiz, err := assemble.Assemble(c.Context, b, plan, assemble.Options{Seed: 1, Week: demoWeek, Without: listed})
	if err != nil {
		return err
	}
	quiz = sheet.WithChoices(quiz)
	out := filepath.Join(dir, "friday")
	if err := writeQuizFiles(c, quiz, out); err != nil {
		return err
	}
	given, printed := quiz.Given("grade team", demoTime), printedAs(c)
	given.Plan, given.Class, given.Printed = string(demoPlan), plan.Class, &printed
	if err := b.KeepQuiz(given); err != nil {
		return err
	}
	if _, err := b.SavePlan(bank.Plan{Name: plan.Title, Text: string(demoPlan), By: "grade team", At: demoTime}); err != nil {
		return err
	}
	tell(c, "Assembled %s: %s", quiz.Title, quiz.Verdict())
	tell(c, "Printed into %s: %s", out, fileNames(quiz))
	if err := table(c.App.Writer, assemble.BalanceOf(quiz).Table()); err != nil {
		return err
	}
	all := filepath.Join(dir, "all-items.csv")
	if err := writeFile(c, all, func(w io.Writer) error { return export.WriteBank(w, b.Find(bank.Query{})) }); err != nil {
		return err
	}
	tell(c, "Exported the whole bank to %s", all)
	return nil
}
