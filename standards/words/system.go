package words

import (
	"context"
	"errors"
	"io"
	"io/fs"
	"os"
	"syscall"
)

// bySystem are the causes that systems and networks give when something can't be done there, each in a sentence,
// which reads as Linux says it.
var bySystem = []struct {
	cause error
	told  *Told
}{
	{syscall.ENOSPC, Sayf("no space left on device")},
	{syscall.EDQUOT, Sayf("disk quota exceeded")},
	{syscall.EROFS, Sayf("read-only file system")},
	{syscall.EIO, Sayf("input/output error")},
	{syscall.EISDIR, Sayf("is a directory")},
	{syscall.ENOTDIR, Sayf("not a directory")},
	{syscall.ENAMETOOLONG, Sayf("file name too long")},
	{syscall.EMFILE, Sayf("too many open files")},
	{syscall.EBUSY, Sayf("device or resource busy")},
	{syscall.ECONNREFUSED, Sayf("connection refused")},
	{syscall.ECONNRESET, Sayf("connection reset by peer")},
	{syscall.EPIPE, Sayf("broken pipe")},
	{syscall.EHOSTUNREACH, Sayf("no route to host")},
	{syscall.ENETUNREACH, Sayf("network is unreachable")},
	{syscall.ETIMEDOUT, Sayf("connection timed out")},
	{os.ErrDeadlineExceeded, Sayf("it took too long")},
	{context.DeadlineExceeded, Sayf("it took too long")},
	{context.Canceled, Sayf("it was stopped")},
	{fs.ErrPermission, Sayf("permission denied")},
	{fs.ErrNotExist, Sayf("no such file or directory")},
	{fs.ErrExist, Sayf("file exists")},
	{io.ErrUnexpectedEOF, Sayf("it ends in the middle")},
}

// saidBySystem is the sentence of an error that nobody of ours told: that of its cause, else what it says itself.
func saidBySystem(err error) *Told {
	for _, known := range bySystem {
		if errors.Is(err, known.cause) {
			return known.told
		}
	}
	return Sayf("%s", err.Error())
}
