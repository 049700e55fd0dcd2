package report_test

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"regexp"
	"strings"
	"testing"

	"evenhand/bank/evidence/report"
	"evenhand/bank/results"
)

var picture = regexp.MustCompile(`(?s)<svg .*?</svg>`)

func TestPage(t *testing.T) {
	quizzes := []results.Quiz{quizOf("2026-W47", eight), quizOf("2026-W48", eight)}
	var papers []results.Paper
	for _, quiz := range quizzes {
		papers = append(papers,
			paperOf(quiz, "P01", "35", "57", "44", "55", "62", "84", "3:30", "6:00"),
			paperOf(quiz, "P02", "25", "43", "36", "45", "62", "84", "3:30", "6:00"),
		)
	}
	r := report.Of(quizzes, papers)
	r.Names = map[string]string{"P01": "Ada Lovelace"}
	var file bytes.Buffer
	if err := r.WriteHTML(&file); err != nil {
		t.Fatal(err)
	}
	html := file.String()
	for _, want := range []string{
		"<html lang=\"en\">", "2 quizzes, 2026-W47 to 2026-W48", "smaller digit from larger", "in 8 of the 8 items where it could show",
		"@page", "<caption>", "scope=\"col\"",
	} {
		if !strings.Contains(html, want) {
			t.Errorf("%q is not on the page", want)
		}
	}
	// The caution stands at the top in full, at the pupils and at the standards in short, and
	// on every printed page.
	if n := strings.Count(html, "not a diagnosis or a placement."); n < 3 || !strings.Contains(html, report.Caution[:100]) {
		t.Errorf("the caution stands %d times on the page", n)
	}
	for _, never := range []string{"Ada", "<script", "http://", "https://", "<img", "ZgotmplZ", "url("} {
		if strings.Contains(html, never) {
			t.Errorf("%q is on the page", never)
		}
	}
	pictures := picture.FindAllString(html, -1)
	// A scale for both tables, a bar for 4 skills and 8 items, a line for 2 pupils.
	if want := 2 + 4 + 8 + 2; len(pictures) != want {
		t.Errorf("%d pictures, want %d", len(pictures), want)
	}
	for _, svg := range pictures {
		// The numbers stand beside each picture; nobody hears them twice.
		if !strings.Contains(svg, `aria-hidden="true"`) {
			t.Errorf("a picture that repeats what stands beside it: %s", svg)
		}
		for d := xml.NewDecoder(strings.NewReader(svg)); ; {
			if _, err := d.Token(); err == io.EOF {
				break
			} else if err != nil {
				t.Fatalf("%v in %s", err, svg)
			}
		}
	}
}

func TestTerminal(t *testing.T) {
	quiz := quizOf("2026-W48", eight)
	r := report.Of([]results.Quiz{quiz}, []results.Paper{paperOf(quiz, "P01", "35", "57", "44", "55", "62", "84", "3:30", "6:00")})
	r.Names = map[string]string{"P01": "Ada"}
	var text strings.Builder
	for _, s := range r.Sections() {
		fmt.Fprintln(&text, s.Title, s.Note)
		for _, row := range s.Rows {
			fmt.Fprintln(&text, strings.Join(row, " | "))
		}
	}
	for _, want := range []string{
		"smaller digit from larger: P01 Ada (in 4 of the 4 items where it could show)",
		"P01 Ada likely takes the smaller digit",
		"P01 Ada | 4 of 8",
		"subtract-regrouping |  | 0 of 4, could be 0 to 2 (few) | 1",
		report.Caution,
	} {
		if !strings.Contains(text.String(), want) {
			t.Errorf("%q is not in\n%s", want, text.String())
		}
	}
	if empty := report.Of(nil, nil); empty.Title() != "No quizzes" || len(empty.Sections()) == 0 {
		t.Errorf("of nothing: %q", empty.Title())
	}
}
