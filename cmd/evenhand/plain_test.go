package main

import (
	"bytes"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestPlain(t *testing.T) {
	for text, want := range map[string]string{
		"7 + 8 = 15\t✓\r\n¿Cuántas?": "7 + 8 = 15\t✓\r\n¿Cuántas?",
		// ECMA-48: ESC begins a command, and so does CSI, which is one character of its own.
		"\x1b]0;t\a44":     "�]0;t�44",
		"\u009b31mred":     "�31mred",
		"over\rwritten":    "over�written",
		"a\u202ecba\u2066": "a�cba�",
	} {
		var out bytes.Buffer
		if _, err := (&plain{to: &out}).Write([]byte(text)); err != nil || out.String() != want {
			t.Errorf("%q comes out as %q, want %q", text, out.String(), want)
		}
	}
}

// However a text is cut into writes, the same comes out, without a command.
func TestPlainInPieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOf(rapid.OneOf(rapid.Rune(), rapid.SampledFrom([]rune("\x1b\a\u009b\u202e\n\té✓")))).Draw(t, "text")
		var whole, pieces bytes.Buffer
		(&plain{to: &whole}).Write([]byte(text))
		p := &plain{to: &pieces}
		for at := 0; at < len(text); {
			n := rapid.IntRange(1, len(text)-at).Draw(t, "size")
			p.Write([]byte(text[at : at+n]))
			at += n
		}
		if strings.ContainsFunc(whole.String(), commands) && !strings.Contains(whole.String(), "\r") {
			t.Fatalf("%q comes out as %q", text, whole.String())
		}
		if !strings.Contains(text, "\r") && whole.String() != pieces.String() {
			t.Fatalf("%q comes out as %q, in pieces as %q", text, whole.String(), pieces.String())
		}
	})
}
