package files

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
)

// Folder makes a folder of files that appear as one: fill writes them into a temporary
// folder, which then gets the name. A folder of that name is replaced with all that is in
// it; wherever the program stops, one of the two is there, whole. Folders above it are
// made if need be.
func Folder(path string, fill func(dir string) error) error {
	path = Real(path)
	above := filepath.Dir(path)
	if err := os.MkdirAll(above, 0o777); err != nil {
		return err
	}
	temp := TempName(path)
	if err := os.Mkdir(temp, 0o777); err != nil {
		return err
	}
	err := fill(temp)
	if err == nil {
		err = syncFolder(temp)
	}
	if err == nil {
		err = swapIn(temp, path)
	}
	if err != nil {
		return errors.Join(err, os.RemoveAll(temp))
	}
	return syncFolder(above)
}

// swapIn gives a folder its name and removes the folder that had it.
func swapIn(temp, path string) error {
	if _, err := os.Lstat(path); errors.Is(err, os.ErrNotExist) {
		return os.Rename(temp, path)
	}
	if err := exchange(temp, path); err == nil {
		return os.RemoveAll(temp)
	}
	// Without such an exchange the old folder keeps a name of its own until the new one has its place.
	aside := path + ".earlier"
	if err := os.Rename(path, aside); err != nil {
		return fmt.Errorf("the folder %s can't be replaced: %w", path, err)
	}
	if err := os.Rename(temp, path); err != nil {
		return errors.Join(err, os.Rename(aside, path))
	}
	return os.RemoveAll(aside)
}
