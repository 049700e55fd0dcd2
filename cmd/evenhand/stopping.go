package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"sync/atomic"
	"syscall"

	"evenhand/bank/files"

	"github.com/urfave/cli/v2"
)

// inOrder counts the commands that end in order by themselves when they are stopped.
var inOrder atomic.Int32

// serving counts what ends in order when the program is told to end, too.
var serving atomic.Int32

// ending ends in order what was begun last of these. A signal may come before that listens to it itself, and be
// looked at only after.
var ending atomic.Pointer[context.CancelFunc]

// interruptible lets a command end in order when the user stops it, until the function given is
// called.
func interruptible(c *cli.Context) (done context.CancelFunc) {
	ctx, stop := signal.NotifyContext(c.Context, os.Interrupt)
	ending.Store(&stop)
	inOrder.Add(1)
	c.Context = ctx
	return func() { inOrder.Add(-1); stop() }
}

// stoppable ends the program at once when the user stops it, whatever it is doing, and takes
// away what it had half written; what is in the bank stays whole. A command that ends in order
// by itself gets the time until the user stops it a second time.
func stoppable(stderr io.Writer) (done func()) {
	stops := make(chan os.Signal, 2)
	signal.Notify(stops, os.Interrupt, syscall.SIGTERM)
	go func() {
		first := true
		for sig := range stops {
			if first && (inOrder.Load() > 0 && sig == os.Interrupt || serving.Load() > 0) {
				first = false
				(*ending.Load())()
				continue
			}
			files.Abandon()
			fmt.Fprintln(stderr, "evenhand: stopped; what was finished is kept, and nothing is half written")
			os.Exit(exitFailed)
		}
	}()
	return func() { signal.Stop(stops); close(stops) }
}
