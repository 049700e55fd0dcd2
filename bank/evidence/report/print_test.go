package report_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"evenhand/bank/evidence/report"
	"evenhand/bank/results"
	"evenhand/testdata/outside"
)

// A browser prints the page with the caution at the foot of every sheet, whatever the
// sheet holds.
func TestReferencePrintedPages(t *testing.T) {
	outside.Full(t, "printing the report with a browser", "chromium", "pdftotext")
	var quizzes []results.Quiz
	var papers []results.Paper
	for _, week := range []string{"2026-W46", "2026-W47", "2026-W48"} {
		quiz := quizOf(week, eight)
		quizzes = append(quizzes, quiz)
		for _, pupil := range strings.Fields("P01 P02 P03 P04 P05 P06 P07 P08 P09 P10 P11 P12 P13 P14 P15 P16 P17 P18 P19 P20 P21 P22 P23 P24") {
			papers = append(papers, paperOf(quiz, pupil, "35", "57", "44", "55", "62", "84", "3:30", "x"))
		}
	}
	dir := t.TempDir()
	page, sheet := filepath.Join(dir, "page.html"), filepath.Join(dir, "page.pdf")
	file, err := os.Create(page)
	if err != nil {
		t.Fatal(err)
	}
	if err := report.Of(quizzes, papers).WriteHTML(file); err != nil {
		t.Fatal(err)
	}
	file.Close()
	print := exec.Command("chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync",
		"--user-data-dir="+filepath.Join(dir, "profile"), "--no-pdf-header-footer", "--print-to-pdf="+sheet, "file://"+page)
	if out, err := print.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	text, err := exec.Command("pdftotext", "-layout", sheet, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	pages := strings.Split(strings.TrimSuffix(string(text), "\f"), "\f")
	if len(pages) < 3 {
		t.Fatalf("%d pages", len(pages))
	}
	for i, words := range pages {
		lines := strings.Split(strings.TrimSpace(words), "\n")
		if foot := lines[len(lines)-1]; !strings.Contains(foot, "not a diagnosis or a placement") {
			t.Errorf("page %d ends with %q", i+1, foot)
		}
	}
}
