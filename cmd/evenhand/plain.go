package main

import (
	"bytes"
	"io"
	"unicode/utf8"
)

// plain lets text through to a terminal, and nothing that a list or a name could tell the
// terminal to do: control characters but tab and line end, and the marks that turn the
// direction of writing, show as the replacement character. All output of the program goes
// through it.
type plain struct {
	to   io.Writer
	rest []byte // the beginning of a character whose end is still to come
}

func (p *plain) Write(text []byte) (int, error) {
	all := append(p.rest, text...)
	p.rest = nil
	var out bytes.Buffer
	out.Grow(len(all))
	for len(all) > 0 {
		if !utf8.FullRune(all) {
			p.rest = bytes.Clone(all)
			break
		}
		r, size := utf8.DecodeRune(all)
		if r == '\r' && (len(all) == 1 || all[1] == '\n') || !commands(r) {
			out.Write(all[:size])
		} else {
			out.WriteRune(utf8.RuneError)
		}
		all = all[size:]
	}
	if _, err := p.to.Write(out.Bytes()); err != nil {
		return 0, err
	}
	return len(text), nil
}

// commands says whether a character tells a terminal to do something, or makes text read
// otherwise than it is (Unicode Standard Annex 9: embeddings, overrides and isolates).
func commands(r rune) bool {
	switch {
	case r == '\n' || r == '\t':
		return false
	case r < 0x20 || r >= 0x7f && r < 0xa0:
		return true
	}
	return r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069
}
