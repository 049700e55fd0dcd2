package bank

import (
	"slices"
	"time"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
)

// Touched is an item's latest revision: who made it, and when.
type Touched struct {
	ID       string
	Revision int
	By       string
	At       time.Time
}

// readTogether is how many items are read in one View.
const readTogether = 10_000

// Recent lists the items that were added or changed last, the latest first. It reads the beginning of
// every item's record, as these stand in no order of time: some 20 ms for 100,000 items of a file.
func (b *Bank) Recent(most int) (list []Touched, err error) {
	for next := []byte(nil); ; {
		var some []Touched
		last := []byte(nil)
		err := b.view(func(r store.Reader) error {
			some, last = nil, nil
			for e, err := range r.Scan(itemsBucket, store.Range{From: next, Limit: readTogether}) {
				if err != nil {
					return err
				}
				last = append(e.Key[:len(e.Key):len(e.Key)], 0)
				t, ok := touched(e)
				if !ok {
					return b.damaged("item %x can't be read", e.Key)
				}
				if len(list) < most || t.At.After(list[len(list)-1].At) {
					some = append(some, t)
				}
			}
			return nil
		})
		if err != nil || last == nil {
			return list, err
		}
		list = append(list, some...)
		slices.SortStableFunc(list, func(a, b Touched) int { return b.At.Compare(a.At) })
		list = list[:min(len(list), most)]
		next = last
	}
}

// touched reads the beginning of a record.
func touched(e store.Entry) (t Touched, ok bool) {
	record, ok := Unseal(e.Key, e.Value)
	if !ok || len(e.Key) != len(ulid.ULID{}) {
		return t, false
	}
	r := reader{raw: record}
	if r.octet() != recordFormat {
		return t, false
	}
	t = Touched{ID: ulid.ULID(e.Key).String(), Revision: int(r.count()), At: r.time()}
	size := r.count()
	if r.bad || size > uint64(len(record)-r.at) {
		return t, false
	}
	t.By = string(record[r.at:][:size])
	return t, true
}
