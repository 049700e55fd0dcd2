package storetest

import (
	"bufio"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"evenhand/bank/store"
)

// victim is the variable that tells the test's own program, started a second time, to
// write to this address until it is killed.
const victim = "EVENHAND_STORE_VICTIM"

// killed: a program that is killed while it writes leaves a store in which all is there
// that it was told was kept, and of the rest all or nothing.
func killed(t *testing.T, m Maker) {
	for _, after := range []time.Duration{0, 3, 11, 40, 120} {
		address := m.Place(t)
		s := madeAt(t, m, address)
		must(t, s.Close())
		said := kill(t, address, after*time.Millisecond)
		s, err := m.Open(address, store.Options{})
		must(t, err)
		problems, err := s.Inspect(background)
		if must(t, err); len(problems) > 0 {
			t.Errorf("after the kill: %q", problems)
		}
		last := lastWhole(t, s)
		if last < said {
			t.Errorf("killed after %s: write %d was kept, write %d is the last that is there", after*time.Millisecond, said, last)
		}
		must(t, s.Close())
	}
}

// kill starts the victim, kills it that long after its first word, and returns the
// number of the last write of which it was told that it was kept.
func kill(t *testing.T, address string, after time.Duration) (said int) {
	t.Helper()
	c := exec.Command(os.Args[0])
	c.Env = append(os.Environ(), victim+"="+address)
	c.Stderr = os.Stderr
	out, err := c.StdoutPipe()
	must(t, err)
	must(t, c.Start())
	for lines := bufio.NewScanner(out); lines.Scan(); {
		n, err := strconv.Atoi(lines.Text())
		must(t, err)
		if said = n; n == 1 {
			time.AfterFunc(after, func() { c.Process.Kill() })
		}
	}
	if c.Wait() == nil || said == 0 {
		t.Fatalf("the victim ended by itself after %d writes", said)
	}
	return said
}

// perWrite is how many entries each write of the victim makes, over two buckets.
const perWrite = 300

func writeUntilKilled(m Maker, address string) {
	s, err := m.Open(address, store.Options{})
	for n := 1; err == nil; n++ {
		err = s.Update(background, func(w store.Writer) error {
			for i := range perWrite {
				bucket := []string{"items", "uses"}[i%2]
				if err := w.Put(bucket, fmt.Appendf(nil, "%06d %d", n, i), make([]byte, 100)); err != nil {
					return err
				}
			}
			_, err := w.Next("items", 1)
			return err
		})
		if err == nil {
			fmt.Println(n)
		}
	}
	fmt.Fprintln(os.Stderr, filepath.Base(os.Args[0])+":", err)
}

// lastWhole is the number of the last write, and fails unless all up to it are whole.
func lastWhole(t *testing.T, s store.Store) (last int) {
	t.Helper()
	must(t, s.View(background, func(r store.Reader) error {
		sequence, err := r.Sequence("items")
		if err != nil {
			return err
		}
		count := map[int]int{}
		for _, bucket := range []string{"items", "uses"} {
			list, err := scanned(r, bucket, store.Range{})
			if err != nil {
				return err
			}
			for i := 0; i < len(list); i += 2 {
				n, _ := strconv.Atoi(list[i][:6])
				count[n]++
			}
		}
		for n, entries := range count {
			if last = max(last, n); entries != perWrite {
				t.Errorf("write %d has %d of its %d entries", n, entries, perWrite)
			}
		}
		if len(count) != last || int(sequence) != last {
			t.Errorf("%d writes are there, the last is %d, the sequence stands at %d", len(count), last, sequence)
		}
		return nil
	}))
	return last
}
