package lp_test

import (
	"math"
	"slices"
	"testing"

	"evenhand/assemble/search/lp"
)

// never is a clock that never stops a program.
func never() bool { return false }

// glass is the first example of Hillier and Lieberman's Introduction to Operations Research
// (from memory): at most 3x + 5y with x ≤ 4, 2y ≤ 12 and 3x + 2y ≤ 18 is 36, at x = 2, y = 6.
func glass() *lp.Program {
	p := &lp.Program{}
	first, second, third := p.AddRow(0, 4, 1), p.AddRow(0, 12, 1), p.AddRow(0, 18, 1)
	p.AddColumn(lp.Column{Entries: []lp.Entry{{Row: first, Val: 1}, {Row: third, Val: 3}}, Up: 100, Cost: -3})
	p.AddColumn(lp.Column{Entries: []lp.Entry{{Row: second, Val: 2}, {Row: third, Val: 2}}, Up: 100, Cost: -5})
	return p
}

func TestTextbookProgram(t *testing.T) {
	p := glass()
	if status := p.Solve(never); status != lp.Optimal {
		t.Fatalf("status %v", status)
	}
	if x, y := p.Value(0), p.Value(1); math.Abs(x-2) > 1e-9 || math.Abs(y-6) > 1e-9 {
		t.Errorf("x = %v, y = %v", x, y)
	}
	p.Price()
	if p.Bound() != -36 {
		t.Errorf("the bound is %d", p.Bound())
	}
	// Cut x + y ≤ 7 off the optimum: now 3x + 5y is at most 33, at x = 1, y = 6; without the cut it is 36 again.
	p.Cut([]int{0, 1}, 0, 7)
	if p.Solve(never); math.Abs(p.Value(0)-1) > 1e-9 || math.Abs(p.Value(1)-6) > 1e-9 {
		t.Errorf("cut: x = %v, y = %v", p.Value(0), p.Value(1))
	}
}

// x ≥ 5 can't hold with x ≤ 4.
func TestImpossibleProgram(t *testing.T) {
	p := glass()
	p.Cols[0].Lo = 5
	if status := p.Solve(never); status != lp.Infeasible {
		t.Errorf("status %v", status)
	}
}

func TestStoppedProgram(t *testing.T) {
	if status := glass().Solve(func() bool { return true }); status != lp.Stuck {
		t.Errorf("status %v", status)
	}
}

// A bound holds for any multipliers, however wrong: it is never above the optimum.
func TestCertificateOfAnything(t *testing.T) {
	p := glass()
	for _, y := range [][]float64{{0, 0, 0}, {0, -1.5, -1}, {-7, 3, 0.1}, {1e6, -1e6, 12.345}} {
		if c := p.Certify(y, true, 0); c.Ceil(c.Total(p)) > -36 {
			t.Errorf("multipliers %v prove %d", y, c.Ceil(c.Total(p)))
		}
	}
}

type number int

func (n number) Before(o number) bool { return n < o }

func TestHeapSorts(t *testing.T) {
	var h lp.Heap[number]
	for i := range 100 {
		h.Push(number(i * 37 % 101))
	}
	var out []number
	for len(h) > 0 {
		out = append(out, h.Pop())
	}
	if len(out) != 100 || !slices.IsSorted(out) {
		t.Errorf("%v", out)
	}
}
