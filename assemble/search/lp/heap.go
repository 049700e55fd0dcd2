package lp

// Ordered is what knows whether it comes before another of its kind.
type Ordered[T any] interface{ Before(T) bool }

// Heap is a binary heap: the first in the order of Before comes out first.
type Heap[T Ordered[T]] []T

// order makes a heap of a slice in any order.
func (h Heap[T]) order() {
	for i := len(h)/2 - 1; i >= 0; i-- {
		h.Sink(i)
	}
}

// Push puts a value in.
func (h *Heap[T]) Push(v T) {
	*h = append(*h, v)
	for i := len(*h) - 1; i > 0 && (*h)[i].Before((*h)[(i-1)/2]); i = (i - 1) / 2 {
		(*h)[i], (*h)[(i-1)/2] = (*h)[(i-1)/2], (*h)[i]
	}
}

// Pop takes the first value out.
func (h *Heap[T]) Pop() T {
	old := *h
	v, last := old[0], len(old)-1
	old[0] = old[last]
	*h = old[:last]
	h.Sink(0)
	return v
}

// Sink puts the value at i, which may come later than before, in its place.
func (h Heap[T]) Sink(i int) {
	for {
		c := 2*i + 1
		if c >= len(h) {
			return
		}
		if c+1 < len(h) && h[c+1].Before(h[c]) {
			c++
		}
		if !h[c].Before(h[i]) {
			return
		}
		h[i], h[c] = h[c], h[i]
		i = c
	}
}
