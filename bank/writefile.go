package bank

import (
	"io"
	"os"
	"path/filepath"
)

// WriteFile writes a file whole or not at all: under a temporary name in its folder,
// made safe on the disk, and only then given its name. A file of that name is replaced.
func WriteFile(path string, mode os.FileMode, write func(io.Writer) error) (err error) {
	file, err := os.CreateTemp(filepath.Dir(path), ".evenhand-*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			file.Close()
			os.Remove(file.Name())
		}
	}()
	for _, step := range []func() error{
		func() error { return write(file) },
		func() error { return file.Chmod(mode) },
		file.Sync,
		file.Close,
	} {
		if err = step(); err != nil {
			return err
		}
	}
	return os.Rename(file.Name(), path)
}
