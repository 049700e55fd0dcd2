package main

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"evenhand/assemble"
	"evenhand/assemble/export"
	"evenhand/assemble/plan"
	"evenhand/assemble/sheet"
	"evenhand/bank"
	"evenhand/bank/generate"
	"evenhand/standards"

	"github.com/urfave/cli/v2"
)

func assembleCommand() *cli.Command {
	return &cli.Command{
		Name: "assemble", Usage: "make the best quiz a plan and the bank allow, and print it", ArgsUsage: "PLAN.toml --out DIR [options]",
		Description: "Writes quiz.csv, quiz.json and for each form a sheet and a key (form-A.pdf, form-A-key.pdf, ...) into DIR, all answers in keys.pdf,\n" +
			"prints how even the forms are, and notes the use of the items in the bank unless --try is given.\n" +
			"When the plan can't be met nothing is written, and it says which rules can't hold together and what would help.\n\n" +
			"Example: evenhand assemble demo/friday.toml --out next --week 2026-W49 --forms 2 --fill\n" +
			"         evenhand assemble demo/friday.toml --out next2 --week 2026-W49 --from next --replace A1\n" +
			"         evenhand assemble --makeup demo/friday --out absent",
		Flags: append([]cli.Flag{
			&cli.StringFlag{Name: "out", Usage: "the `DIR` to write into; it is made if need be"},
			&cli.IntFlag{Name: "forms", Usage: "`N` even forms, 1 to 6; else as the plan says", DefaultText: "as planned"},
			&cli.Uint64Flag{Name: "seed", Usage: "the `NUMBER` that chooses among equally good quizzes", Value: 1},
			&cli.StringFlag{Name: "week", Usage: "the `WEEK` of the quiz, such as 2026-W48; else this week"},
			&cli.BoolFlag{Name: "try", Usage: "don't note the use in the bank"},
			&cli.DurationFlag{Name: "limit", Usage: "search for this `TIME` at most, such as 30s or 2m, for a proof that " +
				"there is no better quiz", Value: 10 * time.Second},
			&cli.StringFlag{Name: "class", Usage: "the `CLASS` it is for, such as 2A: aimed at where its marks say that it stands; else as the plan says"},
			&cli.StringFlag{Name: "grade", Usage: "the `GRADE` it is for: K, 1 or 2; else as the plan says, or the highest among its rows"},
			&cli.IntFlag{Name: "shared", Usage: "`N` items stand in every form; else as the plan says", DefaultText: "as planned"},
			&cli.BoolFlag{Name: "fill", Usage: "generate the missing items, then assemble"},
			&cli.StringFlag{Name: "from", Usage: "an earlier `QUIZ` to keep, but for --replace; without PLAN its own plan counts"},
			&cli.StringSliceFlag{Name: "replace", Usage: "with --from: replace the item at `PLACE`, such as A3; may be given again"},
			&cli.StringFlag{Name: "keep", Usage: "with --from: keep only the items at these `PLACES`, such as A1,A2"},
			&cli.StringFlag{Name: "makeup", Usage: "one more even form of the `QUIZ` that was given, for pupils who were absent; without PLAN its own plan counts"},
			&cli.StringFlag{Name: "model", Usage: "write the very problem to solve to `FILE.lp`, in LP format for general solvers"},
			&cli.IntFlag{Name: "weeks", Usage: "a term ahead: PLAN.toml is a pacing list, and this many weeks, `N`, get a quiz each", DefaultText: "no term"},
			&cli.StringFlag{Name: "from-week", Usage: "with --weeks: the first `WEEK`"},
			&cli.BoolFlag{Name: overwriteFlag.Name, Usage: "put this quiz in the place of one that was not given: its " +
				"files in DIR, and its uses if title and week are the same"},
			byFlag, jsonFlag,
		}, printFlags...),
		Before: together(
			apart("makeup", "the form is like those that were sat", "forms", "week", "class", "grade", "shared", "from",
				"replace", "keep", "model", "weeks", "from-week"),
			apart("makeup", "the new form gets a new folder", overwriteFlag.Name),
			apart("weeks", "it is for a single quiz", "week", "model", "from", "replace", "keep", "shared"),
			apart("weeks", "it is for a single quiz; each week's folder has its quiz.json", "json"),
			only([]string{"weeks"}, "it is the first week of a term; --weeks says how many there are", "from-week"),
			apart("replace", "that names the items to change, and --keep those that stay; say one of the two", "keep"),
			only([]string{"from"}, "it speaks of that quiz, such as --from quiz.csv", "replace", "keep"),
			modelAlone, onSheets, onStrips,
		),
		Action: assembleQuiz,
	}
}

