package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime"
	"strings"

	"evenhand/assemble/export"
	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/import/marks"

	"github.com/urfave/cli/v2"
)

// classFlag says whose papers; a team with one class needs none.
var classFlag = &cli.StringFlag{Name: "class", Usage: "the `CLASS`, such as 2A, where the team has several", EnvVars: []string{"EVENHAND_CLASS"}}

// codesFlag says that what looks like names are codes.
var codesFlag = &cli.BoolFlag{
	Name: "codes-not-names", Usage: "with --pupils or --roster: codes such as Ada1 are no names",
}

func markCommand() *cli.Command {
	return &cli.Command{
		Name: "mark", Usage: "bring a quiz's marks in: write a grid, read it filled in, or type them", ArgsUsage: "QUIZ [MARKS] [options]",
		Description: "QUIZ is a quiz that the bank keeps, by its title, week or the beginning of its ID, or its folder. With --out it\n" +
			"writes a grid, a row a pupil and a column an item, to fill in by hand or in a spreadsheet; with MARKS it reads the\n" +
			"grid. In a cell stands 1 or ✓ for right, 0 or x for wrong, what the child wrote, - for absent, . or nothing for not\n" +
			"reached; R and W, + and other usual marks are read, and what is not clear is set aside and asked about. With --enter\n" +
			"it asks: Enter for right, else the child's answer, - absent, . not reached, < one back (<< where numbers are\n" +
			"compared); every pupil is saved at once. Marking again replaces and keeps what was: --history shows it. Pupils are\n" +
			"codes such as P07; the results stay in BANK.marks beside the bank, which only you can read, and are in no bank and no\n" +
			"export; a backup keeps them in a file of their own.\n\n" +
			"Example: evenhand mark 2026-W48 --out marks.csv --pupils P01-P24\n" +
			"         evenhand mark 2026-W48 demo/marks.csv\n" +
			"         evenhand mark 2026-W48 --enter --pupils P25",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "out", Usage: "write a grid to fill in to `FILE`"},
			&cli.StringSliceFlag{Name: "pupils", Usage: "the `CODES`, such as P01-P24, for a grid or new in the class"},
			&cli.StringFlag{Name: "roster", Usage: "take the codes from your `FILE` of codes and names; names are not kept"},
			&cli.BoolFlag{Name: "enter", Usage: "ask for the marks here"},
			&cli.StringFlag{Name: "history", Usage: "show how the paper of the pupil with this `CODE` was marked, first to last"},
			&cli.StringFlag{Name: "digits", Usage: "what 1 and 0 are in rows where they can be both: `marks or answers`"},
			&cli.StringSliceFlag{Name: "read", Usage: "what a `SIGN=MEANING` means that was asked about: right, wrong, absent, not reached or answer"},
			&cli.BoolFlag{Name: "all-wrong", Usage: "truly nobody in the grid has anything right"},
			codesFlag,
			&cli.StringFlag{Name: "week", Usage: "the `WEEK` of a quiz.csv that stands without its quiz.json"},
			classFlag, byFlag, jsonFlag,
		},
		Before: together(
			apart("out", "it is for a grid that is filled in", "digits", "read", "all-wrong", "json"),
			apart("enter", "it is for a grid that is filled in", "digits", "read", "all-wrong", "json"),
			apart("history", "that only shows", "pupils", "roster", "digits", "read", "all-wrong", "json"),
			only([]string{"pupils", "roster"}, "it is about the codes that are named there", codesFlag.Name),
		),
		Action: markQuiz,
	}
}

func markQuiz(c *cli.Context) error {
	ways := 0
	for _, way := range []bool{c.String("out") != "", c.Bool("enter"), c.String("history") != "", c.NArg() > 1} {
		if way {
			ways++
		}
	}
	if c.NArg() < 1 || c.NArg() > 2 || ways != 1 {
		return usagef("say what to do with the quiz: mark QUIZ --out marks.csv, mark QUIZ marks.csv, or mark QUIZ --enter")
	}
	if _, err := choice(c, "digits", []marks.Digits{marks.AreMarks, marks.AreAnswers}); err != nil {
		return err
	}
	signs, err := marks.ParseSigns(c.StringSlice("read"))
	if err != nil {
		return usagef("--read: %v", err)
	}
	if err := csvFile.named(c.String("out")); err != nil {
		return err
	}
	if err := results.CheckClass(c.String("class")); err != nil {
		return usagef("--class: %v", err)
	}
	quiz, err := givenQuiz(c, c.Args().First())
	if err != nil {
		return err
	}
	if err := ofWeek(c, quiz.Title, quiz.Week); err != nil {
		return err
	}
	pupils, err := namedPupils(c)
	if err != nil {
		return err
	}
	tellOfReaders(c, results.Path(c.String("bank")))
	switch {
	case c.Bool("enter"):
		return enterMarks(c, quiz, pupils)
	case c.String("history") != "":
		return showMarkings(c, quiz)
	}
	return withResults(c, bank.Options{}, func(s *results.Store) error {
		if quiz, err = s.AsGiven(quiz); err != nil {
			return err
		}
		if c.NArg() == 2 {
			return readMarks(c, s, quiz, pupils, signs)
		}
		return blankGrid(c, s, quiz, pupils)
	})
}

