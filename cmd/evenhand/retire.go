package main

import (
	"evenhand/bank"

	"github.com/urfave/cli/v2"
)

func retireCommand() *cli.Command {
	return &cli.Command{
		Name: "retire", Usage: "take items out of use, keeping them and their history", ArgsUsage: "ID ... --reason WHY",
		Description: "A retired item is no longer chosen for quizzes; evenhand revise ID --status ready brings it back.\n" +
			"Say who you are with --by or EVENHAND_BY.\n\n" +
			"Example: evenhand retire 01M84J5E00V63QXKKD8PXJS92Y --reason 'the picture misled them' --by MK",
		Flags:  []cli.Flag{&cli.StringFlag{Name: "reason", Usage: "`WHY` they are retired"}, byFlag},
		Action: retireItems,
	}
}

func retireItems(c *cli.Context) error {
	if !c.Args().Present() {
		return usagef("say which items: evenhand retire ID --reason WHY")
	}
	if err := signed(c); err != nil {
		return err
	}
	return withBank(c, func(b *bank.Bank) error {
		done, already := 0, 0
		for _, id := range c.Args().Slice() {
			before, err := b.Get(id)
			if err == nil && before.Standing == bank.Retired {
				say(c, "%s is retired already", before.ID)
				already++
				continue
			}
			if err == nil {
				_, err = b.Retire(id, c.String("by"), c.String("reason"), now())
			}
			if err != nil {
				say(c, "%v", err)
				continue
			}
			done++
		}
		switch done + already {
		case c.NArg():
			say(c, "retired %s", count(done, "item"))
			return nil
		case 0:
			return errNothingDone
		}
		return inPartf("retired %d of %d items", done, c.NArg())
	})
}
