// Package search finds the provably best choice of items for one or more
// forms of a quiz, or proves that there is none.
package search