func assembleQuiz(c *cli.Context) error {
	defer interruptible(c)()
	if c.IsSet("makeup") {
		return assembleMakeUp(c)
	}
	ofEarlier := c.NArg() == 0 && c.String("from") != "" && !c.IsSet("weeks")
	var path string
	if !ofEarlier {
		var err error
		if path, err = oneArgument(c, "PLAN.toml"); err != nil {
			return err
		}
	}
	if c.String("out") == "" && c.String("model") == "" {
		return usagef("say where to write: --out DIR")
	}
	if err := errors.Join(checkPrint(c), lpModel.named(c.String("model")), folder.named(c.String("out"))); err != nil {
		return err
	}
	if c.IsSet("weeks") {
		return assembleTerm(c, path)
	}
	plan, about, err := askedPlan(c, path)
	if err != nil {
		return err
	}
	if plan, err = amended(c, plan); err != nil {
		return err
	}
	options, err := assembleOptions(c)
	if err != nil {
		return err
	}
	aim, err := aimOf(c, plan)
	if err != nil {
		return err
	}
	return openForUse(c)(c, func(b *bank.Bank) error {
		if options, err = aim.at(c, b, options); err != nil {
			return err
		}
		if file := c.String("model"); file != "" {
			err := writeFile(c, file, func(w io.Writer) error { return assemble.WriteModel(w, b, plan, options) })
			if err != nil || c.String("out") == "" {
				return err
			}
		}
		use := bank.Use{Quiz: plan.TitleFor(options.Week), Week: options.Week}
		if err := mayFill(c, b, c.String("out"), use); err != nil {
			return err
		}
		again, err := madeAgain(c, b, []bank.Use{use}, plan.Class)
		if err != nil {
			return err
		}
		quiz, err := assembleOrFill(c, b, again.choose, plan, options)
		if err != nil {
			return err
		}
		about.Class, about.From = plan.Class, options.Earlier.Quiz
		return deliver(c, b, again, quiz, about)
	})
}

// modelAlone refuses what says how a quiz is made, printed or kept where only the problem is written out.
func modelAlone(c *cli.Context) error {
	if !given(c, "model") || given(c, "makeup") {
		return nil
	}
	ofQuizzes := append([]string{"try", "fill", jsonFlag.Name}, flagNames(printFlags)...)
	return only([]string{"out"}, "--model alone writes the problem to solve and makes no quiz", ofQuizzes...)(c)
}

// askedPlan is the plan that is named, or that of the quiz of --from where none is; about is what the bank
// keeps of it.
func askedPlan(c *cli.Context, path string) (asked plan.Plan, about bank.Quiz, err error) {
	if path != "" {
		text, err := planText(c, path, false)
		if err != nil {
			return asked, about, err
		}
		asked, err = plan.Parse(text, path)
		return asked, bank.Quiz{Plan: string(text)}, err
	}
	err = readingBank(c, func(b *bank.Bank) error {
		kept, err := keptQuiz(c, b, c.String("from"))
		if err != nil {
			return fmt.Errorf("%w; name its plan: evenhand assemble PLAN.toml --from %s --out DIR", err, c.String("from"))
		}
		about = bank.Quiz{Plan: kept.Plan, PacingWeek: kept.PacingWeek}
		asked, err = planOf(c, kept)
		return err
	})
	return asked, about, err
}

// openForUse opens the bank to write only where something will be written.
func openForUse(c *cli.Context) func(*cli.Context, func(*bank.Bank) error) error {
	open := withBank
	if c.Bool("try") && !c.Bool("fill") || c.String("out") == "" {
		open = readingBank
	}
	return func(c *cli.Context, do func(*bank.Bank) error) error {
		return open(c, func(b *bank.Bank) error {
			if err := sayOlder(c, b); err != nil {
				return err
			}
			return do(b)
		})
	}
}

// amended is the plan with what the command line says in place of it.
func amended(c *cli.Context, asked plan.Plan) (plan.Plan, error) {
	if c.IsSet("forms") {
		asked.Forms = c.Int("forms")
		if asked.Forms < 1 || asked.Forms > plan.MaxForms {
			return asked, usagef("--forms is %d; a quiz has 1 to %d forms", asked.Forms, plan.MaxForms)
		}
	}
	if c.IsSet("shared") {
		asked.Shared = c.Int("shared")
		if asked.Shared < 0 || asked.Shared > asked.Size() {
			return asked, usagef("--shared is %d; it can be 0 to %d, the items of a form", asked.Shared, asked.Size())
		}
	}
	if c.IsSet("class") {
		asked.Class = strings.TrimSpace(c.String("class"))
	}
	if c.IsSet("grade") {
		asked.Grade = strings.ToUpper(c.String("grade"))
		if !slices.Contains([]string{"K", "1", "2"}, asked.Grade) {
			return asked, usagef("--grade is %q; it can be K, 1 or 2", c.String("grade"))
		}
	}
	return asked, nil
}

