package main

import (
	"fmt"
	"io"
	"os"
	"time"

	"github.com/urfave/cli/v2"
	"golang.org/x/term"
)

// progress tells on a terminal how far a piece of work is that takes over two seconds; nothing
// is shown where stderr is no terminal. The functions move it on and take it away.
func progress(c *cli.Context, what string) (advance func(done, total int), end func()) {
	screen, _ := c.App.ErrWriter.(*plain)
	if screen == nil {
		return func(int, int) {}, func() {}
	}
	file, ok := screen.to.(*os.File)
	if !ok || !term.IsTerminal(int(file.Fd())) {
		return func(int, int) {}, func() {}
	}
	return progressOn(file, what, time.Now)
}

// progressOn is progress on any terminal, by any clock.
func progressOn(screen io.Writer, what string, now func() time.Time) (advance func(done, total int), end func()) {
	started, shown := now(), time.Time{}
	advance = func(done, total int) {
		at := now()
		if at.Sub(started) < 2*time.Second || at.Sub(shown) < 100*time.Millisecond || total <= 0 {
			return
		}
		shown = at
		fmt.Fprintf(screen, "\r%s: %d of %d, %d %%", what, done, total, done*100/total)
	}
	return advance, func() {
		if !shown.IsZero() {
			fmt.Fprint(screen, "\r\x1b[K") // to the line's start, and clear it
		}
	}
}
