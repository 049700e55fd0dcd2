package assemble

import (
	"time"

	"evenhand/assemble/search"
	"evenhand/bank"
	"evenhand/bank/results"
)

// Given is the quiz as the bank keeps it, from the hands of by.
func (q Quiz) Given(by string, at time.Time) bank.Quiz {
	given := bank.Quiz{
		Title: q.Title, Week: q.Week, Seed: q.Seed,
		ShareRight: q.ShareRight, Level: q.Ability, Off: q.Off, Uneven: q.Uneven, Uses: q.UsesSum,
		Objective: q.Objective, Bound: q.Bound, Verdict: q.Verdict(),
		By: by, At: at,
	}
	for _, form := range q.Forms {
		kept := bank.QuizForm{Name: form.Name, Scores: form.Scores}
		for _, placed := range form.Items {
			kept.Items = append(kept.Items, bank.QuizItem{Item: placed.Item, Row: placed.Row, Uses: placed.Uses, Shared: placed.Shared})
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
		for i, placed := range kept.Items {
			form.Items = append(form.Items, Placed{Number: i + 1, Item: placed.Item, Row: placed.Row, Uses: placed.Uses, Shared: placed.Shared})
		}
		q.Forms = append(q.Forms, form)
	}
	return q
}

// EarlierOf is the quiz as one that another is made from.
func EarlierOf(given bank.Quiz) Earlier {
	var earlier Earlier
	for _, form := range given.Forms {
		for i, placed := range form.Items {
			earlier.Spots = append(earlier.Spots, Spot{Form: form.Name, Number: i + 1, ID: placed.Item.ID, Look: placed.Item.Look})
		}
	}
	return earlier
}
