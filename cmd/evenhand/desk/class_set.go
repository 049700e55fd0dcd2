package desk

import (
	"bytes"
	"cmp"
	"strings"

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
	class := v.FormValue("class")
	if err := results.CheckClass(class); err != nil {
		return v.wrong("marks.class.wrong", class)
	}
	roster, err := v.rosterTyped(v.FormValue("pupils"))
	if err != nil {
		return asTyped(err)
	}
	o, err := v.sheetOptions()
	if err != nil {
		return err
	}
	if err := v.canPrint(roster, o); err != nil {
		return err
	}
	var seated []marks.Seat
	err = v.writeMarks(func(s *results.Store) (err error) {
		seated, err = marks.SeatsIn(s, results.QuizOf(kept), class, roster.Codes)
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

// canPrint refuses names that the printing font has no letters for: no child finds a question mark for a name.
func (v *visit) canPrint(roster marks.Roster, o sheet.Options) error {
	var names []string
	for _, code := range roster.Codes {
		missing, err := sheet.Unprintable(sheet.Paper{Pupil: roster.Names[code]}, o)
		if err != nil {
			return err
		}
		if len(missing) > 0 {
			names = append(names, roster.Names[code]+" ("+code+")")
		}
	}
	if len(names) > 0 {
		return v.wrong("quiz.pupils.unprintable", strings.Join(names, ", "))
	}
	return nil
}

// rosterTyped reads codes such as P01-P24, or a line a pupil with code and name.
func (v *visit) rosterTyped(text string) (marks.Roster, error) {
	if codes, err := results.ParseCodes(text); err == nil && len(codes) > 0 {
		return marks.Roster{Codes: codes}, nil
	}
	return marks.ReadRoster(v.said.say("quiz.roster"), []byte(text))
}
