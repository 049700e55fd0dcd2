package bank_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"evenhand/bank"
)

// Whatever a file holds, opening and checking it gives an answer.
func FuzzOpen(f *testing.F) {
	b, err := bank.Create(filepath.Join(f.TempDir(), "team.bank"))
	must(f, err)
	var small, larger bytes.Buffer
	_, err = b.Backup(&small)
	must(f, err)
	mustAdd(f, b, sums(60)...)
	_, err = b.Backup(&larger)
	must(f, err)
	must(f, b.Close())
	for _, seed := range [][]byte{nil, []byte("47 + 36,83\n"), small.Bytes(), larger.Bytes()} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, content []byte) {
		path := filepath.Join(t.TempDir(), "team.bank")
		must(t, os.WriteFile(path, content, 0o600))
		b, err := bank.Open(path, bank.Options{ReadOnly: true})
		if err != nil {
			return
		}
		defer b.Close()
		if report, err := b.Check(); err == nil && report.Whole() {
			for it, err := range b.Find(bank.Query{}) {
				must(t, err)
				_, err := b.History(it.ID)
				must(t, err)
			}
		}
	})
}
