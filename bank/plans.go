package bank

import (
	"encoding/binary"
	"encoding/json"
	"fmt"
	"strings"
	"time"

	"evenhand/bank/store"
	"evenhand/standards/words"
)

// A team's plans and pacing lists are kept by name, each text that ever stood under it with who
// wrote it and when.

const plansBucket = "plans"

// Plan is a plan or a pacing list as a person wrote it, in one of its revisions.
type Plan struct {
	Name     string    `json:"name"`
	Pacing   bool      `json:"pacing,omitempty"` // a pacing list for a term, not a plan of one quiz
	Text     string    `json:"text"`             // TOML, as typed
	Revision int       `json:"revision"`         // 1, 2, ...; all are kept
	By       string    `json:"by"`
	At       time.Time `json:"at"` // UTC
	Removed  bool      `json:"removed,omitempty"`
}

// SavePlan keeps a text under the plan's name, as its next revision; the very text that stands
// there already makes none. The name is trimmed, and capitals make no other plan of it.
func (b *Bank) SavePlan(plan Plan) (Plan, error) {
	return b.savePlan(plan, func(int) bool { return true })
}

// SavePlanAfter is SavePlan for a person who has seen the plan up to a revision, 0 for one that wasn't there. If
// somebody has saved it since, it keeps nothing, and the error is *PlanOvertakenError.
func (b *Bank) SavePlanAfter(seen int, plan Plan) (Plan, error) {
	return b.savePlan(plan, func(last int) bool { return last <= seen })
}

// PlanOvertakenError says that a plan was saved since a person saw it; it has the plan as it stands.
type PlanOvertakenError struct{ Now Plan }

func (e *PlanOvertakenError) Error() string {
	return fmt.Sprintf("%s saved the plan %q meanwhile", e.Now.By, e.Now.Name)
}

// savePlan saves a plan if may says so of the revision that stands last, 0 where none does.
func (b *Bank) savePlan(plan Plan, may func(last int) bool) (Plan, error) {
	plan.Name = strings.Join(strings.Fields(plan.Name), " ")
	switch {
	case plan.Name == "":
		return plan, words.Errorf("a plan needs a name, such as friday")
	case len(plan.Name) > longest:
		return plan, words.Errorf("the plan's name is %d bytes long; at most %d can be kept", len(plan.Name), longest)
	case strings.TrimSpace(plan.By) == "":
		return plan, words.Errorf("say who saves the plan")
	}
	err := b.update(func(w store.Writer) error {
		history, err := b.readPlans(w, planPrefix(plan.Name))
		if err != nil {
			return err
		}
		plan.Revision = len(history) + 1
		if n := len(history); n > 0 {
			last := history[n-1]
			if last.Text == plan.Text && last.Pacing == plan.Pacing && last.Removed == plan.Removed {
				plan = last
				return nil
			}
			if !last.Removed && !may(last.Revision) {
				return &PlanOvertakenError{last}
			}
		}
		return putPlan(w, plan)
	})
	return plan, err
}

func putPlan(w store.Writer, plan Plan) error {
	key := planKey(plan.Name, plan.Revision)
	value, err := json.Marshal(plan)
	if err != nil {
		return err
	}
	return w.Put(plansBucket, key, Seal(key, value))
}

// RemovePlan takes a plan out of the list; its history stays.
func (b *Bank) RemovePlan(name, by string, at time.Time) error {
	plan, err := b.Plan(name)
	if err != nil {
		return err
	}
	plan.Removed, plan.By, plan.At = true, by, at
	_, err = b.SavePlan(plan)
	return err
}

// Plan is a plan as it stands.
func (b *Bank) Plan(name string) (Plan, error) {
	history, err := b.PlanHistory(name)
	if err != nil {
		return Plan{}, err
	}
	if len(history) == 0 || history[len(history)-1].Removed {
		return Plan{}, words.Errorf("%s has no plan %q; evenhand plans lists them", b.Path(), name)
	}
	return history[len(history)-1], nil
}

// PlanHistory is every revision of a plan, the first one first; none where there is no such plan.
func (b *Bank) PlanHistory(name string) (history []Plan, err error) {
	err = b.view(func(r store.Reader) error {
		history, err = b.readPlans(r, planPrefix(name))
		return err
	})
	return history, err
}

// Plans lists the plans as they stand, by name.
func (b *Bank) Plans() (list []Plan, err error) {
	err = b.view(func(r store.Reader) error {
		all, err := b.readPlans(r, nil)
		if err != nil {
			return err
		}
		list = nil
		for i, plan := range all {
			last := i == len(all)-1 || all[i+1].Revision == 1
			if last && !plan.Removed {
				list = append(list, plan)
			}
		}
		return nil
	})
	return list, err
}

// planPrefix is how the keys of a plan's revisions begin.
func planPrefix(name string) []byte {
	return append([]byte(strings.ToLower(strings.Join(strings.Fields(name), " "))), 0)
}

func planKey(name string, revision int) []byte {
	return binary.BigEndian.AppendUint32(planPrefix(name), uint32(revision))
}

// readPlans reads the revisions whose keys have the prefix.
func (b *Bank) readPlans(r store.Reader, prefix []byte) (list []Plan, err error) {
	for e, err := range r.Scan(plansBucket, store.Prefix(prefix)) {
		if err != nil {
			return nil, err
		}
		var plan Plan
		if unsealJSON(e.Key, e.Value, &plan) != nil {
			return nil, b.damaged("the plan %q can't be read", e.Key)
		}
		list = append(list, plan)
	}
	return list, nil
}
