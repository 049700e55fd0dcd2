package search

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strings"
)

// WriteLP writes the model in CPLEX LP format, item by item and with nothing
// grouped or left out, so that any integer programming solver can check an
// answer. The names of the variables:
//
//	x_I_F_R  1 if item I fills row R of form F (counted from 1)
//	y_I_R    1 if item I is shared: it fills row R of every form
//	e_F      hundredths of a logit by which form F misses the target beyond 0.05
//
// The balances are not written: they never change the objective.
func WriteLP(w io.Writer, m *Model) error {
	if err := m.Check(); err != nil {
		return err
	}
	m = m.single()
	p := &lpWriter{Writer: bufio.NewWriter(w), m: m}
	p.heading()
	p.objective()
	fmt.Fprintln(p, "Subject To")
	for f := 1; f <= m.Forms; f++ {
		p.form(f)
	}
	p.once()
	p.fixed()
	p.variables()
	return p.Flush()
}

type lpWriter struct {
	*bufio.Writer
	m     *Model
	line  int  // characters on the current line
	empty bool // the constraint has no term yet
}

// term writes one summand, starting a new line before the line gets too long
// for old readers (255 characters).
func (p *lpWriter) term(coef int, format string, args ...any) {
	p.empty = false
	s := " + "
	if coef < 0 {
		s, coef = " - ", -coef
	}
	if coef != 1 {
		s += fmt.Sprint(coef, " ")
	}
	s += fmt.Sprintf(format, args...)
	if p.line += len(s); p.line > 200 {
		p.WriteString("\n ")
		p.line = len(s)
	}
	p.WriteString(s)
}

// start begins a constraint under a comment.
func (p *lpWriter) start(comment, format string, args ...any) {
	if comment != "" {
		fmt.Fprintf(p, "\\ %s\n", printable(comment))
	}
	fmt.Fprintf(p, " "+format+":", args...)
	p.line, p.empty = 20, true
}

// end closes a constraint; readers refuse one without any term.
func (p *lpWriter) end(sense string, rhs int) {
	if p.empty {
		p.term(0, "e_1")
	}
	fmt.Fprintf(p, " %s %d\n", sense, rhs)
}

// printable makes a name safe inside a comment line.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r > '~' {
			return '?'
		}
		return r
	}, s)
}

func (p *lpWriter) heading() {
	fmt.Fprintf(p, "\\ %d forms of %d items from %d candidates, target %d thousandths of a logit\n",
		p.m.Forms, p.m.Size(), len(p.m.Items), p.m.Target)
	for i := range p.m.Items {
		if p.m.Items[i].Name != "" {
			fmt.Fprintf(p, "\\ item %d: %s\n", i+1, printable(p.m.Items[i].Name))
		}
	}
}

func (p *lpWriter) objective() {
	fmt.Fprint(p, "Minimize\n cost:")
	p.line = 10
	for f := 1; f <= p.m.Forms; f++ {
		p.term(1000, "e_%d", f)
	}
	for i, it := range p.m.Items {
		if it.Uses != 0 {
			p.places(i, 0, func(int) int { return it.Uses })
		}
	}
	fmt.Fprintln(p)
}

// places writes the variables of item i in form f (0: in all forms), each with
// its coefficient by position in Fits. A shared item counts once, in any f.
func (p *lpWriter) places(i, f int, coef func(fit int) int) {
	for k, fit := range p.m.Items[i].Fits {
		c := coef(k)
		if c == 0 {
			continue
		}
		for g := 1; g <= p.m.Forms; g++ {
			if f == 0 || f == g {
				p.term(c, "x_%d_%d_%d", i+1, g, fit.Row+1)
			}
		}
		if p.m.Shared > 0 {
			p.term(c, "y_%d_%d", i+1, fit.Row+1)
		}
	}
}

func one(int) int { return 1 }

func (p *lpWriter) form(f int) {
	m := p.m
	for r, row := range m.Rows {
		p.start(fmt.Sprintf("form %d, row %d, %s: exactly %d", f, r+1, row.Name, row.Count), "row_%d_%d", f, r+1)
		for i, it := range m.Items {
			p.places(i, f, func(k int) int { return ones(it.Fits[k].Row == r) })
		}
		p.end("=", row.Count)
	}
	for q, quota := range m.Quotas {
		p.quota(f, q, quota)
	}
	if m.MaxSeconds > 0 {
		p.start(fmt.Sprintf("form %d: working seconds", f), "seconds_%d", f)
		for i, it := range m.Items {
			p.places(i, f, func(k int) int { return it.Fits[k].Seconds })
		}
		p.end("<=", m.MaxSeconds)
	}
	p.target(f)
	p.clashes(f)
}

