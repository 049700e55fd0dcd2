package main

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// program is the program with these arguments, to run in the folder that the test is in.
func program(line string) *exec.Cmd {
	c := exec.Command(os.Args[0], strings.Fields(line)...)
	c.Env = append(os.Environ(), asProgram+"=1")
	return c
}

// contents is all files under a folder, by name, as one text.
func contents(t *testing.T, dir string) string {
	t.Helper()
	var all bytes.Buffer
	filepath.WalkDir(dir, func(path string, d os.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			data, _ := os.ReadFile(path)
			fmt.Fprintf(&all, "%s:\n%q\n", filepath.Base(path), data)
		}
		return nil
	})
	return all.String()
}

func mustDo(t *testing.T, lines ...string) (said string) {
	t.Helper()
	for _, line := range lines {
		code, out, err := evenhand(line)
		if code != 0 {
			t.Fatalf("evenhand %s: exit %d: %s%s", line, code, out, err)
		}
		said = out
	}
	return said
}

// However long after its beginning the program is killed, what it was making is there whole or not at all, what was
// there before is whole, and the next run says nothing that isn't so and leaves nothing half done.
func TestKilledAnywhere(t *testing.T) {
	const generate = "generate --skill add-two-digit --count 40"
	for _, test := range []struct {
		name   string
		before []string // makes the folder
		line   string   // is killed
		after  func(t *testing.T)
	}{
		{"init", nil, "init", func(t *testing.T) {
			if !exists("team.bank") {
				mustDo(t, "init")
			}
			mustDo(t, "check")
		}},
		{"import", []string{"init"}, "import list.csv", func(t *testing.T) {
			mustDo(t, "check", "import list.csv")
			if said := mustDo(t, "check"); !strings.HasPrefix(said, "900 items, 900 revisions") {
				t.Errorf("the list is not in: %s", said)
			}
		}},
		{"assemble", []string{"init", generate, "assemble plan.toml --out quiz --week 2026-W48 --seed 1"},
			"assemble plan.toml --out quiz --week 2026-W48 --seed 2 --overwrite", func(t *testing.T) {
				mustDo(t, "check")
				if now := contents(t, "quiz"); now != contents(t, "../old") && now != contents(t, "../new") {
					t.Errorf("the quiz is neither the old one nor the new one:\n%.300s", now)
				}
				mustDo(t, "assemble plan.toml --out quiz --week 2026-W48 --seed 2 --overwrite")
				if said := mustDo(t, "check"); !strings.Contains(said, " 8 uses") {
					t.Errorf("its uses are not noted once: %s", said)
				}
			}},
		{"mark", []string{"init", generate, "assemble plan.toml --out quiz --week 2026-W48"}, "mark quiz marks.csv", func(t *testing.T) {
			mustDo(t, "check", "mark quiz marks.csv")
			if said := mustDo(t, "check"); !strings.Contains(said, "1 marked quiz, 1 paper, 0 earlier") {
				t.Errorf("the marks are not in: %s", said)
			}
		}},
		{"backup", []string{"init", generate}, "backup copy.bank", func(t *testing.T) {
			mustDo(t, "check")
			if exists("copy.bank") {
				mustDo(t, "--bank copy.bank check")
			}
			mustDo(t, "backup other.bank")
		}},
	} {
		t.Run(test.name, func(t *testing.T) {
			top := t.TempDir()
			t.Chdir(top)
			t.Setenv("EVENHAND_BANK", "team.bank")
			t.Setenv("EVENHAND_BY", "MK")
			made := filepath.Join(top, "made")
			os.Mkdir(made, 0o777)
			t.Chdir(made)
			writeInputs(t)
			mustDo(t, test.before...)
			if test.name == "assemble" {
				must(t, os.CopyFS("../old", os.DirFS("quiz")))
			}
			t.Chdir(fresh(t, top, made))
			began := time.Now()
			if out, err := program(test.line).CombinedOutput(); err != nil {
				t.Fatalf("%v: %s", err, out)
			}
			took := time.Since(began)
			if test.name == "assemble" {
				must(t, os.CopyFS("../new", os.DirFS("quiz")))
			}
			kills := 10
			if testing.Short() {
				kills = 3
			}
			draw := rand.New(rand.NewPCG(9, uint64(len(test.name))))
			for range kills {
				t.Chdir(fresh(t, top, made))
				c := program(test.line)
				must(t, c.Start())
				after := time.Duration(draw.Int64N(int64(took)))
				time.AfterFunc(after, func() { c.Process.Kill() })
				c.Wait()
				test.after(t)
				if left, _ := filepath.Glob(".evenhand-*"); len(left) > 0 {
					t.Errorf("killed after %s: %v is left", after, left)
				}
			}
		})
	}
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// fresh is a new copy of a folder.
func fresh(t *testing.T, top, made string) string {
	t.Helper()
	dir, err := os.MkdirTemp(top, "run")
	must(t, err)
	must(t, os.CopyFS(dir, os.DirFS(made)))
	return dir
}

func writeInputs(t *testing.T) {
	t.Helper()
	var list strings.Builder
	list.WriteString("question\n")
	for a := range 30 {
		for b := range 30 {
			fmt.Fprintf(&list, "%d - %d\n", 100+a, b+1)
		}
	}
	for name, text := range map[string]string{
		"list.csv":  list.String(),
		"plan.toml": "title = \"Friday check\"\nforms = 2\n[[row]]\nskill = \"add-two-digit\"\ncount = 4\n",
		"marks.csv": "pupil,form,1,2,3,4\nP01,A,✓,✓,x,✓\n",
	} {
		must(t, os.WriteFile(name, []byte(text), 0o600))
	}
}

// Stopped by the user in any phase, a command ends at once and leaves nothing half done.
func TestStopped(t *testing.T) {
	t.Chdir(t.TempDir())
	t.Setenv("EVENHAND_BANK", "team.bank")
	writeInputs(t)
	mustDo(t, "init")
	for _, line := range []string{"generate --skill add-within-1000 --count 200000", "import list.csv"} {
		c := program(line)
		must(t, c.Start())
		time.Sleep(30 * time.Millisecond)
		if c.Process.Signal(os.Interrupt) != nil {
			t.Skip("no interrupts here")
		}
		began := time.Now()
		c.Wait()
		if took := time.Since(began); took > 10*time.Second {
			t.Errorf("evenhand %s went on for %s", line, took)
		}
		mustDo(t, "check")
	}
}
