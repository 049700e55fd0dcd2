package main

import (
	"archive/zip"
	"bytes"
	"encoding/csv"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// deskWords are all sentences of the desk, in both languages.
func deskWords(t *testing.T) (words []string) {
	t.Helper()
	tables, err := filepath.Glob("../evenhand/desk/said/*.csv")
	if err != nil || len(tables) == 0 {
		t.Fatalf("no sentences of the desk: %v", err)
	}
	for _, table := range tables {
		text, err := os.ReadFile(table)
		if err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range rows {
			words = append(words, row[1], row[2])
		}
	}
	return words
}

// An archive holds the program, the page, what to double-click and the licences; it is the same
// each time.
func TestArchive(t *testing.T) {
	common, err := commonFiles()
	if err != nil {
		t.Fatal(err)
	}
	files := slices.Concat([]file{{name: "evenhand.exe", text: []byte("MZ"), runs: true}}, common, starters["windows"])
	var archives [2][]byte
	for i := range archives {
		path, err := pack(t.TempDir(), "windows", "amd64", files)
		if err != nil {
			t.Fatal(err)
		}
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		archives[i] = text
	}
	if !bytes.Equal(archives[0], archives[1]) {
		t.Error("two archives of the same files differ")
	}
	archive, err := zip.NewReader(bytes.NewReader(archives[0]), int64(len(archives[0])))
	if err != nil {
		t.Fatal(err)
	}
	held := map[string]string{}
	for _, f := range archive.File {
		entry, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		var text bytes.Buffer
		if _, err := text.ReadFrom(entry); err != nil {
			t.Fatal(err)
		}
		held[strings.TrimPrefix(f.Name, "evenhand-windows-amd64/")] = text.String()
	}
	if held["evenhand.exe"] != "MZ" {
		t.Error("the program is not in it")
	}
	if !strings.Contains(held["Open the desk.cmd"], "evenhand.exe desk\r\n") {
		t.Error("nothing to double-click")
	}
	if !strings.Contains(held["Start here.html"], "double-click") {
		t.Error("no page that says how to start")
	}
	for _, said := range regexp.MustCompile(`<em>([^<]+)</em>`).FindAllStringSubmatch(held["Start here.html"], -1) {
		if words := strings.Join(strings.Fields(said[1]), " "); !slices.Contains(deskWords(t), words) {
			t.Errorf("the page speaks of %q, and the desk never says that", words)
		}
	}
	for _, of := range []string{"==== evenhand,", "==== Go,", "==== go.etcd.io/bbolt v", "==== github.com/urfave/cli/v2 v", "LICENSE-DejaVu"} {
		if !strings.Contains(held["Licences.txt"], of) {
			t.Errorf("the licences lack %q", of)
		}
	}
}

// Who unpacks the archive for macOS has a program and a starter that may be run, wherever the archive was packed, and a
// starter that the shell can read; the rest is no program.
func TestMacArchiveCanBeStarted(t *testing.T) {
	common, err := commonFiles()
	if err != nil {
		t.Fatal(err)
	}
	path, err := pack(t.TempDir(), "darwin", "arm64", slices.Concat([]file{{name: "evenhand", runs: true}}, common, starters["darwin"]))
	if err != nil {
		t.Fatal(err)
	}
	archive, err := zip.OpenReader(path)
	if err != nil {
		t.Fatal(err)
	}
	defer archive.Close()
	runs := 0
	for _, f := range archive.File {
		name := strings.TrimPrefix(f.Name, "evenhand-darwin-arm64/")
		want := os.FileMode(0o644)
		if name == "evenhand" || name == "Open the desk.command" {
			want = 0o755
			runs++
		}
		// Only "made by Unix" (3) makes unpackers heed the modes (APPNOTE.TXT of PKWARE, 4.4.2).
		if f.Mode() != want || f.CreatorVersion>>8 != 3 {
			t.Errorf("%s has mode %v, made by %d", name, f.Mode(), f.CreatorVersion>>8)
		}
	}
	if runs != 2 || !strings.HasPrefix(macStarter, "#!/bin/sh\n") || strings.Contains(macStarter, "\r") {
		t.Errorf("%d files can be started, by %.12q", runs, macStarter)
	}
	if sh, err := exec.LookPath("sh"); err == nil {
		if said, err := exec.Command(sh, "-n", "-c", macStarter).CombinedOutput(); err != nil {
			t.Errorf("no shell reads the starter: %v %s", err, said)
		}
	}
}
