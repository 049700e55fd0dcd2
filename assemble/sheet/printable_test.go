package sheet

import (
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

func faces(t fatal) []*face {
	builtInFace, err := builtIn()
	if err != nil {
		t.Fatal(err)
	}
	installedFace, err := installed()
	if err != nil {
		t.Fatal(err)
	}
	return []*face{builtInFace, installedFace}
}

func TestPrintable(t *testing.T) {
	for in, want := range map[string]string{
		"47 + 36 = □":                    "47 + 36 = ___",
		"¿Qué número es 10 más que 47?":  "¿Qué número es 10 más que 47?",
		"What\u200b's next":              "What's next",
		"3 apples \U0001F34E":            "3 apples ?",
		"ﬁve\u00a0frogs":                 "ﬁve\u00a0frogs",
		"man\u0303ana":                   "mañana",
		"tab\tand line\n":                "tab and line ",
		"\U0001D7DC + \uFF11":            "4 + 1",
		string([]byte{'a', 0xff, 'b'}):   "a?b",
		"\U0001F469\u200D\U0001F3EB has": "?? has",
	} {
		for _, f := range faces(t) {
			if got := f.printable(in); got != want {
				t.Errorf("%s: %q prints as %q, want %q", f.name, in, got, want)
			}
		}
	}
}

// Whatever a text holds, only characters that the face has reach the paper, and
// none above U+FFFF, which the PDF writer can't take.
func TestOnlyKnownCharactersArePrinted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.String().Draw(t, "s")
		for _, f := range faces(t) {
			for _, r := range f.printable(s) {
				if glyph, err := f.fonts[0].GlyphIndex(nil, r); err != nil || glyph == 0 || r > 0xffff {
					t.Fatalf("%s: %U in %q reaches the paper", f.name, r, s)
				}
			}
			if !utf8.ValidString(f.printable(s)) {
				t.Fatalf("%q does not print as valid text", s)
			}
		}
	})
}

// A digit of the built-in font is 1303 of 2048 units wide (its table of advance widths,
// read from the file by another program), so ten digits of 10 mm are 63.6 mm.
func TestWidth(t *testing.T) {
	f, err := builtIn()
	if err != nil {
		t.Fatal(err)
	}
	if got := f.width("0123456789", lettering{size: 10}); got < 63.5 || got > 63.7 {
		t.Errorf("ten digits are %.2f mm wide, want 63.6", got)
	}
}

func TestUnknownFontIsNamed(t *testing.T) {
	if _, err := faceNamed("Roundhand"); err == nil {
		t.Error("an unknown font was taken")
	}
}
