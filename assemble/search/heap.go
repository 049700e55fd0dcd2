package search

// ordered is what knows whether it comes before another of its kind.
type ordered[T any] interface{ before(T) bool }

// heap is a binary heap: the first in the order of before comes out first.
type heap[T ordered[T]] []T

// order makes a heap of a slice in any order.
func (h heap[T]) order() {
	for i := len(h)/2 - 1; i >= 0; i-- {
		h.sink(i)
	}
}

func (h *heap[T]) push(v T) {
	*h = append(*h, v)
	for i := len(*h) - 1; i > 0 && (*h)[i].before((*h)[(i-1)/2]); i = (i - 1) / 2 {
		(*h)[i], (*h)[(i-1)/2] = (*h)[(i-1)/2], (*h)[i]
	}
}

func (h *heap[T]) pop() T {
	old := *h
	v, last := old[0], len(old)-1
	old[0] = old[last]
	*h = old[:last]
	h.sink(0)
	return v
}

func (h heap[T]) sink(i int) {
	for {
		c := 2*i + 1
		if c >= len(h) {
			return
		}
		if c+1 < len(h) && h[c+1].before(h[c]) {
			c++
		}
		if !h[c].before(h[i]) {
			return
		}
		h[i], h[c] = h[c], h[i]
		i = c
	}
}
