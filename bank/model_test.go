package bank_test

import (
	"flag"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"evenhand/bank"
	"evenhand/bank/store/storetest"
	"evenhand/standards"
	"evenhand/standards/task"
)

// model is what a bank should be, as plain maps: the bank is used at random, and
// must say the same as the model all the way.
type model struct {
	t     *rapid.T
	path  string
	bank  *bank.Bank
	ids   []string // in the order of adding
	items map[string][]bank.Item
	uses  map[string][]bank.Use
	asks  map[string]string // the ID by fingerprint
}

func TestBankAgainstAModel(t *testing.T) {
	dir := t.TempDir()
	againstAModel(t, func(run int) string { return filepath.Join(dir, fmt.Sprint(run)) })
}

func TestBankInDatabaseAgainstAModel(t *testing.T) {
	server := storetest.NewServer(t)
	usual := flag.Lookup("rapid.checks").Value.String()
	must(t, flag.Set("rapid.checks", "10"))
	defer flag.Set("rapid.checks", usual)
	againstAModel(t, func(run int) string { return server.Address(fmt.Sprint("model-", run)) })
}

// againstAModel uses banks at the addresses that place gives, a new one each time.
func againstAModel(t *testing.T, place func(run int) string) {
	run := 0
	rapid.Check(t, func(t *rapid.T) {
		run++
		m := &model{t: t, path: place(run), items: map[string][]bank.Item{}, uses: map[string][]bank.Use{}, asks: map[string]string{}}
		b, err := bank.Create(m.path)
		must(t, err)
		must(t, b.SetReview(bank.Review{Anyone: true, By: "Ms. Reyes", At: monday}))
		m.bank = b
		defer func() { must(t, m.bank.Close()); os.Remove(m.path) }()
		t.Repeat(map[string]func(*rapid.T){
			"add":    m.add,
			"revise": m.revise,
			"retire": m.retire,
			"use":    m.use,
			"reopen": m.reopen,
			"":       m.agree,
		})
		report, err := m.bank.Check()
		must(t, err)
		if !report.Whole() {
			t.Fatal(report.Problems)
		}
	})
}

// anyTask is one of few enough that they often meet.
func anyTask(t *rapid.T) bank.Item {
	a, b := rapid.IntRange(1, 12).Draw(t, "a"), rapid.IntRange(1, 12).Draw(t, "b")
	form := rapid.SampledFrom([]string{"%d + %d = ?", "? = %d + %d", "%d ? %d", "%d, %d, ?"}).Draw(t, "form")
	if asked, err := task.Parse(fmt.Sprintf(form, a, b)); err == nil {
		return bank.NewItem(asked, "", bank.Origin{Kind: "generated", Seed: uint64(a), By: "Ms. Reyes"})
	}
	return bank.NewHandItem(fmt.Sprintf("Draw %d dots", a), "dots", "facts-within-20", "en", bank.Origin{Kind: "written", By: "Mr. Okafor"})
}

// anyID is the ID of an item that is in the bank.
func (m *model) anyID(t *rapid.T) string {
	if len(m.ids) == 0 {
		t.Skip("the bank is empty")
	}
	return rapid.SampledFrom(m.ids).Draw(t, "id")
}

func (m *model) now(id string) bank.Item { return m.items[id][len(m.items[id])-1] }

func (m *model) add(t *rapid.T) {
	items := rapid.SliceOfN(rapid.Custom(anyTask), 1, 5).Draw(t, "items")
	added, err := m.bank.Add(items, "Ms. Reyes", monday)
	must(t, err)
	for i, a := range added {
		known, here := m.asks[items[i].Fingerprint()]
		if a.Existing != here || here && (a.ID != known || a.Standing != m.now(known).Standing) {
			t.Fatalf("%s: added %+v, the model has %q", items[i].Task, a, known)
		}
		if here {
			continue
		}
		it := items[i]
		it.ID, it.Revision, it.By, it.At = a.ID, 1, "Ms. Reyes", monday
		m.ids, m.items[a.ID], m.asks[it.Fingerprint()] = append(m.ids, a.ID), []bank.Item{it}, a.ID
	}
}

func (m *model) revise(t *rapid.T) {
	id, next := m.anyID(t), anyTask(t)
	standing := rapid.SampledFrom([]bank.Standing{bank.Draft, bank.Ready, bank.Retired}).Draw(t, "standing")
	old := m.now(id)
	got, err := m.bank.Revise(id, "Mr. Okafor", "another task", monday, func(it *bank.Item) error {
		it.Task, it.Wording, it.Key, it.Look, it.Skill, it.Codes, it.Standing = next.Task, next.Wording, next.Key, next.Look, next.Skill, next.Codes, standing
		it.Seconds = next.Seconds
		return nil
	})
	if owner, here := m.asks[next.Fingerprint()]; here && owner != id {
		if err == nil {
			t.Fatalf("%s became %s, which %s asks already", old.Task, next.Task, owner)
		}
		return
	}
	must(t, err)
	if got.Revision != old.Revision {
		delete(m.asks, old.Fingerprint())
		m.asks[next.Fingerprint()] = id
		m.items[id] = append(m.items[id], got)
	}
	if got.Fingerprint() != next.Fingerprint() || got.Standing != standing {
		t.Fatalf("revised to %+v, want the task %s, %s", got, next.Task, standing)
	}
}

