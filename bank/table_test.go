package bank_test

import (
	"path/filepath"
	"testing"

	"go.etcd.io/bbolt"

	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
)

// harder is a table that has found a skill harder, and a regrouping easier, than supposed.
func harder(skill standards.SkillID) bank.Table {
	level := standards.Predict(skill, task.Traits{})
	return bank.Table{
		Number: 1, At: monday, By: "MK", Papers: 24, Answers: 240,
		Levels:  map[standards.SkillID]bank.Learnt{skill: {Default: level, Value: level + 700, SE: 90, Answers: 240}},
		Weights: map[string]bank.Learnt{"regroups": {Default: 444, Value: 344, SE: 80, Answers: 120}},
	}
}

func TestItemsToComeArePredictedFromWhatWasLearnt(t *testing.T) {
	b := tempBank(t)
	table := harder("add-two-digit")
	must(t, b.KeepTable(table))
	kept, err := b.Table()
	must(t, err)
	for _, text := range []string{"46 + 37 = ?", "41 + 37 = ?", "81 - 38 = ?", "read 4:30"} {
		asked := task.MustParse(text)
		it := bank.NewItem(asked, "", bank.Origin{Kind: "written"})
		want := standards.Predict(it.Skill, it.Traits)
		if it.Skill == "add-two-digit" {
			want += 700
		}
		if n, _ := it.Traits.Number(task.Regroups); n > 0 {
			want -= standards.Difficulty(100 * n)
		}
		added, err := b.Add([]bank.Item{it}, "MK", monday)
		must(t, err)
		got, err := b.Get(added[0].ID)
		must(t, err)
		if got.Predicted != want || kept.Predict(it.Skill, it.Traits) != want {
			t.Errorf("%s is predicted %v, the table says %v; want %v", text, got.Predicted, kept.Predict(it.Skill, it.Traits), want)
		}
		basis := bank.GuessBasis
		if it.Skill == "add-two-digit" {
			basis = bank.LearntBasis
		}
		if kept.Basis(got) != basis {
			t.Errorf("%s is %s, want %s", text, kept.Basis(got), basis)
		}
	}
}

func TestBasisNeedsAnswers(t *testing.T) {
	it := bank.NewItem(task.MustParse("46 + 37 = ?"), "", bank.Origin{})
	table := harder(it.Skill)
	for answers, want := range map[int]bank.Basis{4: bank.LearntBasis, 29: bank.LearntBasis, 30: bank.MeasuredBasis} {
		it.Measured = &bank.Measured{Difficulty: -700, StandardError: 300, Answers: answers}
		if got := table.Basis(it); got != want {
			t.Errorf("with %d answers an item is %s, want %s", answers, got, want)
		}
	}
	level := table.Levels[it.Skill]
	level.Answers = 29
	table.Levels[it.Skill] = level
	if it.Measured = nil; table.Basis(it) != bank.GuessBasis {
		t.Errorf("with 29 answers to its skill an item is %s, want a guess", table.Basis(it))
	}
}

// What was learnt beside other defaults than today's can't be added to them.
func TestATableOfOtherDefaultsTeachesNothing(t *testing.T) {
	b := tempBank(t)
	table := harder("add-two-digit")
	level := table.Levels["add-two-digit"]
	level.Default -= 100
	table.Levels["add-two-digit"] = level
	must(t, b.KeepTable(table))
	kept, err := b.Table()
	must(t, err)
	if kept.Number != 1 || len(kept.Levels)+len(kept.Weights) != 0 {
		t.Errorf("got %+v, want only its number", kept)
	}
}

func TestADamagedTableIsNoticed(t *testing.T) {
	path := filepath.Join(t.TempDir(), "team.bank")
	b, err := bank.Create(path)
	must(t, err)
	must(t, b.KeepTable(harder("add-two-digit")))
	must(t, b.Close())
	db, err := bbolt.Open(path, 0o600, nil)
	must(t, err)
	must(t, db.Update(func(tx *bbolt.Tx) error {
		about := tx.Bucket([]byte("about"))
		value := append([]byte(nil), about.Get([]byte("learnt"))...)
		value[40] ^= 1
		return about.Put([]byte("learnt"), value)
	}))
	must(t, db.Close())
	b, err = bank.Open(path, bank.Options{})
	must(t, err)
	defer b.Close()
	_, err = b.Table()
	mustSay(t, err, path, "is damaged", "learnt")
	report, err := b.Check()
	must(t, err)
	if report.Whole() {
		t.Error("check says that the bank is whole")
	}
}

// An item by hand is as difficult as a usual task of its skill, also by what was learnt of the
// level and the traits; papers move both alike.
func TestItemsByHandAreUsualOnes(t *testing.T) {
	for _, skill := range standards.Catalogue() {
		usual := written(skill.Example)
		hand := bank.NewHandItem("Solve the riddle on the board", "12", skill.ID, "en", bank.Origin{Kind: "written"})
		for name, table := range map[string]bank.Table{"default": {}, "learnt": harder(skill.ID)} {
			if got, want := table.PredictItem(hand), table.PredictItem(usual); got != want {
				t.Errorf("%s, %s: by hand %v, want %v as %s", skill.ID, name, got, want, usual.Task)
			}
		}
		if hand.Predicted != usual.Predicted {
			t.Errorf("%s: by hand %v, want %v as %s", skill.ID, hand.Predicted, usual.Predicted, usual.Task)
		}
	}
}