func ones(b bool) int {
	if b {
		return 1
	}
	return 0
}

func (p *lpWriter) quota(f, q int, quota Quota) {
	side := func(name, sense string, bound int) {
		p.start(fmt.Sprintf("form %d, quota %d, %s: %s %d", f, q+1, quota.Name, sense, bound), "%s_%d_%d", name, f, q+1)
		for i, it := range p.m.Items {
			if slices.Contains(it.Quotas, q) {
				p.places(i, f, one)
			}
		}
		p.end(sense, bound)
	}
	side("least", ">=", quota.AtLeast)
	side("most", "<=", quota.AtMost)
}

// target writes |Σ (difficulty − target)| ≤ 50·N + 10·N·e. The rows fix the
// number of items at N, so the target may be taken from each item.
func (p *lpWriter) target(f int) {
	n := p.m.Size()
	side := func(name string, sign int) {
		p.start(fmt.Sprintf("form %d: difficulty not too %s", f, name), "%s_%d", name, f)
		for i, it := range p.m.Items {
			p.places(i, f, func(int) int { return sign * (it.Difficulty - p.m.Target) })
		}
		p.term(-10*n, "e_%d", f)
		p.end("<=", 50*n)
	}
	side("high", 1)
	side("low", -1)
}

func (p *lpWriter) clashes(f int) {
	groups := map[int][]int{}
	for i, it := range p.m.Items {
		for _, c := range it.Clashes {
			if g := groups[c]; len(g) == 0 || g[len(g)-1] != i {
				groups[c] = append(g, i)
			}
		}
	}
	for k, c := range sortedKeys(groups) {
		if len(groups[c]) < 2 {
			continue
		}
		p.start(fmt.Sprintf("form %d, clash group %d: at most one", f, c), "clash_%d_%d", f, k+1)
		for _, i := range groups[c] {
			p.places(i, f, one)
		}
		p.end("<=", 1)
	}
}

func sortedKeys(groups map[int][]int) []int {
	keys := make([]int, 0, len(groups))
	for c := range groups {
		keys = append(keys, c)
	}
	slices.Sort(keys)
	return keys
}

func (p *lpWriter) once() {
	for i, it := range p.m.Items {
		if len(it.Fits) == 0 || p.m.Forms*len(it.Fits) == 1 && p.m.Shared == 0 {
			continue
		}
		p.start("", "once_%d", i+1)
		p.places(i, 0, one)
		p.end("<=", 1)
	}
	if p.m.Shared > 0 {
		p.start("items that stand in every form", "shared")
		for i, it := range p.m.Items {
			for _, fit := range it.Fits {
				p.term(1, "y_%d_%d", i+1, fit.Row+1)
			}
		}
		p.end("=", p.m.Shared)
	}
}

func (p *lpWriter) fixed() {
	for k, x := range p.m.Fixed {
		p.start("fixed: "+p.m.Items[x.Item].Name, "fixed_%d", k+1)
		if x.Form == EveryForm && p.m.Shared > 0 {
			p.term(1, "y_%d_%d", x.Item+1, x.Row+1)
		} else if x.Form != EveryForm {
			p.term(1, "x_%d_%d_%d", x.Item+1, x.Form+1, x.Row+1)
		}
		p.end("=", 1)
	}
}

func (p *lpWriter) variables() {
	fmt.Fprintln(p, "General")
	for f := 1; f <= p.m.Forms; f++ {
		fmt.Fprintf(p, " e_%d\n", f)
	}
	fmt.Fprintln(p, "Binary")
	for i, it := range p.m.Items {
		for _, fit := range it.Fits {
			for f := 1; f <= p.m.Forms; f++ {
				fmt.Fprintf(p, " x_%d_%d_%d\n", i+1, f, fit.Row+1)
			}
			if p.m.Shared > 0 {
				fmt.Fprintf(p, " y_%d_%d\n", i+1, fit.Row+1)
			}
		}
	}
	fmt.Fprintln(p, "End")
}