func (m *model) retire(t *rapid.T) {
	id := m.anyID(t)
	got, err := m.bank.Retire(id, "Ms. Reyes", "worn out", monday)
	must(t, err)
	if want := m.now(id); want.Standing != bank.Retired {
		want.Standing, want.Reason, want.By = bank.Retired, "worn out", "Ms. Reyes"
		want.Revision++
		mustEqual(t, got, want)
		m.items[id] = append(m.items[id], want)
	}
}

func (m *model) use(t *rapid.T) {
	ids := []string{m.anyID(t), m.anyID(t)}
	week := fmt.Sprintf("2026-W%02d", rapid.IntRange(1, 53).Draw(t, "week"))
	use := bank.Use{Quiz: rapid.SampledFrom([]string{"Friday check", "Monday start"}).Draw(t, "quiz"), Week: week, At: monday}
	must(t, m.bank.RecordUse(ids, use))
	for _, id := range ids {
		if !slices.Contains(m.uses[id], use) {
			m.uses[id] = append(m.uses[id], use)
		}
	}
}

func (m *model) reopen(t *rapid.T) {
	must(t, m.bank.Close())
	b, err := bank.Open(m.path, bank.Options{})
	must(t, err)
	m.bank = b
}

// agree compares everything the bank says with the model.
func (m *model) agree(t *rapid.T) {
	var all []bank.Item
	for it, err := range m.bank.Find(bank.Query{}) {
		must(t, err)
		all = append(all, it)
	}
	count := map[bank.Standing]int{}
	var want []bank.Item
	for _, id := range slices.Sorted(slices.Values(m.ids)) {
		want = append(want, m.now(id))
		count[m.now(id).Standing]++
		history, err := m.bank.History(id)
		must(t, err)
		mustEqual(t, history, m.items[id])
		m.agreeOnUses(t, id)
	}
	mustEqual(t, all, want)
	counted, err := m.bank.Count()
	must(t, err)
	mustEqual(t, counted, count)
	for fingerprint, id := range m.asks {
		if got, _, err := m.bank.Has(fingerprint); err != nil || got != id {
			t.Fatalf("Has gives %s for what %s asks (%v)", got, id, err)
		}
	}
	m.agreeOnGroups(t)
	m.agreeOnLists(t, want)
}

// agreeOnLists makes sure that lists hold what the items, read one by one, say; each list is asked for again after
// every change, so that none may be remembered too long.
func (m *model) agreeOnLists(t *rapid.T, all []bank.Item) {
	byHand := true
	for name, list := range map[string]struct {
		q     bank.Query
		wants func(bank.Item) bool
	}{
		"skill":  {bank.Query{Skills: []standards.SkillID{"facts-within-20"}}, func(it bank.Item) bool { return it.Skill == "facts-within-20" }},
		"ready":  {bank.Query{Standings: []bank.Standing{bank.Ready}}, func(it bank.Item) bool { return it.Standing == bank.Ready }},
		"author": {bank.Query{Author: "Mr. Okafor"}, func(it bank.Item) bool { return it.Origin.By == "Mr. Okafor" }},
		"retired of an author": {bank.Query{Author: "Ms. Reyes", Standings: []bank.Standing{bank.Retired}},
			func(it bank.Item) bool { return it.Origin.By == "Ms. Reyes" && it.Standing == bank.Retired }},
		"unused": {bank.Query{Unused: "2026-W30"}, func(it bank.Item) bool {
			return !slices.ContainsFunc(m.uses[it.ID], func(u bank.Use) bool { return u.Week >= "2026-W30" })
		}},
		"by hand": {bank.Query{ByHand: &byHand}, bank.Item.ByHand},
	} {
		var got, want []string
		for it, err := range m.bank.Find(list.q) {
			must(t, err)
			got = append(got, it.ID)
		}
		for _, it := range all {
			if list.wants(it) {
				want = append(want, it.ID)
			}
		}
		if !slices.Equal(got, want) {
			t.Fatalf("%s: the list holds %v, want %v", name, got, want)
		}
	}
}

func (m *model) agreeOnUses(t *rapid.T, id string) {
	got, err := m.bank.Uses(id)
	must(t, err)
	want := slices.SortedFunc(slices.Values(m.uses[id]), func(a, b bank.Use) int {
		return slices.Compare([]string{a.Week, a.Quiz}, []string{b.Week, b.Quiz})
	})
	if !slices.Equal(got, want) {
		t.Fatalf("item %s has the uses %v, want %v", id, got, want)
	}
}

// agreeOnGroups makes sure that the groups hold each ready item once, with its uses.
func (m *model) agreeOnGroups(t *rapid.T) {
	got, want := map[string]int{}, map[string]int{}
	for g, err := range m.bank.Groups() {
		must(t, err)
		members, err := m.bank.Members(g, uint64(len(m.ids)), 0)
		must(t, err)
		for _, member := range members {
			got[member.ID] = 1 + g.Uses
		}
	}
	for id := range maps.Keys(m.items) {
		if m.now(id).Standing == bank.Ready {
			want[id] = 1 + len(m.uses[id])
		}
	}
	mustEqual(t, got, want)
}
