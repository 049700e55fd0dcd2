package bank_test

import (
	"slices"
	"testing"

	"evenhand/bank"
	"evenhand/standards/task"
)

func TestAnItemComesBackAsItWasAdded(t *testing.T) {
	b := tempBank(t)
	want := written("47 + 36 = ?")
	want.Notes = "from the autumn list"
	id := mustAdd(t, b, want)[0]
	got, err := b.Get(id)
	must(t, err)
	want.ID, want.Revision, want.By, want.At = id, 1, "Ms. Reyes", monday
	mustEqual(t, got, want)
	if got.Key != "83" || got.Skill != "add-two-digit" || got.Traits.Get(task.Regroups) != "1" {
		t.Errorf("computed fields are wrong: %+v", got)
	}
}

func TestTheSameItemIsKnownAgain(t *testing.T) {
	b := tempBank(t)
	first := mustAdd(t, b, written("47 + 36 = ?"))[0]
	added, err := b.Add(writtenAll("36+47", "47 + ? = 83", "47 + 36 = __"), "Mr. Okafor", monday)
	must(t, err)
	if !added[0].Existing || added[0].ID != first || added[1].Existing || !added[2].Existing {
		t.Errorf("added %+v, the first item is %s", added, first)
	}
	id, ok, err := b.Has(written("36 + 47 = ?").Fingerprint())
	must(t, err)
	if !ok || id != first {
		t.Errorf("Has found %q, %v; want %s", id, ok, first)
	}
}

func TestTwoEqualItemsOfOneList(t *testing.T) {
	b := tempBank(t)
	added, err := b.Add(writtenAll("8 + 5 = ?", "5 + 8 = ?"), "Ms. Reyes", monday)
	must(t, err)
	if added[0].Existing || !added[1].Existing || added[0].ID != added[1].ID {
		t.Errorf("added %+v", added)
	}
}

func TestARetiredItemIsKnownToo(t *testing.T) {
	b := tempBank(t)
	id := mustAdd(t, b, written("8 + 5 = ?"))[0]
	_, err := b.Retire(id, "Mr. Okafor", "too easy by now", monday)
	must(t, err)
	added, err := b.Add(writtenAll("8 + 5 = ?"), "Ms. Reyes", monday)
	must(t, err)
	if want := (bank.Added{ID: id, Existing: true, Standing: bank.Retired}); added[0] != want {
		t.Errorf("added %+v, want %+v", added[0], want)
	}
}

func TestHistoryKeepsEveryRevision(t *testing.T) {
	b := tempBank(t)
	id := mustAdd(t, b, written("8 + 5 = ?"))[0]
	_, err := b.Revise(id, "Mr. Okafor", "say it in words", monday, func(it *bank.Item) error {
		it.Wording = map[string]string{"en": "Eight and five make how many?"}
		return nil
	})
	must(t, err)
	_, err = b.Retire(id, "Ms. Reyes", "used up", monday)
	must(t, err)
	history, err := b.History(id)
	must(t, err)
	var reasons []string
	for i, it := range history {
		if it.Revision != i+1 {
			t.Errorf("place %d holds revision %d", i, it.Revision)
		}
		reasons = append(reasons, it.By+": "+it.Reason)
	}
	if want := []string{"Ms. Reyes: ", "Mr. Okafor: say it in words", "Ms. Reyes: used up"}; !slices.Equal(reasons, want) {
		t.Errorf("history is %q, want %q", reasons, want)
	}
}
