package marks

import (
	"encoding/csv"
	"io"
	"strconv"

	"evenhand/bank/results"
)

// Blank writes a grid to fill in: a row for each pupil with the form proposed, and in
// the last column which quiz it is of. It is UTF-8 with a byte-order mark, so that
// spreadsheets read codes rightly.
func Blank(w io.Writer, quiz results.Quiz, seats []Seat) error {
	if _, err := io.WriteString(w, "\ufeff"); err != nil {
		return err
	}
	out := csv.NewWriter(w)
	out.UseCRLF = true
	heading := []string{"pupil", "form"}
	for number := range quiz.Size() {
		heading = append(heading, strconv.Itoa(number+1))
	}
	if err := out.Write(append(heading, quizHeading)); err != nil {
		return err
	}
	for _, seat := range seats {
		row := make([]string, len(heading)+1)
		row[0], row[1], row[len(heading)] = seat.Pupil, seat.Form, quizMark(quiz)
		if err := out.Write(row); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}
