package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"

	"evenhand/assemble"
	"evenhand/assemble/export"
	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/bank/results"

	"github.com/urfave/cli/v2"
)

func quizzesCommand() *cli.Command {
	return &cli.Command{
		Name: "quizzes", Usage: "list the quizzes that were given, or show one", ArgsUsage: "[QUIZ] [--json]",
		Description: "The bank keeps every quiz as it was given. QUIZ is its title, its week, the beginning of its ID, or its folder.\n\n" +
			"Example: evenhand quizzes\n" +
			"         evenhand quizzes 2026-W48",
		Flags:  []cli.Flag{jsonFlag},
		Action: runQuizzes,
	}
}

func runQuizzes(c *cli.Context) error {
	if c.NArg() > 1 {
		return usagef("name one quiz; put quotes around a title of several words")
	}
	return readingBank(c, func(b *bank.Bank) error {
		if c.NArg() == 0 {
			return listQuizzes(c, b)
		}
		kept, err := keptQuiz(c, b, c.Args().First())
		if err != nil {
			return err
		}
		quiz := assemble.QuizOf(kept)
		if c.Bool("json") {
			return export.WriteQuizJSON(c.App.Writer, quiz)
		}
		return showQuiz(c, quiz)
	})
}

func listQuizzes(c *cli.Context, b *bank.Bank) error {
	quizzes, err := b.Quizzes()
	if err != nil {
		return err
	}
	if c.Bool("json") {
		list := []keptQuizJSON{}
		for _, q := range quizzes {
			list = append(list, keptJSON(q))
		}
		return printJSON(c, list)
	}
	if len(quizzes) == 0 {
		say(c, "no quiz was given yet; evenhand assemble makes one")
		return nil
	}
	rows := [][]string{{"WEEK", "TITLE", "FORMS", "ITEMS", "FOR", "BY", "ID"}}
	for _, q := range quizzes {
		title := q.Title
		if q.MakeUp != "" {
			title += ", make-up form " + q.Forms[0].Name
		}
		rows = append(rows, []string{
			q.Week, title, fmt.Sprint(len(q.Forms)), fmt.Sprint(len(q.Forms[0].Items)), or(q.Class, "all"), q.By, q.ID,
		})
	}
	return table(c.App.Writer, rows)
}

// keptQuizJSON is a quiz of the list; evenhand quizzes QUIZ --json tells its items.
type keptQuizJSON struct {
	ID      string        `json:"id"`
	Title   string        `json:"title"`
	Week    string        `json:"week"`
	Class   string        `json:"class,omitempty"`
	From    string        `json:"from,omitempty"`
	MakeUp  string        `json:"make_up,omitempty"`
	Forms   []string      `json:"forms"`
	Items   int           `json:"items"` // in a form
	Verdict string        `json:"verdict"`
	Printed *bank.Printed `json:"printed,omitempty"`
	By      string        `json:"by"`
	At      time.Time     `json:"at"`
}

func keptJSON(q bank.Quiz) keptQuizJSON {
	out := keptQuizJSON{
		ID: q.ID, Title: q.Title, Week: q.Week, Class: q.Class, From: q.From, MakeUp: q.MakeUp,
		Items: len(q.Forms[0].Items), Verdict: q.Verdict, Printed: q.Printed, By: q.By, At: q.At,
	}
	for _, form := range q.Forms {
		out.Forms = append(out.Forms, form.Name)
	}
	return out
}

func showQuiz(c *cli.Context, quiz assemble.Quiz) error {
	rows := [][]string{{"PLACE", "QUESTION", "KEY", "SKILL", "RIGHT"}}
	for _, form := range quiz.Forms {
		for _, placed := range form.Items {
			it := placed.Item
			rows = append(rows, []string{
				fmt.Sprintf("%s%d", form.Name, placed.Number), it.Question("en"), it.Key, string(it.Skill),
				fmt.Sprintf("about %d in 10", quiz.Difficulty(it).Tenths()),
			})
		}
	}
	say(c, "%s, week %s: %s", quiz.Title, quiz.Week, quiz.Verdict())
	return table(c.App.Writer, rows)
}

// isQuizFolder says whether a name is that of a quiz's folder or quiz.csv. A folder of another kind is none: a
// title may be called like one, or have a stroke in it.
func isQuizFolder(name string) bool {
	info, err := os.Stat(name)
	return err == nil && (!info.IsDir() || exists(filepath.Join(name, "quiz.csv")))
}

// inShell is a name as it is typed in a command: in quotation marks where a shell would take it apart.
func inShell(name string) string {
	if name != "" && !strings.ContainsFunc(name, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && !strings.ContainsRune("-_./:\\", r)
	}) {
		return name
	}
	return strconv.Quote(name)
}

// keptQuiz is the quiz that a person names: one that the bank keeps, by title, week or the beginning
// of its ID, or by its folder.
func keptQuiz(c *cli.Context, b *bank.Bank, name string) (bank.Quiz, error) {
	called := name
	if isQuizFolder(name) {
		given, err := folderQuiz(c, name)
		if err != nil {
			return bank.Quiz{}, err
		}
		called = given.ID
	}
	kept, err := b.Quiz(called)
	switch {
	case err != nil && called == name:
		err = noWeekEither(name, err)
	case err != nil:
		err = fmt.Errorf("the bank does not keep the quiz in %s: it was made without it, by an older evenhand, or with --try, "+
			"or another has taken its place", name)
	}
	return kept, err
}

// likeWeek is a name that is meant as a week.
var likeWeek = regexp.MustCompile(`^\d{4}-?[Ww]\d+$`)

// noWeekEither adds to the error about a quiz that isn't there why its name is no week, where it is like one.
func noWeekEither(name string, err error) error {
	if _, wrong := plan.ParseWeek(name); wrong != nil && likeWeek.MatchString(name) {
		return fmt.Errorf("%w; %w", err, wrong)
	}
	return err
}

// weekNamed is the week that a name means, all of whose quizzes are wanted; empty where it means one quiz, also where
// a quiz of another week has it as its title: the bank then finds that one, or asks which is meant.
func weekNamed[Q any](name string, all []Q, of func(Q) (title, week string)) string {
	week, notWeek := plan.ParseWeek(name)
	titled := slices.ContainsFunc(all, func(q Q) bool {
		title, its := of(q)
		return strings.EqualFold(title, name) && its != week.String()
	})
	if notWeek != nil || titled || isQuizFolder(name) {
		return ""
	}
	return week.String()
}

// givenQuiz is the quiz that a person names, as papers are marked by it: its folder or quiz.csv,
// else one that the bank keeps. Its make-up forms are with it, and the name of one of them means it, too.
func givenQuiz(c *cli.Context, name string) (quiz results.Quiz, err error) {
	folder := isQuizFolder(name)
	if folder {
		if quiz, err = folderQuiz(c, name); err != nil {
			return quiz, err
		}
		name = quiz.ID
	}
	err = readingBank(c, func(b *bank.Bank) error {
		family, err := b.WithMakeUps(name)
		switch {
		case err != nil && folder: // a quiz that this bank doesn't keep
			return nil
		case err != nil:
			return noWeekEither(name, err)
		case quiz.ID != family[0].ID: // as its folder tells it, where that is named
			quiz = results.QuizOf(family[0])
		}
		for _, makeUp := range family[1:] {
			quiz = quiz.With(results.QuizOf(makeUp).Forms)
		}
		return nil
	})
	return quiz, err
}