func assembleOptions(c *cli.Context) (assemble.Options, error) {
	o := assemble.Options{Seed: c.Uint64("seed"), Limit: c.Duration("limit"), Week: plan.WeekOf(time.Now()).String()}
	if asked, err := weekOf(c, "week"); err != nil {
		return o, err
	} else if asked != "" {
		o.Week = asked
	}
	if c.IsSet("limit") && o.Limit <= 0 {
		return o, usagef("--limit is %v; the search needs some time, such as 10s", o.Limit)
	}
	if c.IsSet("forms") {
		o.Forms = c.Int("forms")
	}
	earlier, err := earlierQuiz(c)
	o.Earlier = earlier
	return o, err
}

// weekOf is the week of an option as weeks are written; empty where there is none.
func weekOf(c *cli.Context, option string) (string, error) {
	text := c.String(option)
	if text == "" {
		return "", nil
	}
	week, err := plan.ParseWeek(text)
	if err != nil {
		return "", usagef("--%s: %v", option, err)
	}
	return week.String(), nil
}

// assembleOrFill assembles from one bank, and with --fill generates what lacks into the other and tries again.
func assembleOrFill(c *cli.Context, b, choose *bank.Bank, plan plan.Plan, o assemble.Options) (quiz assemble.Quiz, err error) {
	if c.Bool("fill") {
		filling := fillingOf(c, b)
		filling.Choose = choose
		quiz, err = filling.Assemble(c.Context, plan, o)
	} else {
		quiz, err = assemble.Assemble(c.Context, choose, plan, o)
	}
	return quiz, unlessStopped(c, err)
}

// filling tries to assemble; with --fill, up to so many times it generates the items that
// are said to lack and tries again.
func filling(c *cli.Context, b *bank.Bank, times int, try func() error) error {
	if !c.Bool("fill") {
		times = 0
	}
	return unlessStopped(c, fillingOf(c, b).Try(times, try))
}

// fillingOf makes items and says what was made.
func fillingOf(c *cli.Context, b *bank.Bank) assemble.Filling {
	return assemble.Filling{Bank: b, By: author(c), At: now(), Made: func(skill standards.SkillID, made generate.Result) {
		say(c, "%s: %s", skill, made)
	}}
}

// unlessStopped is err, but where the user interrupted it: what was found so far is not what was asked for.
func unlessStopped(c *cli.Context, err error) error {
	if c.Context.Err() != nil {
		return errors.New("stopped; no quiz was written")
	}
	return err
}

// deliver writes the quiz's files, shows its balance and notes its use; about is what the bank keeps
// beside the quiz.
func deliver(c *cli.Context, b *bank.Bank, again again, quiz assemble.Quiz, about bank.Quiz) error {
	dir := c.String("out")
	if err := keepAndWrite(c, b, again, quiz, about); err != nil || c.Bool("json") {
		return err
	}
	balance := assemble.BalanceOf(quiz)
	if err := table(c.App.Writer, balance.Table()); err != nil {
		return err
	}
	say(c, "%s", quiz.Verdict())
	if misses := quiz.Misses(); misses != "" {
		say(c, "%s", misses)
	}
	saySwaps(c, b, quiz)
	say(c, "%s in %s: %s", quiz.Title, dir, fileNames(quiz))
	return nil
}

// keepAndWrite writes the quiz's files and notes its use; with --json it prints the quiz.
func keepAndWrite(c *cli.Context, b *bank.Bank, again again, quiz assemble.Quiz, about bank.Quiz) error {
	dir := c.String("out")
	quiz = sheet.WithChoices(quiz)
	if err := writeQuizFiles(c, quiz, dir); err != nil {
		return err
	}
	if !c.Bool("try") {
		if err := again.keep(b, givenNow(c, quiz, about)); err != nil {
			return fmt.Errorf("the quiz is in %s, but it could not be noted in the bank: %w", dir, err)
		}
	}
	if c.Bool("json") {
		return export.WriteQuizJSON(c.App.Writer, quiz)
	}
	return nil
}

// givenNow is the quiz as it is given now, with what is known about it.
func givenNow(c *cli.Context, quiz assemble.Quiz, about bank.Quiz) bank.Quiz {
	given, printed := quiz.Given(author(c), now()), printedAs(c)
	given.Plan, given.PacingWeek, given.Class = about.Plan, about.PacingWeek, about.Class
	given.From, given.MakeUp, given.Printed = about.From, about.MakeUp, &printed
	return given
}

// saySwaps says what was exchanged in an earlier quiz and what that changed.
func saySwaps(c *cli.Context, b *bank.Bank, quiz assemble.Quiz) {
	for _, swap := range quiz.Swaps {
		say(c, "%s%d: %s instead of %s", swap.Form, swap.Number, question(b, swap.In), question(b, swap.Out))
	}
	for _, change := range quiz.Changes {
		say(c, "%s", change)
	}
	if len(quiz.Swaps) > 0 && len(quiz.Changes) == 0 {
		say(c, "the balance is as it was")
	}
}

func question(b *bank.Bank, id string) string {
	item, err := b.Get(id)
	if err != nil {
		return id
	}
	return item.Question("en")
}
