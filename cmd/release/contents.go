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

// Opening the desk from the archive without unpacking it is the commonest slip on Windows.
const windowsStarter = "@echo off\r\n" +
	"cd /d \"%~dp0\"\r\n" +
	"if not exist evenhand.exe (\r\n" +
	"  echo Unpack the whole archive first: right-click it, choose Extract All, and open the desk from the new folder.\r\n" +
	"  echo Primero extraiga todo el archivo comprimido: clic derecho, Extraer todo, y abra desde la carpeta nueva.\r\n" +
	"  pause\r\n" +
	"  exit /b 1\r\n" +
	")\r\n" +
	"evenhand.exe desk\r\n" +
	"if errorlevel 1 pause\r\n"

// macOS marks what was downloaded and asks whether it may be opened; who let this file be opened has
// answered for the program beside it, too.
const macStarter = "#!/bin/sh\n" +
	"cd \"$(dirname \"$0\")\" || exit 1\n" +
	"xattr -d com.apple.quarantine evenhand 2>/dev/null\n" +
	"exec ./evenhand desk\n"

// starters are what a person double-clicks. On Linux, desktops differ too much; there the page
// says how to start.
var starters = map[string][]file{
	"windows": {{name: "Open the desk.cmd", text: []byte(windowsStarter), runs: true}},
	"darwin":  {{name: "Open the desk.command", text: []byte(macStarter), runs: true}},
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
