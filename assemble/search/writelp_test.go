package search_test

import (
	"bytes"
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
		m := draw(shape{items: 9, forms: 1 + i%2, rows: 2, perRow: 2, quotas: 1, uses: 3, clashes: 40, overlap: 50, squeeze: 20, shared: i % 3}, rand.New(rand.NewPCG(uint64(i), 11)))
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
	for _, want := range []string{"Minimize\n", "Subject To\n", "General\n e_1\n e_2\n", "Binary\n", "End\n", "\\ form 1, row 1, n?mero?line: exactly 2\n"} {
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
	} {
		m = plan()
		m.Forms = 2
		s := good()
		if spoil(); search.Verify(m, s) == nil {
			t.Errorf("the broken rule %s was not found: %s", name, fmt.Sprint(s.Forms))
		}
	}
}

func TestExcess(t *testing.T) { // the formula of the package comment, by hand
	for _, c := range []struct{ n, sum, target, want int }{
		{10, -10990, -1099, 0}, {10, -10490, -1099, 0}, {10, -10489, -1099, 1}, {10, -10390, -1099, 1},
		{10, -10389, -1099, 2}, {10, -11490, -1099, 0}, {10, -11491, -1099, 1}, {1, 1050, 0, 100}, {0, 0, 5, 0},
	} {
		if got := search.Excess(c.n, c.sum, c.target); got != c.want {
			t.Errorf("Excess(%d, %d, %d) = %d, want %d", c.n, c.sum, c.target, got, c.want)
		}
	}
}

// TestEnoughMembers passes only so many members of each large group.
func TestEnoughMembers(t *testing.T) {
	m := weekly(30_000, false)
	full, all := answer(t, m, 1), len(m.Items)
	groups, apart := map[string][]search.Item{}, map[string][]search.Item{} // apart: members of different clash groups
	seen := map[string]bool{}
	for _, it := range m.Items {
		key := fmt.Sprint(it.Difficulty, it.Uses, it.Fits, it.Quotas)
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
