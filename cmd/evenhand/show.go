package main

import (
	"fmt"
	"io"
	"strings"

	"evenhand/assemble/sheet"
	"evenhand/bank"
	"evenhand/standards/task"

	"github.com/urfave/cli/v2"
)

func showCommand() *cli.Command {
	return &cli.Command{
		Name: "show", Usage: "show all that is known of an item", ArgsUsage: "ID [--json] [--svg FILE]",
		Description: "The item as it stands, what wrong answers to it suggest, where it was used and every earlier revision.\n--svg writes its picture.\n\n" +
			"Example: evenhand show 01M84J5E00V63QXKKD8PXJS92Y",
		Flags: []cli.Flag{
			jsonFlag, &cli.StringFlag{Name: "svg", Usage: "write the item as a sheet shows it to `FILE`"}, overwriteFlag,
		},
		Before: together(
			apart("svg", "that writes the picture alone", "json"),
			only([]string{"svg"}, "nothing else is written", overwriteFlag.Name),
		),
		Action: showItem,
	}
}

func showItem(c *cli.Context) error {
	id, err := oneArgument(c, "ID")
	if err != nil {
		return err
	}
	if err := picture.named(c.String("svg")); err != nil {
		return err
	}
	return readingBank(c, func(b *bank.Bank) error {
		item, err := b.Get(id)
		if err != nil {
			return err
		}
		uses, err := b.Uses(id)
		if err != nil {
			return err
		}
		learnt, err := b.Table()
		if err != nil {
			return err
		}
		history, err := b.History(id)
		if err != nil {
			return err
		}
		if path := c.String("svg"); path != "" {
			return writePicture(c, path, item)
		}
		if c.Bool("json") {
			return printJSON(c, withPast(item, learnt.Basis(item), uses, history))
		}
		describe(c.App.Writer, item, learnt)
		describePast(c.App.Writer, uses, history)
		return nil
	})
}

// writePicture writes the item as a sheet shows it.
func writePicture(c *cli.Context, path string, item bank.Item) error {
	picture, err := sheet.SVG(sheet.PictureOf(item, 1, "en"), sheet.Options{})
	if err != nil {
		return err
	}
	return writeFile(c, path, func(w io.Writer) error { _, err := w.Write(picture); return err })
}

func describe(w io.Writer, item bank.Item, learnt bank.Table) {
	d := item.Difficulty()
	line := func(name, value string) {
		if value != "" {
			fmt.Fprintf(w, "%-11s %s\n", name, value)
		}
	}
	line("item", fmt.Sprintf("%s, revision %d, %s", item.ID, item.Revision, item.Standing))
	line("question", item.Question("en"))
	line("in Spanish", item.Wording["es"])
	line("key", item.Key)
	line("skill", string(item.Skill))
	line("standards", item.Standards())
	line("layout", item.Look.Title())
	line("traits", traitsInWords(item))
	if item.Predictable() {
		line("difficulty", fmt.Sprintf("%s, %s (%s logits, %s)", d.Words(), d.Band(), d, basisInWords(item, learnt)))
		line("time", fmt.Sprintf("about %d seconds", item.Seconds))
	} else {
		line("difficulty", noPrediction+", as no skill is named; evenhand revise ID --skill SKILL names one")
	}
	line("origin", originInWords(item.Origin))
	line("notes", item.Notes)
	if asked, err := task.Parse(item.Task); err == nil {
		for _, m := range task.MisstepsIn(asked, item.Look) {
			line("answered", m.Answer+": "+tells(m))
		}
	}
}

func tells(m task.Misstep) string {
	parts := make([]string, len(m.Kinds))
	for i, kind := range m.Kinds {
		parts[i] = kind.Tells
	}
	return strings.Join(parts, "; or ")
}

// basisInWords says what the item's difficulty rests on.
func basisInWords(item bank.Item, learnt bank.Table) string {
	switch learnt.Basis(item) {
	case bank.MeasuredBasis:
		return fmt.Sprintf("measured on %d answers, standard error %s", item.Measured.Answers, item.Measured.StandardError)
	case bank.LearntBasis:
		return "learnt from papers with items of its skill"
	}
	return "a guess from its traits"
}

func originInWords(o bank.Origin) string {
	text := o.Kind
	switch o.Kind {
	case "generated":
		text += fmt.Sprintf(" with seed %d", o.Seed)
	case "imported":
		text += fmt.Sprintf(" from %s, line %d", o.File, o.Row)
	}
	if o.By != "" {
		text += ", by " + o.By
	}
	return text
}

func describePast(w io.Writer, uses []bank.Use, history []bank.Item) {
	for _, use := range uses {
		fmt.Fprintf(w, "%-11s %s, week %s\n", "used", use.Quiz, use.Week)
	}
	for _, revision := range history {
		fmt.Fprintf(w, "%-11s %d by %s on %s: %s\n", "revision", revision.Revision, revision.By,
			revision.At.Format("2006-01-02"), or(revision.Reason, revision.Question("en")))
	}
}

// or is the first text that is not empty.
func or(a, b string) string {
	if a != "" {
		return a
	}
	return b
}
