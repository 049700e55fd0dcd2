package main

import (
	"errors"
	"fmt"

	"evenhand/bank"
	"evenhand/standards"

	"github.com/urfave/cli/v2"
)

func refreshCommand() *cli.Command {
	return &cli.Command{
		Name: "refresh", Usage: "bring a bank of an earlier evenhand along", ArgsUsage: "[--dry-run]",
		Description: "Works out anew what an earlier evenhand worked out of the items: key, skill, traits, standards, seconds and predicted\n" +
			"difficulty. Every change is a new revision; what a person wrote, and what is measured, stays. Keys that change are listed.\n\n" +
			"Example: evenhand refresh --dry-run\n" +
			"         evenhand refresh",
		Flags: []cli.Flag{
			&cli.BoolFlag{Name: "dry-run", Usage: "list every change, with what is and what would be; change nothing"},
			byFlag, jsonFlag,
		},
		Action: refreshBank,
	}
}

// outdatedJSON is a changed item as refresh tells it to other programs.
type outdatedJSON struct {
	ID       string       `json:"id"`
	Question string       `json:"question"`
	Changes  []bank.Field `json:"changes"`
	Problem  string       `json:"problem"` // why it stays as it is
}

func refreshBank(c *cli.Context) error {
	if err := noArguments(c); err != nil {
		return err
	}
	open := withBank
	if c.Bool("dry-run") {
		open = readingBank
	}
	return open(c, func(b *bank.Bank) error {
		found, err := showOutdated(c, b)
		if err != nil {
			return err
		}
		if c.Bool("dry-run") {
			say(c, "%s would change; this was a dry run: nothing is changed", count(found.items, "item"))
			return nil
		}
		advance, end := progress(c, "working out anew")
		revised, err := b.Refresh(author(c), now(), func(done int) { advance(done, found.items) })
		end()
		if err != nil {
			return err
		}
		say(c, "%s brought along to catalogue %d%s", count(revised, "item"), standards.CatalogueNumber, found.keysInWords())
		if err := sayRests(c, b); err != nil {
			return err
		}
		if found.stuck > 0 {
			return inPartf("%s can't be worked out any more and stays as it is; see above", count(found.stuck, "item"))
		}
		return nil
	})
}

// outdatedFound counts what is outdated.
type outdatedFound struct{ items, keys, stuck int }

func (f outdatedFound) keysInWords() string {
	if f.keys == 0 {
		return "; no key is another one"
	}
	return fmt.Sprintf("; %s another one, so look at the list", map[bool]string{true: "1 key is", false: fmt.Sprint(f.keys, " keys are")}[f.keys == 1])
}

// showOutdated lists the items whose keys change, or those with any change for a dry run.
func showOutdated(c *cli.Context, b *bank.Bank) (found outdatedFound, err error) {
	rows := [][]string{{"ID", "QUESTION", "WHAT", "IS", "WOULD BE"}}
	list := []outdatedJSON{}
	for o, err := range b.Outdated() {
		if err != nil {
			return found, err
		}
		row := outdatedJSON{o.Old.ID, o.Old.Question("en"), []bank.Field{}, messageOf(o.Err)}
		found.items++
		if o.Err != nil {
			found.stuck++
			rows = append(rows, []string{row.ID, cut(row.Question, 60), "can't be worked out", row.Problem, ""})
		}
		for _, f := range o.Changed() {
			if f.Name == "key" {
				found.keys++
			}
			if c.Bool("dry-run") || f.Name == "key" {
				row.Changes = append(row.Changes, f)
				rows = append(rows, []string{row.ID, cut(row.Question, 60), f.Name, cut(f.Old, 60), cut(f.New, 60)})
			}
		}
		if len(row.Changes) > 0 || o.Err != nil {
			list = append(list, row)
		}
	}
	if c.Bool("json") {
		return found, printJSON(c, list)
	}
	if len(rows) == 1 {
		return found, nil
	}
	return found, table(c.App.Writer, rows)
}

// sayOlder says in one line that the bank's items were worked out by an earlier catalogue, or once they are brought
// along that what papers taught beside it rests.
func sayOlder(c *cli.Context, b *bank.Bank) error {
	older, err := olderItems(b)
	if err != nil || older == 0 {
		return errors.Join(err, sayRests(c, b))
	}
	say(c, "an earlier evenhand worked out a part of this bank; evenhand refresh brings %s along", count(older, "item"))
	return nil
}

// sayRests says in one line that what papers taught counts for nothing, and what brings it back.
func sayRests(c *cli.Context, b *bank.Bank) error {
	learnt, err := b.KeptTable()
	if err == nil && learnt.Outlived() {
		say(c, "what papers had taught stood beside earlier guesses and counts no more; evenhand calibrate learns it again from the marks")
	}
	return err
}

// olderItems counts what an earlier catalogue worked out otherwise.
func olderItems(b *bank.Bank) (older int, err error) {
	number, err := b.Catalogue()
	if err != nil || number >= standards.CatalogueNumber {
		return 0, err
	}
	for _, err := range b.Outdated() {
		if err != nil {
			return 0, err
		}
		older++
	}
	return older, nil
}