// tellOfReaders says when others on this machine may read the marks.
func tellOfReaders(c *cli.Context, path string) {
	info, err := os.Stat(path)
	if err == nil && runtime.GOOS != "windows" && info.Mode().Perm()&0o077 != 0 {
		say(c, "note: others on this computer can read %s (mode %o); chmod 600 %s keeps it to you", path, info.Mode().Perm(), path)
	}
}

// withResults opens the results beside the bank, which must be there.
func withResults(c *cli.Context, o bank.Options, do func(*results.Store) error) error {
	if err := readingBank(c, func(*bank.Bank) error { return nil }); err != nil {
		return err
	}
	path := results.Path(c.String("bank"))
	if about := results.AboutOrphans(path); about != "" && !o.ReadOnly {
		say(c, "note: %s", about)
	}
	s, err := results.Open(path, patient(c, o))
	if err != nil {
		return err
	}
	return errors.Join(do(s), s.Close())
}

// folderQuiz reads a quiz from its folder or quiz.csv.
func folderQuiz(c *cli.Context, path string) (results.Quiz, error) {
	week, err := weekOf(c, "week")
	if err != nil {
		return results.Quiz{}, err
	}
	quiz, err := export.Given(path, week)
	if errors.Is(err, export.ErrNoWeek) {
		return quiz, usagef("%v; say it with --week 2026-W48", err)
	}
	return quiz, err
}

// ofWeek refuses a --week that is not the quiz's, which is known by more than that.
func ofWeek(c *cli.Context, title, week string) error {
	asked, err := weekOf(c, "week")
	if err == nil && asked != "" && asked != week {
		err = usagef("%s is of week %s, not of %s; leave off --week, or name the quiz of that week", title, week, asked)
	}
	return err
}

// namedPupils are the codes of --pupils and --roster.
func namedPupils(c *cli.Context) (codes []string, err error) {
	for _, list := range c.StringSlice("pupils") {
		some, err := results.ParseCodes(list)
		if err != nil {
			return nil, usagef("--pupils: %v", err)
		}
		codes = append(codes, some...)
	}
	if len(codes) == 0 && given(c, "pupils") {
		return nil, usagef("--pupils names nobody; give codes such as P01-P24, or leave it off")
	}
	roster, err := readRoster(c)
	if err != nil {
		return nil, err
	}
	codes = append(codes, roster.Codes...)
	for _, code := range codes {
		if !c.Bool("codes-not-names") && results.LooksLikeName(code, codes...) {
			return nil, usagef("%s looks like a name, and names are not kept; give codes such as P07, or add --codes-not-names if these are codes", code)
		}
	}
	return codes, nil
}

// readRoster reads the file of --roster, if it is given.
func readRoster(c *cli.Context) (marks.Roster, error) {
	path := c.String("roster")
	if path == "" {
		return marks.Roster{}, nil
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return marks.Roster{}, fmt.Errorf("can't read the roster: %w", err)
	}
	return marks.ReadRoster(path, data)
}

// blankGrid writes a grid to fill in.
func blankGrid(c *cli.Context, s *results.Store, quiz results.Quiz, pupils []string) error {
	path := c.String("out")
	if exists(path) {
		return fmt.Errorf("%s is there already, and marks in it would be lost; name another file, or remove it", path)
	}
	class := c.String("class")
	if err := s.Enrol(class, pupils...); err != nil {
		return err
	}
	if len(pupils) == 0 {
		all, err := s.Pupils(class)
		if err != nil {
			return err
		}
		if pupils = all; len(all) == 0 {
			return usagef("say who is in the class: --pupils P01-P24, or --roster FILE")
		}
	}
	seats, err := marks.SeatsToMark(s, quiz, class, pupils)
	if err != nil {
		return err
	}
	if err := writePrivate(c, path, func(w io.Writer) error { return marks.Blank(w, quiz, seats) }); err != nil {
		return err
	}
	say(c, "wrote %s for %s; fill it in, then: evenhand mark %s %s", path, count(len(pupils), "pupil"),
		inShell(c.Args().First()), inShell(path))
	return nil
}

// readMarks reads a filled-in grid.
func readMarks(c *cli.Context, s *results.Store, quiz results.Quiz, pupils []string, signs map[string]results.State) error {
	path, class := c.Args().Get(1), c.String("class")
	if err := s.Enrol(class, pupils...); err != nil {
		return err
	}
	known, err := s.Pupils(class)
	if err != nil {
		return err
	}
	o := marks.Options{
		Class: class, Pupils: known, Digits: marks.Digits(c.String("digits")), Signs: signs, AllWrong: c.Bool("all-wrong"),
		Before: map[string]results.Paper{},
	}
	papers, err := s.Papers(quiz.ID)
	if err != nil {
		return err
	}
	for _, p := range papers {
		if p.Class == class {
			o.Before[p.Pupil] = p
		}
	}
	reading, err := readGrid(path, quiz, o)
	if err != nil {
		return err
	}
	tally, err := s.Mark(quiz, reading.Papers, author(c), now())
	if err != nil {
		return err
	}
	return showReading(c, reading, tally)
}

