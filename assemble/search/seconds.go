package search

// reachable is the most seconds that a form can take within the limit. Seconds
// often come in steps: where all items of each row differ by whole multiples
// of a step, so do all forms, and a limit between two steps is as good as the
// lower one. (Chvátal's rounding; it needs every row's count exact.)
func (p *problem) reachable() int {
	if p.MaxSeconds == 0 {
		return largest * len(p.Items)
	}
	least, step := make([]int, len(p.Rows)), 0
	for i := range least {
		least[i] = -1
	}
	for i := range p.groups {
		for _, f := range p.groups[i].fits {
			if least[f.Row] < 0 {
				least[f.Row] = f.Seconds
			}
			step = divisor(step, f.Seconds-least[f.Row])
		}
	}
	some := 0 // any form takes this, give or take some steps
	for i, row := range p.Rows {
		if row.free {
			return p.MaxSeconds
		}
		some += row.Count * max(least[i], 0)
	}
	if step == 0 {
		return p.MaxSeconds
	}
	over := ((p.MaxSeconds-some)%step + step) % step
	return max(0, p.MaxSeconds-over)
}

// divisor is the greatest common divisor, 0 or more.
func divisor(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return max(a, -a)
}
