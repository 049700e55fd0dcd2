package main

import (
	"fmt"
	"strings"

	"evenhand/assemble/followup"
	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/bank/evidence/report"
	"evenhand/bank/results"

	"github.com/urfave/cli/v2"
)

func termCommand() *cli.Command {
	return &cli.Command{
		Name: "term", Usage: "show what was taught, what stuck, and what should come back next week", ArgsUsage: "[PACING.toml] [--class CLASS]",
		Description: "PACING.toml is the pacing list, or its name in the bank: it says what was new when. Without it a skill is new in the week\n" +
			"in which a marked quiz first asked for it. Right answers are told as they were counted, by weeks of school since; the items\n" +
			"were not the same each time, and not equally hard.\n\n" + report.Caution + "\n\n" +
			"Example: evenhand term\n" +
			"         evenhand term --week 2026-W49 --json",
		Flags: []cli.Flag{
			classFlag,
			&cli.StringFlag{Name: "from-week", Usage: "with PACING.toml: its first `WEEK`; else as its quizzes were given"},
			&cli.StringFlag{Name: "week", Usage: "say what should come back in this `WEEK`; else in the one after the last marked quiz", DefaultText: "the next"},
			jsonFlag,
		},
		Action: showTerm,
	}
}

func showTerm(c *cli.Context) error {
	switch {
	case c.NArg() > 1:
		return usagef("name one pacing list")
	case c.NArg() == 0 && c.IsSet("from-week"):
		return usagef("--from-week goes with a pacing list, whose first week it is: " +
			"evenhand term PACING.toml --from-week WEEK")
	}
	quizzes, papers, err := allPapers(c)
	if err != nil {
		return err
	}
	if papers, err = papersOfClass(c, papers); err != nil {
		return err
	}
	calendar, taught, next, err := calendarOf(c, satQuizzes(quizzes, papers))
	if err != nil {
		return err
	}
	t := followup.TermOf(taught, quizzes, papers, calendar, next)
	if c.Bool("json") {
		return printJSON(c, jsonOfTerm(t))
	}
	return printTerm(c, t)
}

// satQuizzes are the quizzes that somebody of the papers sat.
func satQuizzes(quizzes []results.Quiz, papers []results.Paper) (sat []results.Quiz) {
	has := map[string]bool{}
	for _, paper := range papers {
		has[paper.Quiz] = true
	}
	for _, quiz := range quizzes {
		if has[quiz.ID] {
			sat = append(sat, quiz)
		}
	}
	return sat
}

// calendarOf is what was taught until the week asked about, by the pacing list if one is named.
func calendarOf(c *cli.Context, quizzes []results.Quiz) (calendar followup.Calendar, taught []followup.Taught, next plan.Week, err error) {
	var pacing plan.Pacing
	name := c.Args().First()
	if name != "" {
		if pacing, err = readPacing(c, name); err != nil {
			return calendar, nil, next, err
		}
		calendar = followup.Calendar{Return: pacing.Return, Skip: pacing.Skip}
	}
	last := ""
	for _, quiz := range quizzes {
		last = max(last, quiz.Week)
	}
	if next, err = nextWeek(c, last, pacing.Skip); err != nil || name == "" {
		return calendar, followup.TaughtIn(quizzes), next, err
	}
	from, err := firstWeek(c, name)
	return calendar, followup.TaughtBy(pacing, from, next.Add(-1)), next, err
}

// nextWeek is the week of --week, else the first week of school after the last one.
func nextWeek(c *cli.Context, last string, skip []plan.Week) (plan.Week, error) {
	if text := c.String("week"); text != "" {
		week, err := plan.ParseWeek(text)
		if err != nil {
			return week, usagef("--week: %v", err)
		}
		return week, nil
	}
	week, err := plan.ParseWeek(last)
	if err != nil {
		return week, usagef("the marked quizzes have no weeks; say with --week which one is next")
	}
	return plan.SchoolWeeks(week.Add(1), 1, skip)[0], nil
}

