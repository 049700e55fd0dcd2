package bank_test

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"go.etcd.io/bbolt"

	"evenhand/bank"
)

// bankBytes is a small bank's file, of some 40 pages.
func bankBytes(t *testing.T) []byte {
	t.Helper()
	b := tempBank(t)
	ids := mustAdd(t, b, sums(300)...)
	must(t, b.RecordUse(ids[:9], bank.Use{Quiz: "Friday check", Week: "2026-W48", At: monday}))
	var copied bytes.Buffer
	_, err := b.Backup(&copied)
	must(t, err)
	return copied.Bytes()
}

// outcomes opens files in another program, as a bad one could take this one down,
// and returns what it says of each.
func outcomes(t *testing.T, paths []string) []string {
	t.Helper()
	c := child("open", "")
	c.Stdin = strings.NewReader(strings.Join(paths, "\n"))
	out, err := c.CombinedOutput()
	if err != nil {
		t.Fatalf("the program crashed (%v):\n%s", err, out)
	}
	lines := strings.Split(strings.TrimSpace(string(out)), "\n")
	if len(lines) != len(paths) {
		t.Fatalf("%d answers for %d files:\n%s", len(lines), len(paths), out)
	}
	for i, line := range lines {
		lines[i] = strings.TrimPrefix(line, paths[i]+" ")
	}
	return lines
}

func TestATruncatedBankIsRefused(t *testing.T) {
	whole := bankBytes(t)
	page := os.Getpagesize()
	var lengths []int
	for n := 0; n < len(whole); n += page { // around every page's end
		lengths = append(lengths, max(n-1, 0), n, n+1, n+16, n+80)
	}
	r := rand.New(rand.NewPCG(1, 2))
	for range 300 {
		lengths = append(lengths, r.IntN(len(whole)))
	}
	lengths = append(lengths, len(whole)-1)
	dir := t.TempDir()
	paths := make([]string, len(lengths))
	for i, n := range lengths {
		paths[i] = filepath.Join(dir, fmt.Sprintf("%d.bank", n))
		must(t, os.WriteFile(paths[i], whole[:n], 0o600))
	}
	for i, got := range outcomes(t, paths) {
		if !strings.HasPrefix(got, "refused: "+paths[i]) || !strings.Contains(got, "backup") {
			t.Errorf("cut to %d of %d bytes: %s", lengths[i], len(whole), got)
		}
	}
}

// Where pages inside the file are lost or overwritten, the bank may open, but
// nothing crashes, and nobody is told that it is whole.
func TestADamagedBankIsNotCalledWhole(t *testing.T) {
	whole := bankBytes(t)
	dir := t.TempDir()
	var paths []string
	for _, page := range usedPages(t, whole) {
		size := os.Getpagesize()
		for name, junk := range map[string][]byte{
			"zeroed":     make([]byte, size),
			"filled":     bytes.Repeat([]byte{0xFF}, size),
			"scrambled":  reversed(whole[page*size:][:size]),
			"other-page": whole[(page+1)%4*size:][:size],
		} {
			changed := bytes.Clone(whole)
			copy(changed[page*size:], junk)
			path := filepath.Join(dir, fmt.Sprintf("%s-%d", name, page))
			must(t, os.WriteFile(path, changed, 0o600))
			paths = append(paths, path)
		}
	}
	for i, got := range outcomes(t, paths) {
		if got == "whole" {
			t.Errorf("%s is called whole", filepath.Base(paths[i]))
		}
	}
}

// usedPages lists the pages that hold something: not the free ones, and not the
// two meta pages, which stand in for each other.
func usedPages(t *testing.T, whole []byte) (used []int) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "copy")
	must(t, os.WriteFile(path, whole, 0o600))
	db, err := bbolt.Open(path, 0o600, &bbolt.Options{Timeout: time.Second})
	must(t, err)
	defer db.Close()
	must(t, db.View(func(tx *bbolt.Tx) error {
		for page := 2; page < len(whole)/os.Getpagesize(); page++ {
			info, err := tx.Page(page)
			must(t, err)
			if info.Type != "free" {
				used = append(used, page)
			}
		}
		return nil
	}))
	return used
}

func reversed(b []byte) []byte {
	b = bytes.Clone(b)
	slices.Reverse(b)
	return b
}
