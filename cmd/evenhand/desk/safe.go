package desk

import (
	"errors"
	"net/http"
	"strings"
	"sync"
	"time"

	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/bank/store"
	"evenhand/standards/words"
)

// safety is what the desk found out about its bank and the copies since it was opened.
type safety struct {
	sync.Mutex
	proofs  map[string]proof
	verdict *verdict
	daily   error // of the last try at a daily copy, and when it was
	dailyAt time.Time
}

// BackedUp tells the desk what became of a try at today's copy.
func (d *Desk) BackedUp(err error) {
	d.safety.Lock()
	defer d.safety.Unlock()
	d.safety.daily, d.safety.dailyAt = err, d.o.Now()
	if err != nil {
		d.o.Log.Error("the daily backup failed", "error", forLog(err))
	}
}

// proof says when a copy was read whole, and what was wrong with it.
type proof struct {
	At  time.Time
	Bad *words.Told // nil for undamaged
}

// verdict is what a look through the bank and its marks found.
type verdict struct {
	At       time.Time
	Items    int
	Papers   int
	Problems []*words.Told
	More     int // problems beyond those told
}

// copyRow is a copy with its proof.
type copyRow struct {
	results.Copy
	Proof *proof
	Days  int // of age
	KB    int64
}

// safePage is how safe the bank is.
type safePage struct {
	Copies     []copyRow
	Dir        string // empty where no copies are kept
	CanRestore bool
	Restored   *words.Told // what a restore just did
	Failed     *proof      // the last try at a daily copy, where it failed
	Verdict    *verdict
	Review     bank.Review
}

// safe looks at the copies and at what is known.
func (v *visit) safe() (page safePage, err error) {
	page = safePage{Dir: v.desk.o.Copies.Dir, CanRestore: v.desk.o.Restore != nil, Restored: v.desk.o.Restored}
	if page.Review, err = v.desk.bank.Review(); err != nil {
		return page, err
	}
	list := []results.Copy{}
	if page.Dir != "" {
		if list, err = v.desk.o.Copies.List(); err != nil {
			return page, err
		}
	}
	v.desk.safety.Lock()
	defer v.desk.safety.Unlock()
	page.Verdict = v.desk.safety.verdict
	if err := v.desk.safety.daily; err != nil {
		page.Failed = &proof{v.desk.safety.dailyAt, words.ToldBy(err)}
	}
	for _, one := range list {
		row := copyRow{Copy: one, KB: (one.Size + 1023) / 1024, Days: max(0, int(v.desk.o.Now().Sub(one.At).Hours()/24))}
		if found, ok := v.desk.safety.proofs[one.Name]; ok {
			row.Proof = &found
		}
		page.Copies = append(page.Copies, row)
	}
	return page, nil
}

// prove reads a copy whole and remembers what it found.
func (v *visit) prove(name string) error {
	err := v.desk.o.Copies.Prove(name)
	found := proof{At: v.now()}
	if err != nil {
		found.Bad = words.ToldBy(err)
	}
	v.desk.safety.Lock()
	defer v.desk.safety.Unlock()
	if v.desk.safety.proofs == nil {
		v.desk.safety.proofs = map[string]proof{}
	}
	v.desk.safety.proofs[name] = found
	return err
}

// makeCopy makes a proved copy now.
func makeCopy(v *visit) error {
	if v.desk.o.Copies.Dir == "" {
		return v.missing("fault.nothing")
	}
	name, err := v.desk.o.Copies.Make(v.desk.bank, v.now())
	if err != nil {
		return &fault{status: http.StatusConflict, text: v.said.say("safe.notcopied", v.said.Tell(err)), err: err}
	}
	_ = v.prove(name) // its row says what was found
	return v.to("/team#copies")
}

// copyAsked is the copy that the address names.
func (v *visit) copyAsked() (name string, err error) {
	if _, err := v.desk.o.Copies.File(v.PathValue("name")); err != nil || v.desk.o.Copies.Dir == "" {
		return "", v.missing("safe.nocopy")
	}
	return v.PathValue("name"), nil
}

