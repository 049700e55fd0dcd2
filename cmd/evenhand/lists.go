package main

import (
	"fmt"
	"time"

	"evenhand/bank"
	intake "evenhand/import"

	"github.com/urfave/cli/v2"
)

func listsCommand() *cli.Command {
	return &cli.Command{
		Name: "lists", Usage: "list the colleagues' lists that came in, or what became of the rows of one", ArgsUsage: "[NAME] [--json]",
		Description: "NAME is the list's file name; of a list that came in several times, the last time counts. It says how each column\n" +
			"was understood and what became of each row: added, already here or set aside with the reason.\n\n" +
			"Example: evenhand lists\n" +
			"         evenhand lists sv-friday-mix.csv",
		Flags:  []cli.Flag{jsonFlag},
		Action: runLists,
	}
}

func runLists(c *cli.Context) error {
	if c.NArg() > 1 {
		return usagef("name one list; put quotes around a name of several words")
	}
	return readingBank(c, func(b *bank.Bank) error {
		lists, err := b.Lists()
		if err != nil {
			return err
		}
		if c.NArg() == 0 {
			return listLists(c, lists)
		}
		name := listName(c.Args().First())
		for i := len(lists) - 1; i >= 0; i-- {
			if lists[i].Name == name {
				return showList(c, b, lists[i])
			}
		}
		return fmt.Errorf("%s keeps no list named %s; evenhand lists names them", b.Path(), name)
	})
}

// inEnglish are lists without what tells the same for other languages.
func inEnglish(lists []bank.List) []bank.List {
	all := append([]bank.List{}, lists...)
	for i := range all {
		all[i].Told = nil
	}
	return all
}

func listLists(c *cli.Context, lists []bank.List) error {
	if c.Bool("json") {
		return printJSON(c, inEnglish(lists))
	}
	if len(lists) == 0 {
		say(c, "no list came in yet; evenhand import LIST brings one in")
		return nil
	}
	rows := [][]string{{"LIST", "ON", "BY", "ROWS", "ADDED", "HERE BEFORE", "SET ASIDE", ""}}
	for _, list := range lists {
		fate := func(f intake.Fate) string { return fmt.Sprint(list.Fates[string(f)]) }
		row := []string{
			list.Name, list.At.Format(time.DateOnly), list.By, fmt.Sprint(list.Rows),
			fate(intake.Added), fate(intake.Here), fate(intake.SetAside), "",
		}
		if back := list.TakenBack; back != nil {
			row[7] = fmt.Sprintf("taken back by %s on %s", back.By, back.At.Format(time.DateOnly))
		}
		rows = append(rows, row)
	}
	return table(c.App.Writer, rows)
}

// keptListJSON is a list with its rows.
type keptListJSON struct {
	bank.List
	Outcomes []bank.ListRow `json:"outcomes"`
}

func showList(c *cli.Context, b *bank.Bank, list bank.List) error {
	outcomes, err := b.ListRows(list)
	if err != nil {
		return err
	}
	if c.Bool("json") {
		for i := range outcomes {
			outcomes[i].Told = nil
		}
		return printJSON(c, keptListJSON{inEnglish([]bank.List{list})[0], append([]bank.ListRow{}, outcomes...)})
	}
	say(c, "%s: %s", list.Name, list.Written)
	for _, column := range list.Columns {
		say(c, "  column %s", intake.Column{Number: column.Number, Heading: column.Heading, Meaning: intake.Meaning(column.Meaning), Why: column.Why})
	}
	for _, asked := range list.Asked {
		say(c, "asked: %s", asked)
	}
	rows := [][]string{{"LINE", "FATE", "ITEM", "WHY"}}
	for _, out := range outcomes {
		why := out.Reason
		if out.Column != "" {
			why = out.Column + ": " + why
		}
		rows = append(rows, []string{fmt.Sprint(out.Line), out.Fate, out.ID, why})
	}
	return table(c.App.Writer, rows)
}
