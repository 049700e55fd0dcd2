package report_test

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"evenhand/bank/evidence/report"
	"evenhand/bank/results"
	"evenhand/testdata/outside"
)

// fewestLines is what a printed page must hold at least, its foot not counted.
const fewestLines = 5

// A browser prints the page with the caution at the foot of every sheet, whatever the
// sheet holds; the first sheet shows the whole class, and none holds a line or two.
func TestReferencePrintedPages(t *testing.T) {
	outside.Full(t, "printing the report with a browser", "chromium", "pdftotext")
	for _, size := range []struct{ pupils, weeks int }{{1, 1}, {5, 2}, {13, 1}, {24, 1}, {24, 3}, {24, 6}, {30, 3}} {
		t.Run(fmt.Sprintf("%d pupils, %d weeks", size.pupils, size.weeks), func(t *testing.T) {
			pages := printed(t, class(size.pupils, size.weeks))
			for i, page := range pages {
				lines := strings.Split(strings.TrimSpace(page), "\n")
				foot := lines[len(lines)-1]
				if !strings.Contains(foot, "not a diagnosis or a placement") {
					t.Errorf("page %d ends with %q", i+1, foot)
				}
				if n := len(strings.Fields(strings.Join(lines, " "))); len(lines) < fewestLines+1 {
					t.Errorf("page %d of %d holds %d lines, %d words:\n%s", i+1, len(pages), len(lines)-1, n, page)
				}
			}
			if last := fmt.Sprintf("P%02d", size.pupils); size.pupils <= 24 && strings.Count(pages[0], last) < 2 {
				t.Errorf("%s isn't among the pupils on page 1:\n%s", last, pages[0])
			}
		})
	}
}

// class makes the report of a class in which one pupil in three has a misstep.
func class(pupils, weeks int) *report.Report {
	var quizzes []results.Quiz
	var papers []results.Paper
	for w := range weeks {
		quiz := quizOf(fmt.Sprintf("2026-W%d", 40+w), eight)
		quizzes = append(quizzes, quiz)
		for i := range pupils {
			code := fmt.Sprintf("P%02d", i+1)
			switch i % 6 {
			case 0:
				papers = append(papers, paperOf(quiz, code, "35", "57", "44", "55", "62", "84", "3:30", "x"))
			case 1:
				papers = append(papers, paperOf(quiz, code, "25", "43", "36", "45", "52", "74", "3:30", "6:00"))
			default:
				papers = append(papers, paperOf(quiz, code, "25", "43", "36", "45", "62", "84", "3:30", "x"))
			}
		}
	}
	return report.Of(quizzes, papers)
}

// printed is the text of the pages as a browser prints them.
func printed(t *testing.T, r *report.Report) []string {
	t.Helper()
	dir := t.TempDir()
	page, sheet := filepath.Join(dir, "page.html"), filepath.Join(dir, "page.pdf")
	file, err := os.Create(page)
	if err != nil {
		t.Fatal(err)
	}
	if err := r.WriteHTML(file); err != nil {
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
	return strings.Split(strings.TrimSuffix(string(text), "\f"), "\f")
}
