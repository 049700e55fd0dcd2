package bank_test

import (
	"bufio"
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"evenhand/bank"
)

// A program that is killed while it writes leaves a whole bank in which all is
// there that was answered for.
func TestKilledWhileWriting(t *testing.T) {
	for _, after := range []time.Duration{1, 7, 20, 45, 90, 160, 250} {
		after *= time.Millisecond
		t.Run(after.String(), func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "team.bank")
			b, err := bank.Create(path)
			must(t, err)
			must(t, b.Close())
			said := killedAfter(t, path, after)
			b, err = bank.Open(path, bank.Options{})
			must(t, err)
			defer b.Close()
			mustBeWhole(t, b)
			mustHoldWhatWasSaid(t, b, said)
		})
	}
}

// killedAfter lets a child write, kills it that long after its first words, and
// returns its whole lines.
func killedAfter(t *testing.T, path string, after time.Duration) []string {
	t.Helper()
	c := child("write", path)
	out, err := c.StdoutPipe()
	must(t, err)
	must(t, c.Start())
	var said []string
	lines := bufio.NewReader(out)
	for {
		line, err := lines.ReadString('\n')
		if err != nil {
			break
		}
		if said = append(said, strings.TrimSpace(line)); len(said) == 1 {
			time.AfterFunc(after, func() { c.Process.Kill() })
		}
	}
	if c.Wait() == nil {
		t.Fatalf("the child ended by itself before it was killed, saying %q", said[len(said)-1])
	}
	return said
}

func mustHoldWhatWasSaid(t *testing.T, b *bank.Bank, said []string) {
	t.Helper()
	safe := 0
	for _, line := range said {
		what, which, _ := strings.Cut(line, " ")
		switch what {
		case "added":
			fmt.Sscan(which, &safe)
		case "retired":
			it, err := b.Get(which)
			must(t, err)
			if it.Standing != bank.Retired {
				t.Errorf("item %s is %s after %q", which, it.Standing, line)
			}
		case "used":
			uses, err := b.Uses(which)
			must(t, err)
			if len(uses) != 1 {
				t.Errorf("item %s has %d uses after %q", which, len(uses), line)
			}
		default:
			t.Fatalf("the child says %q", line)
		}
	}
	for _, it := range sums(safe) {
		if _, ok, err := b.Has(it.Fingerprint()); err != nil || !ok {
			t.Fatalf("%s was added, but is not there (%v)", it.Task, err)
		}
	}
}
