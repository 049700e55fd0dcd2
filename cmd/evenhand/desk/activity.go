package desk

import (
	"slices"
	"strings"
	"sync"
	"time"

	"evenhand/bank"
)

// What people did is told from the histories that the bank keeps anyway.

// deed is something that somebody did.
type deed struct {
	By   string    `json:"by"`
	At   time.Time `json:"at"`
	What string    `json:"what"`  // added, changed, quiz, plan or list
	N    int       `json:"count"` // how many items
	Name string    `json:"name,omitempty"`
	Path string    `json:"path,omitempty"` // of the page

	quiz bank.Quiz // that was made
}

// mostDeeds is how many are told.
const mostDeeds = 30

// lately remembers the deeds for a moment, as reading them goes through all items.
type lately struct {
	sync.Mutex
	at    time.Time
	deeds []deed
}

// lateFor is how old the remembered deeds may be.
const lateFor = 10 * time.Second

// deeds are what was done last, the latest first.
func (d *Desk) deeds() ([]deed, error) {
	d.lately.Lock()
	defer d.lately.Unlock()
	if now := d.o.Now(); d.lately.deeds != nil && now.Sub(d.lately.at).Abs() < lateFor {
		return d.lately.deeds, nil
	}
	list, err := d.readDeeds()
	if err == nil {
		d.lately.at, d.lately.deeds = d.o.Now(), list
	}
	return list, err
}

func (d *Desk) readDeeds() ([]deed, error) {
	list := []deed{}
	items, err := d.bank.Recent(20 * mostDeeds)
	if err != nil {
		return nil, err
	}
	for _, it := range items {
		one := deed{By: it.By, At: it.At, What: "added", N: 1, Name: it.ID, Path: "/items/" + it.ID}
		if it.Revision > 1 {
			one.What = "changed"
		}
		if n := len(list); n > 0 && list[n-1].sameWork(one) {
			list[n-1].N++
			list[n-1].Name, list[n-1].Path = "", "/items"
			continue
		}
		list = append(list, one)
	}
	quizzes, err := d.bank.Quizzes()
	if err != nil {
		return nil, err
	}
	for _, q := range quizzes {
		list = append(list, deed{By: q.By, At: q.At, What: "quiz", Name: q.Name(), Path: "/quizzes/" + q.ID, quiz: q})
	}
	plans, err := d.bank.Plans()
	if err != nil {
		return nil, err
	}
	for _, p := range plans {
		list = append(list, deed{By: p.By, At: p.At, What: "plan", Name: p.Name, Path: "/plans"})
	}
	lists, err := d.bank.Lists()
	if err != nil {
		return nil, err
	}
	for _, l := range lists {
		list = append(list, deed{By: l.By, At: l.At, What: "list", Name: l.Name, Path: "/lists"})
	}
	slices.SortStableFunc(list, func(a, b deed) int { return b.At.Compare(a.At) })
	return list[:min(len(list), mostDeeds)], nil
}

// DeedName is what was made, as it is shown, in templates.
func (s sentences) DeedName(d deed) string {
	switch d.What {
	case "plan":
		return s.PlanName(d.Name)
	case "list":
		return s.ListName(d.Name)
	case "quiz":
		return s.QuizName(d.quiz)
	}
	return d.Name
}

// sameWork says that two items were added or changed in one go.
func (d deed) sameWork(other deed) bool {
	return d.What == other.What && strings.EqualFold(d.By, other.By) && d.At.Sub(other.At).Abs() < time.Minute
}

// activityPage shows what was done last.
func activityPage(v *visit) error {
	deeds, err := v.desk.deeds()
	if err != nil {
		return err
	}
	return v.show("activity", struct{ Deeds []deed }{deeds})
}

// listActivity tells a program the same.
func listActivity(v *visit) error {
	deeds, err := v.desk.deeds()
	if err != nil {
		return err
	}
	return v.tell(struct {
		Activity []deed `json:"activity"`
	}{deeds})
}
