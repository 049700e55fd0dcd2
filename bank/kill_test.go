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
			said := killedAfter(t, "write", path, after)
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
func killedAfter(t *testing.T, job, path string, after time.Duration) []string {
	t.Helper()
	c := child(job, path)
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

// A merge that is killed leaves a whole bank, and doing it again gives what it would have
// given at once.
func TestKilledWhileMerging(t *testing.T) {
	dir := t.TempDir()
	path, other := filepath.Join(dir, "team.bank"), filepath.Join(dir, "team.bank.other")
	clock := monday
	for i, name := range []string{path, other} {
		b, err := bank.Create(name)
		must(t, err)
		// What was changed before the same was added anew must find its own again.
		ids := mustAdd(t, b, sums(9000 + 1000*i)[5000*i:]...)
		_, err = b.ReviseAll(ids[:300], "MK", "in words", clock, func(it *bank.Item) error {
			it.Task = strings.Replace(it.Task, " + ", " - ", 1)
			var a, b int
			fmt.Sscanf(it.Task, "%d - %d", &a, &b)
			it.Task = fmt.Sprintf("%d - %d = ?", a+b+200, b)
			return nil
		})
		must(t, err)
		_, err = b.Add(sums(9000 + 1000*i)[5000*i:][:300], "MK", clock.Add(time.Hour))
		must(t, err)
		must(t, b.Close())
	}
	whole := mergedInto(t, dir, "whole", path, other)
	for _, after := range []time.Duration{10, 120} {
		killed := mergedInto(t, dir, fmt.Sprint("killed", after), path)
		copyFile(t, other, killed+".other")
		killedAfter(t, "merge", killed, after*time.Millisecond)
		if kept(t, killed) == kept(t, path) {
			t.Errorf("killed after %d ms: nothing was merged yet", after)
		}
		b, err := bank.Open(killed, bank.Options{})
		must(t, err)
		mustBeWhole(t, b)
		must(t, b.Close())
		mustMerge(t, killed, other, bank.MergeOptions{})
		if kept(t, killed) != kept(t, whole) {
			t.Errorf("killed after %d ms: merged again, it is not what it would have been at once", after)
		}
	}
}
