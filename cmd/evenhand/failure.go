package main

import (
	"errors"
	"fmt"

	"github.com/urfave/cli/v2"
)

// The exit codes, a promise to scripts.
const (
	exitDone   = 0
	exitFailed = 1
	exitUsage  = 2
	exitInPart = 3
)

// codedError is an error that decides the exit code.
type codedError struct {
	error
	code int
}

// usagef is an error about how the program was called.
func usagef(format string, args ...any) error {
	return codedError{fmt.Errorf(format, args...), exitUsage}
}

// inPartf says that a part was done and what was not.
func inPartf(format string, args ...any) error {
	return codedError{fmt.Errorf(format, args...), exitInPart}
}

// errNothingDone ends a command whose every part failed; what went wrong was said.
var errNothingDone = errors.New("nothing was done")

func exitCode(err error) int {
	var coded codedError
	if errors.As(err, &coded) {
		return coded.code
	}
	var asked cli.ExitCoder // the library's own: help for a command that is none
	if errors.As(err, &asked) {
		return exitUsage
	}
	return exitFailed
}
