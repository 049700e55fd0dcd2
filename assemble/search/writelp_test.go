package search_test

import (
	"bytes"
	"context"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"evenhand/assemble/search"

	"evenhand/testdata/outside"
)

// TestWrittenModel lets every outside solver found read small models with
// fixed and shared items, and compares with brute force.
func TestWrittenModel(t *testing.T) {
	list := solvers()
	if len(list) == 0 {
		outside.Installed(t, "reading model files back with a solver", "glpsol")
	}
	for i := range 6 {
		m := draw(shape{
			items: 9, forms: 1 + i%2, rows: 2, perRow: 2, quotas: 1, uses: 3,
			clashes: 40, overlap: 50, squeeze: 20, shared: i % 3, same: i % 2,
		}, rand.New(rand.NewPCG(uint64(i), 11)))
		m.Fixed = []search.Fixed{{Item: 0, Form: 0, Row: m.Items[0].Fits[0].Row}}
		if m.Shared > 0 {
			m.Fixed[0].Form = search.EveryForm
		}
		want := brute(m)
		path := writeModel(t, m, t.TempDir())
		for _, o := range list {
			v, err := o.run(path, 20*time.Second)
			if err != nil || v.late || !v.agrees(want) {
				t.Errorf("model %d: %s says %+v, %v; brute force %d", i, o.name, v, err, want)
			}
		}
	}
}

// TestModelFileIsPlain checks what old readers need: ASCII, short lines, short
// names.
func TestModelFileIsPlain(t *testing.T) {
	m := draw(shape{items: 300, forms: 2, rows: 3, perRow: 2, quotas: 2, uses: 3, clashes: 10, overlap: 50, shared: 1}, rand.New(rand.NewPCG(1, 1)))
	m.Rows[0].Name, m.Items[0].Name = "número\nline", "¿47 + 36?"
	var out bytes.Buffer
	if err := search.WriteLP(&out, m); err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(out.String()) {
		if len(line) > 255 || strings.ContainsFunc(strings.TrimSuffix(line, "\n"), func(r rune) bool { return r < ' ' || r > '~' }) {
			t.Fatalf("line %q", line)
		}
	}
	for _, want := range []string{
		"Minimize\n", "Subject To\n", "General\n off_1\n off_2\n uneven_1\n", "Binary\n", "End\n",
		"\\ form 1, row 1, n?mero?line: exactly 2\n",
	} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("the file lacks %q", want)
		}
	}
}

// TestCheckNamesTheFault gives models that make no sense.
func TestCheckNamesTheFault(t *testing.T) {
	for fault, spoil := range map[string]func(m *search.Model){
		"0 forms":              func(m *search.Model) { m.Forms = 0 },
		"can't be negative":    func(m *search.Model) { m.Shared = -1 },
		`row "a"`:              func(m *search.Model) { m.Rows[0].Count = -1 },
		"fits row 7":           func(m *search.Model) { m.Items[3].Fits[0].Row = 7 },
		"twice":                func(m *search.Model) { m.Items[3].Fits = append(m.Items[3].Fits, m.Items[3].Fits[0]) },
		"quotas: number 9":     func(m *search.Model) { m.Items[3].Quotas = []int{9} },
		"balances: number 0":   func(m *search.Model) { m.Items[3].Balances = []int{0} },
		"same: number 4":       func(m *search.Model) { m.Items[3].Same = []int{4} },
		"1001 thousandths":     func(m *search.Model) { m.Items[3].Points[2] = 1001 },
		"-5 right in 100":      func(m *search.Model) { m.ShareRight = -5 },
		"uses -1":              func(m *search.Model) { m.Items[3].Uses = -1 },
		"fixed item 99":        func(m *search.Model) { m.Fixed = []search.Fixed{{Item: 99}} },
		"does not fit":         func(m *search.Model) { m.Fixed = []search.Fixed{{Item: 0, Row: 2}} },
		"fixed twice":          func(m *search.Model) { m.Fixed = []search.Fixed{{Item: 0}, {Item: 0}} },
		"there are 12 items a": func(m *search.Model) { m.Fixed = []search.Fixed{{Item: 0, Form: 5}} },
	} {
		m := plan()
		spoil(m)
		if err := m.Check(); err == nil || !strings.Contains(err.Error(), fault) {
			t.Errorf("%v does not say %q", err, fault)
		}
	}
}

