package main

import (
	"bytes"
	_ "embed"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// file is one file of an archive.
type file struct {
	name string // below the archive's folder, with slashes
	text []byte
	runs bool // it can be started
}

//go:embed start.html
var startPage []byte

// starters are what a person double-clicks. On Linux, desktops differ too much; there the page
// says how to start.
var starters = map[string][]file{
	"windows": {{name: "Open the desk.cmd", text: []byte("@echo off\r\ncd /d \"%~dp0\"\r\nevenhand.exe desk\r\nif errorlevel 1 pause\r\n"), runs: true}},
	"darwin":  {{name: "Open the desk.command", text: []byte("#!/bin/sh\ncd \"$(dirname \"$0\")\" && exec ./evenhand desk\n"), runs: true}},
}

// fontFolder is where Debian's package fonts-sil-andika puts the children's font, and fontLicence
// the terms under which it may be passed on (SIL Open Font License 1.1).
const (
	fontFolder  = "/usr/share/fonts/truetype/andika"
	fontLicence = "/usr/share/doc/fonts-sil-andika/copyright"
)

// commonFiles are those of every archive.
func commonFiles() ([]file, error) {
	licences, err := licences()
	if err != nil {
		return nil, err
	}
	files := []file{{name: "Start here.html", text: startPage}, {name: "Licences.txt", text: licences}}
	terms, err := os.ReadFile(fontLicence)
	if err != nil {
		fmt.Fprintln(os.Stderr, "Andika is not installed here (Debian: fonts-sil-andika); the archives go without it")
		return files, nil
	}
	files = append(files, file{name: "fonts/Andika-licence.txt", text: terms})
	for _, name := range []string{"Andika-Regular.ttf", "Andika-Bold.ttf"} {
		text, err := os.ReadFile(filepath.Join(fontFolder, name))
		if err != nil {
			return nil, err
		}
		files = append(files, file{name: "fonts/" + name, text: text})
	}
	return files, nil
}

// licences is the text of every licence under which something in the program stands: its own, Go's
// and those of all modules it is built from.
func licences() ([]byte, error) {
	root, err := goTold("env", "GOROOT")
	if err != nil {
		return nil, err
	}
	main, err := goTold("list", "-m", "-f", "{{.Dir}}")
	if err != nil {
		return nil, err
	}
	modules, err := goTold("list", "-deps", "-f",
		"{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}}\t{{.Dir}}{{end}}{{end}}", "evenhand/cmd/evenhand")
	if err != nil {
		return nil, err
	}
	lines := strings.Split(modules, "\n")
	slices.Sort(lines)
	lines = slices.DeleteFunc(slices.Compact(lines), func(line string) bool { return line == "" })
	var all bytes.Buffer
	for _, line := range append([]string{"evenhand\t" + main, "Go\t" + root}, lines...) {
		name, folder, _ := strings.Cut(line, "\t")
		texts, err := filepath.Glob(filepath.Join(folder, "[LN][IiOo]*"))
		if err != nil {
			return nil, err
		}
		found := false
		for _, path := range texts {
			base := strings.ToUpper(filepath.Base(path))
			if !strings.HasPrefix(base, "LICENSE") && !strings.HasPrefix(base, "LICENCE") && !strings.HasPrefix(base, "NOTICE") {
				continue
			}
			text, err := os.ReadFile(path)
			if err != nil {
				return nil, err
			}
			found = true
			fmt.Fprintf(&all, "==== %s, %s ====\n\n%s\n\n", name, filepath.Base(path), bytes.TrimSpace(text))
		}
		if !found {
			return nil, fmt.Errorf("%s has no licence file: it can't be passed on", name)
		}
	}
	return all.Bytes(), nil
}

// goTold is what the go command prints.
func goTold(args ...string) (string, error) {
	cmd := exec.Command("go", args...)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	return strings.TrimSpace(string(out)), err
}
