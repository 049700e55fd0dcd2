package main

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// README's commands run as they stand there, in order, in one empty folder.
func TestTour(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	t.Setenv("EVENHAND_BY", "MK")
	ran := 0
	for line := range strings.Lines(string(readme)) {
		typed, ok := strings.CutPrefix(strings.TrimRight(line, "\n"), "    ")
		if !ok {
			continue
		}
		typed = strings.Replace(typed, "go run ./cmd/evenhand", "evenhand", 1)
		switch first, _, _ := strings.Cut(typed, " "); first {
		case "evenhand", "echo", "export":
			ran++
			enter(t, typed)
		}
	}
	if ran < 20 {
		t.Fatalf("README has only %d commands to try", ran)
	}
}

// Every example in the help texts works as it stands, in a folder where the demo was played.
func TestExamplesOfHelp(t *testing.T) {
	played := t.TempDir()
	t.Setenv("EVENHAND_BY", "MK")
	t.Setenv("EVENHAND_BANK", "demo/alder-hill.bank")
	t.Chdir(played)
	enter(t, "evenhand demo")
	for _, command := range newApp().VisibleCommands() {
		examples := examplesOf(command.Description)
		if len(examples) == 0 {
			t.Errorf("the help of %s has no example", command.Name)
		}
		folder := t.TempDir()
		if command.Name != "demo" {
			if err := os.CopyFS(filepath.Join(folder, "demo"), os.DirFS(filepath.Join(played, "demo"))); err != nil {
				t.Fatal(err)
			}
		}
		t.Chdir(folder)
		for _, example := range examples {
			if command.Name != "desk" && command.Name != "serve" { // these go on until they are stopped
				enter(t, example)
			}
		}
	}
}

// examplesOf are the commands behind "Example:".
func examplesOf(description string) []string {
	_, list, _ := strings.Cut(description, "Example: ")
	var examples []string
	for line := range strings.Lines(list) {
		examples = append(examples, strings.TrimSpace(line))
	}
	return examples
}

// enter runs a line as a shell does: words in quotes, A=B behind export, one | and > FILE.
func enter(t *testing.T, line string) {
	t.Helper()
	words := shellWords(t, line)
	if words[0] == "export" {
		for _, setting := range words[1:] {
			name, value, _ := strings.Cut(setting, "=")
			t.Setenv(name, value)
		}
		return
	}
	var stdin, stdout, stderr bytes.Buffer
	if at := slices.Index(words, "|"); at >= 0 {
		stdin.WriteString(strings.Join(words[1:at], " ") + "\n")
		words = words[at+1:]
	}
	file := ""
	if at := slices.IndexFunc(words, func(word string) bool { return word == ">" || word == ">>" }); at >= 0 {
		file, words = words[at+1], words[:at]
	}
	if code := run(words, &stdin, &stdout, &stderr); code != exitDone && code != exitInPart {
		t.Errorf("%s\nexit code %d\n%s", line, code, stderr.String())
	}
	if file != "" && !strings.HasPrefix(file, "~") {
		if err := os.WriteFile(file, stdout.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// shellWords splits a line at spaces outside single quotes.
func shellWords(t *testing.T, line string) []string {
	t.Helper()
	var words []string
	word, quoted, begun := "", false, false
	for _, r := range line {
		switch {
		case r == '\'':
			quoted, begun = !quoted, true
		case r == ' ' && !quoted:
			if begun {
				words = append(words, word)
			}
			word, begun = "", false
		default:
			word, begun = word+string(r), true
		}
	}
	if quoted {
		t.Fatalf("a quote stays open in %s", line)
	}
	return append(words, word)
}