// proveCopy reads a copy whole and says on its row what it found.
func proveCopy(v *visit) error {
	name, err := v.copyAsked()
	if err != nil {
		return err
	}
	_ = v.prove(name) // its row says what was found
	return v.to("/team#copies")
}

// copyPage is one copy, proved, with what going back to it would take out of use.
type copyPage struct {
	Name, Made, Typed string        // Typed is what has to be typed to go back
	Bad               string        // what is damaged in it; empty for nothing
	Loss              *results.Loss // nil where it can't be told
	Problem           string
}

// showCopy proves a copy and lists what would be lost, before anything is done.
func showCopy(v *visit) error { return v.showCopy("") }

func (v *visit) showCopy(problem string) error {
	name, err := v.copyAsked()
	if err != nil {
		return err
	}
	if v.desk.o.Restore == nil {
		return v.missing("safe.nocopy")
	}
	page := copyPage{Name: name, Made: results.CopyMade(name), Problem: problem}
	page.Typed = page.Made[:len("2006-01-02")]
	if err := v.prove(name); err != nil {
		page.Bad = v.said.Tell(err)
	} else if loss, err := v.desk.o.Copies.Loss(v.desk.bank, name); err != nil {
		page.Problem = v.said.say("copy.unknown", v.said.Tell(err))
	} else {
		page.Loss = &loss
	}
	return v.show("copy", page)
}

// restoreCopy puts a copy in the place of the bank and its marks, once it is proved and its day is typed. What stands
// there is copied first, and kept.
func restoreCopy(v *visit) error {
	name, err := v.copyAsked()
	switch {
	case err != nil:
		return err
	case v.desk.o.Restore == nil:
		return v.missing("safe.nocopy")
	case strings.TrimSpace(v.FormValue("sure")) != results.CopyMade(name)[:len("2006-01-02")]:
		v.w.WriteHeader(http.StatusBadRequest)
		return v.showCopy(v.said.say("copy.sure", results.CopyMade(name)[:len("2006-01-02")]))
	}
	if err := v.prove(name); err != nil {
		return v.wrong("safe.damaged", v.said.Tell(err))
	}
	path, err := v.desk.o.Copies.File(name)
	if err != nil {
		return err
	}
	// A bank that is damaged can't be copied, and is what going back is for: its file is kept as it is. In a database
	// going back makes the copy itself, while others wait.
	if !bank.InDatabase(v.desk.bank.Path()) {
		_, err = v.desk.o.Copies.Make(v.desk.bank, v.now())
	}
	if err != nil && !errors.As(err, new(store.Damaged)) {
		return &fault{status: http.StatusConflict, text: v.said.say("safe.notcopied", v.said.Tell(err)), err: err}
	}
	on := passage{Title: "safe.going.title", Text: "safe.going", Link: "/team", Go: "safe.title", Wait: 3}
	err = v.show("passage", on)
	v.desk.o.Restore(path)
	return err
}

// checkBank looks through the bank and its marks.
func checkBank(v *visit) error {
	found := verdict{At: v.now()}
	report, err := v.desk.bank.Check()
	if err != nil {
		return err
	}
	found.Items, found.More = report.Items, report.More
	for _, problem := range report.Problems {
		found.Problems = append(found.Problems, problem.Told)
	}
	err = v.readMarks(func(s *results.Store) error {
		checked, err := s.Check()
		found.Papers = checked.Papers
		return err
	})
	if err != nil {
		found.Problems = append(found.Problems, words.ToldBy(err))
	}
	v.desk.safety.Lock()
	v.desk.safety.verdict = &found
	v.desk.safety.Unlock()
	return v.to("/team#check")
}

// setReview keeps who lets drafts in.
func setReview(v *visit) error {
	anyone := v.FormValue("anyone")
	if anyone != "yes" && anyone != "no" {
		return v.wrong("safe.noreview")
	}
	how := bank.Review{Anyone: anyone == "yes", By: v.by(), At: v.now()}
	if err := v.desk.bank.SetReview(how); err != nil {
		return err
	}
	return v.to("/team#review")
}
