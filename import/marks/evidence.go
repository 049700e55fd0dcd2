package marks

import (
	"slices"

	"evenhand/bank/results"
)

// evidence is what all rows of a grid together show.
type evidence struct {
	plains    map[string]bool                   // all signs
	meant     map[string]map[results.State]bool // what signs mean beside others in their rows
	wrong     bool                              // something is wrong, by a sign or an answer
	repeated  map[string]bool                   // answers that stand under half of the items and are right in none
	right     bool                              // a sign says that something is right
	written   bool                              // a right answer is written out
	dashWrong bool                              // - stands between + and +
	letters   bool                              // a letter for absent stands before what the child went on to
}

// gather looks at all cells and notes what they show together.
func (g *grid) gather(rows []row) {
	g.seen = evidence{plains: map[string]bool{}, meant: map[string]map[results.State]bool{}}
	for i := range rows {
		row := &rows[i]
		row.read = rowCells{grid: &g.seen, told: g.Signs, digits: g.Digits}
		for k, text := range row.cells {
			if text == "" || k >= len(row.form.Items) {
				continue
			}
			c := look(k, row.form.Items[k], text, g.Signs)
			row.read.cells = append(row.read.cells, c)
			if c.sign != nil {
				g.seen.plains[c.plain] = true
			}
			g.seen.wrong = g.seen.wrong || isWrong(c)
			g.seen.written = g.seen.written || c.why == nil && c.answer.State == results.Right
			g.seen.right = g.seen.right || c.sign != nil && (says(c) == results.Right || c.sign.family == digitFamily)
		}
	}
	g.seen.letters = slices.ContainsFunc(rows, func(row row) bool { return row.read.absentByLetter() })
	g.seen.repeated = repeatedAnswers(rows, len(g.items))
	for i := range rows {
		if state, asked := rows[i].read.dash(); rows[i].read.has("-") && asked == nil && state == results.Wrong {
			g.seen.dashWrong = true
		}
		for _, c := range rows[i].read.cells {
			state := rows[i].read.meant(c)
			if state == "" {
				continue
			}
			if g.seen.meant[c.plain] == nil {
				g.seen.meant[c.plain] = map[results.State]bool{}
			}
			g.seen.meant[c.plain][state] = true
		}
	}
}

// repeatedAnswers are the answers, 1 and 0 apart, that stand under half of the items or
// more of a grid and are right in none.
func repeatedAnswers(rows []row, items int) map[string]bool {
	under, right := map[string]map[int]bool{}, map[string]bool{}
	for _, row := range rows {
		for _, c := range row.read.cells {
			if c.sign != nil || c.why != nil || !c.long {
				continue
			}
			if under[c.plain] == nil {
				under[c.plain] = map[int]bool{}
			}
			under[c.plain][c.at] = true
			right[c.plain] = right[c.plain] || c.answer.State == results.Right
		}
	}
	repeated := map[string]bool{}
	for text, places := range under {
		if !right[text] && len(places) > leastRepeated && 2*len(places) >= items {
			repeated[text] = true
		}
	}
	return repeated
}

// absentByLetter says that a letter which can mean absent stands before a cell that counts:
// who had the next item was there.
func (r *rowCells) absentByLetter() bool {
	seen := false
	for _, c := range r.cells {
		switch {
		case c.surely(letterFamily) && c.sign.readings[0].state == results.Absent:
			seen = true
		case seen && !c.surely(noneFamily):
			return true
		}
	}
	return false
}
