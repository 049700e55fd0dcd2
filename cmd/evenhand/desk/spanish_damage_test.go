package desk_test

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"go.etcd.io/bbolt"

	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/bank/store"
	"evenhand/cmd/evenhand/desk"
)

// spoilings are what can happen to an entry of a bucket.
var spoilings = map[string]func(b *bbolt.Bucket, k, v []byte) error{
	"lost":    func(b *bbolt.Bucket, k, _ []byte) error { return b.Delete(k) },
	"changed": func(b *bbolt.Bucket, k, v []byte) error { return b.Put(k, append([]byte{1}, v...)) },
	"of nothing": func(b *bbolt.Bucket, k, v []byte) error {
		return b.Put(append([]byte{0xFF}, k[min(1, len(k)-1):]...), v)
	},
	"short": func(b *bbolt.Bucket, _, v []byte) error { return b.Put([]byte("x"), v) },
}

// eachSpoiled spoils the first entry of each bucket of a file, in each way by turns, and puts it right again.
func eachSpoiled(t *testing.T, path string, then func(what string)) {
	t.Helper()
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var buckets []string
	update := func(do func(tx *bbolt.Tx) error) {
		db, err := bbolt.Open(path, 0o600, &bbolt.Options{Timeout: time.Second})
		if err == nil {
			err = db.Update(do)
		}
		if err != nil || db.Close() != nil {
			t.Fatal(err)
		}
	}
	update(func(tx *bbolt.Tx) error {
		return tx.ForEach(func(name []byte, b *bbolt.Bucket) error {
			if k, v := b.Cursor().First(); k != nil && v != nil {
				buckets = append(buckets, string(name))
			}
			return nil
		})
	})
	for _, bucket := range buckets {
		for how, spoil := range spoilings {
			update(func(tx *bbolt.Tx) error {
				b := tx.Bucket([]byte(bucket))
				k, v := b.Cursor().First()
				return spoil(b, bytes.Clone(k), bytes.Clone(v))
			})
			then(bucket + " " + how)
			if err := os.WriteFile(path, whole, 0o600); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// Whatever is damaged in a copy of the bank, or in the marks, who reads Spanish is told it in Spanish.
func TestSpanishDamage(t *testing.T) {
	copies := results.Copies{Dir: t.TempDir(), Keep: 3}
	browser, address, _, path := toMark(t, func(o *desk.Options) { o.Copies, o.Restore = copies, func(string) {} })
	inSpanish(t, browser, address)
	looked := func(post func(), name, want string) {
		post()
		_, page := get(t, browser, address+"/team")
		saysNoEnglish(t, name, page)
		if !strings.Contains(page, want) {
			t.Errorf("%s: the page lacks %q", name, want)
		}
	}
	post(t, browser, address+"/team/copies", nil)
	list, err := copies.List()
	if err != nil || len(list) != 1 {
		t.Fatal(list, err)
	}
	file, bad := filepath.Join(copies.Dir, list[0].Name), 0
	prove := func() { post(t, browser, address+"/team/copies/"+list[0].Name+"/prove", nil) }
	eachSpoiled(t, file, func(what string) {
		looked(prove, "a copy with "+what, "")
		if copies.Prove(list[0].Name) != nil {
			bad++
		}
	})
	if bad < 15 {
		t.Errorf("only %d spoiled copies were damaged", bad)
	}
	for what, content := range map[string]string{"text": strings.Repeat("47 + 36,83\n", 900), "nothing": ""} {
		if err := os.WriteFile(file, []byte(content), 0o600); err != nil {
			t.Fatal(err)
		}
		looked(prove, "a copy of "+what, "dañada")
	}
	check := func() { post(t, browser, address+"/team/check", nil) }
	eachSpoiled(t, results.Path(path), func(what string) { looked(check, "marks with "+what, "") })
}

// So is each kind of damage that a check finds in the bank itself.
func TestSpanishChecks(t *testing.T) {
	browser, address, b := openedWithBank(t)
	inSpanish(t, browser, address)
	ctx := context.Background()
	id := ""
	for it, err := range b.Find(bank.Query{}) {
		if err != nil {
			t.Fatal(err)
		}
		id = it.ID
	}
	if _, err := b.Retire(id, "MK", "worn out", wednesday); err != nil {
		t.Fatal(err)
	}
	if err := b.RecordUse([]string{id}, bank.Use{Quiz: "Friday check", Week: "2026-W48", At: wednesday}); err != nil {
		t.Fatal(err)
	}
	for _, bucket := range []string{"items", "revisions", "uses", "fingerprints", "groups", "group members", "origins", "origin members"} {
		var key, value []byte
		write := func(do func(w store.Writer) error) {
			if err := b.Store().Update(ctx, do); err != nil {
				t.Fatal(err)
			}
		}
		for _, change := range []func(w store.Writer) error{
			func(w store.Writer) error { return w.Delete(bucket, key) },
			func(w store.Writer) error { return w.Put(bucket, key, append([]byte{1}, value...)) },
			func(w store.Writer) error { return w.Put(bucket, []byte("x"), value) },
		} {
			write(func(w store.Writer) error {
				for e, err := range w.Scan(bucket, store.Range{Limit: 1}) {
					key, value = bytes.Clone(e.Key), bytes.Clone(e.Value)
					return err
				}
				return fmt.Errorf("nothing is in %s", bucket)
			})
			write(change)
			post(t, browser, address+"/team/check", nil)
			_, page := get(t, browser, address+"/team")
			saysNoEnglish(t, "damage in "+bucket, page)
			if !strings.Contains(page, "Hay daños") {
				t.Errorf("no damage is told of in %s", bucket)
			}
			write(func(w store.Writer) error {
				if err := w.Delete(bucket, []byte("x")); err != nil {
					return err
				}
				return w.Put(bucket, key, value)
			})
		}
	}
}
