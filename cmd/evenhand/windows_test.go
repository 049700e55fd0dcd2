package main

import (
	"bufio"
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"evenhand/testdata/outside"
)

// randomSource is the one function of Windows that wine 8 lacks and Go's programs need.
const randomSource = `#include <windows.h>
BOOLEAN NTAPI SystemFunction036(PVOID, ULONG);
__declspec(dllexport) BOOL WINAPI ProcessPrng(PBYTE data, SIZE_T size) { return SystemFunction036(data, (ULONG)size); }
`

// The program for Windows, run by wine, goes the whole way and writes the same bytes as this one.
func TestWindowsProgram(t *testing.T) {
	outside.Full(t, "the program for Windows under wine", "wine", "wineboot", "x86_64-w64-mingw32-gcc")
	folder := t.TempDir()
	program := filepath.Join(folder, "evenhand.exe")
	build := exec.Command("go", "build", "-o", program, ".")
	build.Env = append(os.Environ(), "CGO_ENABLED=0", "GOOS=windows", "GOARCH=amd64")
	finish(t, build)
	native := filepath.Join(folder, "evenhand")
	finish(t, exec.Command("go", "build", "-o", native, "."))
	home := filepath.Join(folder, "home") // where wine takes the documents folder to be
	if err := os.Mkdir(home, 0o700); err != nil {
		t.Fatal(err)
	}
	shown := browserStub(t, home)
	windows := wine(t, folder)

	finish(t, windows(program, "demo", "--dir", "windows"))
	demo := exec.Command(native, "demo", "--dir", "linux")
	demo.Dir = folder
	finish(t, demo)
	for _, name := range []string{"friday/quiz.csv", "friday/form-A.pdf", "friday/form-B-key.pdf", "all-items.csv", "marks.csv", "friday.html"} {
		a, err := os.ReadFile(filepath.Join(folder, "windows", filepath.FromSlash(name)))
		if err != nil {
			t.Fatal(err)
		}
		b, err := os.ReadFile(filepath.Join(folder, "linux", filepath.FromSlash(name)))
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(a, b) {
			t.Errorf("%s differs between Windows and Linux", name)
		}
	}

	bank := []string{program, "--bank", "team.bank"}
	list := "question,answer\n47 + 36,83\n27 + 35,62\n48 + 26,74\n36 + 28,64\n"
	if err := os.WriteFile(filepath.Join(folder, "list.csv"), []byte(list), 0o644); err != nil {
		t.Fatal(err)
	}
	plan := "title = \"Check\"\nforms = 2\n[[row]]\nskill = \"add-two-digit\"\ncount = 2\n"
	if err := os.WriteFile(filepath.Join(folder, "plan.toml"), []byte(plan), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, words := range []string{
		"init", "import list.csv --by MK", "assemble plan.toml --out friday --week 2026-W48",
		"mark friday --out marks.csv --pupils P01-P04",
	} {
		finish(t, windows(append(bank, strings.Fields(words)...)...))
	}
	fillGrid(t, filepath.Join(folder, "marks.csv"))
	for _, words := range []string{"mark friday marks.csv", "check", "backup copy.bank"} {
		finish(t, windows(append(bank, strings.Fields(words)...)...))
	}
	report := windows(append(bank, "report", "friday", "--csv", "pupils")...)
	if told, err := report.Output(); err != nil || strings.Count(string(told), "\n") < 5 || !strings.Contains(string(told), "P04") {
		t.Errorf("the marks of four pupils are told as %q: %v", told, err)
	}

	desk := windows(append(bank, "desk", "--no-browser")...)
	talk, err := desk.StderrPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := desk.Start(); err != nil {
		t.Fatal(err)
	}
	defer func() { _ = desk.Process.Kill(); _ = desk.Wait() }()
	link := ""
	for lines := bufio.NewScanner(talk); link == "" && lines.Scan(); {
		link = regexp.MustCompile(`http://\S+/enter/\w+`).FindString(lines.Text())
	}
	comeIn(t, link).text("/items")

	// Double-clicked, it has a console of its own and opens the desk on a bank in the documents folder.
	if err := windows("cmd", "/c", "start", "evenhand.exe").Run(); err != nil { // its pipes would stay open
		t.Fatal(err)
	}
	desktop := comeIn(t, shown())
	if !strings.Contains(desktop.text("/"), "The bank is empty") {
		t.Error("double-clicked, the program does not open the desk")
	}
	desktop.post("/close")
}

// fillGrid marks each answer of a blank grid as right.
func fillGrid(t *testing.T, path string) {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	rows := strings.Split(strings.ReplaceAll(string(text), "\r\n", "\n"), "\n")
	for i, row := range rows {
		if cells := strings.Split(row, ","); strings.HasPrefix(row, "P0") {
			for k := 2; k < len(cells)-1; k++ { // between the form and the quiz
				cells[k] = "✓"
			}
			rows[i] = strings.Join(cells, ",")
		}
	}
	if err := os.WriteFile(path, []byte(strings.Join(rows, "\n")), 0o644); err != nil {
		t.Fatal(err)
	}
}

// wine makes a place for programs of Windows to run in; the function starts one there.
func wine(t *testing.T, folder string) func(words ...string) *exec.Cmd {
	t.Helper()
	environment := append(os.Environ(), "WINEPREFIX="+filepath.Join(folder, "prefix"), "WINEDEBUG=-all",
		"WINEDLLOVERRIDES=mscoree,mshtml=;bcryptprimitives=n", "EVENHAND_BY=MK")
	start := exec.Command("wineboot", "-i")
	start.Env = environment
	finish(t, start)
	source := filepath.Join(folder, "random.c")
	if err := os.WriteFile(source, []byte(randomSource), 0o644); err != nil {
		t.Fatal(err)
	}
	library := filepath.Join(folder, "prefix", "drive_c", "windows", "system32", "bcryptprimitives.dll")
	finish(t, exec.Command("x86_64-w64-mingw32-gcc", "-shared", "-o", library, source, "-ladvapi32"))
	t.Cleanup(func() {
		stop := exec.Command("wineserver", "-k")
		stop.Env = environment
		_ = stop.Run() // where wine's server has ended by itself there is nothing to stop
	})
	return func(words ...string) *exec.Cmd {
		cmd := exec.Command("wine", words...)
		cmd.Dir, cmd.Env = folder, environment
		return cmd
	}
}

// finish runs a program that must succeed.
func finish(t *testing.T, cmd *exec.Cmd) {
	t.Helper()
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v: %v\n%.2000s", cmd.Args, err, out)
	}
}
