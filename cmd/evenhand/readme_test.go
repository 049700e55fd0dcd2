package main

import (
	"bytes"
	"flag"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"evenhand/assemble/export"
	"evenhand/assemble/sheet"
	"evenhand/bank"
	"evenhand/standards/task"
	"evenhand/testdata/outside"
)

// update draws the README's picture anew: go test ./cmd/evenhand -run ReadmePicture -update.
var update = flag.Bool("update", false, "draw the README's picture anew")

const readmePicture = "../../testdata/golden/sheet.png"

// The picture in the README is the first page of form A of the demo's own quiz, in the font that every machine has.
func TestReadmePictureIsTheDemos(t *testing.T) {
	outside.Installed(t, "the README's picture beside the demo's first page", "pdftoppm")
	dir := filepath.Join(t.TempDir(), "demo")
	app := newApp()
	app.Writer, app.ErrWriter = io.Discard, io.Discard
	if err := app.Run([]string{"evenhand", "demo", "--dir", dir}); err != nil {
		t.Fatal(err)
	}
	page := firstPage(t, demoForm(t, dir))
	if *update {
		if err := os.WriteFile(readmePicture, page, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(readmePicture)
	if err != nil {
		t.Fatal(err)
	}
	got, kept := decodePNG(t, page), decodePNG(t, want)
	if got.Bounds() != kept.Bounds() {
		t.Fatalf("the picture is %v large, the page %v", kept.Bounds(), got.Bounds())
	}
	different, size := 0, got.Bounds()
	for y := range size.Dy() {
		for x := range size.Dx() {
			a, b := color.GrayModel.Convert(got.At(x, y)).(color.Gray), color.GrayModel.Convert(kept.At(x, y)).(color.Gray)
			if max(a.Y, b.Y)-min(a.Y, b.Y) > 128 { // smoothing of edges stays below
				different++
			}
		}
	}
	// Another digit changes more than a hundred dots.
	if different > 20 {
		t.Errorf("%d dots of the README's picture are not the demo's", different)
	}
}

// demoForm is form A of the demo's quiz.
func demoForm(t *testing.T, dir string) sheet.Paper {
	t.Helper()
	path := filepath.Join(dir, "friday", "quiz.csv")
	rows, err := export.ReadQuizFile(path)
	if err != nil {
		t.Fatal(err)
	}
	b, err := bank.Open(filepath.Join(dir, "alder-hill.bank"), bank.Options{ReadOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	p := sheet.Paper{Title: export.Title(path), Form: "A", Week: demoWeek}
	for _, row := range rows {
		if row.Form != "A" {
			continue
		}
		item, err := b.Get(row.ID)
		if err != nil {
			t.Fatal(err)
		}
		item.Look = task.Look(row.Look)
		p.Questions = append(p.Questions, sheet.QuestionOf(item, int(row.Number), "en"))
	}
	return p
}

// firstPage is the first page of a paper as a picture in sixteen greys.
func firstPage(t *testing.T, p sheet.Paper) []byte {
	t.Helper()
	var file bytes.Buffer
	if err := sheet.WritePDF(&file, p, sheet.Options{Font: sheet.BuiltInFont}); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command("pdftoppm", "-r", "90", "-gray", "-png", "-singlefile", "-", filepath.Join(t.TempDir(), "page"))
	cmd.Stdin = &file
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	picture, err := os.ReadFile(cmd.Args[len(cmd.Args)-1] + ".png")
	if err != nil {
		t.Fatal(err)
	}
	var greys color.Palette
	for i := range 16 {
		greys = append(greys, color.Gray{Y: uint8(17 * i)})
	}
	full := decodePNG(t, picture)
	small := image.NewPaletted(full.Bounds(), greys)
	draw.Draw(small, small.Bounds(), full, full.Bounds().Min, draw.Src)
	var b bytes.Buffer
	if err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&b, small); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func decodePNG(t *testing.T, file []byte) image.Image {
	t.Helper()
	picture, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return picture
}
