package sheet_test

import (
	"bytes"
	"flag"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"

	"evenhand/assemble/sheet"
	"evenhand/standards"
	"evenhand/standards/task"

	"evenhand/testdata/outside"
)

// update draws the golden pages anew: go test ./assemble/sheet -run Golden -update.
// Look at every changed picture before committing it.
var update = flag.Bool("update", false, "draw the pictures in testdata/golden anew")

const goldenFolder = "../../testdata/golden"

// goldenDPI is low so that the pictures stay small and small differences between
// versions of the renderer stay invisible.
const goldenDPI = 50

// gallery has every look, and what is special about some. It leaves out the missteps, whose
// words are not this package's.
var gallery = withoutMissteps(paper(withEveryLook(
	"47 + 36 = ?", "83 = ? + 36", "142 = ? hundreds ? tens ? ones|sentence",
	"402 - 178 = ?|column", "38 + 47 + 25 + 19 = ?|column",
	"83 - 47 = ?|bond", "47 = ? + ?|bond", "142 = ? + ? + ?",
	"234 = ? hundreds ? tens ? ones|tens-and-ones", "4 tens 7 ones = ?|frame", "47 = ? tens ? ones|frame", "100 + 40 + 2 = ?|frame",
	"47 ? 74", "5, 10, ?, 20, 25, ?, 35", "read 4:30", "read 7:25 pm", "say 12:00", "draw 10:05",
	"match 4:00, 7:00, 11:00, 2:30", "10 more than 47 = ?",
	"count 13", "count 8 scattered", "more: 5 or 8 dots", "fewer: 6 or 6 dots", "array 3 by 4", "coins 25, 10, 10, 5, 1", "pairs of 7",
	"true or false: 7 = 8 - 1", "odd or even: 14", "8 + ? = 11, 11 - 8 = ?", "8 + 3 = 3 + ?", "story add-to change-unknown: 5 + ? = 12, shells, Mia",
	"8 + 5 = ?|make-ten", "47 + 36 = ?|break-apart", "83 - 47 = ?|number-line", "8 + ? = 15|number-line", "47 + 36 = ?|hundreds-chart",
)...))

// withEveryLook adds an example of each look that none of the tasks has.
func withEveryLook(tasks ...string) []string {
	shown := make(map[task.Look]bool)
	for _, q := range paper(tasks...).Questions {
		shown[q.Look] = true
	}
	for _, look := range task.AllLooks() {
		for _, skill := range standards.Catalogue() {
			if !shown[look] && slices.Contains(task.MustParse(skill.Example).Looks(), look) {
				shown[look] = true
				tasks = append(tasks, skill.Example+"|"+string(look))
			}
		}
	}
	return tasks
}

func withoutMissteps(p sheet.Paper) sheet.Paper {
	for i := range p.Questions {
		p.Questions[i].Missteps = nil
	}
	return p
}

func TestGolden(t *testing.T) {
	for name, print := range map[string]struct {
		p sheet.Paper
		o sheet.Options
	}{
		"form":     {gallery, sheet.Options{}},
		"key":      {gallery, sheet.Options{Key: true}},
		"large-a4": {gallery, sheet.Options{Large: true, PaperSize: "a4", Lang: "es"}},
		"strips":   {paper("47 + 36 = ?", "83 - 47 = ?"), sheet.Options{Layout: sheet.Strips}},
	} {
		print.o.Font = sheet.BuiltInFont
		pages := render(t, pdf(t, print.p, print.o), goldenDPI)
		if *update {
			replaceGolden(t, name, pages)
		}
		files, err := filepath.Glob(filepath.Join(goldenFolder, name+"-*.png"))
		if err != nil || len(files) != len(pages) {
			t.Fatalf("%s: %d pages, %d golden pictures (%v)", name, len(pages), len(files), err)
		}
		for i, page := range pages {
			want, err := os.ReadFile(goldenFile(name, i))
			if err != nil {
				t.Fatal(err)
			}
			if share := different(decode(t, page), decode(t, want), greyTolerance); share > tolerance {
				t.Errorf("%s page %d: %.2f in 100 of its picture differ from the golden one", name, i+1, 100*share)
			}
		}
	}
}

