// Package outside is how tests ask for the programs that they are held against: solvers, R, a
// browser, a database. A plain "go test ./..." needs none of them: such a test is skipped, and
// the package says at its end which checks that were.
package outside

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
)

// References is the variable that asks for the full check when it is "1", and for a longer run of
// the same with more cases when it is "all".
const References = "EVENHAND_REFERENCES"

// Asked says whether the full check was asked for, or more.
func Asked() bool { return os.Getenv(References) == "1" || Longer() }

// Longer says whether the longer run was asked for.
func Longer() bool { return os.Getenv(References) == "all" }

var (
	skips sync.Mutex
	left  []string // what was skipped, in the order of the tests
	apart []string // the same of tests with a variable of their own, each with it
)

// Full skips a test that only the full check runs. There a program that is missing fails the
// test, so that the full check never passes by leaving something out.
func Full(t testing.TB, check string, programs ...string) {
	t.Helper()
	if !Asked() {
		skip(t, check)
	}
	for _, program := range programs {
		if _, err := exec.LookPath(program); err != nil {
			t.Fatalf("%s: %s is not installed, and %s asks for all outside references", check, program, References)
		}
	}
}

// Installed skips a test where one of its programs is missing; where they are there it runs in
// every "go test", as it is quick.
func Installed(t testing.TB, check string, programs ...string) {
	t.Helper()
	for _, program := range programs {
		if _, err := exec.LookPath(program); err == nil {
			continue
		}
		if Asked() {
			t.Fatalf("%s: %s is not installed, and %s asks for all outside references", check, program, References)
		}
		skip(t, check)
	}
}

func skip(t testing.TB, check string) {
	t.Helper()
	Note(check)
	t.Skipf("skipped: %s; %s=1 with the outside programs installed runs it", check, References)
}

// Named skips a test unless a variable of its own names what it needs, and then gives that; asking
// for the full check is not enough. What is for instance "FOLDER".
func Named(t testing.TB, check, variable, what string) string {
	t.Helper()
	named := os.Getenv(variable)
	if named == "" {
		note(&apart, fmt.Sprintf("%s (%s=%s runs it)", check, variable, what))
		t.Skipf("skipped: %s; %s=%s runs it", check, variable, what)
	}
	return named
}

// Note adds a check to what is said at the end; each is said once.
func Note(check string) { note(&left, check) }

func note(list *[]string, check string) {
	skips.Lock()
	defer skips.Unlock()
	if !slices.Contains(*list, check) {
		*list = append(*list, check)
	}
}

// M runs a package's tests and then says what they skipped:
//
//	func TestMain(m *testing.M) { os.Exit(outside.M{M: m}.Run()) }
type M struct{ *testing.M }

// Run is the tests' exit code.
func (m M) Run() int {
	code := m.M.Run()
	tell()
	return code
}

// tell says what was skipped. The go command keeps back what a passing package prints, so this
// goes past it to the terminal or the pipe that it writes to.
func tell() {
	var said []string
	if len(left) > 0 {
		said = append(said, fmt.Sprintf("%s (%s=1 runs all)", strings.Join(left, "; "), References))
	}
	if said = append(said, apart...); len(said) == 0 || testing.Verbose() {
		return
	}
	screen := screen()
	if screen == nil {
		return
	}
	defer screen.Close()
	folder, _ := os.Getwd()
	fmt.Fprintf(screen, "skipped in %s: %s\n", filepath.Base(folder), strings.Join(said, "; "))
}

// screen opens what the go command, this program's parent, prints to; nil where that is a file,
// whose end is not ours to write, or can't be reached.
func screen() *os.File {
	for _, path := range []string{fmt.Sprintf("/proc/%d/fd/2", os.Getppid()), "/dev/tty", "CONOUT$"} {
		info, err := os.Stat(path)
		if err != nil || info.Mode()&(os.ModeNamedPipe|os.ModeCharDevice) == 0 {
			continue
		}
		if file, err := os.OpenFile(path, os.O_WRONLY, 0); err == nil {
			return file
		}
	}
	return nil
}
