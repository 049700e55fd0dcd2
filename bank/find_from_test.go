package bank_test

import (
	"testing"

	"evenhand/bank"
	"evenhand/standards"
)

// Reading on from an ID gives the rest of what reading from the start gives, whichever index serves.
func TestFindFrom(t *testing.T) {
	b := tempBank(t)
	mustAdd(t, b, writtenAll("47 + 36", "27 + 35", "read 4:30", "81 - 38", "48 + 17", "47 ? 74", "36 + 28")...)
	for name, q := range map[string]bank.Query{"all": {}, "a skill": {Skills: []standards.SkillID{"add-two-digit"}}} {
		all := idsOf(t, b, q)
		for at, id := range all {
			q.From = id
			if rest := idsOf(t, b, q); len(rest) != len(all)-at || rest[0] != id {
				t.Errorf("%s: from %s come %v, want %v", name, id, rest, all[at:])
			}
		}
	}
	for _, err := range b.Find(bank.Query{From: "47"}) {
		if err == nil {
			t.Error("47 is taken for an ID")
		}
	}
}

func idsOf(t *testing.T, b *bank.Bank, q bank.Query) (list []string) {
	t.Helper()
	for it, err := range b.Find(q) {
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, it.ID)
	}
	return list
}