func goldenFile(name string, page int) string {
	return filepath.Join(goldenFolder, fmt.Sprintf("%s-%02d.png", name, page+1))
}

func replaceGolden(t *testing.T, name string, pages [][]byte) {
	t.Helper()
	old, _ := filepath.Glob(filepath.Join(goldenFolder, name+"-*.png"))
	for _, file := range old {
		if err := os.Remove(file); err != nil {
			t.Fatal(err)
		}
	}
	for i, page := range pages {
		if err := os.WriteFile(goldenFile(name, i), page, 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// render is the pages of a PDF as grey PNG files, drawn by another program.
func render(t *testing.T, file []byte, dpi int) [][]byte {
	t.Helper()
	outside.Installed(t, "printed pages beside their golden pictures", "pdftoppm")
	folder := t.TempDir()
	cmd := exec.Command("pdftoppm", "-r", fmt.Sprint(dpi), "-gray", "-png", "-", filepath.Join(folder, "p"))
	cmd.Stdin = bytes.NewReader(file)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	files, err := filepath.Glob(filepath.Join(folder, "p-*.png"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no page was rendered: %v", err)
	}
	var pages [][]byte
	for _, name := range files {
		page, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		pages = append(pages, small(t, page))
	}
	return pages
}

// small is the picture in sixteen greys, a third of the bytes.
func small(t *testing.T, file []byte) []byte {
	t.Helper()
	var greys color.Palette
	for i := range 16 {
		greys = append(greys, color.Gray{Y: uint8(17 * i)})
	}
	full := decode(t, file)
	picture := image.NewPaletted(full.Bounds(), greys)
	draw.Draw(picture, picture.Bounds(), full, full.Bounds().Min, draw.Src)
	var b bytes.Buffer
	if err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&b, picture); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func decode(t *testing.T, file []byte) image.Image {
	t.Helper()
	picture, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return picture
}

// A dot of the picture differs when its neighbourhood of three by three dots is lighter
// or darker by more than 20 of 255: smoothing of edges stays below that. So many dots may
// differ before a page counts as another; one 6 made an 8 is more.
const (
	greyTolerance = 20
	tolerance     = .00005
)

// different is the share of dots whose neighbourhoods differ by more than so much grey.
func different(a, b image.Image, grey int) float64 {
	if a.Bounds() != b.Bounds() {
		return 1
	}
	size := a.Bounds()
	count := 0
	for y := size.Min.Y + 1; y < size.Max.Y-1; y++ {
		for x := size.Min.X + 1; x < size.Max.X-1; x++ {
			if d := around(a, x, y) - around(b, x, y); d > grey || d < -grey {
				count++
			}
		}
	}
	return float64(count) / float64(size.Dx()*size.Dy())
}

// around is the mean brightness of a dot and its neighbours, 0 to 255.
func around(picture image.Image, x, y int) int {
	sum := 0
	for dy := -1; dy <= 1; dy++ {
		for dx := -1; dx <= 1; dx++ {
			grey, _, _, _ := picture.At(x+dx, y+dy).RGBA()
			sum += int(grey >> 8)
		}
	}
	return sum / 9
}

// The comparison itself notices one changed digit on a page, and forgives nothing else.
func TestGoldenComparisonNoticesOneDigit(t *testing.T) {
	page := func(task string) image.Image {
		return decode(t, render(t, pdf(t, paper(task), sheet.Options{Font: sheet.BuiltInFont}), goldenDPI)[0])
	}
	if share := different(page("47 + 36 = ?"), page("47 + 36 = ?"), greyTolerance); share != 0 {
		t.Errorf("the same page differs from itself in %.2f in 100", 100*share)
	}
	if share := different(page("47 + 36 = ?"), page("47 + 38 = ?"), greyTolerance); share <= tolerance {
		t.Errorf("another digit changes %.4f in 100 of the page, which the tolerance hides", 100*share)
	}
}
