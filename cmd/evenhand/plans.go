package main

import (
	"fmt"
	"io"
	"time"

	"evenhand/assemble/plan"
	"evenhand/bank"

	"github.com/urfave/cli/v2"
)

func plansCommand() *cli.Command {
	return &cli.Command{
		Name: "plans", Usage: "keep the team's plans in the bank, by name", ArgsUsage: "[NAME] [--save FILE] [--history] [--remove]",
		Description: "Without NAME, lists the plans and pacing lists. With it, prints the plan as it stands, to look at or to change:\n" +
			"every text that ever stood under a name is kept.\n\n" +
			"Example: evenhand plans 'friday check' --save demo/friday.toml\n" +
			"         evenhand plans\n" +
			"         evenhand plans 'friday check' --history",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "save", Usage: "keep the plan in `FILE` under the name; it is checked first"},
			&cli.BoolFlag{Name: "pacing", Usage: "with --save: it is a pacing list for a term"},
			&cli.BoolFlag{Name: "history", Usage: "list who changed it when"},
			&cli.BoolFlag{Name: "remove", Usage: "take it out of the list; its history stays"},
			jsonFlag, byFlag,
		},
		Before: together(
			either("save", "history", "remove"),
			only([]string{"save"}, "what is kept already is known to be a plan or a pacing list", "pacing"),
			apart("save", "it is for what is shown", "json"),
			apart("remove", "it is for what is shown", "json"),
		),
		Action: runPlans,
	}
}

func runPlans(c *cli.Context) error {
	name := c.Args().First()
	switch {
	case c.NArg() > 1:
		return usagef("name one plan; put quotes around a name of several words")
	case name == "" && (c.IsSet("save") || c.Bool("history") || c.Bool("remove")):
		return usagef("name the plan, such as evenhand plans friday --history")
	case name == "":
		return readingBank(c, func(b *bank.Bank) error { return listPlans(c, b) })
	case c.IsSet("save"):
		return savePlan(c, name)
	case c.Bool("remove"):
		return withBank(c, func(b *bank.Bank) error {
			if err := b.RemovePlan(name, author(c), now()); err != nil {
				return err
			}
			say(c, "%s is out of the list; its history stays", name)
			return nil
		})
	}
	return readingBank(c, func(b *bank.Bank) error { return showSavedPlan(c, b, name) })
}

func listPlans(c *cli.Context, b *bank.Bank) error {
	plans, err := b.Plans()
	if err != nil {
		return err
	}
	if c.Bool("json") {
		return printJSON(c, append([]bank.Plan{}, plans...))
	}
	if len(plans) == 0 {
		say(c, "no plans yet; evenhand plans NAME --save FILE keeps one")
		return nil
	}
	rows := [][]string{{"NAME", "KIND", "REVISION", "BY", "ON"}}
	for _, plan := range plans {
		rows = append(rows, append([]string{plan.Name, kindOfPlan(plan)}, stamp(plan)...))
	}
	return table(c.App.Writer, rows)
}

func kindOfPlan(plan bank.Plan) string {
	if plan.Pacing {
		return "pacing list"
	}
	return "plan"
}

// stamp is which revision it is, whose and of when.
func stamp(plan bank.Plan) []string {
	return []string{fmt.Sprint(plan.Revision), plan.By, plan.At.Format(time.DateOnly)}
}

func showSavedPlan(c *cli.Context, b *bank.Bank, name string) error {
	if c.Bool("history") {
		history, err := b.PlanHistory(name)
		if err != nil {
			return err
		}
		if c.Bool("json") {
			return printJSON(c, append([]bank.Plan{}, history...))
		}
		rows := [][]string{{"REVISION", "BY", "ON", ""}}
		for _, plan := range history {
			rows = append(rows, append(stamp(plan), map[bool]string{true: "taken out of the list"}[plan.Removed]))
		}
		return table(c.App.Writer, rows)
	}
	plan, err := b.Plan(name)
	if err != nil {
		return err
	}
	if c.Bool("json") {
		return printJSON(c, plan)
	}
	_, err = io.WriteString(c.App.Writer, plan.Text)
	return err
}

// savePlan keeps a plan that has no mistake.
func savePlan(c *cli.Context, name string) error {
	path := c.String("save")
	text, err := planFile(path)
	if err != nil {
		return err
	}
	if c.Bool("pacing") {
		_, err = plan.ParsePacing(text, path)
	} else {
		_, err = plan.Parse(text, path)
	}
	if err != nil {
		return err
	}
	return withBank(c, func(b *bank.Bank) error {
		plan, err := b.SavePlan(bank.Plan{Name: name, Pacing: c.Bool("pacing"), Text: string(text), By: author(c), At: now()})
		if err != nil {
			return err
		}
		say(c, "%s is kept as revision %d", plan.Name, plan.Revision)
		return nil
	})
}
