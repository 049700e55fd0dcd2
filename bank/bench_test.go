package bank_test

import (
	"bytes"
	"math"
	"path/filepath"
	"slices"
	"strconv"
	"testing"
	"time"

	"github.com/oklog/ulid/v2"
	"go.etcd.io/bbolt"

	"evenhand/bank"
	"evenhand/standards"
)

// These benchmarks do the bank's work and, in the same run and by turns, the same
// reads or writes with bbolt alone; "×bare" is how many times longer the bank takes, "×best" the
// same of the fastest runs.
//
//	go test ./bank -run '^$' -bench . -benchtime 3x

const (
	many      = 100_000
	batchSize = 10_000 // as Add's documentation says
)

// BenchmarkImport adds 100,000 items, checked and looked up for duplicates. The
// bare write puts the same keys and values, those of the indexes too, in the same
// order and batches.
func BenchmarkImport(b *testing.B) {
	items := sums(many)
	writes := writesOf(b, items)
	besides := func(b *testing.B, writes []write) {
		compare(b, func() {
			file := newBank(b)
			_, err := file.Add(items, "Ms. Reyes", monday)
			must(b, err)
			must(b, file.Close())
		}, func() {
			bareWrite(b, filepath.Join(b.TempDir(), "bare"), writes)
		})
	}
	b.Run("beside all keys and values", func(b *testing.B) { besides(b, writes) })
	b.Run("beside the items alone", func(b *testing.B) {
		besides(b, slices.DeleteFunc(slices.Clone(writes), func(w write) bool { return string(w.bucket) != "items" }))
	})
}

// BenchmarkImportOfKnownItems adds 100,000 items that are all there. There is
// nothing to compare it with.
func BenchmarkImportOfKnownItems(b *testing.B) {
	items := sums(many)
	file := newBank(b)
	mustAdd(b, file, items...)
	for b.Loop() {
		mustAdd(b, file, items...)
	}
}

// BenchmarkListByTrait lists, from 100,000 items, those that a condition on the
// traits leaves. The bare read gets the same records by their known keys and copies
// their bytes.
func BenchmarkListByTrait(b *testing.B) {
	file := newBank(b)
	mustAdd(b, file, sums(many)...)
	for _, text := range []string{"regroups = 0", "regroups = 2", "zero_crossed = true", "doubles = true"} {
		where, err := standards.ParseWhere([]string{text})
		must(b, err)
		b.Run(text, func(b *testing.B) { list(b, file, bank.Query{Where: where}) })
	}
	b.Run("all", func(b *testing.B) { list(b, file, bank.Query{}) })
}

func list(b *testing.B, file *bank.Bank, q bank.Query) {
	var ids [][]byte
	for it, err := range file.Find(q) {
		must(b, err)
		ids = append(ids, rawID(b, it.ID))
	}
	copied := filepath.Join(b.TempDir(), "copy")
	_, err := file.BackupFile(copied)
	must(b, err)
	bare := bareOpen(b, copied)
	size := 0
	compare(b, func() {
		n := 0
		for _, err := range file.Find(q) {
			if err != nil {
				b.Fatal(err)
			}
			n++
		}
		if n != len(ids) {
			b.Fatalf("%d items, want %d", n, len(ids))
		}
	}, func() {
		must(b, bare.View(func(tx *bbolt.Tx) error {
			items := tx.Bucket([]byte("items"))
			for _, id := range ids {
				size += len(string(items.Get(id)))
			}
			return nil
		}))
	})
	b.ReportMetric(float64(len(ids)), "items")
	b.ReportMetric(0, "ns/op")
}

// BenchmarkCheck proves a bank of 100,000 items whole.
func BenchmarkCheck(b *testing.B) {
	file := newBank(b)
	mustAdd(b, file, sums(many)...)
	for b.Loop() {
		mustBeWhole(b, file)
	}
}

// BenchmarkGroups reads what the assembler needs, all groups and 24 members of
// each, from banks of several sizes: the time grows with the groups.
func BenchmarkGroups(b *testing.B) {
	for _, size := range []int{10_000, many, 1_000_000} {
		b.Run(strconv.Itoa(size), func(b *testing.B) {
			file := newBank(b)
			mustAdd(b, file, sums(size)...)
			groups, members := 0, 0
			b.ReportAllocs()
			for b.Loop() {
				groups, members = 0, 0
				var all []bank.Group
				for g, err := range file.Groups() {
					must(b, err)
					all = append(all, g)
				}
				for some := range slices.Chunk(all, 256) { // as the assembler does
					lists, err := file.MembersOf(some, 1, slices.Repeat([]int{24}, len(some)))
					must(b, err)
					for _, list := range lists {
						groups, members = groups+1, members+len(list)
					}
				}
			}
			b.ReportMetric(float64(groups), "groups")
			b.ReportMetric(float64(members), "members")
		})
	}
}

