package bolt_test

import (
	"os"
	"path/filepath"
	"testing"

	"evenhand/bank/store"
	"evenhand/bank/store/bolt"
	"evenhand/bank/store/storetest"
)

var maker = storetest.Maker{
	Place: func(t testing.TB) string {
		dir, err := os.MkdirTemp(t.TempDir(), "")
		if err != nil {
			t.Fatal(err)
		}
		return filepath.Join(dir, "store")
	},
	Create: bolt.Create,
	Open:   func(path string, o store.Options) (store.Store, error) { return bolt.Open(path, o) },
}

func TestLaws(t *testing.T) { storetest.Laws(t, maker) }

func TestMain(m *testing.M) { os.Exit(storetest.Main(m, maker)) }
