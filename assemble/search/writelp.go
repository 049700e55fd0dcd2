package search

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strings"
)

// WriteLP writes the model in LP format, item by item and with nothing
// grouped or left out, so that any integer programming solver can check an
// answer. The names of the variables:
//
//	x_I_F_R  1 if item I fills row R of form F (counted from 1)
//	y_I_R    1 if item I is shared: it fills row R of every form
//	off_F     hundredths of a point by which form F misses the mark beyond one in 100
//	uneven_T  the same by which the forms lie apart for pupil T (1 weaker, 2 typical, 3 stronger), beyond half in 100
//	high_T    the highest score of the forms for pupil T, in thousandths of a point, or more
//	low_T     the lowest, or less
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
	p.uneven()
	p.same()
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
		p.term(0, "off_1")
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
	fmt.Fprintf(p, "\\ %d forms of %d items from %d candidates, %d in 100 to be right\n",
		p.m.Forms, p.m.Size(), len(p.m.Items), p.m.ShareRight)
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
		p.term(1000, "off_%d", f)
	}
	for t := range Abilities {
		p.term(1000*p.m.Forms, "uneven_%d", t+1)
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
	p.mark(f)
	p.scores(f)
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

// mark writes |Σ points − 10·s·N| ≤ 10·N + 10·off.
func (p *lpWriter) mark(f int) {
	if p.m.ShareRight == 0 {
		return
	}
	n := p.m.Size()
	side := func(name string, sign int) {
		p.start(fmt.Sprintf("form %d: not too %s", f, name), "%s_%d", name, f)
		for i, it := range p.m.Items {
			p.places(i, f, func(int) int { return sign * it.Points[1] })
		}
		p.term(-10, "off_%d", f)
		p.end("<=", sign*10*p.m.ShareRight*n+10*n)
	}
	side("easy", 1)
	side("hard", -1)
}

// scores writes low ≤ Σ points ≤ high for each pupil.
func (p *lpWriter) scores(f int) {
	for t := range Abilities {
		side := func(name, sense string) {
			p.start(fmt.Sprintf("form %d, pupil %d: %s score", f, t+1, name), "%s_%d_%d", name, f, t+1)
			for i, it := range p.m.Items {
				p.places(i, f, func(int) int { return it.Points[t] })
			}
			p.term(-1, "%s_%d", name, t+1)
			p.end(sense, 0)
		}
		side("high", "<=")
		side("low", ">=")
	}
}

// uneven writes high − low ≤ 5·N + 10·uneven for each pupil.
func (p *lpWriter) uneven() {
	for t := 1; t <= Abilities; t++ {
		p.start(fmt.Sprintf("pupil %d: how far the forms lie apart", t), "apart_%d", t)
		p.term(1, "high_%d", t)
		p.term(-1, "low_%d", t)
		p.term(-10, "uneven_%d", t)
		p.end("<=", 5*p.m.Size())
	}
}

// same writes that each form holds as many of a set as the first; what is
// shared counts alike in all.
func (p *lpWriter) same() {
	for s, same := range p.m.Same {
		for f := 2; f <= p.m.Forms; f++ {
			p.start(fmt.Sprintf("form %d holds as many of %s as form 1", f, same.Name), "same_%d_%d", s+1, f)
			for i, it := range p.m.Items {
				for _, fit := range it.Fits {
					if slices.Contains(it.Same, s) {
						p.term(1, "x_%d_%d_%d", i+1, f, fit.Row+1)
						p.term(-1, "x_%d_1_%d", i+1, fit.Row+1)
					}
				}
			}
			p.end("=", 0)
		}
	}
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
		fmt.Fprintf(p, " off_%d\n", f)
	}
	for t := 1; t <= Abilities; t++ {
		fmt.Fprintf(p, " uneven_%d\n high_%d\n low_%d\n", t, t, t)
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
