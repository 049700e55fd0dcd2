package bank_test

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenhand/bank"
	"evenhand/bank/store/storetest"
)

// A merge keeps the same bytes whether the banks are files or stand in a database, each way.
func TestMergeInDatabase(t *testing.T) {
	server := storetest.NewServer(t)
	dir := t.TempDir()
	for seed := range 6 {
		p := rapid.Custom(func(t *rapid.T) []string { return lives(t, dir) }).Example(seed)
		want := kept(t, mergedInto(t, dir, "files", p[0], p[1], p[2]))
		in := func(name, file string) string { // a bank of the database, like the file
			address := server.Address(strings.ToLower(name) + string(rune('a'+seed)))
			_, err := bank.Copy(file, address, bank.Options{})
			must(t, err)
			return address
		}
		one, two, three := in("one", p[0]), in("two", p[1]), in("three", p[2])
		for _, other := range []string{two, p[2]} { // from the database, and from a file
			mustMerge(t, one, other, bank.MergeOptions{})
		}
		file := filepath.Join(dir, "from the database")
		copyFile(t, p[1], file)
		for _, other := range []string{three, p[0]} {
			mustMerge(t, file, other, bank.MergeOptions{})
		}
		for _, into := range []string{one, file} {
			if got := kept(t, into); got != want {
				a, b := strings.Split(got, "\n"), strings.Split(want, "\n")
				for _, line := range a {
					if !slices.Contains(b, line) {
						t.Errorf("%s has alone: %s", into, line)
					}
				}
				for _, line := range b {
					if !slices.Contains(a, line) {
						t.Errorf("%s lacks: %s", into, line)
					}
				}
			}
		}
	}
}
