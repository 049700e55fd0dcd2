package main

import (
	"fmt"
	"io"
	"os"

	"evenhand/assemble"

	"github.com/urfave/cli/v2"
)

func planCommand() *cli.Command {
	return &cli.Command{
		Name: "plan", Usage: "write an example plan, or check one", ArgsUsage: "[--pacing] [PLAN.toml]",
		Description: "Without a file it prints an example with a note on everything that may stand in a plan.\nWith one it checks it and says line and column of every mistake.\n\n" +
			"Example: evenhand plan > friday.toml\n         evenhand plan friday.toml",
		Flags:  []cli.Flag{&cli.BoolFlag{Name: "pacing", Usage: "a pacing list for a term, not a plan"}},
		Action: showPlan,
	}
}

func showPlan(c *cli.Context) error {
	if !c.Args().Present() && c.Bool("pacing") {
		_, err := io.WriteString(c.App.Writer, assemble.ExamplePacing())
		return err
	}
	if !c.Args().Present() {
		_, err := io.WriteString(c.App.Writer, assemble.ExamplePlan())
		return err
	}
	path, err := oneArgument(c, "PLAN.toml")
	if err != nil {
		return err
	}
	if c.Bool("pacing") {
		return showPacing(c, path)
	}
	plan, err := readPlan(path)
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
	pacing, err := readPacing(path)
	if err != nil {
		return err
	}
	fmt.Fprintf(c.App.Writer, "%s: %s a week, %s\n", pacing.Weekly.Title, count(pacing.Items, "item"), count(len(pacing.New), "new skill"))
	for _, skill := range pacing.New {
		fmt.Fprintf(c.App.Writer, "  week %d: %s\n", skill.Week, skill.Name())
	}
	return nil
}

func readPlan(path string) (assemble.Plan, error) {
	text, err := os.ReadFile(path)
	if err != nil {
		return assemble.Plan{}, fmt.Errorf("can't read the plan %s; evenhand plan > %s writes an example there", path, path)
	}
	return assemble.ParsePlan(text, path)
}
