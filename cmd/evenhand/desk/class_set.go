package desk

import (
	"bytes"
	"cmp"

	"evenhand/assemble"
	"evenhand/assemble/sheet"
	"evenhand/bank/results"
	"evenhand/import/marks"
)

// printSet gives the sheets of a class in one file, in the order that is typed, with codes or names on
// them. Names are used for this one answer and kept nowhere.
func printSet(v *visit) error {
	kept, err := v.quizAsked()
	if err != nil {
		return err
	}
	roster, err := v.rosterTyped(v.FormValue("pupils"))
	if err != nil {
		return asTyped(err)
	}
	o, err := v.sheetOptions()
	if err != nil {
		return err
	}
	var seated []marks.Seat
	err = v.writeMarks(func(s *results.Store) (err error) {
		seated, err = marks.SeatsIn(s, results.QuizOf(kept), v.FormValue("class"), roster.Codes)
		return err
	})
	if err != nil {
		return err
	}
	var seats []sheet.Seat
	for _, seat := range seated {
		seats = append(seats, sheet.Seat{Form: seat.Form, Pupil: cmp.Or(roster.Names[seat.Pupil], seat.Pupil)})
	}
	var file bytes.Buffer
	if err := sheet.WriteSet(&file, sheet.SetOf(assemble.QuizOf(kept), seats, o.Lang), o); err != nil {
		return asTyped(err)
	}
	return v.sendFile(&file, "inline", inFileName(kept.Title)+"-set.pdf")
}

// rosterTyped reads codes such as P01-P24, or a line a pupil with code and name.
func (v *visit) rosterTyped(text string) (marks.Roster, error) {
	if codes, err := results.ParseCodes(text); err == nil && len(codes) > 0 {
		return marks.Roster{Codes: codes}, nil
	}
	return marks.ReadRoster(v.said.say("quiz.roster"), []byte(text))
}
