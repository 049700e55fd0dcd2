package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"evenhand/assemble/export"
	"evenhand/assemble/followup"
	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/bank/evidence/report"
	"evenhand/bank/results"

	"github.com/urfave/cli/v2"
)

func practiceCommand() *cli.Command {
	return &cli.Command{
		Name: "practice", Usage: "print what groups could practise on Monday, after a marked quiz", ArgsUsage: "[QUIZ] --out DIR [options]",
		Description: "QUIZ is a marked quiz, by its title, week, the beginning of its ID, or its folder; without it the last weeks count.\n" +
			"For each group of the report: a sheet of one or two pages that begins with an example, drawn as the group needs it, and goes\n" +
			"on from easy items to some like the quiz's, and three items to look again on Wednesday. Who missed things without a\n" +
			"pattern gets mixed items, who needs none of it something harder. Sheets name nobody; teacher.pdf has the codes and answers.\n" +
			"Items that are given are noted as used, so that no quiz takes them too soon.\n\n" + report.Caution + "\n\n" +
			"Example: evenhand practice 2026-W48 --out monday --fill\n" +
			"         evenhand practice 2026-W48 --out monday-es --lang es --large --fill --try",
		Flags: append([]cli.Flag{
			&cli.StringFlag{Name: "out", Usage: "the new `DIR` to write into"},
			classFlag,
			&cli.StringFlag{Name: "week", Usage: "the `WEEK` in which it is practised; else the one after the quiz", DefaultText: "the next"},
			&cli.Uint64Flag{Name: "seed", Usage: "the `NUMBER` that chooses among equally good sheets", Value: 1},
			&cli.BoolFlag{Name: "fill", Usage: "generate the missing items"},
			&cli.BoolFlag{Name: "try", Usage: "don't note the use in the bank"},
			byFlag, jsonFlag,
		}, withoutFlags(printFlags, "fewer")...),
		Before: together(onSheets), // its strips come beside the sheets
		Action: runPractice,
	}
}

// withoutFlags are the flags but one.
func withoutFlags(flags []cli.Flag, name string) []cli.Flag {
	return slices.DeleteFunc(slices.Clone(flags), func(f cli.Flag) bool { return f.Names()[0] == name })
}

func runPractice(c *cli.Context) error {
	defer interruptible(c)()
	dir := c.String("out")
	switch {
	case c.NArg() > 1:
		return usagef("name one quiz or week; put quotes around a title of several words")
	case dir == "":
		return usagef("say where to write: --out DIR")
	case exists(dir):
		return fmt.Errorf("%s is there already; name a new folder", dir)
	}
	if err := errors.Join(checkPrint(c), folder.named(dir)); err != nil {
		return err
	}
	quizzes, papers, err := shownPapers(c)
	if err != nil {
		return err
	}
	r, class, err := classReport(c, quizzes, papers)
	if err != nil {
		return err
	}
	week, err := practiceWeek(c, r)
	if err != nil {
		return err
	}
	options := followup.Options{Week: week, Seed: c.Uint64("seed"), Quizzes: quizzes, Papers: papers}
	open := withBank
	if c.Bool("try") && !c.Bool("fill") {
		open = readingBank
	}
	return open(c, func(b *bank.Bank) error {
		if err := sayOlder(c, b); err != nil {
			return err
		}
		set, err := practiceSet(c, b, r, class, options)
		if err != nil {
			return err
		}
		as := printedAs(c)
		also := followup.Also{Aloud: as.Aloud, HTML: as.HTML, Strips: as.Strips}
		as.Strips = false
		if err := writeFolder(c, dir, func(write writing) error { return set.Write(write, sheetOptions(as, false), also) }); err != nil {
			return err
		}
		if !c.Bool("try") {
			if err := b.ChangeUse(set.Items(), set.Use(now())); err != nil {
				return fmt.Errorf("the sheets are in %s, but their use could not be noted in the bank: %w", dir, err)
			}
		}
		if !c.Bool("json") {
			return showPractice(c, set, dir)
		}
		learnt, err := b.Table()
		if err != nil {
			return err
		}
		return printJSON(c, setJSON(set, learnt.Basis))
	})
}

// practiceSet chooses the sheets; with --fill it makes the missing items.
func practiceSet(c *cli.Context, b *bank.Bank, r *report.Report, class string, o followup.Options) (set followup.Set, err error) {
	choose := b
	if !c.Bool("try") {
		choose = followup.Again(b, r, class, o.Week)
	}
	err = filling(c, b, len(r.Groups)+2, func() error {
		set, err = followup.Practice(c.Context, choose, r, class, o)
		return err
	})
	return set, err
}

