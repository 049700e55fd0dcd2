package bank

import (
	"bytes"
	"iter"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"

	"evenhand/bank/store"
	"evenhand/bank/store/bolt"
)

// A run is groups that follow each other in the index and differ only from their largest number on, which has
// equally many digits in all.
const (
	plenty  = 1000 // groups that a glance reads before it leaves any out
	longRun = 20   // so many groups make a run long: most of a page of the file, so that reading on may bring others
	looked  = 3    // so many groups are read where a long run is looked into
)

// Glance gives all portions of a small bank and some of those of a large one, which from a file takes a fraction
// of the time: when plenty were read, it looks into each long run at one place. The seed says where in the first, and
// each time it is by the golden ratio of a run farther on, so that all sizes of numbers are looked at about equally.
// Whole tells afterwards whether it left any out.
func (ps *Portions) Glance(seed uint64) iter.Seq2[Portion, error] {
	return func(yield func(Portion, error) bool) {
		ps.left = false
		g := glance{Portions: ps, place: rand.New(rand.NewPCG(seed, 0)).Float64()}
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
	place float64 // where the next run is looked into, from 0 at its begin to 1 at its end
	seen  int     // portions of earlier prefixes

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
		if run, ok := g.ends(bytes.Clone(e.Key[:before.from]), g.some[begun]); ok {
			g.some = g.some[:begun]
			return run, nil
		}
	}
	return nil, nil
}

// ends finds the numbers of a run of which the first group was read; it is not ok where they are not whole ones.
func (g *glance) ends(begins []byte, first Portion) (*run, bool) {
	low, wrong := strconv.Atoi(g.Largest(first))
	if wrong != nil {
		return nil, false
	}
	high := 0
	for e, err := range g.scan(store.Range{From: begins, To: store.After(begins), Limit: 1, Backward: true}) {
		last, damaged := g.read.read(e.Key, e.Value)
		if high, wrong = strconv.Atoi(g.Largest(last)); err != nil || damaged != nil || wrong != nil {
			return nil, false
		}
	}
	return &run{begins, low, high}, low <= high
}

// lookInto reads some groups of a run, those that come next from a number on.
func (g *glance) lookInto(in *run) error {
	number := in.low + int(g.place*float64(in.high-in.low+1))
	_, g.place = math.Modf(g.place + 1/math.Phi)
	from := strconv.AppendInt(bytes.Clone(in.begins), int64(number), 10)
	for e, err := range g.scan(store.Range{From: from, To: store.After(in.begins), Limit: looked}) {
		if err != nil {
			return err
		}
		p, err := g.read.read(e.Key, e.Value)
		if err != nil {
			return err
		}
		g.some = append(g.some, p)
	}
	return nil
}
