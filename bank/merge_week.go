package bank

import (
	"bytes"
	"slices"
	"strings"
	"time"

	"evenhand/bank/lineage"
	"evenhand/bank/store"
)

// plans merges the plans and pacing lists by their names.
func (g *merger) plans() error {
	var theirs []Plan
	err := g.from.view(func(r store.Reader) (err error) {
		theirs, err = g.from.readPlans(r, nil)
		return err
	})
	if err != nil {
		return err
	}
	before := *g.told
	return g.write(func(w *writer) error {
		*g.told = before
		for len(theirs) > 0 {
			n := 1
			for n < len(theirs) && theirs[n].Revision > 1 {
				n++
			}
			if err := g.plan(w, theirs[:n]); err != nil {
				return err
			}
			theirs = theirs[n:]
		}
		return nil
	})
}

func (g *merger) plan(w *writer, theirs []Plan) error {
	ours, err := g.into.readPlans(w, planPrefix(theirs[0].Name))
	if err != nil || slices.Equal(ours, theirs) {
		return err
	}
	next, both := theirs, false
	if len(ours) > 0 {
		var joined lineage.Line[Plan]
		joined, both = lineage.Join(planLine(ours), planLine(theirs))
		next = make([]Plan, len(joined))
		for i, e := range joined {
			next[i] = e.Value
			next[i].Revision, next[i].At = i+1, time.Unix(0, e.Place).UTC()
		}
	}
	if slices.Equal(next, ours) {
		return nil
	}
	name := next[len(next)-1].Name
	if len(next) > len(ours) {
		g.told.Plans = append(g.told.Plans, name)
	}
	if both {
		g.told.Both = append(g.told.Both, name)
	}
	for _, plan := range next {
		if err := putPlan(w, plan); err != nil {
			return err
		}
	}
	return nil
}

func planLine(plans []Plan) lineage.Line[Plan] {
	l := make(lineage.Line[Plan], len(plans))
	for i, plan := range plans {
		said := plan
		said.Revision, said.At = 0, time.Time{}
		l[i] = lineage.Entry[Plan]{Value: plan, Body: string(inJSON(said)), At: plan.At.UnixNano(), Human: true}
	}
	l.Places()
	return l
}

// quizzes merges the quizzes that were given. Of one that both have, what happened later
// stands: that it was given, or taken back.
func (g *merger) quizzes() error {
	type kept struct {
		quiz Quiz
		raw  store.Entry
	}
	var theirs []kept
	err := g.from.view(func(r store.Reader) error {
		theirs = nil
		for e, err := range r.Scan(quizzesBucket, store.Range{}) {
			if err != nil {
				return err
			}
			q, err := g.from.readQuiz(e)
			if err != nil {
				return err
			}
			theirs = append(theirs, kept{q, store.Entry{Key: bytes.Clone(e.Key), Value: bytes.Clone(e.Value)}})
		}
		return nil
	})
	if err != nil {
		return err
	}
	before := *g.told
	return g.write(func(w *writer) error {
		*g.told = before
		for _, their := range theirs {
			here, err := w.Get(quizzesBucket, their.raw.Key)
			if err != nil {
				return err
			}
			if here != nil {
				own, err := g.into.readQuiz(store.Entry{Key: their.raw.Key, Value: here})
				if err != nil {
					return err
				}
				if !laterQuiz(their.quiz, own, their.raw.Value, here) {
					continue
				}
			}
			g.told.Quizzes = append(g.told.Quizzes, their.quiz.Name())
			if err := w.Put(quizzesBucket, their.raw.Key, their.raw.Value); err != nil {
				return err
			}
		}
		slices.SortStableFunc(g.told.Quizzes, strings.Compare)
		return nil
	})
}

// laterQuiz says that what happened to a happened later than what happened to b.
func laterQuiz(a, b Quiz, rawA, rawB []byte) bool {
	switch {
	case !a.At.Equal(b.At):
		return a.At.After(b.At)
	case a.TakenBack != b.TakenBack:
		return a.TakenBack
	}
	return bytes.Compare(rawA, rawB) > 0
}
