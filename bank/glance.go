package bank

import (
	"bytes"
	"iter"
	"math/rand/v2"
	"slices"
	"strconv"

	"evenhand/bank/store"
	"evenhand/bank/store/bolt"
)

// A run is groups that follow each other in the index and differ only from their largest number on, which has
// equally many digits in all.
const (
	plenty  = 2000 // groups that a glance reads before it leaves any out
	longRun = 50   // so many groups make a run long: looking into it here and there is quicker than reading on
	looks   = 4    // so often it is looked into
)

// Glance gives all portions of a small bank and some of those of a large one, which from a file takes a fraction
// of the time: when plenty were read, it looks into a long run here and there, where the seed says. Whole tells
// afterwards whether it left any out.
func (ps *Portions) Glance(seed uint64) iter.Seq2[Portion, error] {
	return func(yield func(Portion, error) bool) {
		ps.left = false
		g := glance{Portions: ps, rng: rand.New(rand.NewPCG(seed, 0))}
		for _, prefix := range ps.prefixes {
			g.seen += len(g.some)
			err := ps.bank.view(func(r store.Reader) (err error) {
				g.some = nil
				if g.scan, err = ps.scanner(r, prefix); err != nil {
					return err
				}
				return g.see(prefix)
			})
			if err != nil {
				yield(Portion{}, err)
				return
			}
			for _, p := range g.some {
				if ps.Kind(p).Standing == Ready && !yield(p, nil) {
					return
				}
			}
		}
	}
}

// Whole says that the last glance left no portion out.
func (ps *Portions) Whole() bool { return !ps.left }

// scan gives the entries of some ranges of groups.
type scan func(ranges ...store.Range) iter.Seq2[store.Entry, error]

// scanner scans groups whose name begins with the prefix. Of a file it reads no others than are asked for; elsewhere
// it reads all of them first, as each look would be a way through the network and back.
func (ps *Portions) scanner(r store.Reader, prefix []byte) (scan, error) {
	from := func(ranges ...store.Range) iter.Seq2[store.Entry, error] { return r.Scan(groupsBucket, ranges...) }
	if _, file := ps.bank.store.(*bolt.File); file {
		return from, nil
	}
	var all []store.Entry
	for e, err := range from(store.Prefix(prefix)) {
		if err != nil {
			return nil, err
		}
		all = append(all, e)
	}
	return among(all), nil
}

// among scans entries that were read, in the order of their keys.
func among(all []store.Entry) scan {
	at := func(key []byte) int {
		i, _ := slices.BinarySearchFunc(all, key, func(e store.Entry, key []byte) int { return bytes.Compare(e.Key, key) })
		return i
	}
	return func(ranges ...store.Range) iter.Seq2[store.Entry, error] {
		return func(yield func(store.Entry, error) bool) {
			for _, r := range ranges {
				some := all[at(r.From):]
				if r.To != nil {
					some = all[at(r.From):at(r.To)]
				}
				for n := range some {
					e := some[n]
					if r.Backward {
						e = some[len(some)-1-n]
					}
					if r.Limit > 0 && n == r.Limit {
						break
					}
					if !yield(e, nil) {
						return
					}
				}
			}
		}
	}
}

// glance is the reading of one.
type glance struct {
	*Portions
	rng  *rand.Rand
	seen int // portions of earlier prefixes

	scan scan      // of the prefix
	some []Portion // of the prefix
}

// see reads the groups whose name begins with the prefix, of long runs only some.
func (g *glance) see(prefix []byte) error {
	for from := prefix; ; {
		run, err := g.readOn(from, store.After(prefix))
		if run == nil || err != nil {
			return err
		}
		if err := g.lookInto(run); err != nil {
			return err
		}
		from, g.left = store.After(run.begins), true
	}
}

// run is what the names of its groups begin with, up to the digits of the largest number, and the lowest and
// highest of these.
type run struct {
	begins    []byte
	low, high int
}

// readOn reads groups up to a long run that needn't be read whole, or else to the end.
func (g *glance) readOn(from, to []byte) (*run, error) {
	before, begun := &g.read.before, 0 // the run of the group before begun there in some
	before.name = nil
	for e, err := range g.scan(store.Range{From: from, To: to}) {
		if err != nil {
			return nil, err
		}
		if before.name == nil || !bytes.HasPrefix(e.Key, before.name[:before.from]) {
			begun = len(g.some)
		}
		p, err := g.read.read(e.Key, e.Value)
		if err != nil {
			return nil, err
		}
		if g.some = append(g.some, p); len(g.some)-begun != longRun || g.seen+begun < plenty {
			continue
		}
		if run, ok := g.ends(bytes.Clone(e.Key[:before.from])); ok {
			g.some = g.some[:begun]
			return run, nil
		}
	}
	return nil, nil
}

// ends finds the numbers of a run; it is not ok where they are not whole ones.
func (g *glance) ends(begins []byte) (*run, bool) {
	first := store.Range{From: begins, To: store.After(begins), Limit: 1}
	last := first
	last.Backward = true
	var numbers []int
	for e, err := range g.scan(first, last) {
		p, damaged := g.read.read(e.Key, e.Value)
		n, wrong := strconv.Atoi(g.Largest(p))
		if err != nil || damaged != nil || wrong != nil {
			return nil, false
		}
		numbers = append(numbers, n)
	}
	return &run{begins, numbers[0], numbers[1]}, numbers[0] <= numbers[1]
}

// lookInto reads those groups of a run that come next from some numbers on.
func (g *glance) lookInto(in *run) error {
	numbers := make([]int, looks)
	for i := range numbers {
		numbers[i] = in.low + g.rng.IntN(in.high-in.low+1)
	}
	slices.Sort(numbers)
	ranges := make([]store.Range, looks)
	for i, n := range numbers {
		from := append(bytes.Clone(in.begins), strconv.Itoa(n)...)
		ranges[i] = store.Range{From: from, To: store.After(in.begins), Limit: 1}
	}
	for e, err := range g.scan(ranges...) {
		if err != nil {
			return err
		}
		p, err := g.read.read(e.Key, e.Value)
		if err != nil {
			return err
		}
		if len(g.some) == 0 || p != g.some[len(g.some)-1] {
			g.some = append(g.some, p)
		}
	}
	return nil
}
