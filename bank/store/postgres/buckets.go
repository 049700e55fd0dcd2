package postgres

import (
	"sync"

	"github.com/jackc/pgx/v5"
)

// bucket is a bucket's number, which stands for its name in the entries, and its sequence.
type bucket struct {
	number   int16
	name     string
	sequence uint64
}

// rowOf reads a row of the table of buckets. A sequence has 64 bits; the table, which
// knows only signed numbers, keeps the same bits.
func rowOf(row pgx.CollectableRow) (b bucket, err error) {
	var sequence int64
	err = row.Scan(&b.number, &b.name, &sequence)
	b.sequence = uint64(sequence)
	return b, err
}

// buckets remembers the numbers of a bank's buckets, which never change.
type buckets struct {
	mutex   sync.Mutex
	numbers map[string]int16
}

func (b *buckets) number(name string) (number int16, known bool) {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	number, known = b.numbers[name]
	return number, known
}

func (b *buckets) learn(all []bucket) {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	if b.numbers == nil {
		b.numbers = map[string]int16{}
	}
	for _, one := range all {
		b.numbers[one.name] = one.number
	}
}
