package sheet_test

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"evenhand/assemble/sheet"
)

// A class's sheets stand in one file, each with its pupil on the name line and pages of its own count.
func TestSetOfAClass(t *testing.T) {
	a, b := paper("47 + 36 = ?", "read 4:30"), paper("27 + 35 = ?", "read 7:15")
	a.Form, b.Form = "A", "B"
	var set []sheet.Paper
	for i, pupil := range []string{"P01", "P02", "P03"} {
		p := []sheet.Paper{a, b}[i%2]
		p.Pupil = pupil
		set = append(set, p)
	}
	var file bytes.Buffer
	if err := sheet.WriteSet(&file, set, sheet.Options{}); err != nil {
		t.Fatal(err)
	}
	text := printedText(t, file.Bytes())
	if got := regexp.MustCompile(`P0\d`).FindAllString(text, -1); strings.Join(got, " ") != "P01 P02 P03" {
		t.Errorf("the pupils are %v in %s", got, text)
	}
	if n := strings.Count(text, "page 1 of 1"); n != 3 {
		t.Errorf("%d sheets count their own pages: %s", n, text)
	}
	if err := sheet.WriteSet(&file, nil, sheet.Options{}); err == nil {
		t.Error("a set for nobody is printed")
	}
}
