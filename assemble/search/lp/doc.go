// Package lp solves linear programs whose rows, columns and bounds change all
// the time, and proves what it finds in whole numbers. It knows nothing of
// what a program is about.
//
//	simplex.go  the program and its present basis
//	pivot.go    Solve: the bounded dual simplex method
//	basis.go    what a caller may read off the basis
//	drop.go     takes rows out again
//	certify.go  bounds and verdicts of impossibility that no rounding can spoil
//	heap.go     a binary heap, for breakpoints here and open nodes elsewhere
package lp
