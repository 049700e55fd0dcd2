package main

import (
	"errors"
	"strings"

	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"

	"github.com/urfave/cli/v2"
)

func reviseCommand() *cli.Command {
	return &cli.Command{
		Name: "revise", Usage: "change an item, keeping what it was", ArgsUsage: "ID --reason WHY [changes]",
		Description: "The earlier revision stays in the bank. Say who you are with --by or EVENHAND_BY.\n\n" +
			"Example: evenhand revise 01M84J5E00V63QXKKD8PXJS92Y --task '47 + 38 = ?' --reason 'too like item 3' --by MK",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "reason", Usage: "`WHY` it is changed"},
			byFlag,
			&cli.StringFlag{Name: "task", Usage: "the new `TASK`, such as '47 + 38 = ?'"},
			&cli.StringFlag{Name: "wording", Usage: "the question's `WORDS` in English"},
			&cli.StringFlag{Name: "wording-es", Usage: "the question's `WORDS` in Spanish"},
			&cli.StringFlag{Name: "key", Usage: "the right `ANSWER`, for an item with traits by hand"},
			&cli.StringFlag{Name: "skill", Usage: "the `SKILL`, for an item with traits by hand"},
			&cli.StringFlag{Name: "layout", Usage: "the `LAYOUT` it is shown in, such as column"},
			&cli.StringFlag{Name: "status", Usage: "its `STATUS`: draft, ready or retired"},
			&cli.StringFlag{Name: "notes", Usage: "`NOTES` for colleagues"},
		},
		Action: reviseItem,
	}
}

func reviseItem(c *cli.Context) error {
	id, err := oneArgument(c, "ID")
	if err != nil {
		return err
	}
	if err := signed(c); err != nil {
		return err
	}
	return withBank(c, func(b *bank.Bank) error {
		before, err := b.Get(id)
		if err != nil {
			return err
		}
		item, err := b.Revise(id, c.String("by"), c.String("reason"), now(), func(item *bank.Item) error { return applyChanges(c, item) })
		if err != nil {
			return err
		}
		if item.Revision == before.Revision {
			return errors.New("nothing is different, so there is no new revision; evenhand help revise shows what can be changed")
		}
		learnt, err := b.Table()
		if err != nil {
			return err
		}
		say(c, "%s is now revision %d", item.ID, item.Revision)
		describe(c.App.Writer, item, learnt)
		return nil
	})
}

// signed wants an author and a reason.
func signed(c *cli.Context) error {
	switch {
	case strings.TrimSpace(c.String("reason")) == "":
		return usagef("say why: --reason 'the key was wrong'")
	case strings.TrimSpace(c.String("by")) == "":
		return usagef("say who you are: --by MK, or set EVENHAND_BY")
	}
	return nil
}

func applyChanges(c *cli.Context, item *bank.Item) error {
	if text := c.String("task"); text != "" {
		asked, err := task.Parse(text)
		if err != nil {
			return err
		}
		item.Task = asked.String()
	}
	if (c.IsSet("key") || c.IsSet("skill")) && !item.ByHand() {
		return errors.New("the key and the skill of this item follow from its task; change the task with --task")
	}
	if text := c.String("key"); text != "" {
		item.Key = text
	}
	if name := c.String("skill"); name != "" {
		skill, err := standards.ParseSkill(name)
		if err != nil {
			return err
		}
		item.Skill = skill
	}
	if name := c.String("layout"); name != "" {
		look, err := task.ParseLook(name)
		if err != nil {
			return err
		}
		item.Look = look
	}
	if c.IsSet("status") {
		standing, err := choices("status", []string{c.String("status")}, []bank.Standing{bank.Draft, bank.Ready, bank.Retired})
		if err != nil {
			return err
		}
		item.Standing = standing[0]
	}
	for flag, lang := range map[string]string{"wording": "en", "wording-es": "es"} {
		if c.IsSet(flag) {
			setWording(item, lang, c.String(flag))
		}
	}
	if c.IsSet("notes") {
		item.Notes = c.String("notes")
	}
	return nil
}

func setWording(item *bank.Item, lang, text string) {
	wording := map[string]string{}
	for l, w := range item.Wording {
		wording[l] = w
	}
	if wording[lang] = text; strings.TrimSpace(text) == "" { // the task speaks for itself again
		delete(wording, lang)
	}
	if item.Wording = wording; len(wording) == 0 {
		item.Wording = nil
	}
}
