package lp

// DropRows takes out the rows not to keep. Their slacks must be in the basis:
// then what is left of the inverse is the inverse of what is left.
func (s *Program) DropRows(keep []bool) {
	s.drops++
	m := len(s.Rows)
	stays := make([]bool, m) // basis positions
	for k := range stays {
		stays[k] = true
	}
	for i := range s.Rows {
		if !keep[i] {
			stays[s.Rows[i].at] = false
		}
	}
	rowAt, posAt := renumber(keep), renumber(stays)
	inv := s.inv[:0]
	for k := range m {
		for i := range m {
			if stays[k] && keep[i] {
				inv = append(inv, s.inv[k*m+i])
			}
		}
	}
	s.inv = inv
	s.renumberBasis(stays, rowAt)
	rows := s.Rows[:0]
	for i, r := range s.Rows {
		if keep[i] {
			if r.at >= 0 {
				r.at = posAt[r.at]
			}
			rows = append(rows, r)
		}
	}
	s.Rows = rows
	s.renumberColumns(keep, rowAt, posAt)
}

// renumber gives the new number of each that stays.
func renumber(stays []bool) []int32 {
	at, n := make([]int32, len(stays)), int32(0)
	for i, ok := range stays {
		at[i] = n
		if ok {
			n++
		}
	}
	return at
}

func (s *Program) renumberBasis(stays []bool, rowAt []int32) {
	n := 0
	for k, v := range s.basic {
		if !stays[k] {
			continue
		}
		if v < 0 {
			v = ^rowAt[^v]
		}
		s.basic[n], s.xb[n] = v, s.xb[k]
		n++
	}
	s.basic, s.xb = s.basic[:n], s.xb[:n]
}

func (s *Program) renumberColumns(keep []bool, rowAt, posAt []int32) {
	for j := range s.Cols {
		c := &s.Cols[j]
		if c.at >= 0 {
			c.at = posAt[c.at]
		}
		entries := c.Entries[:0]
		for _, e := range c.Entries {
			if keep[e.Row] {
				entries = append(entries, Entry{rowAt[e.Row], e.Val})
			}
		}
		c.Entries = entries
	}
}
