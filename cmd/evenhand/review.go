package main

import (
	"strings"
	"time"

	"evenhand/bank"

	"github.com/urfave/cli/v2"
)

func reviewCommand() *cli.Command {
	return &cli.Command{
		Name: "review", Usage: "let drafts in, after somebody who didn't write them has read them", ArgsUsage: "[ID ... --ready] [--by WHO]",
		Description: "Without IDs, lists the drafts that wait, with who wrote them. With --ready they are let into quizzes, by anybody but\n" +
			"those who wrote of them; who it was stands in the item's history. A team that does without this switches it off\n" +
			"with --anyone on, and on again with --anyone off.\n\n" +
			"Example: evenhand review\n" +
			"         evenhand review --anyone off --by SV",
		Flags: []cli.Flag{
			&cli.BoolFlag{Name: "ready", Usage: "let these drafts in"},
			&cli.StringFlag{Name: "anyone", Usage: "`on or off`: whether those who wrote a draft may let it in, too"},
			byFlag, jsonFlag,
		},
		Before: together(
			apart("anyone", "it is for the whole team; say it by itself", "ready", "json"),
			apart("ready", "it is for the list of drafts", "json"),
		),
		Action: runReview,
	}
}

func runReview(c *cli.Context) error {
	switch {
	case c.IsSet("anyone"):
		return setReview(c)
	case c.NArg() > 0 && !c.Bool("ready"):
		return usagef("say that they are ready: evenhand review %s --ready", strings.Join(c.Args().Slice(), " "))
	case c.NArg() == 0 && c.Bool("ready"):
		return usagef("say which drafts are ready; evenhand review lists them")
	case c.NArg() > 0:
		return letIn(c)
	}
	return readingBank(c, func(b *bank.Bank) error { return listDrafts(c, b) })
}

func setReview(c *cli.Context) error {
	word, err := choices("anyone", []string{c.String("anyone")}, []string{"on", "off"})
	if err != nil {
		return err
	}
	if c.NArg() > 0 {
		return usagef("--anyone is for the whole team; say it by itself")
	}
	return withBank(c, func(b *bank.Bank) error {
		if err := b.SetReview(bank.Review{Anyone: word[0] == "on", By: author(c), At: now()}); err != nil {
			return err
		}
		if word[0] == "on" {
			say(c, "anyone lets any draft in now")
		} else {
			say(c, "a draft is let in by somebody who didn't write it")
		}
		return nil
	})
}

// letIn makes drafts ready, all or none.
func letIn(c *cli.Context) error {
	return withBank(c, func(b *bank.Bank) error {
		n, err := b.ReviseAll(c.Args().Slice(), author(c), "reviewed", now(), func(it *bank.Item) error {
			if it.Standing == bank.Draft {
				it.Standing = bank.Ready
			}
			return nil
		})
		if err != nil {
			return err
		}
		say(c, "%s ready, read by %s", count(n, "draft"), author(c))
		return nil
	})
}

func listDrafts(c *cli.Context, b *bank.Bank) error {
	waiting := b.Find(bank.Query{Standings: []bank.Standing{bank.Draft}})
	if c.Bool("json") {
		learnt, err := b.Table()
		if err != nil {
			return err
		}
		return listJSON(c, waiting, learnt)
	}
	rows := [][]string{{"ID", "QUESTION", "KEY", "SKILL", "WROTE", "SINCE"}}
	for it, err := range waiting {
		if err != nil {
			return err
		}
		wrote := it.By
		if it.Origin.By != "" && it.Origin.By != it.By {
			wrote = it.Origin.By + ", " + it.By
		}
		rows = append(rows, []string{it.ID, cut(it.Question("en"), 60), cut(it.Key, 30), string(it.Skill), wrote, it.At.Format(time.DateOnly)})
	}
	how, err := b.Review()
	if err != nil {
		return err
	}
	if how.Anyone {
		say(c, "anyone may let drafts in, as %s said on %s", how.By, how.At.Format(time.DateOnly))
	}
	if len(rows) == 1 {
		say(c, "no draft waits")
		return nil
	}
	return table(c.App.Writer, rows)
}
