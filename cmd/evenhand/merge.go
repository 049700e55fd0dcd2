package main

import (
	"errors"
	"fmt"
	"os"

	"evenhand/bank"
	"evenhand/bank/results"

	"github.com/urfave/cli/v2"
)

func mergeCommand() *cli.Command {
	return &cli.Command{
		Name: "merge", Usage: "bring in all that another bank holds", ArgsUsage: "OTHER [--marks [--forgotten]] [--dry-run]",
		Description: "OTHER is a bank's file or the address of one in a database. Its items come with their history and uses, its plans,\n" +
			"its quizzes and what it learnt. Nothing of either bank is lost, and OTHER is only read. What was changed in both is\n" +
			"kept twice in the history, the later change stands, and 'evenhand list --conflicts' lists it for you to look at.\n" +
			"Pupils' marks come only with --marks; results of pupils who were forgotten here stay out, unless you say --forgotten.\n\n" +
			"Example: evenhand backup copies/laptop.bank\n" +
			"         evenhand merge copies/laptop.bank --dry-run\n" +
			"         evenhand merge copies/laptop.bank --marks",
		Flags: []cli.Flag{
			&cli.BoolFlag{Name: "marks", Usage: "bring in the marks beside OTHER, too"},
			&cli.BoolFlag{Name: "forgotten", Usage: "with --marks: bring in pupils who were forgotten here, too"},
			&cli.BoolFlag{Name: "dry-run", Usage: "only tell what would come; change nothing"},
			jsonFlag,
		},
		Before: together(
			apart("dry-run", "that tells of the bank alone", "marks"),
			only([]string{"marks"}, "it is about marks", "forgotten"),
		),
		Action: mergeBanks,
	}
}

// mergedJSON is what merge tells other programs.
type mergedJSON struct {
	bank.Merged
	Marks *results.Merged `json:"marks"` // null without --marks
}

func mergeBanks(c *cli.Context) error {
	address, err := oneArgument(c, "OTHER")
	if err != nil {
		return err
	}
	if sameBank(c.String("bank"), address) {
		return usagef("%s is the bank itself; name another one", address)
	}
	if err := isThere(address); err != nil {
		return err
	}
	other, err := bank.Open(address, bank.Options{ReadOnly: true})
	if err != nil {
		return err
	}
	defer other.Close()
	var told mergedJSON
	err = withBank(c, func(b *bank.Bank) error {
		advance, end := progress(c, "merging")
		defer end()
		count, err := other.Count()
		if err != nil {
			return err
		}
		total := 0
		for _, n := range count {
			total += n
		}
		told.Merged, err = b.Merge(other, bank.MergeOptions{DryRun: c.Bool("dry-run"), Advance: func(done int) { advance(done, total) }})
		return err
	})
	if err != nil {
		return fmt.Errorf("%w; what was merged so far is safe, and doing it again finishes it", err)
	}
	if c.Bool("marks") {
		if told.Marks, err = mergeMarks(c, address); err != nil {
			return inPartf("the bank is merged, but not its marks: %w", err)
		}
	}
	if c.Bool("json") {
		return printJSON(c, told)
	}
	printMerged(c, told)
	return nil
}

// sameBank says whether two addresses name one bank.
func sameBank(a, b string) bool {
	if a == b {
		return true
	}
	one, err := os.Stat(a)
	if err != nil {
		return false
	}
	other, err := os.Stat(b)
	return err == nil && os.SameFile(one, other)
}

// mergeMarks merges the marks beside the other bank; nil where there are none.
func mergeMarks(c *cli.Context, address string) (*results.Merged, error) {
	other, err := results.Open(results.Path(address), bank.Options{ReadOnly: true})
	if errors.Is(err, results.ErrNone) {
		none := results.NothingMerged(results.Path(address))
		return &none, nil
	}
	if err != nil {
		return nil, err
	}
	defer other.Close()
	var m results.Merged
	err = withResults(c, bank.Options{}, func(s *results.Store) error {
		m, err = s.Merge(other, results.MergeOptions{Forgotten: c.Bool("forgotten")})
		return err
	})
	return &m, err
}

