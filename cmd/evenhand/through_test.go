package main

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"syscall"
	"testing"
	"time"

	"evenhand/bank/store/remote"
)

// deskOpen runs a desk of the program until the test ends or stop is called; it gives the first match of the
// pattern in what the desk says.
func deskOpen(t *testing.T, line, pattern string) (found string, desk *exec.Cmd) {
	t.Helper()
	c := program(line)
	said, err := c.StderrPipe()
	must(t, err)
	must(t, c.Start())
	t.Cleanup(func() { _ = c.Process.Kill(); _ = c.Wait() })
	lines := bufio.NewReader(said)
	var before strings.Builder
	for find := regexp.MustCompile(pattern); ; {
		text, err := lines.ReadString('\n')
		before.WriteString(text)
		if m := find.FindStringSubmatch(text); m != nil {
			go func() { _, _ = io.Copy(io.Discard, lines) }()
			return m[1], c
		}
		if err != nil {
			t.Fatalf("the desk ended: %s", before.String())
		}
	}
}

// announcedBeside waits until the desk is noted beside its bank.
func announcedBeside(t *testing.T, bankPath string) (address, token string) {
	t.Helper()
	for range 200 {
		if address, token = remote.Found(t.Context(), bankPath); address != "" {
			return address, token
		}
		time.Sleep(20 * time.Millisecond)
	}
	t.Fatal("the desk is not noted beside its bank")
	return "", ""
}

// Commands that read say the same while a desk has the bank open, by the file's name and by the desk's address, and
// commands that write do what they do without one.
func TestCommandsWorkThroughADesk(t *testing.T) {
	t.Chdir(t.TempDir())
	t.Setenv("EVENHAND_BY", "MK")
	mustDo(t, "demo")
	t.Setenv("EVENHAND_BANK", "demo/alder-hill.bank")
	item := regexp.MustCompile(`01[0-9A-Z]{24}`).FindString(mustDo(t, "list"))
	reads := []string{"list", "list --json", "show " + item, "quizzes", "quizzes 2026-W48", "lists", "lists sv-friday-mix.csv", "plans",
		"check", "report", "standards", "mark 2026-W48 --history P07"}
	before := map[string]string{}
	for _, line := range reads {
		code, out, _ := evenhand(line)
		before[line] = fmt.Sprint(code, " ", out)
	}
	_, desk := deskOpen(t, "desk --no-browser", `(http://127\S+)`)
	address, token := announcedBeside(t, "demo/alder-hill.bank")
	t.Setenv(remote.TokenFileVariable, tokenFile(t, token))
	places := []string{"demo/alder-hill.bank", address}
	for _, place := range places {
		t.Setenv("EVENHAND_BANK", place)
		for _, line := range reads {
			code, out, said := evenhand(line)
			if got := fmt.Sprint(code, " ", out); got != before[line] {
				t.Errorf("%s at %s gives\n%.300s%.300s\nand gave\n%.300s", line, place, got, said, before[line])
			}
		}
	}
	for i, place := range places {
		t.Setenv("EVENHAND_BANK", place)
		name, week := []string{"first", "second"}[i], []string{"2026-W50", "2026-W51"}[i]
		must(t, os.WriteFile(name+".csv", fmt.Appendf(nil, "question\n5%d + 36\n", 7+i), 0o600))
		for _, line := range []string{
			"import " + name + ".csv", "generate --skill add-two-digit --count 3", "revise " + item + " --reason look --notes " + name,
			"assemble demo/friday.toml --out " + name + " --week " + week, "mark 2026-W48 demo/marks.csv", "calibrate", "unuse " + name,
			"export " + name + "-all.csv", "backup " + name + ".copy", "check",
		} {
			if code, out, said := evenhand(line); code != 0 {
				t.Errorf("%s at %s: exit %d: %s%s", line, place, code, out, said)
			}
		}
	}
	for _, c := range []struct{ line, want string }{
		{"init", "has its bank already"}, {"copy demo/alder-hill.bank " + address, "has its bank already"}, {"restore first.copy", "stop the desk"},
	} {
		if code, _, said := evenhand(c.line); code != 1 || !strings.Contains(said, c.want) {
			t.Errorf("%s at a desk: exit %d: %s", c.line, code, said)
		}
	}
	mustDo(t, "forget P07 --yes")
	if left, err := os.ReadFile("demo/alder-hill.bank.marks"); err != nil || strings.Contains(string(left), "P07") {
		t.Errorf("the results still hold the pupil: %v", err)
	}
	t.Setenv("EVENHAND_BANK", "demo/alder-hill.bank")
	if code, _, said := evenhand("desk --no-browser"); code != 0 || !strings.Contains(said, "open already") || !strings.Contains(said, address+"/enter/") {
		t.Errorf("a second desk: exit %d: %s", code, said)
	}
	// Going back beneath the open desk would leave it with a file that nobody finds any more.
	if code, _, said := evenhand("restore first.copy"); code != 1 || !strings.Contains(said, "from its page Team, or close it first") {
		t.Errorf("going back beneath a desk: exit %d: %s", code, said)
	}
	must(t, desk.Process.Signal(syscall.SIGTERM))
	_ = desk.Wait()
	if exists(remote.Beside("demo/alder-hill.bank")) {
		t.Error("a desk that was closed is still noted beside the bank")
	}
	if said := mustDo(t, "check"); !strings.HasPrefix(said, "454 items, ") {
		t.Errorf("in the end: %s", said)
	}
	for _, copied := range []string{"first.copy", "second.copy"} {
		mustDo(t, "--bank "+copied+" check")
	}
}

// tokenFile is a file with a token in it.
func tokenFile(t *testing.T, token string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "token")
	must(t, os.WriteFile(path, []byte(token+"\n"), 0o600))
	return path
}

// What a killed desk left beside a bank keeps nobody out, and the next that writes takes it away. A desk on a bank
// that is named makes no folder among the documents.
func TestAKilledDeskIsRecognised(t *testing.T) {
	t.Chdir(t.TempDir())
	home := t.TempDir()
	t.Setenv("HOME", home)
	t.Setenv("EVENHAND_BANK", "team.bank")
	mustDo(t, "init")
	_, desk := deskOpen(t, "desk --no-browser", `(http://127\S+)`)
	announcedBeside(t, "team.bank")
	must(t, desk.Process.Kill())
	_ = desk.Wait()
	if made, err := os.ReadDir(home); err != nil || len(made) > 0 {
		t.Errorf("the desk made %v at home: %v", made, err)
	}
	if !exists("team.bank.desk") {
		t.Fatal("nothing was left: this test looks at nothing")
	}
	mustDo(t, "check", "generate --skill add-two-digit --count 2")
	if exists("team.bank.desk") {
		t.Error("what the killed desk left is still there")
	}
	for _, wrong := range []string{"{", `{"address":"http://elsewhere.example","token":"x"}`, `{"address":"http://127.0.0.1:1","token":"x"}`} {
		must(t, os.WriteFile("team.bank.desk", []byte(wrong), 0o600))
		mustDo(t, "check")
	}
}
