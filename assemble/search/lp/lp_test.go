package lp_test

import (
	"math"
	"math/rand/v2"
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
	if proof := p.Proof(); proof.Ceil(proof.Total(p)) != -36 {
		t.Errorf("the bound is %d", proof.Ceil(proof.Total(p)))
	}
	// Cut x + y ≤ 7 off the optimum: now 3x + 5y is at most 33, at x = 1, y = 6; without the cut it is 36 again.
	p.Cut([]int{0, 1}, 0, 7)
	if p.Solve(never); math.Abs(p.Value(0)-1) > 1e-9 || math.Abs(p.Value(1)-6) > 1e-9 {
		t.Errorf("cut: x = %v, y = %v", p.Value(0), p.Value(1))
	}
}

// blend draws a program, at most c·x with A·x ≤ b, and its dual, at least b·y with y·A ≥ c.
func blend(r *rand.Rand, rows, cols int) (primal, dual *lp.Program) {
	primal, dual = &lp.Program{}, &lp.Program{}
	for range rows {
		b := 1 + r.IntN(1000)
		primal.AddRow(0, b, 1)
		dual.AddColumn(lp.Column{Up: 100000, Cost: b})
	}
	for range cols {
		c, column := 1+r.IntN(50), lp.Column{Up: 100000}
		at := dual.AddRow(c, 1<<30, 1)
		for i := range rows {
			if v := int32(r.IntN(40) - 30); v > 0 || i == 0 {
				column.Entries = append(column.Entries, lp.Entry{Row: int32(i), Val: max(1, v)})
				dual.Cols[i].Entries = append(dual.Cols[i].Entries, lp.Entry{Row: at, Val: max(1, v)})
			}
		}
		column.Cost = -c
		primal.AddColumn(column)
	}
	return primal, dual
}

// objective is the sum of costs at the present values.
func objective(p *lp.Program) float64 {
	t := 0.0
	for j := range p.Cols {
		t += float64(p.Cols[j].Cost) * p.Value(j)
	}
	return t
}

// A program and its dual have the same optimum (strong duality), also where so many steps are needed that the inverse is
// computed afresh.
func TestDuality(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 3 {
		primal, dual := blend(r, 150+r.IntN(50), 300+r.IntN(100))
		if a, b := primal.Solve(never), dual.Solve(never); a != lp.Optimal || b != lp.Optimal {
			t.Fatalf("status %v and %v", a, b)
		}
		if x, y := -objective(primal), objective(dual); math.Abs(x-y) > 1e-6*(1+y) {
			t.Errorf("%v, its dual %v", x, y)
		}
	}
}

// Gone back to its basis, a program goes on as if it had not been elsewhere: in as many steps, with a row cut in or not.
func TestBasisToGoBackTo(t *testing.T) {
	for _, cut := range []bool{false, true} {
		stayed, _ := blend(rand.New(rand.NewPCG(3, 4)), 20, 60)
		away, _ := blend(rand.New(rand.NewPCG(3, 4)), 20, 60)
		var b lp.Basis
		stayed.Solve(never)
		away.Solve(never)
		b.Keep(away)
		all := make([]int, len(away.Cols))
		for j := range all {
			all[j] = j
			away.Cols[j].Up = j % 7
		}
		away.Solve(never)
		for j := range all {
			away.Cols[j].Up = 100000
		}
		if cut {
			stayed.Cut(all, 0, 3)
			away.Cut(all, 0, 3)
		}
		away.GoBack(&b)
		s, a := stayed.Work(), away.Work()
		if stayed.Solve(never) != lp.Optimal || away.Solve(never) != lp.Optimal {
			t.Fatal("not solved")
		}
		if s, a = stayed.Work()-s, away.Work()-a; s != a || math.Abs(objective(stayed)-objective(away)) > 1e-6 {
			t.Errorf("work of %d and %d, objective %v and %v", s, a, objective(stayed), objective(away))
		}
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