func printMerged(c *cli.Context, told mergedJSON) {
	out := func(format string, args ...any) { fmt.Fprintf(c.App.Writer, format+"\n", args...) }
	out("from %s: %s new, %d changed only there, %s", told.From, count(told.Items, "item"), told.Ahead, count(told.Uses, "use")+" of items that both had")
	for _, j := range told.Joined {
		out("added in both, now one item: %s (also %s): %s", j.ID, j.Others, cut(j.Question, 60))
	}
	for _, name := range told.Plans {
		out("plan %s: came, or got a later text", name)
	}
	for _, name := range told.Both {
		out("plan %s: changed in both; the later text stands, evenhand plans %q --history has the other", name, name)
	}
	for _, name := range told.Quizzes {
		out("quiz %s", name)
	}
	for _, name := range told.Lists {
		out("list %s: came in there, or was taken back", name)
	}
	if told.Learnt {
		out("what was learnt from papers there is later, and stands")
	}
	if told.Review {
		out("who lets drafts in was decided later there, and holds now")
	}
	printApart(c, told.Apart)
	printDoubles(c, told.Doubles)
	if m := told.Marks; m != nil {
		out("marks from %s: %s new, %d of quizzes that had none here, %d marked again only there", m.From, count(m.Papers, "paper"), m.Quizzes, m.Changed)
		for _, line := range m.Apart {
			out("marked in both: %s", line)
		}
		for _, pupil := range m.Pupils {
			out("new in a class list: %s", pupil)
		}
		for _, pupil := range m.Forgotten {
			out("stayed out: %s, whose results were removed here; --forgotten brings them back", pupil)
		}
		for _, pupil := range m.ForgottenThere {
			out("still here: %s, whose results were removed there; evenhand forget %s removes them here", pupil, pupil)
		}
	}
	switch {
	case c.Bool("dry-run"):
		say(c, "this was a dry run: nothing is changed")
	case told.Elsewise:
		say(c, "the banks had learnt differently from papers; evenhand refresh makes all predictions alike")
	}
	if len(told.Apart)+len(told.Doubles) > 0 {
		say(c, "evenhand list --conflicts lists what is to be looked at")
	}
}

func printApart(c *cli.Context, apart []bank.Apart) {
	for _, a := range apart {
		fmt.Fprintf(c.App.Writer, "changed in both: %s %s\n  stands: %s\n  other:  %s\n", a.ID, cut(a.Question, 60), changeInWords(a.Stands), changeInWords(a.Other))
	}
}

func changeInWords(change bank.Change) string {
	return fmt.Sprintf("revision %d by %s on %s, %s: %s, key %s, %s", change.Revision, change.By, change.On, change.Reason,
		cut(change.Question, 60), cut(change.Key, 30), change.Standing)
}

func printDoubles(c *cli.Context, doubles []bank.Double) {
	for _, d := range doubles {
		fmt.Fprintf(c.App.Writer, "asks the same as %s: %s %s\n", d.Other, d.ID, cut(d.Question, 60))
	}
}

// listConflicts lists what merges left for a person to look at.
func listConflicts(c *cli.Context) error {
	return readingBank(c, func(b *bank.Bank) error {
		apart, doubles, err := b.Conflicts()
		if err != nil {
			return err
		}
		if c.String("format") == "json" {
			return printJSON(c, struct {
				Apart   []bank.Apart  `json:"apart"`
				Doubles []bank.Double `json:"doubles"`
			}{append([]bank.Apart{}, apart...), doubles})
		}
		printApart(c, apart)
		printDoubles(c, doubles)
		if len(apart)+len(doubles) == 0 {
			say(c, "no merge left anything to look at")
			return nil
		}
		if len(apart) > 0 {
			say(c, "evenhand revise ID changes what stands, or its --notes where it is right, and takes it off this list")
		}
		if len(doubles) > 0 {
			say(c, "evenhand retire ID takes one of two that ask the same out of use")
		}
		return nil
	})
}