// TestVerifyFindsFaults spoils a good solution in every way.
func TestVerifyFindsFaults(t *testing.T) {
	m := plan()
	m.Forms, m.MaxSeconds = 2, 360
	good := func() *search.Solution {
		forms := make([][]search.Place, 2)
		for i := range 12 {
			forms[i%2] = append(forms[i%2], search.Place{Item: i, Row: i / 4})
		}
		return solution(m, forms)
	}
	if err := search.Verify(m, good()); err != nil {
		t.Fatal(err)
	}
	for i, spoil := range []func(s *search.Solution){
		func(s *search.Solution) { s.Forms = s.Forms[:1] },
		func(s *search.Solution) { s.Forms[0] = s.Forms[0][1:] },
		func(s *search.Solution) { s.Forms[0][0] = s.Forms[1][0] },
		func(s *search.Solution) { s.Forms[0][0].Row = 2 },
		func(s *search.Solution) { s.Objective++ },
		func(s *search.Solution) { s.Bound++ },
		func(s *search.Solution) { s.Off[1]++; s.Objective += 1000; s.Bound += 1000 },
		func(s *search.Solution) { s.Uneven[2]++; s.Objective += 2000; s.Bound += 2000 },
		func(s *search.Solution) { s.Scores[0][0]++ },
		func(s *search.Solution) { s.Proved = false },
	} {
		s := good()
		if spoil(s); search.Verify(m, s) == nil {
			t.Errorf("fault %d was not found", i)
		}
	}
	for name, spoil := range map[string]func(){
		"seconds": func() { m.MaxSeconds = 300 },
		"quota":   func() { m.Quotas[1].AtMost = 1 },
		"clash":   func() { m.Items[0].Clashes, m.Items[2].Clashes = []int{4}, []int{4} },
		"fixed":   func() { m.Fixed = []search.Fixed{{Item: 0, Form: 1, Row: 0}} },
		"shared":  func() { m.Shared = 1 },
		"same":    func() { m.Same, m.Items[0].Same = []search.Same{{Name: "set"}}, []int{0} },
	} {
		m = plan()
		m.Forms = 2
		s := good()
		if spoil(); search.Verify(m, s) == nil {
			t.Errorf("the broken rule %s was not found: %s", name, fmt.Sprint(s.Forms))
		}
	}
}

// TestObjectiveByHand has scores of forms of four items and what the
// definition makes of them, worked out on paper: at 75 in 100 the mark is 3,000
// thousandths; 40 of them are free, and 20 between the forms.
func TestObjectiveByHand(t *testing.T) {
	for _, c := range []struct{ a, b, offA, offB, uneven, objective int }{
		{3000, 3000, 0, 0, 0, 0}, {3040, 3020, 0, 0, 0, 0}, {2960, 2960, 0, 0, 0, 0},
		{3041, 3021, 1, 0, 0, 1000}, {3050, 3030, 1, 0, 0, 1000}, {3051, 3040, 2, 0, 0, 2000},
		{3010, 2989, 0, 0, 1, 2000}, {3010, 2979, 0, 0, 2, 4000}, {2949, 3040, 2, 0, 8, 18_000},
	} {
		m := &search.Model{Forms: 2, ShareRight: 75, Rows: []search.Row{{Count: 4}}}
		forms := make([][]search.Place, 2)
		for f, score := range []int{c.a, c.b} {
			for k := range 4 {
				p := score / 4
				if k < score%4 {
					p++
				}
				forms[f] = append(forms[f], search.Place{Item: len(m.Items)})
				m.Items = append(m.Items, search.Item{Points: search.Points{500, p, 900}, Fits: []search.Fit{{}}})
			}
		}
		s, err := search.Solve(context.Background(), fixedAs(m, forms), search.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if s.Objective != c.objective || s.Off[0] != c.offA || s.Off[1] != c.offB || s.Uneven != (search.Points{0, c.uneven, 0}) {
			t.Errorf("%d and %d: %v %v %d instead of %+v", c.a, c.b, s.Off, s.Uneven, s.Objective, c)
		}
		if err := search.Verify(m, s); err != nil {
			t.Error(err)
		}
	}
}

// fixedAs is the model with every item where it stands.
func fixedAs(m *search.Model, forms [][]search.Place) *search.Model {
	fixed := *m
	for f, places := range forms {
		for _, p := range places {
			fixed.Fixed = append(fixed.Fixed, search.Fixed{Item: p.Item, Form: f, Row: p.Row})
		}
	}
	return &fixed
}

// TestEnoughMembers passes only so many members of each large group.
func TestEnoughMembers(t *testing.T) {
	m := weekly(30_000, false)
	full, all := answer(t, m, 1), len(m.Items)
	groups, apart := map[string][]search.Item{}, map[string][]search.Item{} // apart: members of different clash groups
	seen := map[string]bool{}
	for _, it := range m.Items {
		key := fmt.Sprint(it.Points, it.Same, it.Uses, it.Fits, it.Quotas)
		groups[key] = append(groups[key], it)
		if clash := fmt.Sprint(key, it.Clashes); !seen[clash] {
			seen[clash] = true
			apart[key] = append(apart[key], it)
		}
	}
	m.Items = nil
	enough := search.Enough(m.Forms, m.Size(), 1)
	for key, members := range groups {
		if len(apart[key]) >= enough {
			members = apart[key][:enough]
		}
		m.Items = append(m.Items, members...)
	}
	if got := answer(t, m, 1); got != full || len(m.Items) > all/2 {
		t.Errorf("%d of %d items give objective %d instead of %d", len(m.Items), all, got, full)
	}
}
