package desk

import (
	"strconv"
	"strings"

	"evenhand/bank"
)

// overtaken is the plan or pacing list that somebody else saved while a page of it was open; the person's own is not
// saved then, but the next time.
type overtaken struct{ Overtaken bank.Plan }

// seen is what a form says of the plan it was begun with: its revision and its name.
func seen(p bank.Plan) string { return strconv.Itoa(p.Revision) + " " + p.Name }

// savePlan saves a plan or a pacing list, unless somebody has saved one of its name since the form was opened.
func (v *visit) savePlan(seen string, p bank.Plan) (bank.Plan, error) {
	number, name, _ := strings.Cut(seen, " ")
	revision, err := strconv.Atoi(number)
	if err != nil || !strings.EqualFold(name, p.Name) {
		revision = 0
	}
	p.By, p.At = v.by(), v.now()
	return v.desk.bank.SavePlanAfter(revision, p)
}
