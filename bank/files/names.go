package files

import (
	"fmt"
	"hash/fnv"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"sync"
	"time"
)

// Same says whether two names are of one file or folder, also through links.
func Same(a, b string) bool {
	one, err := os.Stat(a)
	if err != nil {
		return Real(a) == Real(b) // two names of what isn't there yet
	}
	other, err := os.Stat(b)
	return err == nil && os.SameFile(one, other)
}

// Real is the absolute path with every link followed, also of a file that isn't there
// yet. Two names of a file are the same path then, unless it has two hard links.
func Real(path string) string {
	if abs, err := filepath.Abs(path); err == nil {
		path = abs
	}
	if real, err := filepath.EvalSymlinks(path); err == nil {
		return real
	}
	if to, err := os.Readlink(path); err == nil { // a link to what isn't there
		if !filepath.IsAbs(to) {
			to = filepath.Join(filepath.Dir(path), to)
		}
		path = to
	}
	if dir, err := filepath.EvalSymlinks(filepath.Dir(path)); err == nil {
		return filepath.Join(dir, filepath.Base(path))
	}
	return path
}

// TempName is a new name beside the path for what will get that name when it is done.
// It tells this computer and this run of the program, so that others let it be.
func TempName(path string) string {
	name := filepath.Join(filepath.Dir(path), fmt.Sprintf(".evenhand-%s-%d-%06x", thisComputer(), os.Getpid(), rand.Uint32N(1<<24)))
	begun.Store(name, true)
	return name
}

// begun are the names that TempName gave.
var begun sync.Map

// Abandon takes away all that this run has begun and not finished, before it ends.
func Abandon() {
	begun.Range(func(name, _ any) bool {
		os.RemoveAll(name.(string))
		return true
	})
}

var tempName = regexp.MustCompile(`^\.evenhand-(?:([0-9a-f]{4})-([0-9]+)-[0-9a-f]{6}|[0-9]+)$`)

// thisComputer is four digits that follow from the computer's name.
func thisComputer() string {
	name, _ := os.Hostname()
	sum := fnv.New32a()
	sum.Write([]byte(name))
	return fmt.Sprintf("%04x", sum.Sum32()&0xffff)
}

// longAgo is when no program is still busy with what it began.
const longAgo = 24 * time.Hour

// Sweep takes away from a folder what killed runs of the program left half done, and
// says what that was. What another run on this computer is busy with stays, and so does,
// for a day, what another computer began.
func Sweep(dir string) (swept []string) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil
	}
	for _, entry := range entries {
		m := tempName.FindStringSubmatch(entry.Name())
		if m == nil || !abandoned(entry, m[1], m[2]) {
			continue
		}
		name := filepath.Join(dir, entry.Name())
		if os.RemoveAll(name) == nil {
			swept = append(swept, name)
		}
	}
	return swept
}

// abandoned says that nobody is busy with the entry any more.
func abandoned(entry os.DirEntry, computer, run string) bool {
	if computer == thisComputer() {
		number, err := strconv.Atoi(run)
		return err == nil && number != os.Getpid() && !running(number)
	}
	info, err := entry.Info()
	return err == nil && time.Since(info.ModTime()) > longAgo
}
