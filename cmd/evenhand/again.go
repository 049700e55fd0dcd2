package main

import (
	"errors"
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"

	"evenhand/bank"
	"evenhand/bank/results"

	"github.com/urfave/cli/v2"
)

func unuseCommand() *cli.Command {
	return &cli.Command{
		Name: "unuse", Usage: "take back a quiz that was not given: its items are free again", ArgsUsage: "QUIZ [--week WEEK] [--yes]",
		Description: "QUIZ is the quiz's folder, its quiz.csv, or with --week its title. Its files stay as they are. It asks first when\n" +
			"papers of the quiz are marked, as then pupils have seen the items.\n\n" +
			"Example: evenhand unuse 2026-W48 --yes",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "week", Usage: "the `WEEK` of a quiz named by its title, such as 2026-W48"},
			yesFlag,
		},
		Action: unuseQuiz,
	}
}

func unuseQuiz(c *cli.Context) error {
	name, err := oneArgument(c, "QUIZ")
	if err != nil {
		return err
	}
	title := name
	week, err := weekOf(c, "week")
	if err != nil {
		return err
	}
	its := called(title, week)
	if exists(name) || week == "" {
		find := givenQuiz
		if exists(name) && !isQuizFolder(name) {
			find = folderQuiz // which says why it is none
		}
		quiz, err := find(c, name)
		if err != nil {
			return err
		}
		if err := ofWeek(c, quiz.Title, quiz.Week); err != nil {
			return err
		}
		title, week, its = quiz.Title, quiz.Week, oneOf(quiz.ID)
	}
	papers, err := markedPapers(c, its)
	if err != nil {
		return err
	}
	if papers > 0 {
		marked := fmt.Sprintf("%s of %s of %s marked: pupils have seen its items.", count(papers, "paper"), title, week)
		if err := confirmed(c, marked+" Free them all the same?"); err != nil {
			return err
		}
	}
	return withBank(c, func(b *bank.Bank) error {
		free, err := takeBack(c, b, name, title, week)
		if err != nil {
			return err
		}
		fmt.Fprintf(c.App.Writer, "%s of %s of %s free again", count(free, "item"), title, week)
		if free == 0 {
			fmt.Fprint(c.App.Writer, ", as another quiz has all of them")
		}
		fmt.Fprintln(c.App.Writer)
		return nil
	})
}

// takeBack takes back the quiz that a person names. What an earlier evenhand noted without keeping the
// quiz is known by title and week.
func takeBack(c *cli.Context, b *bank.Bank, name, title, week string) (int, error) {
	if c.String("week") == "" || isQuizFolder(name) {
		if kept, err := keptQuiz(c, b, name); err == nil {
			return b.TakeBackQuiz(kept.ID)
		}
	}
	kept, err := keptAs(b, bank.Use{Quiz: title, Week: week})
	if err != nil {
		return 0, err
	}
	one, err := onlyOne(kept, title, week)
	if err == nil && one.ID != "" && isQuizFolder(name) { // of the same title and week, but another
		err = fmt.Errorf("the quiz in %s is not kept: it was taken back, or made without this bank. %s of %s is kept, too; "+
			"if you mean that, take it back by its ID: evenhand unuse %s", name, title, week, one.ID)
	}
	switch {
	case err != nil:
		return 0, err
	case one.ID == "":
		free, err := b.TakeBack(title, week)
		if err == nil && free == 0 {
			err = fmt.Errorf("no use of %s of %s is noted in %s", title, week, b.Path())
		}
		return free, err
	}
	return b.TakeBackQuiz(one.ID)
}

// onlyOne is the quiz that is kept under a title and week; of several a person has to name one.
func onlyOne(kept []bank.Quiz, title, week string) (bank.Earlier, error) {
	kept = slices.DeleteFunc(slices.Clone(kept), func(q bank.Quiz) bool { return q.MakeUp != "" })
	switch len(kept) {
	case 0:
		return bank.Earlier{Title: title, Week: week}, nil
	case 1:
		return bank.Earlier{ID: kept[0].ID}, nil
	}
	var ids []string
	for _, q := range kept {
		ids = append(ids, q.ID)
	}
	return bank.Earlier{}, fmt.Errorf("%d quizzes are %s of %s: %s; take one back by its ID: evenhand unuse %s",
		len(kept), title, week, strings.Join(ids, ", "), ids[0])
}

