package lp

import (
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack/lapack64"
)

// blocked is how many rows at a time an inverse takes.
const blocked = 32

// invert computes the basis inverse afresh. It reports false if the basis is singular in floating point.
//
// Slacks in the basis are known from the columns: with those of rows r there, and columns S for the other rows q,
//
//	x_S = A_qS⁻¹·b_q  and  slack_r = A_rS·x_S − b_r,
//
// so that only A_qS is inverted.
func (s *Program) invert() bool {
	m := len(s.Rows)
	among := make([]int, m) // rows without their slack in the basis, by turns from 0, or −1
	var rows, columns []int // these, and the positions of columns in the basis
	for i := range s.Rows {
		among[i] = -1
		if s.Rows[i].at < 0 {
			among[i] = len(rows)
			rows = append(rows, i)
		}
	}
	for k, v := range s.basic {
		if v >= 0 {
			columns = append(columns, k)
		}
	}
	inv := zeros(s.ws.inv, m*m)
	if n := len(columns); n > 0 {
		a := blas64.General{Rows: n, Cols: n, Stride: n, Data: zeros(s.ws.square, n*n)}
		for c, k := range columns {
			for _, e := range s.Cols[s.basic[k]].Entries {
				if r := among[e.Row]; r >= 0 {
					a.Data[r*n+c] += float64(e.Val) * s.Rows[e.Row].scale
				}
			}
		}
		s.ws.square, s.ws.sum = a.Data, zeros(s.ws.sum, blocked*n)
		pivots := make([]int, n)
		if !lapack64.Getrf(a, pivots) || !lapack64.Getri(a, pivots, s.ws.sum, len(s.ws.sum)) {
			return false
		}
		for c, k := range columns {
			x := a.Data[c*n : (c+1)*n]
			scatter(inv[k*m:(k+1)*m], 1, rows, x)
			for _, e := range s.Cols[s.basic[k]].Entries {
				if at := int(s.Rows[e.Row].at); at >= 0 {
					scatter(inv[at*m:(at+1)*m], float64(e.Val)*s.Rows[e.Row].scale, rows, x)
				}
			}
		}
	}
	for k, v := range s.basic {
		if v < 0 {
			inv[k*m+int(^v)] = -1
		}
	}
	s.inv, s.ws.inv, s.since = inv, s.inv, 0
	return true
}

// scatter adds f times the values to a row, each at its place.
func scatter(row []float64, f float64, at []int, values []float64) {
	for i, x := range values {
		row[at[i]] += f * x
	}
}
