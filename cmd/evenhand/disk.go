package main

import (
	"errors"
	"io/fs"
	"path/filepath"
	"strings"
	"syscall"
)

// inWords is what an error says, with what the system says of a file in plain words: which
// name was read, and what stands there instead.
func inWords(err error) string {
	text := strings.TrimSpace(err.Error())
	var of *fs.PathError
	if !errors.As(err, &of) {
		return text
	}
	said := ""
	switch temporary := strings.HasPrefix(filepath.Base(of.Path), ".evenhand-"); {
	case errors.Is(of, fs.ErrNotExist) && temporary:
		said = "there is no folder " + filepath.Dir(of.Path) + "; make it first, or name another"
	case errors.Is(of, fs.ErrPermission) && temporary:
		said = "you may not make files in " + filepath.Dir(of.Path)
	case errors.Is(of, fs.ErrNotExist):
		said = "there is no file " + of.Path
	case errors.Is(of, syscall.EISDIR):
		said = of.Path + " is a folder, not a file"
	case errors.Is(of, syscall.ENOTDIR):
		said = of.Path + " is a file, or is in one, where a folder is needed"
	case errors.Is(of, syscall.ENAMETOOLONG):
		said = "the name " + of.Path + " is too long for this system"
	default:
		return text
	}
	return strings.Replace(text, of.Error(), said, 1)
}

// advice is what to do about an error of the disk; empty for others.
func advice(err error) string {
	switch {
	case errors.Is(err, syscall.ENOSPC), errors.Is(err, syscall.EDQUOT):
		return "the disk is full: make room and try again; what was there before is as it was"
	case errors.Is(err, syscall.EROFS):
		return "this disk can only be read: choose another place"
	case errors.Is(err, fs.ErrPermission):
		return "you may not do that there: choose another place, or ask whoever owns the file or folder to let you in " +
			"(a new bank can be read by its maker only; with 'chmod g+rw' on the bank its maker lets the group in, and " +
			"on its .marks only if the school's policy lets colleagues see pupils' results)"
	}
	return ""
}
