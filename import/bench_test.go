package intake_test

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/oklog/ulid/v2"
	"go.etcd.io/bbolt"

	"evenhand/bank"
	intake "evenhand/import"
)

// BenchmarkImport reads a list of 100,000 rows and brings it into an empty bank; by
// turns, in the same run, bbolt alone writes the same keys and values, item after item
// with the entries of its indexes, in transactions of as many items. "×bare" is how
// many times longer the import takes; the goal is 3.
//
//	go test ./import -run '^$' -bench Import -benchtime 3x
func BenchmarkImport(b *testing.B) {
	const rows, batches = 100_000, 10
	list := []byte(longList(rows))
	ours := func() (*bank.Bank, *intake.Report) {
		file := newBank(b)
		l, err := intake.Open("long.csv", list, intake.Options{})
		if err != nil {
			b.Fatal(err)
		}
		return file, mustImport(b, file, l, intake.ImportOptions{})
	}
	file, report := ours()
	if report.Count(intake.Added) != rows {
		b.Fatal(report.Summary())
	}
	writes := writesOf(b, file, report)
	var oursTook, bareTook time.Duration
	for b.Loop() {
		start := time.Now()
		ours()
		between := time.Now()
		bareWrite(b, writes, batches)
		oursTook += between.Sub(start)
		bareTook += time.Since(between)
	}
	b.ReportMetric(1000*oursTook.Seconds()/float64(b.N), "ms/import")
	b.ReportMetric(1000*bareTook.Seconds()/float64(b.N), "ms/bare")
	b.ReportMetric(float64(oursTook)/float64(bareTook), "×bare")
}

// longList is a list of different sums and differences in no order, with answers,
// skills and authors.
func longList(rows int) string {
	var lines []string
	for a := range 1000 {
		for c := a; c < 1000-a && len(lines) < rows; c++ {
			lines = append(lines, fmt.Sprintf("%d + %d =,%d,addition,M.O.\r\n", a, c, a+c))
		}
	}
	rand.New(rand.NewPCG(1, 2)).Shuffle(len(lines), func(i, j int) { lines[i], lines[j] = lines[j], lines[i] })
	return "Problem,Key,Topic,Teacher\r\n" + strings.Join(lines, "")
}

// pair is one key and value of one bucket.
type pair struct{ bucket, key, value []byte }

// writesOf lists what an import wrote: for each item, in order, its record and its
// entries in the indexes; at the end what belongs to no item.
func writesOf(b *testing.B, file *bank.Bank, r *intake.Report) []pair {
	rank := map[string]int{}
	for i, out := range r.Outcomes {
		id := ulid.MustParse(out.ID)
		rank[string(id[:])] = i
	}
	copied := filepath.Join(b.TempDir(), "copy")
	if _, err := file.BackupFile(copied); err != nil {
		b.Fatal(err)
	}
	var all []pair
	update(b, copied, func(tx *bbolt.Tx) error {
		return tx.ForEach(func(name []byte, bucket *bbolt.Bucket) error {
			return bucket.ForEach(func(k, v []byte) error {
				all = append(all, pair{bytes.Clone(name), bytes.Clone(k), bytes.Clone(v)})
				return nil
			})
		})
	})
	place := func(w pair) int {
		for _, id := range [][]byte{w.key[max(0, len(w.key)-16):], w.value} {
			if i, ok := rank[string(id)]; ok {
				return i
			}
		}
		return len(rank)
	}
	slices.SortStableFunc(all, func(x, y pair) int { return place(x) - place(y) })
	return all
}

func bareWrite(b *testing.B, writes []pair, batches int) {
	path := filepath.Join(b.TempDir(), "bare")
	for chunk := range slices.Chunk(writes, (len(writes)+batches-1)/batches) {
		update(b, path, func(tx *bbolt.Tx) error {
			for _, w := range chunk {
				bucket, err := tx.CreateBucketIfNotExists(w.bucket)
				if err != nil {
					return err
				}
				if err := bucket.Put(w.key, w.value); err != nil {
					return err
				}
			}
			return nil
		})
	}
}

// update runs one transaction on a bbolt file.
func update(b *testing.B, path string, work func(*bbolt.Tx) error) {
	db, err := bbolt.Open(path, 0o600, &bbolt.Options{Timeout: time.Second, FreelistType: bbolt.FreelistMapType})
	if err != nil {
		b.Fatal(err)
	}
	defer db.Close()
	if err := db.Update(work); err != nil {
		b.Fatal(err)
	}
}
