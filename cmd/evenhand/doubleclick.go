//go:build !windows

package main

import (
	"bufio"
	"os"
	"path/filepath"
	"runtime"
	"strings"

	"golang.org/x/term"
)

// doubleClicked says that the program was started from a file manager: in a graphical session, and by
// nobody at a terminal. macOS always starts a bare program in a terminal; there the archive holds
// something else to double-click.
func doubleClicked() bool {
	if runtime.GOOS == "darwin" || os.Getenv("DISPLAY") == "" && os.Getenv("WAYLAND_DISPLAY") == "" {
		return false
	}
	for _, stream := range []*os.File{os.Stdin, os.Stdout, os.Stderr} {
		if term.IsTerminal(int(stream.Fd())) {
			return false
		}
	}
	return true
}

// documents is the person's documents folder, by the name that the desktop gives it
// (xdg-user-dirs: $XDG_CONFIG_HOME/user-dirs.dirs), else Documents.
func documents() (string, error) {
	home, err := os.UserHomeDir()
	if err != nil {
		return "", err
	}
	usual := filepath.Join(home, "Documents")
	config, err := os.UserConfigDir()
	if err != nil || runtime.GOOS == "darwin" {
		return usual, nil
	}
	file, err := os.Open(filepath.Join(config, "user-dirs.dirs"))
	if err != nil {
		return usual, nil
	}
	defer file.Close()
	for lines := bufio.NewScanner(file); lines.Scan(); {
		value, ok := strings.CutPrefix(strings.TrimSpace(lines.Text()), "XDG_DOCUMENTS_DIR=")
		if !ok {
			continue
		}
		folder := strings.Replace(strings.Trim(value, `"`), "$HOME", home, 1)
		if filepath.IsAbs(folder) && filepath.Clean(folder) != filepath.Clean(home) {
			return folder, nil
		}
	}
	return usual, nil
}
