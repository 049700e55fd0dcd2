package files

import (
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// Guard stands between a program's outputs and what people made.
type Guard struct {
	Kept    []Kept // never replaced, whatever is asked for
	Replace bool   // another file of the name may be replaced: a person said so
}

// Kept is a file that no output may replace.
type Kept struct {
	Path string
	What string // in a sentence after "is": the bank, what is read here
}

// TakenError says that an output's name belongs to something else.
type TakenError struct {
	Path string
	Why  string
	Ask  bool // it may be replaced, if a person says so
}

func (e TakenError) Error() string {
	return fmt.Sprintf("%s %s; name another file", e.Path, e.Why)
}

// Check says whether an output may have the name.
func (g Guard) Check(path string) error {
	for _, kept := range g.Kept {
		if Same(path, kept.Path) {
			return TakenError{path, "is " + kept.What, false}
		}
	}
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		if _, err := os.Lstat(path); err == nil {
			return TakenError{path, "is a link to nothing", false}
		}
		return nil
	}
	link, linkErr := os.Lstat(path)
	switch {
	case err != nil:
		return err
	case linkErr == nil && link.Mode()&os.ModeSymlink != 0 && info.Mode().IsRegular():
		return TakenError{path, "is a link to " + Real(path), false}
	case info.IsDir():
		return TakenError{path, "is a folder", false}
	case info.Mode().IsRegular() && stored(path):
		return TakenError{path, "is a bank or its marks", false}
	case info.Mode().IsRegular() && !g.Replace:
		return TakenError{path, "is there already", true}
	}
	return nil
}

// Write writes a file whole or not at all, if it may have the name. What is no file but
// a pipe or a terminal is written to as it comes.
func (g Guard) Write(path string, mode os.FileMode, write func(io.Writer) error) error {
	if err := g.Check(path); err != nil {
		return err
	}
	if info, err := os.Stat(path); err == nil && !info.Mode().IsRegular() {
		return through(path, write)
	}
	if g.Replace {
		return Write(path, mode, write)
	}
	err := New(path, mode, write)
	if errors.Is(err, fs.ErrExist) {
		return TakenError{path, "is there already", true}
	}
	return err
}

func through(path string, write func(io.Writer) error) error {
	file, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	return errors.Join(write(file), file.Close())
}

// stored says whether a file is a bank or results, by its beginning: a bbolt file has a
// number of its own behind the 16 bytes of its first page's head.
func stored(path string) bool {
	file, err := os.Open(path)
	if err != nil {
		return false
	}
	defer file.Close()
	var head [20]byte
	_, err = io.ReadFull(file, head[:])
	return err == nil && binary.NativeEndian.Uint32(head[16:]) == 0xED0CDAED
}
