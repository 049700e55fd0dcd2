package desk

import (
	"archive/zip"
	"bytes"
	"context"
	"errors"
	"io"

	"evenhand/assemble"
	"evenhand/assemble/followup"
	"evenhand/assemble/plan"
	"evenhand/assemble/sheet"
	"evenhand/bank/results"
)

// makePractice gives what the groups of a class could practise on Monday, as a folder of sheets with a page for
// the teacher; missing items are made, and the use of all is noted, so that no quiz takes them too soon.
func makePractice(v *visit) error {
	if err := v.admit(toWrite); err != nil {
		return err
	}
	class := v.FormValue("class")
	o := sheet.Options{Lang: v.FormValue("lang")}
	if err := o.Check(); err != nil {
		return asTyped(err)
	}
	if err := results.CheckClass(class); err != nil {
		return v.wrong("marks.class.wrong", class)
	}
	var quizzes []results.Quiz
	var papers []results.Paper
	err := v.readMarks(func(s *results.Store) (err error) {
		quizzes, papers, err = s.All()
		return err
	})
	if err != nil {
		return err
	}
	told, err := v.reportOn(class, quizzes, papers)
	if err != nil {
		return err
	}
	if len(told.Quizzes) == 0 {
		return v.wrong("practice.nothing")
	}
	week := plan.WeekOf(v.desk.o.Now()).String()
	if last, err := plan.ParseWeek(told.LastWeek()); err == nil {
		week = last.Add(1).String()
	}
	options := followup.Options{Week: week, Seed: 1, Quizzes: quizzes, Papers: papers}
	filling := assemble.Filling{Bank: v.desk.bank, By: v.by(), At: v.now()}
	var set followup.Set
	err = v.inTurn(func(ctx context.Context) (err error) {
		choose := followup.Again(v.desk.bank, told, class, week)
		return filling.Try(len(told.Groups)+2, func() error {
			set, err = followup.Practice(ctx, choose, told, class, options)
			return err
		})
	})
	if errors.As(err, new(*fault)) {
		return err
	}
	if err != nil {
		return v.wrong("practice.not", v.said.Tell(err))
	}
	var file bytes.Buffer
	folder := zip.NewWriter(&file)
	err = set.Write(func(name string, write func(io.Writer) error) error {
		one, err := folder.Create(name)
		if err != nil {
			return err
		}
		return write(one)
	}, o, followup.Also{Class: true})
	if err := errors.Join(err, folder.Close()); err != nil {
		return err
	}
	if err := v.desk.bank.ChangeUse(set.Items(), set.Use(v.now())); err != nil {
		return err
	}
	return v.sendFile(&file, "attachment", "practice-"+week+".zip")
}
