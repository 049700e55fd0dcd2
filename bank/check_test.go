package bank_test

import (
	"path/filepath"
	"strings"
	"testing"
	"time"

	"go.etcd.io/bbolt"

	"evenhand/bank"
	"evenhand/standards/words"
)

// Check finds what a program that went round the bank's rules could have done.
func TestCheckFindsWhatDisagrees(t *testing.T) {
	first := func(tx *bbolt.Tx, bucket string) (*bbolt.Bucket, []byte, []byte) {
		b := tx.Bucket([]byte(bucket))
		k, v := b.Cursor().First()
		return b, k, v
	}
	lose := func(bucket string) func(*bbolt.Tx) error {
		return func(tx *bbolt.Tx) error {
			b, k, _ := first(tx, bucket)
			return b.Delete(k)
		}
	}
	repeat := func(bucket string) func(*bbolt.Tx) error {
		return func(tx *bbolt.Tx) error {
			b, k, v := first(tx, bucket)
			return b.Put(append([]byte{0xFF}, k[1:]...), v)
		}
	}
	change := func(bucket string) func(*bbolt.Tx) error {
		return func(tx *bbolt.Tx) error {
			b, k, v := first(tx, bucket)
			v = append([]byte(nil), v...)
			v[len(v)/2] ^= 1
			return b.Put(k, v)
		}
	}
	for _, test := range []struct {
		name  string
		spoil func(*bbolt.Tx) error
		words string
	}{
		{"item lost", lose("items"), "but not the item"},
		{"item changed", change("items"), "can't be read"},
		{"item twice", repeat("items"), "can't be read"},
		{"revision lost", lose("revisions"), "stands in revision 2, but 0 earlier ones are kept"},
		{"revision changed", change("revisions"), "an earlier revision of item"},
		{"use lost", lose("uses"), "is not found in its group"},
		{"use changed", change("uses"), "a use of item"},
		{"use of nothing", repeat("uses"), "but not the item"},
		{"fingerprint lost", lose("fingerprints"), "is not found by what it asks"},
		{"fingerprint of nothing", repeat("fingerprints"), "the index of fingerprints has 4 entries, but should have 3"},
		{"group lost", lose("groups"), "is not found in its group"},
		{"group changed", change("groups"), "an entry of the index of groups counts"},
		{"member lost", lose("group members"), "is not found in its group"},
		{"member changed", change("group members"), "is not found in its group"},
		{"member of nothing", repeat("group members"), "the index of members of groups has 4 entries, but should have 3"},
		{"origin lost", lose("origins"), "is not found by its origin"},
		{"origin changed", change("origins"), "an entry of the index of origins counts"},
		{"origin member lost", lose("origin members"), "is not found by its origin"},
		{"origin member of nothing", repeat("origin members"), "the index of members of origins has 4 entries, but should have 3"},
	} {
		t.Run(test.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "team.bank")
			b, err := bank.Create(path)
			must(t, err)
			ids := mustAdd(t, b, written("47 + 36 = ?"), written("8 + 5 = ?"), written("read 4:30"))
			_, err = b.Retire(ids[0], "Ms. Reyes", "worn out", monday)
			must(t, err)
			must(t, b.RecordUse(ids[:1], bank.Use{Quiz: "Friday check", Week: "2026-W48", At: monday}))
			mustBeWhole(t, b)
			must(t, b.Close())

			db, err := bbolt.Open(path, 0o600, &bbolt.Options{Timeout: time.Second})
			must(t, err)
			must(t, db.Update(test.spoil))
			must(t, db.Close())

			b, err = bank.Open(path, bank.Options{})
			must(t, err)
			defer b.Close()
			report, err := b.Check()
			must(t, err)
			if problems := words.Joined(report.Problems, "%s\n%s").String(); !strings.Contains(problems, test.words) {
				t.Errorf("check says %q, not %q", problems, test.words)
			}
		})
	}
}

func TestCheckCounts(t *testing.T) {
	b := tempBank(t)
	ids := mustAdd(t, b, written("47 + 36 = ?"), written("8 + 5 = ?"))
	_, err := b.Retire(ids[0], "Ms. Reyes", "worn out", monday)
	must(t, err)
	must(t, b.RecordUse(ids, bank.Use{Quiz: "Friday check", Week: "2026-W48", At: monday}))
	mustEqual(t, mustBeWhole(t, b), bank.Report{Items: 2, Revisions: 3, Uses: 2, Problems: []bank.Problem{}})
}