// called tells the quizzes of a title and week.
func called(title, week string) func(results.Quiz) bool {
	return func(q results.Quiz) bool { return q.Title == title && q.Week == week }
}

// oneOf tells the quizzes that have one of the IDs.
func oneOf(ids ...string) func(results.Quiz) bool {
	return func(q results.Quiz) bool { return slices.Contains(ids, q.ID) }
}

// markedPapers counts the marked papers of some quizzes.
func markedPapers(c *cli.Context, of func(results.Quiz) bool) (n int, err error) {
	s, err := results.Open(results.Path(c.String("bank")), patient(c, bank.Options{ReadOnly: true}))
	if errors.Is(err, results.ErrNone) {
		return 0, nil
	}
	if err != nil {
		return 0, err
	}
	defer s.Close()
	quizzes, err := s.Quizzes()
	for _, quiz := range quizzes {
		if err == nil && of(quiz) {
			var papers []results.Paper
			papers, err = s.Papers(quiz.ID)
			n += len(papers)
		}
	}
	return n, err
}

// again says which earlier quizzes those that are made take the places of.
type again struct {
	choose  *bank.Bank              // from this: the bank as if the earlier quizzes had been taken back
	instead map[string]bank.Earlier // by week
}

// keep keeps a quiz, in the place of the earlier one in the same write: until then that one stands as it was.
func (a again) keep(b *bank.Bank, q bank.Quiz) error {
	if earlier, ok := a.instead[q.Week]; ok {
		return b.ChangeQuiz(earlier, q)
	}
	return b.KeepQuiz(q)
}

// madeAgain finds the quizzes that others take the places of, of the same title and week. With --overwrite or --from
// a person said so; a quiz whose papers are marked stays.
func madeAgain(c *cli.Context, b *bank.Bank, uses []bank.Use, class string) (again, error) {
	a := again{b, map[string]bank.Earlier{}}
	if c.Bool("try") {
		return a, nil
	}
	var all []bank.Earlier
	for _, use := range uses {
		if err := use.Check(); err != nil {
			return a, usagef("%v", err)
		}
		ids, _, err := b.UsedBy(use.Quiz, use.Week)
		if err != nil {
			return a, err
		}
		if len(ids) == 0 {
			continue
		}
		earlier, ok, err := earlierOf(c, b, use, class, len(ids))
		if err != nil {
			return a, err
		}
		if ok {
			a.instead[use.Week], all = earlier, append(all, earlier)
		}
	}
	a.choose = b.AsIfTakenBack(all...)
	return a, nil
}

// keptAs are the quizzes that the bank keeps of a title and week.
func keptAs(b *bank.Bank, use bank.Use) ([]bank.Quiz, error) {
	quizzes, err := b.Quizzes()
	return slices.DeleteFunc(quizzes, func(q bank.Quiz) bool { return q.Title != use.Quiz || q.Week != use.Week }), err
}

// earlierOf is the quiz whose place another of its title and week takes; ok is false where it stays beside it, as one
// of another class does.
func earlierOf(c *cli.Context, b *bank.Bank, use bank.Use, class string, used int) (earlier bank.Earlier, ok bool, err error) {
	kept, err := keptAs(b, use)
	if err != nil {
		return earlier, false, err
	}
	own := ownOf(c, b, kept, class)
	if len(kept) > 0 && len(own) == 0 {
		return earlier, false, nil
	}
	its := called(use.Quiz, use.Week) // by an earlier evenhand, that kept no quizzes
	if len(own) > 0 {
		its, used = ofOwn(own)
	}
	papers, err := markedPapers(c, its)
	switch replaces := c.String("from") != ""; {
	case err != nil:
		return earlier, false, err
	case papers > 0 && replaces:
		return earlier, false, nil // pupils have seen the items that are given up
	case papers > 0:
		return earlier, false, fmt.Errorf("%s of %s was given: %s marked. Give this quiz another title or week", use.Quiz, use.Week, count(papers, "paper"))
	case !replaces && !c.Bool(overwriteFlag.Name):
		return earlier, false, fmt.Errorf("%s of %s was made before, and %s noted as used in it. Add --overwrite to put this quiz in its place, "+
			"or give it another title or week", use.Quiz, use.Week, count(used, "item"))
	}
	earlier, err = onlyOne(own, use.Quiz, use.Week)
	return earlier, err == nil, err
}

