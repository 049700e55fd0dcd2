package main

import (
	"bytes"
	"errors"
	"io"
	"os"

	"github.com/urfave/cli/v2"
)

// held keeps what a command prints, in memory or, when it is long, in a temporary file, until
// it is released.
type held struct {
	c     *cli.Context
	to    io.Writer
	start bytes.Buffer
	rest  *os.File
}

// mostHeld is how many bytes are kept in memory.
const mostHeld = 8 << 20

// hold keeps back what is printed to stdout from now on.
func hold(c *cli.Context) *held {
	h := &held{c: c, to: c.App.Writer}
	c.App.Writer = h
	return h
}

func (h *held) Write(text []byte) (int, error) {
	if h.rest == nil && h.start.Len()+len(text) <= mostHeld {
		return h.start.Write(text)
	}
	if h.rest == nil {
		file, err := os.CreateTemp("", "evenhand-")
		if err != nil {
			return 0, err
		}
		h.rest = file
	}
	return h.rest.Write(text)
}

// release prints what was kept, and lets what follows through.
func (h *held) release() error {
	h.c.App.Writer = h.to
	_, err := h.to.Write(h.start.Bytes())
	if h.rest == nil {
		return err
	}
	if err == nil {
		_, err = h.rest.Seek(0, io.SeekStart)
	}
	if err == nil {
		_, err = io.Copy(h.to, h.rest)
	}
	return errors.Join(err, h.rest.Close(), os.Remove(h.rest.Name()))
}
