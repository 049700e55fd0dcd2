package files

import "golang.org/x/sys/unix"

// exchange gives each of two folders the other's name, in one step.
func exchange(a, b string) error { return unix.RenamexNp(a, b, unix.RENAME_SWAP) }
