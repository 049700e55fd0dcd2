package assemble

import (
	"time"

	"evenhand/assemble/plan"
	"evenhand/assemble/search"
	"evenhand/bank"
	"evenhand/bank/results"
)

// Given is the quiz as the bank keeps it, from the hands of by. What is beside the quiz itself, such as
// its plan, is left to fill in.
func (q Quiz) Given(by string, at time.Time) bank.Quiz {
	given := bank.Quiz{
		Title: q.Title, Week: q.Week, Seed: q.Seed,
		ShareRight: q.ShareRight, Level: q.Ability, Off: q.Off, Uneven: q.Uneven, Uses: q.UsesSum,
		Objective: q.Objective, Bound: q.Bound, Verdict: q.Verdict(),
		By: by, At: at,
	}
	for _, form := range q.Forms {
		kept := bank.QuizForm{Name: form.Name, Scores: form.Scores}
		for _, p := range form.Items {
			kept.Items = append(kept.Items, bank.QuizItem{
				Item: p.Item, Row: p.Row, Uses: p.Uses, Shared: p.Shared, Choices: p.Choices, Basis: p.Basis,
			})
		}
		given.Forms = append(given.Forms, kept)
	}
	given.ID = results.QuizOf(given).ID
	return given
}

// QuizOf is a quiz that the bank keeps, to be printed, exported or compared. What was exchanged in it
// is not kept.
func QuizOf(given bank.Quiz) Quiz {
	q := Quiz{
		Title: given.Title, Week: given.Week, Seed: given.Seed,
		ShareRight: given.ShareRight, Ability: given.Level, Off: given.Off, Uneven: given.Uneven, UsesSum: given.Uses,
		Objective: given.Objective, Bound: given.Bound, Proved: given.Objective == given.Bound,
	}
	for _, kept := range given.Forms {
		form := Form{Name: kept.Name, Scores: search.Points(kept.Scores)}
		for i, p := range kept.Items {
			form.Items = append(form.Items, Placed{i + 1, p.Item, p.Row, p.Uses, p.Shared, p.Choices, p.Basis})
		}
		q.Forms = append(q.Forms, form)
	}
	return q
}

// EarlierOf is the quiz as one that another is made from.
func EarlierOf(given bank.Quiz) Earlier {
	earlier := Earlier{Quiz: given.ID}
	for _, form := range given.Forms {
		for i, placed := range form.Items {
			spot := Spot{Form: form.Name, Number: i + 1, ID: placed.Item.ID, Look: placed.Item.Look}
			earlier.Spots = append(earlier.Spots, spot)
		}
	}
	return earlier
}

// PlanOf is the plan that a quiz was given under; ok is false where the bank keeps none.
func PlanOf(given bank.Quiz) (asked plan.Plan, ok bool, err error) {
	name := "the plan of " + given.Name()
	switch {
	case given.Plan == "":
		return plan.Plan{}, false, nil
	case given.PacingWeek == 0:
		asked, err = plan.Parse([]byte(given.Plan), name)
		return asked, err == nil, err
	}
	pacing, err := plan.ParsePacing([]byte(given.Plan), name)
	if err != nil {
		return plan.Plan{}, false, err
	}
	return pacing.Plans(given.PacingWeek)[given.PacingWeek-1], true, nil
}
