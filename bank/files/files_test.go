package files_test

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"evenhand/bank/files"
)

func text(s string) func(io.Writer) error {
	return func(w io.Writer) error { _, err := io.WriteString(w, s); return err }
}

func mustHold(t *testing.T, path, want string) {
	t.Helper()
	if got, err := os.ReadFile(path); err != nil || string(got) != want {
		t.Errorf("%s holds %q, %v; want %q", path, got, err, want)
	}
}

// names lists a folder.
func names(t *testing.T, dir string) string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for _, e := range entries {
		list = append(list, e.Name())
	}
	return strings.Join(list, " ")
}

// A write that fails leaves what was there, and nothing beside it.
func TestAFailedWriteLeavesWhatWasThere(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.csv")
	broken := errors.New("broken")
	fails := func(w io.Writer) error { io.WriteString(w, "half"); return broken }
	if err := files.Write(path, files.Shared, text("old")); err != nil {
		t.Fatal(err)
	}
	for _, err := range []error{
		files.Write(path, files.Shared, fails),
		files.New(filepath.Join(dir, "b.csv"), files.Shared, fails),
		files.New(filepath.Join(dir, "b.csv"), files.Shared, text("new"), func(string) error { return broken }),
		files.Folder(filepath.Join(dir, "c"), func(string) error { return broken }),
	} {
		if !errors.Is(err, broken) {
			t.Errorf("got %v", err)
		}
	}
	mustHold(t, path, "old")
	if got := names(t, dir); got != "a.csv" {
		t.Errorf("the folder holds %s", got)
	}
}

// Of many who make a file of one name at once, one does, and it is there whole.
func TestNewReplacesNothing(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a")
	var made, refused int
	var counting sync.Mutex
	var all sync.WaitGroup
	for i := range 20 {
		all.Go(func() {
			err := files.New(path, files.Private, text(fmt.Sprintf("%02d", i)))
			counting.Lock()
			defer counting.Unlock()
			if err == nil {
				made++
			} else if errors.Is(err, fs.ErrExist) {
				refused++
			}
		})
	}
	all.Wait()
	if made != 1 || refused != 19 || names(t, dir) != "a" {
		t.Errorf("%d made it, %d were refused; the folder holds %s", made, refused, names(t, dir))
	}
}

// A folder is replaced with all that is in it: nothing of the old one is among the new.
func TestFolderIsReplacedAsOne(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "deep", "quiz")
	for _, set := range [][]string{{"form-A", "form-B", "quiz"}, {"form-A", "quiz"}} {
		err := files.Folder(path, func(dir string) error {
			for _, name := range set {
				if err := files.Write(filepath.Join(dir, name), files.Shared, text(strings.Join(set, " "))); err != nil {
					return err
				}
			}
			return nil
		})
		if err != nil || names(t, path) != strings.Join(set, " ") {
			t.Errorf("%v; the folder holds %s, want %s", err, names(t, path), set)
		}
		mustHold(t, filepath.Join(path, "quiz"), strings.Join(set, " "))
	}
	if got := names(t, filepath.Dir(path)); got != "quiz" {
		t.Errorf("beside it stands %s", got)
	}
}

// What killed runs left is taken away: of this computer when no such run is going on, of others after a day.
// What this run is busy with, and what only looks alike, stays.
func TestSweep(t *testing.T) {
	dir := t.TempDir()
	busy := filepath.Base(files.TempName(filepath.Join(dir, "x")))
	parts := strings.Split(busy, "-")
	dead := strings.Join([]string{parts[0], parts[1], "999999999", parts[3]}, "-") // beyond any process number
	other := strings.Join([]string{parts[0], "zzzz", parts[2], parts[3]}, "-")
	elsewhere := ".evenhand-0000-12-abcdef"
	if parts[1] == "0000" {
		elsewhere = ".evenhand-0001-12-abcdef"
	}
	old := strings.Replace(elsewhere, "-12-", "-13-", 1)
	for _, name := range []string{busy, dead, other, elsewhere, old, ".evenhand-12345", ".evenhandy", "mine"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte("x"), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	longAgo := time.Now().Add(-48 * time.Hour)
	for _, name := range []string{old, ".evenhand-12345", "mine", other} {
		os.Chtimes(filepath.Join(dir, name), longAgo, longAgo)
	}
	files.Sweep(dir)
	left := names(t, dir)
	for name, stays := range map[string]bool{
		busy: true, dead: false, other: true, elsewhere: true, old: false, ".evenhand-12345": false,
		".evenhandy": true, "mine": true,
	} {
		if strings.Contains(" "+left+" ", " "+name+" ") != stays {
			t.Errorf("%s stays: %v, want %v", name, !stays, stays)
		}
	}
}

// A name is the same as another through every kind of link.
func TestSame(t *testing.T) {
	dir := t.TempDir()
	in := func(name string) string { return filepath.Join(dir, name) }
	if err := os.WriteFile(in("a"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	err := errors.Join(os.Symlink("a", in("soft")), os.Link(in("a"), in("hard")),
		os.Symlink(dir, in("up")), os.Symlink("none", in("dangling")))
	switch {
	case err != nil && runtime.GOOS == "windows":
		t.Skip("there links are a right that not everybody has: ", err)
	case err != nil:
		t.Fatal(err)
	}
	for _, name := range []string{"a", "soft", "hard", "up/a", "up/soft"} {
		if !files.Same(in(name), in("a")) {
			t.Errorf("%s is not the same", name)
		}
	}
	if files.Same(in("dangling"), in("a")) || !files.Same(in("dangling"), in("none")) || !files.Same(in("up/none"), in("none")) || files.Same(in("b"), in("a")) {
		t.Error("what isn't there is taken for something else")
	}
}

// The mode is what the umask leaves of it; private files stay private whatever it is.
func TestModes(t *testing.T) {
	dir := t.TempDir()
	for name, mode := range map[string]os.FileMode{"shared": files.Shared, "private": files.Private} {
		if err := files.Write(filepath.Join(dir, name), mode, text("x")); err != nil {
			t.Fatal(err)
		}
		plain, err := os.OpenFile(filepath.Join(dir, name+" plainly made"), os.O_CREATE|os.O_WRONLY, mode)
		if err != nil {
			t.Fatal(err)
		}
		want, _ := plain.Stat()
		plain.Close()
		if got, err := os.Stat(filepath.Join(dir, name)); err != nil || got.Mode() != want.Mode() {
			t.Errorf("%s: %v, want %v", name, got.Mode(), want.Mode())
		}
	}
}

// Before a file gets its name it is made safe on the disk: the first thing that is done to
// what was written is fsync (POSIX), which here meets a file that is closed already.
func TestFilesAreMadeSafeOnTheDisk(t *testing.T) {
	path := filepath.Join(t.TempDir(), "sheet.pdf")
	err := files.Write(path, files.Shared, func(w io.Writer) error { return w.(io.Closer).Close() })
	var failed *fs.PathError
	if !errors.As(err, &failed) || failed.Op != "sync" {
		t.Errorf("after the writing came %v, not an fsync", err)
	}
	if left := names(t, filepath.Dir(path)); left != "" {
		t.Errorf("left %s", left)
	}
}
