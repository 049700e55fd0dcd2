// Command release builds what people download: an archive for each system with the program, a
// page that says how to start, something to double-click, the children's font where this machine
// has it, and the licences of all that the program is built from.
//
//	go run ./cmd/release            # into dist
//	go run ./cmd/release --out DIR windows/amd64
//
// The archives hold the same bytes whenever the same commit is built with the same Go.
package main

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// targets are the systems, by Go's names for them.
var targets = []string{
	"windows/amd64", "windows/arm64", "darwin/arm64", "darwin/amd64", "linux/amd64", "linux/arm64",
}

func main() {
	out := flag.String("out", "dist", "the `DIR` for the archives; it is made if need be")
	flag.Parse()
	wanted := flag.Args()
	if len(wanted) == 0 {
		wanted = targets
	}
	if err := release(*out, wanted); err != nil {
		fmt.Fprintln(os.Stderr, "release:", err)
		os.Exit(1)
	}
}

// release builds an archive for each target.
func release(out string, wanted []string) error {
	if err := os.MkdirAll(out, 0o755); err != nil {
		return err
	}
	common, err := commonFiles()
	if err != nil {
		return err
	}
	for _, target := range wanted {
		system, machine, ok := strings.Cut(target, "/")
		if !ok {
			return fmt.Errorf("a target is SYSTEM/MACHINE, such as windows/amd64, not %q", target)
		}
		program, err := build(system, machine)
		if err != nil {
			return fmt.Errorf("%s: %w", target, err)
		}
		files := append([]file{program}, common...)
		files = append(files, starters[system]...)
		path, err := pack(out, system, machine, files)
		if err != nil {
			return err
		}
		fmt.Println(path)
	}
	return nil
}

// build compiles the program for a system, without cgo and without paths of this machine.
func build(system, machine string) (file, error) {
	folder, err := os.MkdirTemp("", "evenhand-release-")
	if err != nil {
		return file{}, err
	}
	defer os.RemoveAll(folder)
	name := "evenhand"
	if system == "windows" {
		name += ".exe"
	}
	path := filepath.Join(folder, name)
	cmd := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", path, "evenhand/cmd/evenhand")
	cmd.Env = append(os.Environ(), "CGO_ENABLED=0", "GOOS="+system, "GOARCH="+machine)
	cmd.Stderr = os.Stderr
	if err := cmd.Run(); err != nil {
		return file{}, err
	}
	text, err := os.ReadFile(path)
	return file{name: name, text: text, runs: true}, err
}