// classReport is the report of one class about the quizzes named on the line.
func classReport(c *cli.Context, quizzes []results.Quiz, papers []results.Paper) (r *report.Report, class string, err error) {
	if quizzes, err = chosenQuizzes(c, slices.Clone(quizzes)); err != nil {
		return nil, "", err
	}
	if papers, err = papersOfClass(c, slices.Clone(papers)); err != nil {
		return nil, "", err
	}
	r = report.Of(quizzes, papers)
	switch {
	case len(r.Classes) == 0:
		return nil, "", fmt.Errorf("no papers of class %q have been marked of this quiz; leave off --class to see all", c.String("class"))
	case len(r.Classes) > 1:
		return nil, "", usagef("papers of several classes are marked: %s. Say which with --class", strings.Join(r.Classes, ", "))
	}
	return r, r.Classes[0], nil
}

// practiceWeek is the week of --week, else the one after the last quiz.
func practiceWeek(c *cli.Context, r *report.Report) (string, error) {
	text := c.String("week")
	if text == "" {
		last, err := plan.ParseWeek(r.LastWeek())
		if err != nil {
			return plan.WeekOf(time.Now()).String(), nil // a quiz without a week
		}
		return last.Add(1).String(), nil
	}
	week, err := plan.ParseWeek(text)
	if err != nil {
		return "", usagef("--week: %v", err)
	}
	return week.String(), nil
}

// practiceJSON is a set as other programs read it.
type practiceJSON struct {
	About  string              `json:"about"`
	Week   string              `json:"week"`
	Class  string              `json:"class"`
	Sheets []practiceSheetJSON `json:"sheets"`
	TooFew []string            `json:"too_few_answers"`
}

type practiceSheetJSON struct {
	File    string               `json:"file"`
	Kind    followup.Kind        `json:"kind"`
	Work    string               `json:"work"`
	Why     string               `json:"why"`
	Begin   string               `json:"begin,omitempty"`
	Pupils  []practicePupilJSON  `json:"pupils"`
	Example *practiceExampleJSON `json:"example,omitempty"`
	Items   []export.Placed      `json:"items"`
	Recheck []export.Placed      `json:"recheck,omitempty"`
}

type practicePupilJSON struct {
	Pupil   string `json:"pupil"`
	Counted string `json:"counted"`
}

type practiceExampleJSON struct {
	Task string `json:"task"`
	Look string `json:"look"`
}

func setJSON(set followup.Set, basis func(bank.Item) bank.Basis) practiceJSON {
	out := practiceJSON{About: set.About, Week: set.Week, Class: set.Class, Sheets: []practiceSheetJSON{}, TooFew: append([]string{}, set.Absent...)}
	for _, s := range set.Sheets {
		one := practiceSheetJSON{
			File: s.Name, Kind: s.Kind, Work: s.Title, Why: s.Why, Begin: s.Next, Items: export.ItemsOf(s.Items, basis),
		}
		if len(s.Recheck) > 0 {
			one.Recheck = export.ItemsOf(s.Recheck, basis)
		}
		for _, p := range s.Pupils {
			one.Pupils = append(one.Pupils, practicePupilJSON{p.Code, p.Count})
		}
		if s.Example != nil {
			one.Example = &practiceExampleJSON{s.Example.Task.String(), string(s.Example.Look)}
		}
		out.Sheets = append(out.Sheets, one)
	}
	return out
}

// showPractice says who could work on what.
func showPractice(c *cli.Context, set followup.Set, dir string) error {
	rows := [][]string{{"SHEET", "WORK", "PUPILS", "EXAMPLE", "ITEMS"}}
	for _, s := range set.Sheets {
		var codes []string
		for _, p := range s.Pupils {
			codes = append(codes, p.Code)
		}
		example := "-"
		if s.Example != nil {
			example = fmt.Sprintf("%s (%s)", s.Example.Task, s.Example.Look)
		}
		rows = append(rows, []string{s.Name, s.Title, strings.Join(codes, ", "), example, fmt.Sprint(len(s.Items))})
	}
	if err := table(c.App.Writer, rows); err != nil {
		return err
	}
	if len(set.Absent) > 0 {
		say(c, "no sheet, as there are too few answers to tell: %s", strings.Join(set.Absent, ", "))
	}
	say(c, "%s", report.Caution)
	if set.Level != nil {
		say(c, "for the class, %s (by %s of %s)", set.Level.Words(), count(set.Level.Answers, "answer"), count(set.Level.Pupils, "pupil"))
	}
	say(c, "%s in %s for %s; who works on what, and the answers, is on %s, which only you can read",
		count(len(set.Sheets), "sheet"), dir, set.Week, followup.TeacherFile)
	return nil
}
