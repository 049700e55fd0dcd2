package sheet

import (
	"bytes"
	"testing"

	"codeberg.org/go-fonts/dejavu/dejavusans"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// A slim font has the same characters with the same widths, as another program's reader
// sees them, and is a good deal smaller.
func TestSlimFontIsTheSameFont(t *testing.T) {
	file, err := slim(dejavusans.TTF)
	if err != nil {
		t.Fatal(err)
	}
	if len(file) > len(dejavusans.TTF)*9/10 {
		t.Errorf("%d of %d bytes are left", len(file), len(dejavusans.TTF))
	}
	full, err := sfnt.Parse(dejavusans.TTF)
	if err != nil {
		t.Fatal(err)
	}
	thin, err := sfnt.Parse(file)
	if err != nil {
		t.Fatal(err)
	}
	for r := rune(' '); r < 0x2100; r++ {
		if a, b := advance(t, full, r), advance(t, thin, r); a != b {
			t.Fatalf("%U is %v wide, was %v", r, b, a)
		}
	}
}

func advance(t *testing.T, f *sfnt.Font, r rune) fixed.Int26_6 {
	t.Helper()
	glyph, err := f.GlyphIndex(nil, r)
	if err != nil {
		t.Fatal(err)
	}
	width, err := f.GlyphAdvance(nil, glyph, fixed.I(1000), font.HintingNone)
	if err != nil {
		t.Fatal(err)
	}
	return width
}

// Whatever the bytes, a font file is taken or refused, and a slim font can be made slim again.
func FuzzSlim(f *testing.F) {
	f.Add(dejavusans.TTF[:400])
	f.Add([]byte("\x00\x01\x00\x00\x00\x01\x00\x00\x00\x00\x00\x00glyf\x00\x00\x00\x00\x00\x00\x00\x1c\x00\x00\x00\x04\x01\x02\x03\x04"))
	f.Fuzz(func(t *testing.T, file []byte) {
		once, err := slim(file)
		if err != nil {
			return
		}
		if twice, err := slim(once); err != nil || !bytes.Equal(once, twice) {
			t.Errorf("%x becomes %x, then %x (%v)", file, once, twice, err)
		}
	})
}

func TestDamagedFontsAreRefused(t *testing.T) {
	for _, size := range []int{0, 5, 12, 100, 5000, len(dejavusans.TTF) / 2} {
		if _, err := newFace("cut", dejavusans.TTF[:size], dejavusans.TTF[:size]); err == nil {
			t.Errorf("a font of %d bytes was taken", size)
		}
	}
}
