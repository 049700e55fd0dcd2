package main

import (
	"encoding/csv"
	"io"
	"math"
	"math/rand/v2"
	"path/filepath"
	"strconv"

	"evenhand/bank"
	"evenhand/bank/evidence/report"
	"evenhand/bank/results"
	"evenhand/import/marks"

	"github.com/urfave/cli/v2"
)

// The demo's class is invented: pupils P01-P24, of whom three go wrong in ways that their
// answers can show.
const demoPupils = "P01-P24"

var demoMissteps = map[string]string{"P05": "ten dropped", "P11": "smaller digit from larger", "P18": "hands swapped"}

// demoMarks has the class sit the quiz, reads the marks and reports on them.
func demoMarks(c *cli.Context, b *bank.Bank, dir string) error {
	quiz, err := folderQuiz(c, filepath.Join(dir, "friday"))
	if err != nil {
		return err
	}
	pupils, err := results.ParseCodes(demoPupils)
	if err != nil {
		return err
	}
	grid := filepath.Join(dir, "marks.csv")
	if err := writePrivate(c, grid, func(w io.Writer) error { return sit(w, quiz, pupils) }); err != nil {
		return err
	}
	store, err := results.Open(results.Path(b.Path()), bank.Options{})
	if err != nil {
		return err
	}
	defer store.Close()
	if err := store.Enrol("", pupils...); err != nil {
		return err
	}
	reading, err := readGrid(grid, quiz, marks.Options{Pupils: pupils})
	if err != nil {
		return err
	}
	if _, err := store.Mark(quiz, reading.Papers, "grade team", demoTime); err != nil {
		return err
	}
	tell(c, "Marked %d invented papers, %s in %s", len(reading.Papers), demoPupils, grid)
	papers, err := store.Papers(quiz.ID)
	if err != nil {
		return err
	}
	page := filepath.Join(dir, "friday.html")
	if err := writePrivate(c, page, report.Of([]results.Quiz{quiz}, papers).WriteHTML); err != nil {
		return err
	}
	tell(c, "What the papers show, a hint for teaching and no diagnosis or placement: %s", page)
	return nil
}

// sit writes the grid of a class that sat the quiz: every pupil has an ability drawn from a standard normal
// distribution and a right answer to an item with the probability of the difficulty model; a wrong answer is one
// that a misstep gives, where the item has any.
func sit(w io.Writer, quiz results.Quiz, pupils []string) error {
	draw := rand.New(rand.NewPCG(48, 2026))
	out := csv.NewWriter(w)
	header := []string{"pupil", "form"}
	for i := range quiz.Forms[0].Items {
		header = append(header, strconv.Itoa(i+1))
	}
	rows := [][]string{header}
	for _, seat := range marks.Seats(quiz, "", pupils, nil, pupils) {
		form, _ := quiz.Form(seat.Form)
		row, ability := []string{seat.Pupil, form.Name}, draw.NormFloat64()
		for _, item := range form.Items {
			chance := 1 / (1 + math.Exp(item.Difficulty.Logits()-ability))
			row = append(row, answerOf(item, demoMissteps[seat.Pupil], draw.Float64() < chance, draw.IntN(1<<20)))
		}
		rows = append(rows, row)
	}
	return out.WriteAll(rows)
}

// answerOf is what a pupil writes: the misstep's answer where the pupil has one that the item can show, else the key,
// or a wrong answer.
func answerOf(item results.Item, misstep string, right bool, lot int) string {
	wrong := "x"
	if task, ok := item.Task(); ok {
		all := task.Missteps()
		for _, m := range all {
			for _, kind := range m.Kinds {
				if kind.Name == misstep {
					return m.Answer
				}
			}
		}
		if len(all) > 0 {
			wrong = all[lot%len(all)].Answer
		}
	}
	if right {
		return item.Key
	}
	return wrong
}
