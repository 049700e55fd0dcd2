//go:build unix

package files

import (
	"errors"
	"syscall"
)

// running says whether a program with the number is running on this computer.
func running(number int) bool { return !errors.Is(syscall.Kill(number, 0), syscall.ESRCH) }

// cannotSync says that the file system doesn't know how to make a folder safe.
func cannotSync(err error) bool {
	return errors.Is(err, syscall.EINVAL) || errors.Is(err, syscall.ENOTSUP) || errors.Is(err, syscall.EBADF)
}
