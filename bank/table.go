package bank

import (
	"encoding/json"
	"fmt"
	"math"
	"time"

	"evenhand/bank/store"
	"evenhand/standards"
	"evenhand/standards/task"
)

// Table is what papers taught about difficulty: the levels of skills and the weights of
// traits that they spoke of. The bank predicts every item from it; what it doesn't name is as
// in the table of package standards. The zero Table teaches nothing. It holds nothing about
// pupils or classes.
type Table struct {
	Number  int                          `json:"number"` // 1, 2, ...: how often the bank has learnt
	At      time.Time                    `json:"at"`     // UTC
	By      string                       `json:"by"`
	Papers  int                          `json:"papers"`
	Answers int                          `json:"answers"`
	Levels  map[standards.SkillID]Learnt `json:"levels"`
	Weights map[string]Learnt            `json:"weights"` // by the name of a standards.Weight
}

// Learnt is a number of the table, in thousandths of a logit.
type Learnt struct {
	Default standards.Difficulty `json:"default"` // of package standards when it was learnt
	Value   standards.Difficulty `json:"value"`
	SE      standards.Difficulty `json:"se"`      // its standard error
	Answers int                  `json:"answers"` // to items that have it
}

// Basis says what an item's difficulty rests on.
type Basis string

// The bases.
const (
	GuessBasis    Basis = "guess"    // on the table that every bank begins with
	LearntBasis   Basis = "learnt"   // on what papers showed about other items of its skill
	MeasuredBasis Basis = "measured" // on its own answers
)

// MeasuredFrom is how many answers an item needs before its difficulty counts as measured, and
// the items of a skill before those without answers count as learnt:
// with 30 it lies within a logit with 95 chances in 100 (Linacre 1994, Sample size and item
// calibration stability, Rasch Measurement Transactions 7:4).
const MeasuredFrom = 30

// LevelOf is the predicted difficulty of the skill's easiest tasks in the default table.
func LevelOf(skill standards.SkillID) standards.Difficulty {
	return standards.Predict(skill, task.Traits{})
}

// Predict is the difficulty of an item with these traits, used or not.
func (t Table) Predict(skill standards.SkillID, traits task.Traits) standards.Difficulty {
	predicted := standards.Predict(skill, traits)
	if level, ok := t.Levels[skill]; ok {
		predicted += level.Value - level.Default
	}
	if len(t.Weights) == 0 {
		return predicted
	}
	moved := 0.0
	for _, w := range standards.Weights() {
		if learnt, ok := t.Weights[w.Name]; ok {
			moved += float64(learnt.Value-learnt.Default) * w.Amount(traits)
		}
	}
	return predicted + standards.Difficulty(math.Round(moved))
}

// PredictItem is the difficulty of the item by its skill and traits. One by hand has no traits
// of its own, and is as difficult as a usual task of its skill.
func (t Table) PredictItem(it Item) standards.Difficulty {
	if it.ByHand() {
		return t.Predict(it.Skill, standards.Usual(it.Skill))
	}
	return t.Predict(it.Skill, it.Traits)
}

// predict fills in the prediction. Of an item by hand it is filled in only where it is the
// default one: one that
// a person or another bank has given stays.
func (t Table) predict(it *Item) {
	if !it.ByHand() || it.Predicted == (Table{}).PredictItem(*it) {
		it.Predicted = t.PredictItem(*it)
	}
}

// PredictedBySkill says that the difficulty of an item by hand was given by nothing but its
// skill: by default, by this table, or in a bank of an earlier catalogue as that one had it or
// as papers had taught beside it. Any other was given by a person.
func (t Table) PredictedBySkill(it Item, catalogue int) bool {
	switch it.Predicted {
	case t.PredictItem(it), (Table{}).PredictItem(it):
		return true
	}
	if catalogue >= standards.CatalogueNumber {
		return false
	}
	learnt, taught := t.Levels[it.Skill]
	return it.Predicted == standards.ByHandIn(catalogue, it.Skill) || taught && it.Predicted == learnt.Value
}

// Basis says what the item's difficulty rests on.
func (t Table) Basis(it Item) Basis {
	if it.Measured != nil && it.Measured.Answers >= MeasuredFrom {
		return MeasuredBasis
	}
	if t.Levels[it.Skill].Answers >= MeasuredFrom {
		return LearntBasis
	}
	return GuessBasis
}

// fits says that the table was learnt beside the defaults that this program has. What was
// learnt beside others can't be added to these.
func (t Table) fits() bool {
	for skill, level := range t.Levels {
		if level.Default != LevelOf(skill) {
			return false
		}
	}
	defaults := map[string]standards.Difficulty{}
	for _, w := range standards.Weights() {
		defaults[w.Name] = standards.Difficulty(math.Round(1000 * w.Logits))
	}
	for name, weight := range t.Weights {
		if now, ok := defaults[name]; !ok || now != weight.Default {
			return false
		}
	}
	return true
}

var tableKey = []byte("learnt")

// Table is what the bank has learnt. A table that was learnt beside other defaults than this
// program's teaches nothing any more, but for its number.
func (b *Bank) Table() (Table, error) {
	t, err := b.KeptTable()
	return t.now(), err
}

// Outlived says that the table was learnt beside other defaults than this program's.
func (t Table) Outlived() bool { return !t.fits() }

// now is the table, or what is left of it where the defaults are others.
func (t Table) now() Table {
	if t.Outlived() {
		return Table{Number: t.Number}
	}
	return t
}

// KeptTable is what the bank has learnt, also where it teaches nothing any more (Outlived).
func (b *Bank) KeptTable() (t Table, err error) {
	err = b.view(func(r store.Reader) error {
		t, err = b.readTable(r)
		return err
	})
	return t, err
}

func (b *Bank) readTable(r store.Reader) (t Table, err error) {
	sealed, err := r.Get(aboutBucket, tableKey)
	if sealed == nil || err != nil {
		return t, err
	}
	if unsealJSON(tableKey, sealed, &t) != nil {
		return Table{}, b.damaged("what was learnt from papers can't be read")
	}
	return t, nil
}

// KeepTable makes the table the one that the bank predicts from. Items already there stay as
// they are.
func (b *Bank) KeepTable(t Table) error {
	text, err := json.Marshal(t)
	if err != nil {
		return fmt.Errorf("what was learnt can't be kept: %w", err)
	}
	return b.update(func(w store.Writer) error {
		return w.Put(aboutBucket, tableKey, Seal(tableKey, text))
	})
}
