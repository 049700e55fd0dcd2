// Package followup is what a marked quiz leads to: sheets to practise on Monday, a letter for families, and what
// of the term stuck and should come back.
//
//	set, err := followup.Practice(ctx, b, report.Of(quizzes, papers), class, options)
//	err = set.Write(write, sheetOptions, followup.Also{})
//
// A practice sheet begins with an example that is done already, drawn as the group's misstep needs it (ways.go),
// and goes on with items from easy to near the quiz (practice.go), chosen by package assemble among those in
// which the misstep can show (telling.go). No sheet names a pupil; the teacher's page (teacher.go) has their
// codes, with the caution.
package followup