// compare runs both by turns and reports the seconds of each and their ratio, and that of the
// fastest of each, which other work on the machine moves least.
func compare(b *testing.B, ours, bare func()) {
	var oursTook, bareTook time.Duration
	oursBest, bareBest := time.Duration(math.MaxInt64), time.Duration(math.MaxInt64)
	for b.Loop() {
		start := time.Now()
		ours()
		between := time.Now()
		bare()
		end := time.Now()
		oursTook += between.Sub(start)
		bareTook += end.Sub(between)
		oursBest, bareBest = min(oursBest, between.Sub(start)), min(bareBest, end.Sub(between))
	}
	b.ReportMetric(1000*oursTook.Seconds()/float64(b.N), "ms/bank")
	b.ReportMetric(1000*bareTook.Seconds()/float64(b.N), "ms/bare")
	b.ReportMetric(float64(oursTook)/float64(bareTook), "×bare")
	b.ReportMetric(float64(oursBest)/float64(bareBest), "×best")
}

func newBank(b *testing.B) *bank.Bank {
	b.Helper()
	file, err := bank.Create(filepath.Join(b.TempDir(), "team.bank"))
	must(b, err)
	b.Cleanup(func() { file.Close() })
	return file
}

func bareOpen(b *testing.B, path string) *bbolt.DB {
	b.Helper()
	db, err := bbolt.Open(path, 0o600, &bbolt.Options{Timeout: time.Second, FreelistType: bbolt.FreelistMapType})
	must(b, err)
	b.Cleanup(func() { db.Close() })
	return db
}

// write is one key and value of one bucket.
type write struct{ bucket, key, value []byte }

// writesOf adds the items to a bank and lists what that wrote, in its order: for
// each item its record and its entry in each index, and at the end the names of
// the sets.
func writesOf(b *testing.B, items []bank.Item) []write {
	b.Helper()
	file := newBank(b)
	ids := mustAdd(b, file, items...)
	copied := filepath.Join(b.TempDir(), "copy")
	_, err := file.BackupFile(copied)
	must(b, err)
	rank := make(map[string]int, len(ids))
	for i, id := range ids {
		rank[string(rawID(b, id))] = i
	}
	var all []write
	must(b, bareOpen(b, copied).View(func(tx *bbolt.Tx) error {
		return tx.ForEach(func(name []byte, bucket *bbolt.Bucket) error {
			return bucket.ForEach(func(k, v []byte) error {
				all = append(all, write{bytes.Clone(name), bytes.Clone(k), bytes.Clone(v)})
				return nil
			})
		})
	}))
	order := func(w write) int {
		for _, place := range [][]byte{w.key[max(0, len(w.key)-16):], w.value} {
			if i, ok := rank[string(place)]; ok {
				return i
			}
		}
		return len(ids)
	}
	slices.SortStableFunc(all, func(x, y write) int { return order(x) - order(y) })
	return all
}

func rawID(b *testing.B, id string) []byte {
	b.Helper()
	raw, err := ulid.ParseStrict(id)
	must(b, err)
	return raw[:]
}

// bareWrite puts the writes with bbolt alone, as many in a transaction as a batch
// of the bank's writes.
func bareWrite(b *testing.B, path string, writes []write) {
	b.Helper()
	db := bareOpen(b, path)
	perBatch := len(writes)*batchSize/many + 1
	for chunk := range slices.Chunk(writes, perBatch) {
		must(b, db.Update(func(tx *bbolt.Tx) error {
			buckets := map[string]*bbolt.Bucket{}
			for _, w := range chunk {
				bucket := buckets[string(w.bucket)]
				if bucket == nil {
					var err error
					if bucket, err = tx.CreateBucketIfNotExists(w.bucket); err != nil {
						return err
					}
					buckets[string(w.bucket)] = bucket
				}
				if err := bucket.Put(w.key, w.value); err != nil {
					return err
				}
			}
			return nil
		}))
	}
	must(b, db.Close())
}