// firstWeek is the week of --from-week, else that of the quiz that was given for week 1 of the list.
func firstWeek(c *cli.Context, name string) (first plan.Week, err error) {
	if text := c.String("from-week"); text != "" {
		if first, err = plan.ParseWeek(text); err != nil {
			err = usagef("--from-week: %v", err)
		}
		return first, err
	}
	text, err := planText(c, name, true)
	if err != nil {
		return first, err
	}
	found := false
	err = readingBank(c, func(b *bank.Bank) error {
		kept, err := b.Quizzes()
		for _, quiz := range kept {
			if quiz.PacingWeek == 1 && quiz.Plan == string(text) && !quiz.TakenBack {
				if week, err := plan.ParseWeek(quiz.Week); err == nil {
					first, found = week, true
				}
			}
		}
		return err
	})
	if err == nil && !found {
		err = usagef("no quiz of %s was given, so its first week is not known; say it with --from-week", name)
	}
	return first, err
}

// printTerm shows the term in two tables.
func printTerm(c *cli.Context, t followup.Term) error {
	rows := [][]string{{"SKILL", "NEW IN", "THAT WEEK"}}
	for _, span := range followup.Spans {
		rows[0] = append(rows[0], "AFTER "+strings.ToUpper(span))
	}
	for _, one := range t.Taught {
		row := []string{one.Name(), one.Week.String(), countedPart(one.When)}
		for _, part := range one.After {
			row = append(row, countedPart(part))
		}
		rows = append(rows, row)
	}
	fmt.Fprintln(c.App.Writer, "What stuck: right answers as counted, and what chance alone explains (95 of 100 times), by weeks of school")
	if err := table(c.App.Writer, rows); err != nil {
		return err
	}
	fmt.Fprintf(c.App.Writer, "\nWhat should come back in %s\n", t.Next)
	back := [][]string{{"SKILL", "WHY"}}
	for _, one := range t.Back {
		back = append(back, []string{one.Name(), strings.Join(one.Why, "; ")})
	}
	if len(t.Back) == 0 {
		back = append(back, []string{"nothing", "all is mostly right and was asked for lately"})
	}
	if err := table(c.App.Writer, back); err != nil {
		return err
	}
	say(c, "%s", report.Caution)
	return nil
}

// countedPart is "23 of 24 (19-24)", or a dash.
func countedPart(p report.Part) string {
	if p.Of == 0 {
		return "-"
	}
	low, high := p.Range()
	return fmt.Sprintf("%d of %d (%d-%d)", p.Right, p.Of, low, high)
}

// termJSON is a term as other programs read it.
type termJSON struct {
	Next   string       `json:"next"`
	Taught []taughtJSON `json:"taught"`
	Back   []backJSON   `json:"back"`
}

type taughtJSON struct {
	Skill string          `json:"skill"`
	Where string          `json:"where,omitempty"`
	Week  string          `json:"week"`
	Last  string          `json:"last"`
	When  partJSON        `json:"when"`
	After []afterPartJSON `json:"after"`
}

type partJSON struct {
	Right   int `json:"right"`
	Answers int `json:"answers"`
	Low     int `json:"low"`
	High    int `json:"high"`
}

type afterPartJSON struct {
	Span string `json:"span"`
	partJSON
}

type backJSON struct {
	Skill string   `json:"skill"`
	Where string   `json:"where,omitempty"`
	Why   []string `json:"why"`
}

func jsonOfTerm(t followup.Term) termJSON {
	out := termJSON{Next: t.Next.String(), Taught: []taughtJSON{}, Back: []backJSON{}}
	for _, one := range t.Taught {
		row := taughtJSON{Skill: string(one.Skill), Where: one.Where.String(), Week: one.Week.String(), Last: one.Last.String(), When: jsonOfPart(one.When)}
		for i, part := range one.After {
			row.After = append(row.After, afterPartJSON{followup.Spans[i], jsonOfPart(part)})
		}
		out.Taught = append(out.Taught, row)
	}
	for _, one := range t.Back {
		out.Back = append(out.Back, backJSON{string(one.Skill), one.Where.String(), one.Why})
	}
	return out
}

func jsonOfPart(p report.Part) partJSON {
	if p.Of == 0 {
		return partJSON{}
	}
	low, high := p.Range()
	return partJSON{p.Right, p.Of, low, high}
}
