package desk

import (
	"slices"

	"evenhand/bank/evidence/report"
	"evenhand/bank/results"
)

// classPage is the report of a class as it stands now.
type classPage struct {
	*report.Report
	Class    string
	Known    []string // classes
	Enrolled int      // pupils of the class
	MayMake  bool     // who asks may make a form for the absent
}

// Latest are the quizzes of the weeks that the groups look at, the last one first.
func (p classPage) Latest() (list []report.Quiz) {
	for _, q := range slices.Backward(p.Quizzes) {
		if slices.Contains(p.RecentWeeks(p.Class), q.Week) {
			list = append(list, q)
		}
	}
	return list
}

// Part is a count with what it could be by chance, in templates.
func (s sentences) Part(p report.Part) string {
	if p.Of == 0 {
		return s.say("class.noanswers")
	}
	low, high := p.Range()
	text := s.say("class.range", p.Right, p.Of, low, high)
	if p.Few() {
		text += " " + s.say("class.few")
	}
	return text
}

// class shows what the marked papers of a class tell.
func class(v *visit) error {
	page := classPage{Class: v.FormValue("class"), MayMake: v.who.Role.may(Writer)}
	if err := results.CheckClass(page.Class); err != nil {
		return v.wrong("marks.class.wrong", page.Class)
	}
	var quizzes []results.Quiz
	var papers []results.Paper
	err := v.readMarks(func(s *results.Store) (err error) {
		if page.Known, err = s.Classes(); err != nil {
			return err
		}
		if !v.Form.Has("class") && len(page.Known) > 0 {
			page.Class = page.Known[0]
		}
		pupils, err := s.Pupils(page.Class)
		if err != nil {
			return err
		}
		page.Enrolled = len(pupils)
		quizzes, papers, err = s.All()
		return err
	})
	if err != nil {
		return err
	}
	if page.Report, err = v.reportOn(page.Class, quizzes, papers); err != nil {
		return err
	}
	return v.show("class", page)
}

// reportOn is the report on what a class did in the quizzes, shown as the bank says that they were given.
func (v *visit) reportOn(class string, quizzes []results.Quiz, papers []results.Paper) (*report.Report, error) {
	given, err := v.desk.bank.Quizzes()
	papers = slices.DeleteFunc(slices.Clone(papers), func(p results.Paper) bool { return p.Class != class })
	return report.Of(results.ShownAs(quizzes, given), papers), err
}
