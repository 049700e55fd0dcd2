package marks

import (
	"encoding/csv"
	"io"
	"strconv"

	"evenhand/bank/results"
)

// Blank writes a grid to fill in: a row for each pupil, in the order given, with the
// forms in turn (A, B, A, B), as neighbours get them. It is UTF-8 with a byte-order
// mark, so that spreadsheets read codes rightly.
func Blank(w io.Writer, quiz results.Quiz, pupils []string) error {
	if _, err := io.WriteString(w, "\ufeff"); err != nil {
		return err
	}
	out := csv.NewWriter(w)
	out.UseCRLF = true
	heading := []string{"pupil", "form"}
	for number := range quiz.Size() {
		heading = append(heading, strconv.Itoa(number+1))
	}
	if err := out.Write(heading); err != nil {
		return err
	}
	for i, pupil := range pupils {
		row := make([]string, len(heading))
		row[0], row[1] = pupil, FormInTurn(quiz, i).Name
		if err := out.Write(row); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// FormInTurn is the form of the pupil in so-many-th place, from 0.
func FormInTurn(quiz results.Quiz, place int) results.Form {
	return quiz.Forms[place%len(quiz.Forms)]
}
