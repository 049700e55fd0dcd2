package sheet

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sync"

	"codeberg.org/go-fonts/dejavu/dejavusans"
	"codeberg.org/go-fonts/dejavu/dejavusansbold"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// asciiEnd is behind the last character of ASCII.
const asciiEnd = 128

// glyph is a character in both weights.
type glyph struct {
	has     bool // there is one that may be printed
	advance [2]fixed.Int26_6
}

// face is a typeface in two weights.
type face struct {
	name  string
	files [2][]byte // regular, bold
	fonts [2]*sfnt.Font
	ascii [asciiEnd]glyph // what is asked for most, looked up once
	digit float64         // height of a digit above the baseline, as a share of the type size
	plus  float64         // height of a plus sign, as the same share
}

// The two choices of Options.Font.
const (
	BuiltInFont   = "built-in"
	InstalledFont = "" // Andika where this machine has it, else the built-in font
)

var builtIn = sync.OnceValues(func() (*face, error) {
	return newFace("DejaVu Sans", dejavusans.TTF, dejavusansbold.TTF)
})

// installed is Andika from this machine's font folders, a face made for children who
// learn to read (single-storey a, plain digits), else the built-in face. It is
// looked for once.
var installed = sync.OnceValues(func() (*face, error) {
	for _, folder := range fontFolders() {
		if f := andikaIn(folder); f != nil {
			return f, nil
		}
	}
	return builtIn()
})

func faceNamed(name string) (*face, error) {
	switch name {
	case BuiltInFont:
		return builtIn()
	case InstalledFont:
		return installed()
	}
	return nil, fmt.Errorf("no font %q; write %q, or leave it empty for the best one on this machine", name, BuiltInFont)
}

// fontFolders are the folder that comes with the program and the usual places for fonts on
// Linux, macOS and Windows.
func fontFolders() []string {
	folders := []string{"/usr/share/fonts", "/usr/local/share/fonts", "/Library/Fonts"}
	if program, err := os.Executable(); err == nil {
		folders = append([]string{filepath.Join(filepath.Dir(program), "fonts")}, folders...)
	}
	for variable, below := range map[string]string{"WINDIR": "Fonts", "LOCALAPPDATA": "Microsoft/Windows/Fonts"} {
		if root := os.Getenv(variable); root != "" {
			folders = append(folders, filepath.Join(root, filepath.FromSlash(below)))
		}
	}
	if home, err := os.UserHomeDir(); err == nil {
		for _, own := range []string{".local/share/fonts", ".fonts", "Library/Fonts"} {
			folders = append(folders, filepath.Join(home, filepath.FromSlash(own)))
		}
	}
	return folders
}

// andikaIn is the face in the folder or below it, nil when it isn't there whole.
func andikaIn(folder string) *face {
	var files [2][]byte
	_ = filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return nil // a folder that can't be read has no font for us
		}
		switch entry.Name() {
		case "Andika-Regular.ttf":
			files[0], _ = os.ReadFile(path)
		case "Andika-Bold.ttf":
			files[1], _ = os.ReadFile(path)
		}
		return nil
	})
	f, err := newFace("Andika", files[0], files[1])
	if err != nil {
		return nil
	}
	return f
}

func newFace(name string, files ...[]byte) (*face, error) {
	f := &face{name: name}
	for i, file := range files {
		parsed, err := sfnt.Parse(file)
		if err != nil {
			return nil, fmt.Errorf("font %s: %w", name, err)
		}
		if f.files[i], err = slim(file); err != nil {
			return nil, fmt.Errorf("font %s: %w", name, err)
		}
		f.fonts[i] = parsed
	}
	for r := range rune(asciiEnd) {
		f.ascii[r] = glyph{f.has(r), [2]fixed.Int26_6{f.advance(r, 0), f.advance(r, 1)}}
	}
	zero, err := f.bounds('0')
	if err != nil {
		return nil, fmt.Errorf("font %s: %w", name, err)
	}
	plus, err := f.bounds('+')
	if err != nil {
		return nil, fmt.Errorf("font %s: %w", name, err)
	}
	f.digit, f.plus = float64(-zero.Min.Y)/64000, float64(plus.Max.Y-plus.Min.Y)/64000
	return f, nil
}

// bounds is the rectangle of a character of the regular weight, in thousandths of the type size.
func (f *face) bounds(r rune) (fixed.Rectangle26_6, error) {
	glyph, err := f.fonts[0].GlyphIndex(nil, r)
	if err != nil {
		return fixed.Rectangle26_6{}, err
	}
	bounds, _, err := f.fonts[0].GlyphBounds(nil, glyph, fixed.I(1000), font.HintingNone)
	return bounds, err
}

// glyphBuffers are the room that reading glyphs takes, which is large and asked for with every text.
var glyphBuffers = sync.Pool{New: func() any { return new(sfnt.Buffer) }}

// width is the length of the text in millimetres. Characters the face lacks
// count as what printable puts in their place.
func (f *face) width(s string, l lettering) float64 {
	weight := weightOf(l.bold)
	var sum fixed.Int26_6
	for _, r := range f.printable(s) {
		if r < asciiEnd {
			sum += f.ascii[r].advance[weight]
		} else {
			sum += f.advance(r, weight)
		}
	}
	return float64(sum) / 64000 * l.size
}

// advance is the width of a character in thousandths of the type size; 0 where the face lacks it.
func (f *face) advance(r rune, weight int) fixed.Int26_6 {
	buffer := glyphBuffers.Get().(*sfnt.Buffer)
	defer glyphBuffers.Put(buffer)
	glyph, err := f.fonts[weight].GlyphIndex(buffer, r)
	if err != nil {
		return 0
	}
	advance, _ := f.fonts[weight].GlyphAdvance(buffer, glyph, fixed.I(1000), font.HintingNone)
	return advance
}

func weightOf(bold bool) int {
	if bold {
		return 1
	}
	return 0
}
