package qti

import (
	"fmt"
	"hash/fnv"
	"math/rand/v2"

	"evenhand/standards/task"
)

// match asks to join clock faces, each a picture, with their times, which stand in another
// order.
func match(prompt string, t task.Match, lang string) answer {
	r := Response{ID: only, Kind: Match}
	for i, time := range t.List() {
		picture := dial(time, lang)
		picture.Alt = fmt.Sprintf("%s %d", picture.Alt, i+1)
		r.Options = append(r.Options, Option{ID: fmt.Sprintf("clock%d", i+1), Picture: picture})
	}
	for place, i := range shuffled(t) {
		id := fmt.Sprintf("time%d", place+1)
		r.Others = append(r.Others, Option{ID: id, Text: t.List()[i].String()})
	}
	for i, time := range t.List() {
		for _, other := range r.Others {
			if other.Text == time.String() {
				r.Correct = append(r.Correct, r.Options[i].ID+" "+other.ID)
			}
		}
	}
	return answer{stem: lines(prompt), responses: []Response{r}, scoring: Scoring{By: ByMatch}}
}

// shuffled is an order of the times that follows from the task and is not that of the faces.
func shuffled(t task.Match) []int {
	hash := fnv.New64a()
	_, _ = hash.Write([]byte(t.String()))
	order := rand.New(rand.NewPCG(hash.Sum64(), 0)).Perm(t.N)
	for i, place := range order {
		if i != place {
			return order
		}
	}
	return append(order[1:], order[0])
}
