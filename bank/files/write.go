package files

import (
	"errors"
	"evenhand/standards/words"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// The modes of files, of which the system takes off what the user's umask forbids.
const (
	Shared  os.FileMode = 0o666 // what colleagues may read
	Private os.FileMode = 0o600 // what is about pupils, and the bank
)

// Write writes a file whole or not at all: under a temporary name in its folder, made
// safe on the disk, and only then given its name. A file of that name is replaced; of a
// link, the file that it names.
func Write(path string, mode os.FileMode, write func(io.Writer) error) error {
	path = Real(path)
	temp, err := fill(path, mode, write)
	if err != nil {
		return err
	}
	if err := os.Rename(temp, path); err != nil {
		return errors.Join(err, os.Remove(temp))
	}
	return syncFolder(filepath.Dir(path))
}

// New writes a file as Write does, but never replaces one, however many programs try
// at once: the error is then fs.ErrExist. What was written may be proved before it gets
// its name: it is not kept when a proof fails.
func New(path string, mode os.FileMode, write func(io.Writer) error, proofs ...func(temp string) error) error {
	temp, err := fill(path, mode, write)
	if err != nil {
		return err
	}
	for _, prove := range proofs {
		if err := prove(temp); err != nil {
			return errors.Join(err, os.Remove(temp))
		}
	}
	return Place(temp, path)
}

// Place gives a finished file its name, where nothing has that name yet; else the
// error is fs.ErrExist. The temporary name is gone in either case.
func Place(temp, path string) error {
	err := os.Link(temp, path)
	switch {
	case err == nil || errors.Is(err, fs.ErrExist):
		err = errors.Join(err, os.Remove(temp))
	default: // a file system without links
		err = placeByRename(temp, path)
	}
	if err != nil {
		return err
	}
	return syncFolder(filepath.Dir(path))
}

// placeByRename does it in two steps: it takes the name, then replaces its own empty file.
func placeByRename(temp, path string) error {
	holder, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, Private)
	if err != nil {
		return errors.Join(err, os.Remove(temp))
	}
	holder.Close()
	if err := os.Rename(temp, path); err != nil {
		return errors.Join(err, os.Remove(temp), os.Remove(path))
	}
	return nil
}

// fill writes a temporary file beside the path and makes it safe on the disk.
func fill(path string, mode os.FileMode, write func(io.Writer) error) (temp string, err error) {
	temp = TempName(path)
	file, err := os.OpenFile(temp, os.O_CREATE|os.O_EXCL|os.O_RDWR, mode)
	if err != nil {
		return "", err
	}
	for _, step := range []func() error{func() error { return write(file) }, file.Sync, file.Close} {
		if err := step(); err != nil {
			file.Close()
			return "", errors.Join(err, os.Remove(temp))
		}
	}
	return temp, nil
}

// syncFolder makes the names in a folder safe on the disk, where the system can.
func syncFolder(dir string) error {
	folder, err := os.Open(dir)
	if err != nil {
		return nil // a folder that may be written but not read: its names are safe a little later
	}
	defer folder.Close()
	if err := folder.Sync(); err != nil && !cannotSync(err) {
		return words.Errorf("the folder %s could not be made safe on the disk: %w", dir, err)
	}
	return nil
}

// Swap puts a finished file in the place of another, which keeps its mode.
func Swap(temp, path string) error {
	path = Real(path)
	if info, err := os.Stat(path); err == nil {
		if err := os.Chmod(temp, info.Mode().Perm()); err != nil {
			return errors.Join(err, os.Remove(temp))
		}
	}
	if err := os.Rename(temp, path); err != nil {
		return errors.Join(err, os.Remove(temp))
	}
	return syncFolder(filepath.Dir(path))
}
