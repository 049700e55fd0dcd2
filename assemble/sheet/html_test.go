package sheet_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"evenhand/assemble/sheet"
	"evenhand/testdata/outside"
)

func page(t *testing.T, p sheet.Paper, o sheet.Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := sheet.WriteHTML(&b, p, o); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// WAI-ARIA 1.2: headings with their level, named images; no image's name tells an answer.
func TestPageForABrowser(t *testing.T) {
	got := string(page(t, paper("47 + ? = 83", "count 7"), sheet.Options{Lang: "es", Font: sheet.BuiltInFont}))
	for _, want := range []string{
		`<html lang="es">`, "<title>Friday check, week 48, forma A</title>", "@page { size: 215.9mm 279.4mm; margin: 0 }",
		`<g role="heading" aria-level="1">`, `<g role="heading" aria-level="2">`,
		`<g role="img" aria-label="47 más espacio en blanco es igual a 83.">`,
		`aria-label="¿Cuántos puntos hay? punto, punto, punto, punto, punto; punto, punto."`,
		"textLength=",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("the page lacks %s", want)
		}
	}
	if open, closed := strings.Count(got, "<g"), strings.Count(got, "</g>"); open != closed {
		t.Errorf("%d groups are opened, %d closed", open, closed)
	}
}

// lineTolerance is the grey of 255 by which a thin line and letters may differ when one program draws them as strokes
// and the other as shapes: lines that are missing or elsewhere differ by more.
const lineTolerance = 60

// A browser prints the page as the PDF is: the same number of pages, and pictures that differ in no more than the
// smoothing of their letters.
func TestPagePrintsTheSame(t *testing.T) {
	outside.Full(t, "the page for a browser beside the PDF", "chromium", "pdftoppm")
	for _, o := range []sheet.Options{{Font: sheet.BuiltInFont}, {Font: sheet.BuiltInFont, Large: true, PaperSize: "a4"}} {
		folder := t.TempDir()
		source, out := filepath.Join(folder, "page.html"), filepath.Join(folder, "page.pdf")
		if err := os.WriteFile(source, page(t, gallery, o), 0o600); err != nil {
			t.Fatal(err)
		}
		cmd := exec.Command("chromium", "--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
			"--disable-component-update", "--no-pdf-header-footer", "--user-data-dir="+filepath.Join(folder, "profile"), "--print-to-pdf="+out, source)
		if text, err := cmd.CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, text)
		}
		printed, err := os.ReadFile(out)
		if err != nil {
			t.Fatal(err)
		}
		ours, browsers := render(t, pdf(t, gallery, o), goldenDPI), render(t, printed, goldenDPI)
		if len(ours) != len(browsers) {
			t.Fatalf("%d pages, the browser prints %d", len(ours), len(browsers))
		}
		for i := range ours {
			if share := different(decode(t, ours[i]), decode(t, browsers[i]), lineTolerance); share > .005 {
				t.Errorf("page %d: %.2f in 100 of its picture differ", i+1, 100*share)
			}
		}
	}
}

// What is read aloud has every direction and item, in words, and not what an item asks the child to read.
func TestScript(t *testing.T) {
	var b bytes.Buffer
	p := paper("47 + ? = 83", "write 34 in words", "read 4:30 pm", "read 5:15|said-time", "write thirteen|choice",
		"story add-to change-unknown: 5 + ? = 12, shells, Mia", "read 7:20|choice")
	if err := sheet.WriteScript(&b, p, sheet.Options{Font: sheet.BuiltInFont, Large: true}); err != nil {
		t.Fatal(err)
	}
	got := printedText(t, b.Bytes())
	for _, want := range []string{
		"To read aloud", "Write the missing number in each box. 1 47 plus blank equals 83.",
		"2 (Point to it. The child reads it.)", "3 What time is it? It is afternoon.",
		"4 (Point to it.", "5 thirteen. (Point to the answers. Don't read them.)",
		"6 Mia has 5 shells. Then she finds some more.", "7 What time is it? Answers to choose from:",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("the script lacks %q; it reads\n%s", want, got)
		}
	}
	for _, secret := range []string{"34", "quarter past 5", "4:30", "Answer:"} {
		if strings.Contains(got, secret) {
			t.Errorf("the script says %q; it reads\n%s", secret, got)
		}
	}
}
