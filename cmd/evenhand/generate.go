package main

import (
	"strings"

	"evenhand/bank"
	"evenhand/bank/generate"
	"evenhand/standards"

	"github.com/urfave/cli/v2"
)

// whereFlag is a wish about traits; it may be given more than once.
var whereFlag = &cli.StringSliceFlag{Name: "where", Usage: "a condition on a `TRAIT`, such as regroups=2, 'largest<=50' " +
	"or hundred=3 (the largest number from 201 to 300); may be given again, then all must hold"}

func generateCommand() *cli.Command {
	return &cli.Command{
		Name: "generate", Usage: "make items of a skill and add them to the bank", ArgsUsage: "--skill SKILL [--count N] [--where TRAIT ...] [--seed K]",
		Description: "Every possible item that fits is as likely as any other; none that the bank has is made again.\n" +
			"The same seed makes the same items. When fewer exist than asked for, it says how many.\n\n" +
			"Example: evenhand generate --skill add-past-100 --count 20 --where regroups=2 --where crosses_100=true",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "skill", Usage: "the `SKILL`; evenhand skills lists them"},
			&cli.IntFlag{Name: "count", Usage: "make `N` items", Value: 10},
			whereFlag,
			&cli.Uint64Flag{Name: "seed", Usage: "the `NUMBER` that decides which items", Value: 1},
			&cli.BoolFlag{Name: "spread", Usage: "let kinds within the skill come evenly, such as counting by 2s, 5s, 10s and 100s"},
			&cli.BoolFlag{Name: "draft", Usage: "add them as drafts, to be looked over before a quiz may use them"},
			byFlag,
		},
		Action: generateItems,
	}
}

func generateItems(c *cli.Context) error {
	if err := noArguments(c); err != nil {
		return err
	}
	if c.String("skill") == "" {
		return usagef("say which skill: --skill SKILL; evenhand skills lists them")
	}
	skill, err := skillNamed(c.String("skill"))
	if err != nil {
		return err
	}
	where, err := standards.ParseWhere(c.StringSlice("where"))
	if err != nil {
		return usagef("--where: %v", err)
	}
	if c.Int("count") < 1 {
		return usagef("--count is %d; ask for one item or more", c.Int("count"))
	}
	request := generate.Request{Skill: skill, Where: where, Count: c.Int("count"), Seed: c.Uint64("seed"), Spread: c.Bool("spread")}
	standing := bank.Ready
	if c.Bool("draft") {
		standing = bank.Draft
	}
	return withBank(c, func(b *bank.Bank) error {
		result, err := generate.Into(b, request, standing, author(c), now())
		if err != nil {
			return err
		}
		ending := ""
		if len(where) > 0 {
			ending = " where " + where.String()
		}
		say(c, "%s%s: %s", skill, ending, result)
		for _, task := range result.Tasks {
			if _, err := c.App.Writer.Write([]byte(task.String() + "\n")); err != nil {
				return err
			}
		}
		return nil
	})
}

// splitList splits "a, b" at commas and spaces.
func splitList(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ' ' })
}
