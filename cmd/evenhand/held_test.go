package main

import (
	"bytes"
	"io"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// Who reads a long list slowly, as with "list | less", keeps nobody from changing the bank.
func TestASlowReaderHoldsNobodyUp(t *testing.T) {
	path := filepath.Join(t.TempDir(), "team.bank")
	do := func(stdout io.Writer, line string) {
		var stderr bytes.Buffer
		args := append([]string{"evenhand", "--bank", path}, strings.Fields(line)...)
		if code := run(args, strings.NewReader(""), stdout, &stderr); code != 0 {
			t.Errorf("%s: exit code %d\n%s", line, code, &stderr)
		}
	}
	do(io.Discard, "init")
	do(io.Discard, "generate --skill add-two-digit --count 300 --seed 1 --by MK")
	read, write := io.Pipe()
	listed := make(chan bool)
	go func() {
		do(write, "list")
		write.Close()
		close(listed)
	}()
	first := make([]byte, 1)
	if _, err := read.Read(first); err != nil { // now it prints
		t.Fatal(err)
	}
	began := time.Now()
	do(io.Discard, "generate --skill add-ones --count 5 --seed 1 --by MK")
	if waited := time.Since(began); waited > 20*time.Second {
		t.Errorf("the change waited for %s", waited)
	}
	text, err := io.ReadAll(read)
	if err != nil || strings.Count(string(first)+string(text), "\n") < 300 {
		t.Errorf("the list came short (%v)", err)
	}
	<-listed
}
