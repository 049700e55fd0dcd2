package desk

import (
	"errors"
	"strconv"
	"strings"

	"evenhand/bank"
)

// begun is what a page knows of the plan or pacing list that it was begun with.
type begun struct {
	Seen      string    // its revision and its name, see seen
	Overtaken bank.Plan // saved by somebody else since; the person's own is not saved then, but the next time
}

// overtaken says whether a plan wasn't saved for that, and takes in what stands there.
func (b *begun) overtaken(err error) bool {
	var by *bank.PlanOvertakenError
	if !errors.As(err, &by) {
		return false
	}
	b.Seen, b.Overtaken = seen(by.Now), by.Now
	return true
}

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
