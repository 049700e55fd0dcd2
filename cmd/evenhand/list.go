package main

import (
	"errors"
	"fmt"
	"iter"
	"slices"
	"strings"

	"evenhand/assemble/export"
	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"

	"github.com/urfave/cli/v2"
)

func listCommand() *cli.Command {
	return &cli.Command{
		Name: "list", Usage: "find items in the bank", ArgsUsage: "[--skill SKILL] [--where TRAIT ...] [WORDS ...]",
		Description: "Lists the items that fit everything asked for; without options, all of them.\nWORDS must stand in the question.\n\n" +
			"Example: evenhand list --skill add-two-digit --where regroups=1 --format csv",
		Flags: []cli.Flag{
			&cli.StringSliceFlag{Name: "skill", Usage: "items of a `SKILL`; may be given again"},
			whereFlag,
			&cli.StringFlag{Name: "standard", Usage: "items that meet a published standard, by its `CODE`"},
			&cli.StringSliceFlag{Name: "band", Usage: "items of a `BAND`: warm-up, core or stretch; may be given again"},
			&cli.StringSliceFlag{Name: "status", Usage: "items of a `STATUS`: draft, ready or retired; may be given again"},
			&cli.StringSliceFlag{Name: "layout", Usage: "items shown in a `LAYOUT`, such as column; may be given again"},
			&cli.StringFlag{Name: "origin", Usage: "`HOW` they came: generated, written or imported"},
			&cli.StringFlag{Name: "file", Usage: "imported from the list `FILE`"},
			&cli.StringFlag{Name: "from", Usage: "brought or written by `WHO`"},
			&cli.StringFlag{Name: "unused-since", Usage: "not used in this `WEEK` or later, such as 2026-W40"},
			&cli.Float64Flag{Name: "easiest", Usage: "difficulty of at least `LOGITS`", DefaultText: "any"},
			&cli.Float64Flag{Name: "hardest", Usage: "difficulty of at most `LOGITS`", DefaultText: "any"},
			&cli.BoolFlag{Name: "by-hand", Usage: "only items whose traits are given by hand"},
			&cli.StringFlag{Name: "format", Usage: "`FORM` of the list: table, csv or json", Value: "table"},
			&cli.BoolFlag{Name: "verbose", Usage: "show the difficulty in logits, too"},
			&cli.BoolFlag{Name: "conflicts", Usage: "only what a merge left to look at: items changed in both banks, or that ask the same as another"},
		},
		Before: together(apart("conflicts", "that lists all that merges left to look at", "skill", "where", "standard", "band",
			"status", "layout", "origin", "file", "from", "unused-since", "easiest", "hardest", "by-hand", "verbose")),
		Action: listItems,
	}
}

func listItems(c *cli.Context) error {
	query, err := readQuery(c)
	if err != nil {
		return err
	}
	switch c.String("format") {
	case "table", "csv", "json":
	default:
		return usagef("--format is %q; it can be table, csv or json", c.String("format"))
	}
	if c.Bool("conflicts") {
		switch {
		case c.NArg() > 0:
			return usagef("--conflicts lists all that merges left to look at; leave off %q", c.Args().First())
		case c.String("format") == "csv":
			return usagef("--conflicts has no CSV; --format json is for other programs")
		}
		return listConflicts(c)
	}
	return readingBank(c, func(b *bank.Bank) error {
		found := b.Find(query)
		learnt, err := b.Table()
		if err = errors.Join(err, sayRests(c, b)); err != nil {
			return err
		}
		switch c.String("format") {
		case "csv":
			return export.WriteBank(c.App.Writer, found)
		case "json":
			return listJSON(c, found, learnt)
		}
		rows := [][]string{{"ID", "QUESTION", "KEY", "SKILL", "BAND", "RIGHT", "BASIS", "STATUS"}}
		if c.Bool("verbose") {
			rows[0] = append(rows[0], "LOGITS", "TRAITS")
		}
		for item, err := range found {
			if err != nil {
				return err
			}
			rows = append(rows, itemLine(item, learnt.Basis(item), c.Bool("verbose")))
		}
		say(c, "%s", count(len(rows)-1, "item"))
		if len(rows) == 1 {
			return nil
		}
		return table(c.App.Writer, rows)
	})
}

func listJSON(c *cli.Context, found iter.Seq2[bank.Item, error], learnt bank.Table) error {
	items := []export.Item{}
	for item, err := range found {
		if err != nil {
			return err
		}
		items = append(items, export.ItemOf(item, learnt.Basis(item)))
	}
	return printJSON(c, items)
}

// itemLine is an item in one line of a table.
func itemLine(item bank.Item, basis bank.Basis, verbose bool) []string {
	d := item.Difficulty()
	line := []string{item.ID, cut(item.Question("en"), 60), cut(item.Key, 30), string(item.Skill), string(d.Band()), fmt.Sprintf("about %d in 10", d.Tenths()),
		string(basis), string(item.Standing)}
	if !item.Predictable() {
		line[4], line[5], line[6] = "", noPrediction, ""
	}
	if verbose {
		logits := d.String()
		if !item.Predictable() {
			logits = ""
		}
		line = append(line, logits, traitsInWords(item))
	}
	return line
}

