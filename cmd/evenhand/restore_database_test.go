package main

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"evenhand/bank/store/storetest"
)

// Wherever a command is killed that goes back to a backup in a database, the bank is whole, as it was or as it was
// then, and so is every copy of what stood there before; the command run again goes through.
func TestRestoreOfADatabaseKilledAnywhere(t *testing.T) {
	t.Chdir(t.TempDir())
	t.Setenv("EVENHAND_BY", "MK")
	t.Setenv("EVENHAND_BANK", storetest.NewServer(t).URL("postgres")+"?bank=alder-hill-2")
	const then, since = "500 items", "2000 items"
	mustDo(t, "init", "generate --skill add-within-1000 --count 500", "backup copies/then.bank",
		"generate --skill add-within-1000 --count 1500 --seed 2", "backup copies/since.bank")
	began := time.Now()
	if out, err := program("restore copies/then.bank").CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	took := time.Since(began)
	seen := map[string]int{}
	draw := rand.New(rand.NewPCG(11, 1))
	for range 6 {
		mustDo(t, "restore copies/since.bank")
		c := program("restore copies/then.bank")
		must(t, c.Start())
		time.AfterFunc(took/3+time.Duration(draw.Int64N(int64(took)*2/3)), func() { c.Process.Kill() })
		_ = c.Wait()
		items, _, _ := strings.Cut(mustDo(t, "check"), ",")
		if seen[items]++; items != then && items != since {
			t.Fatalf("after a kill the bank holds %s", items)
		}
	}
	t.Logf("within %v: %v", took, seen)
	mustDo(t, "restore copies/then.bank")
	copies, err := filepath.Glob("copies/evenhand-*.bank")
	must(t, err)
	if len(copies) < 7 {
		t.Errorf("the banks that stood there before are kept as %v only", copies)
	}
	for _, path := range copies {
		if items, _, _ := strings.Cut(mustDo(t, "--bank "+path+" check"), ","); items != then && items != since {
			t.Errorf("%s holds %s", path, items)
		}
	}
	left, err := os.ReadDir("copies")
	must(t, err)
	if len(left) != len(copies)+2 {
		t.Errorf("something half done is left: %v", left)
	}
}
