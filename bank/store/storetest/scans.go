package storetest

import (
	"fmt"
	"slices"
	"strconv"
	"testing"

	"evenhand/bank/store"
)

// writingWhileScanning: a loop over a scan may write to what it scans; what it does not
// touch it still meets once and in order.
func writingWhileScanning(t *testing.T, m Maker) {
	s := made(t, m)
	const n = 2000
	put(t, s, "items", many("old", 0, n)...)
	for _, backward := range []bool{false, true} {
		var met []string
		err := s.Update(background, func(w store.Writer) error {
			met = nil
			for e, err := range w.Scan("items", store.Range{From: []byte("0"), To: []byte("1"), Backward: backward}) {
				if err != nil {
					return err
				}
				key := string(e.Key)
				met = append(met, key)
				number, err := strconv.Atoi(key)
				must(t, err)
				for _, step := range []error{
					w.Put("items", []byte(key), []byte("met")),
					w.Delete("items", fmt.Appendf(nil, "%06d", number^1)), // its neighbour
					w.Put("items", fmt.Appendf(nil, "2 from %s", key), nil),
					w.Put("uses", []byte(key), nil),
				} {
					if step != nil {
						return step
					}
				}
			}
			return errOurs // so that both directions begin alike
		})
		if err != errOurs {
			t.Fatal(err)
		}
		once := slices.Compact(slices.Sorted(slices.Values(met)))
		if backward {
			slices.Reverse(once)
		}
		if !slices.Equal(met, once) {
			t.Errorf("backward %v: the keys don't come once and in order", backward)
		}
		pairs := map[string]bool{}
		for _, key := range met {
			pairs[key[:len(key)-1]] = true
		}
		if len(met) < n/2 || len(pairs) != n/10 {
			t.Errorf("backward %v: %d keys were met", backward, len(met))
		}
	}
}

// manyRanges: ranges may be many, empty, upside down, long and one within the other; a
// loop may end in any of them.
func manyRanges(t *testing.T, m Maker) {
	s := made(t, m)
	put(t, s, "items", many("v", 0, 3000)...)
	var ranges []store.Range
	var want []string
	add := func(from, to, limit int) {
		ranges = append(ranges, store.Range{From: fmt.Appendf(nil, "%06d", from), To: fmt.Appendf(nil, "%06d", to), Limit: limit})
		for i := from; i < min(to, 3000) && (limit == 0 || i < from+limit); i++ {
			want = append(want, fmt.Sprintf("%06d", i), "v")
		}
	}
	for i := range 1100 {
		add(i, i+i%5, i%3)
	}
	add(10, 2900, 0)
	add(20, 10, 0)
	add(2990, 4000, 0)
	add(0, 3000, 64)
	add(0, 3000, 65)
	add(0, 64, 0)
	add(0, 65, 0)
	must(t, s.View(background, func(r store.Reader) error {
		list, err := scanned(r, "items", ranges...)
		if !slices.Equal(list, want) {
			t.Errorf("%d entries, want %d", len(list)/2, len(want)/2)
		}
		for stop := 1; stop < 2000; stop += 97 {
			n := 0
			for _, err := range r.Scan("items", ranges...) {
				must(t, err)
				if n++; n == stop {
					break
				}
			}
			if value, err := r.Get("items", []byte("000007")); string(value) != "v" || err != nil {
				t.Fatalf("after a loop that ended at %d the store gives %q (%v)", stop, value, err)
			}
		}
		return err
	}))
	for _, size := range []int{1, 2, 64, 128} { // whatever a page holds, it ends between two ranges of some of these
		ranges, want = nil, nil
		for from := 0; from < 1024; from += size {
			add(from, from+size, size%2*size)
		}
		must(t, s.View(background, func(r store.Reader) error {
			list, err := scanned(r, "items", ranges...)
			if !slices.Equal(list, want) {
				t.Errorf("ranges of %d: %d entries, want %d", size, len(list)/2, len(want)/2)
			}
			return err
		}))
	}
	must(t, s.View(background, func(r store.Reader) error { // a scan within a scan
		n := 0
		for outer, err := range r.Scan("items", store.Range{Limit: 200}) {
			must(t, err)
			for inner, err := range r.Scan("items", store.Range{From: outer.Key, Limit: 2}) {
				must(t, err)
				if inner.Key[5] == outer.Key[5] {
					n++
				}
			}
		}
		if n != 200 {
			t.Errorf("%d scans within a scan begin where they should, want 200", n)
		}
		return nil
	}))
}