// ownOf are those of the quizzes whose place one for the class may take: the one whose folder it is written into, the one
// that it is made from, or all of the class.
func ownOf(c *cli.Context, b *bank.Bank, kept []bank.Quiz, class string) []bank.Quiz {
	own := slices.DeleteFunc(slices.Clone(kept), func(q bank.Quiz) bool { return q.Class != class })
	for _, of := range []struct {
		name string
		list []bank.Quiz
	}{{c.String("out"), kept}, {c.String("from"), own}} {
		if of.name == c.String("out") && !isQuizFolder(of.name) {
			continue // it is a name for a folder to come, not what a quiz is called
		}
		named, err := keptQuiz(c, b, of.name)
		if at := slices.IndexFunc(of.list, func(q bank.Quiz) bool { return q.ID == named.ID }); err == nil && at >= 0 {
			return of.list[at : at+1]
		}
	}
	return own
}

// ofOwn tells the quizzes as papers are marked by them, and how many items they have.
func ofOwn(own []bank.Quiz) (its func(results.Quiz) bool, used int) {
	var ids []string
	items := map[string]bool{}
	for _, q := range own {
		ids = append(ids, q.ID)
		for _, form := range q.Forms {
			for _, placed := range form.Items {
				items[placed.Item.ID] = true
			}
		}
	}
	return oneOf(ids...), len(items)
}

// quizFile is a name of the files that assemble writes.
var quizFile = regexp.MustCompile(`^(quiz\.csv|quiz\.json|keys\.pdf|strips\.pdf|form-[A-Z](-key|-aloud)?\.pdf|form-[A-Z]\.html)$`)

// mayFill refuses a folder that holds anything but a quiz that was never given; that one
// it refuses without --overwrite.
func mayFill(c *cli.Context, b *bank.Bank, dir string, use bank.Use) error {
	entries, err := os.ReadDir(dir)
	switch {
	case errors.Is(err, os.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf("can't write into %s: %w", dir, err)
	case len(entries) == 0:
		return nil
	}
	foreign := slices.IndexFunc(entries, func(e os.DirEntry) bool { return !quizFile.MatchString(e.Name()) })
	if foreign >= 0 {
		return fmt.Errorf("%s holds %s, which is no part of a quiz; name a new folder", dir, entries[foreign].Name())
	}
	quiz, err := folderQuiz(c, dir)
	if err != nil {
		return fmt.Errorf("%s holds files that are no quiz of evenhand (%w); name a new folder", dir, err)
	}
	if err := mayReplace(c, b, dir, quiz, use); err != nil {
		return err
	}
	if !c.Bool(overwriteFlag.Name) {
		return fmt.Errorf("%s holds a quiz already, %s of %s; name a new folder, or add --overwrite if that one was not given", dir, quiz.Title, quiz.Week)
	}
	return nil
}

// mayReplace refuses to replace a quiz that was given.
func mayReplace(c *cli.Context, b *bank.Bank, dir string, quiz results.Quiz, use bank.Use) error {
	id := quiz.ID
	if family, err := b.WithMakeUps(id); err == nil {
		id = family[0].ID // papers of a make-up form are with its quiz
	}
	papers, err := markedPapers(c, oneOf(id))
	if err != nil {
		return err
	}
	if papers > 0 {
		return fmt.Errorf("%s holds %s of %s, which was given: %s marked; name a new folder", dir, quiz.Title, quiz.Week, count(papers, "paper"))
	}
	used, _, err := b.UsedBy(quiz.Title, quiz.Week)
	if err == nil && len(used) > 0 && (quiz.Title != use.Quiz || quiz.Week != use.Week) {
		err = fmt.Errorf("%s holds %s of %s, whose items are noted as used; name a new folder, or take that quiz back "+
			"first: evenhand unuse %s", dir, quiz.Title, quiz.Week, inShell(dir))
	}
	return err
}
