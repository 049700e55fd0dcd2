package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"evenhand/assemble/plan"
	"evenhand/bank"
	intake "evenhand/import"

	"github.com/urfave/cli/v2"
)

func planCommand() *cli.Command {
	return &cli.Command{
		Name: "plan", Usage: "write an example plan, or check one", ArgsUsage: "[--pacing] [PLAN.toml]",
		Description: "Without a file it prints an example with a note on everything that may stand in a plan.\n" +
			"With one it checks it and says line and column of every mistake.\n\n" +
			"Example: evenhand plan > friday.toml\n         evenhand plan friday.toml",
		Flags:  []cli.Flag{&cli.BoolFlag{Name: "pacing", Usage: "a pacing list for a term, not a plan"}},
		Action: showPlan,
	}
}

func showPlan(c *cli.Context) error {
	if !c.Args().Present() && c.Bool("pacing") {
		_, err := io.WriteString(c.App.Writer, plan.ExamplePacing())
		return err
	}
	if !c.Args().Present() {
		_, err := io.WriteString(c.App.Writer, plan.Example())
		return err
	}
	path, err := oneArgument(c, "PLAN.toml")
	if err != nil {
		return err
	}
	if c.Bool("pacing") {
		return showPacing(c, path)
	}
	plan, err := readPlan(c, path)
	if err != nil {
		return err
	}
	fmt.Fprintf(c.App.Writer, "%s: %s, each of %s\n", plan.Title, count(plan.Forms, "form"), count(plan.Size(), "item"))
	for _, row := range plan.Rows {
		fmt.Fprintf(c.App.Writer, "  %d from %s\n", row.Count, row.Name())
	}
	return nil
}

func showPacing(c *cli.Context, path string) error {
	pacing, err := readPacing(c, path)
	if err != nil {
		return err
	}
	fmt.Fprintf(c.App.Writer, "%s: %s a week, %s\n", pacing.Weekly.Title, count(pacing.Items, "item"), count(len(pacing.New), "new skill"))
	for _, skill := range pacing.New {
		fmt.Fprintf(c.App.Writer, "  week %d: %s\n", skill.Week, skill.Name())
	}
	for _, week := range pacing.Skip {
		fmt.Fprintf(c.App.Writer, "  no school: %s\n", week)
	}
	return nil
}

// readPlan reads a plan from its file, else the one that the bank keeps under the name.
func readPlan(c *cli.Context, name string) (plan.Plan, error) {
	text, err := planText(c, name, false)
	if err != nil {
		return plan.Plan{}, err
	}
	return plan.Parse(text, name)
}

// planText is the text of a plan or a pacing list: of a file, else as the bank keeps it by name.
func planText(c *cli.Context, name string, pacing bool) (text []byte, err error) {
	if strings.TrimSpace(name) == "" {
		return nil, usagef("the name of the plan is empty; give its file, or its name in the bank")
	}
	if exists(name) {
		return planFile(name)
	}
	what, flag := "plan", ""
	if pacing {
		what, flag = "pacing list", " --pacing"
	}
	if bankThere(c) {
		_ = readingBank(c, func(b *bank.Bank) error {
			plan, err := b.Plan(name)
			if err == nil && plan.Pacing == pacing {
				text = []byte(plan.Text)
			}
			return err
		})
	}
	if text == nil {
		return nil, fmt.Errorf("there is no %s %s, neither a file nor one that the bank keeps; evenhand plan%s > %s writes an example there",
			what, name, flag, inShell(name))
	}
	return text, nil
}

// planFile reads a file that should be a plan or a pacing list.
func planFile(path string) ([]byte, error) {
	text, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("can't read the plan: %w", err)
	}
	if what, foreign := intake.NoText(text); foreign {
		return nil, fmt.Errorf("%s is %s, not a plan; a plan is plain text, and evenhand plan writes an example", path, what)
	}
	return text, nil
}
