package bank

import (
	"bytes"
	"errors"
	"fmt"
	"time"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
	"evenhand/standards"
)

// Merged says what a merge brought in, or would bring.
type Merged struct {
	From     string   `json:"from"`
	Items    int      `json:"items"`    // that only the other bank had
	Ahead    int      `json:"ahead"`    // that had been changed there and not here
	Apart    []Apart  `json:"apart"`    // changed by people in both
	Joined   []Joined `json:"joined"`   // added in both, each under an ID of its own
	Uses     int      `json:"uses"`     // of items that both had, noted only there
	Plans    []string `json:"plans"`    // that came or got a later text
	Both     []string `json:"both"`     // plans that were changed in both
	Quizzes  []string `json:"quizzes"`  // that came, or were given or taken back there since
	Lists    []string `json:"lists"`    // lists that came in, or were taken back there since
	Learnt   bool     `json:"learnt"`   // what was learnt there is later, and stands now
	Review   bool     `json:"review"`   // who lets drafts in was decided later there, and holds now
	Elsewise bool     `json:"elsewise"` // the banks had learnt different things
	Doubles  []Double `json:"doubles"`  // items of the bank that ask the same now
}

// Apart is an item that people changed in two banks.
type Apart struct {
	ID       string `json:"id"`
	Question string `json:"question"`
	Stands   Change `json:"stands"` // the later change
	Other    Change `json:"other"`  // the latest of the other changes that says something else
}

// Change is a revision in a few words.
type Change struct {
	Revision int      `json:"revision"`
	By       string   `json:"by"`
	On       string   `json:"on"`
	Reason   string   `json:"reason"`
	Question string   `json:"question"`
	Key      string   `json:"key"`
	Standing Standing `json:"standing"`
}

// Joined is an item that two banks had under different IDs; all of them name it now.
type Joined struct {
	ID       string   `json:"id"`
	Others   []string `json:"others"`
	Question string   `json:"question"`
}

// Double is an item that asks the same as another one, which is found first.
type Double struct {
	ID       string `json:"id"`
	Other    string `json:"other"`
	Question string `json:"question"`
}

// MergeOptions say how to merge.
type MergeOptions struct {
	DryRun  bool           // write nothing, only tell
	Advance func(done int) // told how many of the other's items are done; nil means nobody
}

// errTried ends an update that was made only to see what it would do.
var errTried = errors.New("only tried")

// Merge brings in all that another bank holds: items with their revisions and uses, plans
// with theirs, quizzes, and what was learnt. Nothing of either is lost, and the other is not
// touched. The result does not depend on which of the banks came first, on how often they are
// merged, or, of three, on their order. Items are one if they have an ID in common or were
// added asking the same; changes made in both are all kept, and the later stands. It is done
// in batches; interrupted, it is finished by doing it again.
func (b *Bank) Merge(other *Bank, o MergeOptions) (m Merged, err error) {
	m = Merged{
		From: other.Path(), Apart: []Apart{}, Joined: []Joined{}, Doubles: []Double{},
		Plans: []string{}, Both: []string{}, Quizzes: []string{}, Lists: []string{},
	}
	for _, one := range []*Bank{b, other} {
		number, err := one.Catalogue()
		if err != nil {
			return m, err
		}
		if number > standards.CatalogueNumber {
			return m, fmt.Errorf("%s was computed by a newer evenhand (catalogue %d, this one has %d); merge with that one",
				one.Path(), number, standards.CatalogueNumber)
		}
	}
	g, err := newMerger(b, other, o, &m)
	if err != nil {
		return m, err
	}
	for _, part := range []func() error{g.about, g.items, g.plans, g.quizzes, g.lists} {
		if err := part(); err != nil {
			return m, err
		}
	}
	if !o.DryRun {
		m.Doubles, err = b.Doubles()
	}
	return m, err
}

// merger merges the bank from into the bank into.
type merger struct {
	into, from *Bank
	options    MergeOptions
	told       *Merged
	classes    classes
	aliases    [2]map[ulid.ULID][]ulid.ULID // of both banks: the other IDs of items
}

// write is an update of the bank that is undone in a dry run.
func (g *merger) write(do func(w *writer) error) error {
	err := g.into.update(func(tx store.Writer) error {
		w := g.into.writer(tx)
		if err := do(w); err != nil {
			return err
		}
		if err := w.flush(); err != nil {
			return err
		}
		if g.options.DryRun {
			return errTried
		}
		return nil
	})
	if errors.Is(err, errTried) {
		return nil
	}
	return err
}

// about takes over what is known of the bank as a whole: the earlier catalogue, as some items
// are computed by it, and what was learnt or decided later. Who may use the desk is no part of it.
func (g *merger) about() error {
	number, err := g.from.Catalogue()
	if err != nil {
		return err
	}
	var theirs [][]byte
	keys := [][]byte{tableKey, reviewKey}
	err = g.from.view(func(r store.Reader) error {
		found, err := r.GetAll(aboutBucket, keys)
		theirs = nil
		for _, sealed := range found {
			theirs = append(theirs, bytes.Clone(sealed))
		}
		return err
	})
	if err != nil {
		return err
	}
	return g.write(func(w *writer) error {
		mine, err := g.into.readCatalogue(w)
		if err != nil {
			return err
		}
		if number < mine {
			if err := putCatalogue(w, number); err != nil {
				return err
			}
		}
		for i, key := range keys {
			later, err := g.takeLater(w, key, theirs[i])
			if err != nil {
				return err
			}
			if bytes.Equal(key, tableKey) {
				g.told.Learnt = later
			} else {
				g.told.Review = later
			}
		}
		return nil
	})
}

// takeLater takes over what the other bank keeps under a key, if it is later.
func (g *merger) takeLater(w *writer, key, theirs []byte) (later bool, err error) {
	here, err := w.Get(aboutBucket, key)
	if err != nil || theirs == nil || bytes.Equal(here, theirs) {
		return false, err
	}
	if here != nil {
		if bytes.Equal(key, tableKey) {
			g.told.Elsewise = true
		}
		own, err := g.into.stampOf(key, here)
		if err != nil {
			return false, err
		}
		other, err := g.from.stampOf(key, theirs)
		if err != nil || !other.after(own, theirs, here) {
			return false, err
		}
	}
	return true, w.Put(aboutBucket, key, theirs)
}

// stamp is when something was decided.
type stamp struct {
	At     time.Time `json:"at"`
	Number int       `json:"number"`
}

func (b *Bank) stampOf(key, sealed []byte) (at stamp, err error) {
	if unsealJSON(key, sealed, &at) != nil {
		return at, b.damaged("what it knows of %q can't be read", key)
	}
	return at, nil
}

func (s stamp) after(other stamp, raw, otherRaw []byte) bool {
	switch {
	case !s.At.Equal(other.At):
		return s.At.After(other.At)
	case s.Number != other.Number:
		return s.Number > other.Number
	}
	return bytes.Compare(raw, otherRaw) > 0
}
