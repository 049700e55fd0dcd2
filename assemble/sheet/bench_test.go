package sheet_test

import (
	"bytes"
	"fmt"
	"html/template"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"evenhand/assemble/sheet"
)

// classSets are 30 two-form quizzes of ten items: 60 sheets.
func classSets() []sheet.Paper {
	var papers []sheet.Paper
	for set := range 30 {
		for form := range 2 {
			n := 2*set + form
			p := paper(fmt.Sprintf("%d + 36 = ?", 20+n), fmt.Sprintf("47 + ? = %d", 60+n),
				fmt.Sprintf("%d + 27 = ?|column", 20+n), fmt.Sprintf("%d - 19 = ?|column", 40+n),
				fmt.Sprintf("%d - 15 = ?|bond", 30+n), fmt.Sprintf("%d = ? tens ? ones|frame", 20+n),
				fmt.Sprintf("%d ? 74", 40+n), fmt.Sprintf("%d, %d, ?, %d", n, n+1, n+3),
				fmt.Sprintf("read %d:30", 1+n%12), fmt.Sprintf("draw %d:00", 1+n%12))
			p.Form = string(rune('A' + form))
			papers = append(papers, p)
		}
	}
	return papers
}

// BenchmarkClassSets prints 60 sheets and 60 keys, once through WritePDF and once by a
// browser without a window from the SVG pictures of the same items, one start of the
// browser a file. It reports the milliseconds and kilobytes a file. The browser's files have the
// same items and answers but no header and no pages on wrong answers.
func BenchmarkClassSets(b *testing.B) {
	papers := classSets()
	b.Run("evenhand", func(b *testing.B) {
		size := 0
		for b.Loop() {
			size = 0
			for _, p := range papers {
				size += len(pdf(b, p, sheet.Options{})) + len(pdf(b, p, sheet.Options{Key: true}))
			}
		}
		report(b, 2*len(papers), size)
	})
	b.Run("browser", func(b *testing.B) {
		path := browser(b)
		size := 0
		for b.Loop() {
			size = 0
			for _, p := range papers {
				size += printedByBrowser(b, path, p, sheet.Options{}) + printedByBrowser(b, path, p, sheet.Options{Key: true})
			}
		}
		report(b, 2*len(papers), size)
	})
	b.Run("browser, all in one file", func(b *testing.B) {
		path := browser(b)
		size := 0
		for b.Loop() {
			size = printPage(b, path, allPages(b, papers))
		}
		report(b, 2*len(papers), size)
	})
}

// browser is the program to compare with.
func browser(b *testing.B) string {
	path, err := exec.LookPath("chromium")
	if err != nil {
		b.Skip("chromium is not installed: nothing to compare with")
	}
	return path
}

func report(b *testing.B, files, bytes int) {
	b.ReportMetric(b.Elapsed().Seconds()*1000/float64(b.N*files), "ms/file")
	b.ReportMetric(float64(bytes)/1000/float64(files), "kB/file")
}

// webPage sets pictures two in a row, a paper a page.
var webPage = template.Must(template.New("").Parse(`<!doctype html><meta charset="utf-8"><style>
@page { size: letter; margin: 16mm } main { display: grid; grid-template-columns: 1fr 1fr; gap: 8mm; break-after: page }
</style>{{range .}}<main>{{range .}}<div>{{.}}</div>{{end}}</main>{{end}}`))

func pictures(b *testing.B, p sheet.Paper, o sheet.Options) []template.HTML {
	var list []template.HTML
	for _, q := range p.Questions {
		picture, err := sheet.SVG(q, o)
		if err != nil {
			b.Fatal(err)
		}
		list = append(list, template.HTML(picture))
	}
	return list
}

func allPages(b *testing.B, papers []sheet.Paper) [][]template.HTML {
	var pages [][]template.HTML
	for _, p := range papers {
		pages = append(pages, pictures(b, p, sheet.Options{}), pictures(b, p, sheet.Options{Key: true}))
	}
	return pages
}

func printedByBrowser(b *testing.B, path string, p sheet.Paper, o sheet.Options) int {
	return printPage(b, path, [][]template.HTML{pictures(b, p, o)})
}

// printPage is the size of the PDF that the browser makes of the pages.
func printPage(b *testing.B, path string, pages [][]template.HTML) int {
	folder := b.TempDir()
	var page bytes.Buffer
	if err := webPage.Execute(&page, pages); err != nil {
		b.Fatal(err)
	}
	source, out := filepath.Join(folder, "page.html"), filepath.Join(folder, "page.pdf")
	if err := os.WriteFile(source, page.Bytes(), 0o600); err != nil {
		b.Fatal(err)
	}
	cmd := exec.Command(path, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
		"--disable-component-update", "--disable-sync", "--no-pdf-header-footer", "--user-data-dir="+filepath.Join(folder, "profile"), "--print-to-pdf="+out, source)
	if text, err := cmd.CombinedOutput(); err != nil {
		b.Fatalf("%v: %s", err, text)
	}
	info, err := os.Stat(out)
	if err != nil {
		b.Fatal(err)
	}
	return int(info.Size())
}
