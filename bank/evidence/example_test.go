package evidence_test

import (
	"fmt"

	"evenhand/bank/evidence"
)

// Alder Hill's grade team looks at Friday's quiz: who missed what, and what to check.
func ExampleStats() {
	const w, r, o = evidence.Wrong, evidence.Right, evidence.Missing
	rows := []evidence.Row{
		{Marks: []evidence.Mark{r, r, r, w}, Pupils: 6},
		{Marks: []evidence.Mark{r, r, w, r}, Pupils: 5},
		{Marks: []evidence.Mark{r, w, w, r}, Pupils: 5},
		{Marks: []evidence.Mark{w, w, w, r}, Pupils: 4},
		{Marks: []evidence.Mark{r, r, r, o}, Pupils: 4}, // did not reach the last item
	}
	for i, s := range evidence.Stats(rows) {
		fmt.Printf("item %d: %d of %d, could be %.0f to %.0f in 100; %q\n",
			i+1, s.Right, s.Answers, 100*s.Facility.Low, 100*s.Facility.High, s.Flags())
	}
	// Output:
	// item 1: 20 of 24, could be 64 to 93 in 100; []
	// item 2: 15 of 24, could be 43 to 79 in 100; []
	// item 3: 10 of 24, could be 24 to 61 in 100; []
	// item 4: 14 of 20, could be 48 to 85 in 100; ["the stronger pupils missed this more often: check the key"]
}

// Two classes with other forms; the third item is on neither yet.
func ExampleDifficulty() {
	traits := [][]float64{{1, 0}, {1, 1}, {1, 2}} // a common level, regroupings
	papers := evidence.NewPapers(3)
	_ = papers.AddAlike(14, 0, evidence.Paper{Items: []int{0, 1}, Right: []bool{true, true}})
	_ = papers.AddAlike(8, 0, evidence.Paper{Items: []int{0, 1}, Right: []bool{true, false}})
	_ = papers.AddAlike(16, 1, evidence.Paper{Items: []int{0}, Right: []bool{true}})
	_ = papers.AddAlike(4, 1, evidence.Paper{Items: []int{0}, Right: []bool{false}})
	fit, err := evidence.Difficulty(papers, traits, evidence.Usual([]float64{-1.2, 0.6}), nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, item := range fit.Items {
		fmt.Printf("item %d: %.1f, give or take %.1f, from %d answers\n", i+1, item.Value, item.SE, item.Answers)
	}
	// Output:
	// item 1: -1.5, give or take 0.6, from 42 answers
	// item 2: 0.1, give or take 0.7, from 22 answers
	// item 3: 0.8, give or take 1.1, from 0 answers
}

// One pupil's paper: each wrong answer with the missteps that give it.
func ExampleMissteps() {
	const smaller, unpaid = "takes the smaller digit from the larger", "takes a ten but does not pay it back"
	both := []string{smaller, unpaid}
	for _, f := range evidence.Missteps([]evidence.Given{
		{Item: "81 - 38", Matches: []string{smaller}, Chances: both}, // wrote 57
		{Item: "70 - 34", Matches: []string{smaller}, Chances: both}, // wrote 44
		{Item: "88 - 31", Right: true},
		{Item: "93 - 47", Right: true, Chances: both},
		{Item: "52 - 27", Matches: both, Chances: both}, // wrote 35
	}) {
		fmt.Printf("likely %q: %d of %d chances, %q\n", f.Missteps, len(f.Items), f.Chances, f.Items)
	}
	// Output:
	// likely ["takes the smaller digit from the larger"]: 3 of 4 chances, ["81 - 38" "70 - 34" "52 - 27"]
}