func readGrid(path string, quiz results.Quiz, o marks.Options) (*marks.Reading, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("can't read the marks: %w", err)
	}
	return marks.Read(path, data, quiz, o)
}

// markedJSON is what became of a grid, as other programs read it.
type markedJSON struct {
	Rows     int          `json:"rows"`
	Taken    int          `json:"taken"`
	New      int          `json:"new"`
	Changed  int          `json:"changed"`
	Unmarked []string     `json:"unmarked"`
	SetAside []asideJSON  `json:"set_aside"`
	Digits   marks.Digits `json:"digits"`
}

type asideJSON struct {
	Line   int    `json:"line"`
	Column string `json:"column"`
	Reason string `json:"reason"`
}

func showReading(c *cli.Context, r *marks.Reading, tally results.Tally) error {
	out := markedJSON{r.Rows(), len(r.Papers), tally.New, tally.Changed, append([]string{}, r.Unmarked...), []asideJSON{}, r.Digits}
	for _, problem := range r.Problems {
		say(c, "set aside: %s", problem)
		out.SetAside = append(out.SetAside, asideJSON{problem.Line, problem.Column, problem.Reason.String()})
	}
	for _, note := range r.Notes {
		say(c, "note: %s", note)
	}
	if c.Bool("json") {
		if err := printJSON(c, out); err != nil {
			return err
		}
	} else {
		fmt.Fprintf(c.App.Writer, "%s: %d taken (%d new, %d changed, %d as before), %d not filled in yet, %d set aside\n",
			count(out.Rows, "row"), out.Taken, tally.New, tally.Changed, tally.Same, len(r.Unmarked), len(r.Problems))
	}
	switch {
	case len(r.Problems) == 0:
		return nil
	case len(r.Papers) == 0:
		return errNothingDone
	}
	return inPartf("%s set aside; mend %s in the grid and read it again: the others stay as they are",
		count(len(r.Problems), "row"), them(len(r.Problems)))
}

// enterMarks asks for the marks of pupils: of those named, else of those not marked yet.
// The results are open only while a paper is saved.
func enterMarks(c *cli.Context, quiz results.Quiz, pupils []string) error {
	defer interruptible(c)()
	class := c.String("class")
	var seats []marks.Seat
	err := withResults(c, bank.Options{}, func(s *results.Store) (err error) {
		if quiz, err = s.AsGiven(quiz); err != nil {
			return err
		}
		if err := s.Enrol(class, pupils...); err != nil {
			return err
		}
		seats, err = marks.SeatsToMark(s, quiz, class, pupils)
		return err
	})
	if err != nil {
		return err
	}
	if len(seats) == 0 {
		return usagef("nobody is left to mark; name pupils with --pupils P01-P24, also to mark them again")
	}
	by := author(c) // asked once, as a desk may have to be asked whose token it is
	entry := marks.Entry{
		In: c.App.Reader, Out: c.App.ErrWriter, Quiz: quiz, Class: class, Seats: seats,
		Save: func(p results.Paper) error {
			return withResults(c, bank.Options{}, func(s *results.Store) error {
				_, err := s.Mark(quiz, []results.Paper{p}, by, now())
				return err
			})
		},
	}
	saved, unfinished, err := entry.Run(c.Context)
	if err != nil {
		return err
	}
	fmt.Fprintf(c.App.Writer, "%d of %s marked\n", saved, count(len(seats), "pupil"))
	if unfinished != "" {
		return inPartf("the paper of %s was not finished, so nothing of it is kept", unfinished)
	}
	return nil
}

// showMarkings shows every marking of a pupil's paper.
func showMarkings(c *cli.Context, quiz results.Quiz) error {
	code, err := results.ParseCode(c.String("history"))
	if err != nil {
		return usagef("--history: %v", err)
	}
	return withResults(c, bank.Options{ReadOnly: true}, func(s *results.Store) error {
		history, err := s.History(quiz.ID, c.String("class"), code)
		if err != nil {
			return err
		}
		if len(history) == 0 {
			return fmt.Errorf("the paper of %s has not been marked yet", code)
		}
		rows := [][]string{{"MARKED", "BY", "FORM", "RIGHT", "ANSWERS"}}
		for _, p := range history {
			answers := make([]string, len(p.Answers))
			for i, answer := range p.Answers {
				answers[i] = fmt.Sprintf("%d: %s", i+1, answer)
			}
			right, of := p.Score()
			rows = append(rows, []string{p.At.Format("2006-01-02 15:04"), p.By, p.Form, fmt.Sprintf("%d of %d", right, of), strings.Join(answers, " | ")})
		}
		return table(c.App.Writer, rows)
	})
}