// noPrediction is said of an item by hand of which no skill is known.
const noPrediction = "no prediction"

// cut is a text on one line of a table, without its end where it is long.
func cut(text string, longest int) string {
	text = strings.Join(strings.Fields(text), " ")
	if runes := []rune(text); len(runes) > longest {
		return string(runes[:longest-3]) + "..."
	}
	return text
}

func traitsInWords(item bank.Item) string {
	if item.ByHand() {
		return "traits by hand"
	}
	return strings.Join(item.Traits.List(), " ")
}

func readQuery(c *cli.Context) (bank.Query, error) {
	q := bank.Query{Kind: c.String("origin"), File: c.String("file"), Author: c.String("from")}
	for _, name := range c.StringSlice("skill") {
		skill, err := skillNamed(name)
		if err != nil {
			return q, err
		}
		q.Skills = append(q.Skills, skill)
	}
	var err error
	if q.Where, err = standards.ParseWhere(c.StringSlice("where")); err != nil {
		return q, usagef("--where: %v", err)
	}
	if q.Unused, err = weekOf(c, "unused-since"); err != nil {
		return q, err
	}
	if code := c.String("standard"); code != "" {
		if q.Code, err = standards.ParseCode(code); err != nil {
			return q, usagef("--standard: %v", err)
		}
	}
	for _, name := range c.StringSlice("layout") {
		look, err := task.ParseLook(name)
		if err != nil {
			return q, usagef("--layout: %v", err)
		}
		q.Looks = append(q.Looks, look)
	}
	if q.Bands, err = choices("band", c.StringSlice("band"), standards.Bands()); err != nil {
		return q, err
	}
	if q.Standings, err = choices("status", c.StringSlice("status"), []bank.Standing{bank.Draft, bank.Ready, bank.Retired}); err != nil {
		return q, err
	}
	if _, err := choice(c, "origin", []string{"generated", "written", "imported"}); err != nil {
		return q, err
	}
	if c.Bool("by-hand") {
		yes := true
		q.ByHand = &yes
	}
	if c.IsSet("easiest") && c.IsSet("hardest") && c.Float64("easiest") > c.Float64("hardest") {
		return q, usagef("no item is at least as hard as --easiest %v and at most as hard as --hardest %v; "+
			"in logits larger is harder", c.Float64("easiest"), c.Float64("hardest"))
	}
	q.Difficulty = difficultyRange(c)
	for _, word := range c.Args().Slice() {
		if err := meantAsOption(c, word); err != nil {
			return q, err
		}
		q.Words += word + " "
	}
	return q, nil
}

// meantAsOption refuses a word to look for that is an option or a condition without its dashes.
func meantAsOption(c *cli.Context, word string) error {
	name, value, ok := strings.Cut(word, "=")
	if flag := flagNamed(c.Command.Flags, name); ok && flag != nil && takesValue(flag) {
		return usagef("%s would be looked for in the questions; for items of that %s write --%s %s", word, name, name, inShell(value))
	}
	if where, err := standards.ParseWhere([]string{word}); err == nil && len(where) > 0 {
		return usagef("%s would be looked for in the questions; for items with it write --where %s", word, inShell(word))
	}
	return nil
}

// difficultyRange is what --easiest and --hardest ask for, nil for nothing.
func difficultyRange(c *cli.Context) *bank.Range {
	if !c.IsSet("easiest") && !c.IsSet("hardest") {
		return nil
	}
	r := bank.Range{From: -1 << 20, To: 1 << 20}
	if c.IsSet("easiest") {
		r.From = standards.Difficulty(1000 * c.Float64("easiest"))
	}
	if c.IsSet("hardest") {
		r.To = standards.Difficulty(1000 * c.Float64("hardest"))
	}
	return &r
}

// choice reads a flag that takes one of a few words; empty where the flag is not given.
func choice[T ~string](c *cli.Context, flag string, allowed []T) (chosen T, err error) {
	if c.String(flag) == "" {
		return "", nil
	}
	_, err = choices(flag, []string{c.String(flag)}, allowed)
	return T(c.String(flag)), err
}

// choices reads a flag that takes some of a few words.
func choices[T ~string](flag string, given []string, allowed []T) ([]T, error) {
	var chosen []T
	for _, text := range given {
		if !slices.Contains(allowed, T(text)) {
			names := make([]string, len(allowed))
			for i, word := range allowed {
				names[i] = string(word)
			}
			return nil, usagef("--%s is %q; it can be %s", flag, text, strings.Join(names, ", "))
		}
		chosen = append(chosen, T(text))
	}
	return chosen, nil
}
