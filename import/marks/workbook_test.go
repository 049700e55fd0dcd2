package marks_test

import (
	"archive/zip"
	"bytes"
	"fmt"
	"strings"
	"testing"

	"evenhand/import/marks"
	"evenhand/standards/words"
)

// number and flag are cells of a workbook as it keeps numbers and TRUE or FALSE.
func text(s string) string   { return `<c t="inlineStr"><is><t>` + s + `</t></is></c>` }
func number(s string) string { return `<c><v>` + s + `</v></c>` }
func flag(s string) string   { return `<c t="b"><v>` + s + `</v></c>` }

// workbook is a workbook of one sheet, whose style 1 shows a time (ECMA-376, number format 20).
func workbook(t *testing.T, rows ...string) []byte {
	t.Helper()
	return sheets(t, rows)
}

// sheets is a workbook of several sheets.
func sheets(t *testing.T, all ...[]string) []byte {
	t.Helper()
	const (
		head   = `<?xml version="1.0" encoding="UTF-8"?>`
		main   = `xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"`
		office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
	)
	var file bytes.Buffer
	archive := zip.NewWriter(&file)
	parts := map[string]string{
		"xl/sharedStrings.xml": `<sst ` + main + `/>`,
		"xl/styles.xml":        `<styleSheet ` + main + `><cellXfs><xf numFmtId="0"/><xf numFmtId="20"/></cellXfs></styleSheet>`,
	}
	list, relations := "", ""
	for i, rows := range all {
		list += fmt.Sprintf(`<sheet name="2%c" sheetId="%d" r:id="r%d"/>`, 'A'+i, i+1, i)
		relations += fmt.Sprintf(`<Relationship Id="r%d" Type="%s/worksheet" Target="worksheets/s%d.xml"/>`, i, office, i)
		parts[fmt.Sprintf("xl/worksheets/s%d.xml", i)] = `<worksheet ` + main + `><sheetData><row>` +
			strings.Join(rows, "</row><row>") + `</row></sheetData></worksheet>`
	}
	parts["xl/workbook.xml"] = `<workbook ` + main + ` xmlns:r="` + office + `"><sheets>` + list + `</sheets></workbook>`
	parts["xl/_rels/workbook.xml.rels"] = `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">` + relations + `</Relationships>`
	for name, content := range parts {
		part, err := archive.Create(name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := part.Write([]byte(head + content)); err != nil {
			t.Fatal(err)
		}
	}
	if err := archive.Close(); err != nil {
		t.Fatal(err)
	}
	return file.Bytes()
}

// A workbook keeps 3:30 as a share of a day in a cell shown as a time, and numbers without
// quotes.
func TestWorkbook(t *testing.T) {
	file := workbook(t,
		text("pupil")+text("form")+number("1")+number("2")+number("3"),
		text("P01")+text("A")+number("2")+number("512")+`<c s="1"><v>0.14583333333333334</v></c>`,
		text("P02")+text("B")+text("✓")+text("-")+text("half past 4"))
	r, err := marks.Read("marks.xlsx", file, friday(), marks.Options{})
	if err != nil || len(r.Papers) != 2 {
		t.Fatalf("%+v, %v", r, err)
	}
	for i, want := range []string{"P01A w(2) w(512) r(3:30)", "P02B r a r(half past 4)"} {
		if got := paper(r.Papers[i]); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
}

// A workbook keeps what was typed as TRUE or FALSE, and ticked boxes, as one and the same
// (ECMA-376, cell type b): the child's word in a row of answers, a mark in a row of boxes.
func TestWorkbookBooleans(t *testing.T) {
	quiz := quizOf([]string{"27 + 35 = ?", "true or false: 7 = 8 - 2", "48 + 36 = ?", "true or false: 5 = 9 - 4"})
	file := workbook(t,
		text("pupil")+text("form")+number("1")+number("2")+number("3")+number("4"),
		text("P01")+text("A")+number("62")+flag("0")+number("74")+flag("1"),
		text("P02")+text("A")+number("62")+flag("1")+number("84")+flag("1"),
		text("P03")+text("A")+flag("1")+flag("1")+flag("0")+flag("1"),
		text("P04")+text("A")+flag("0")+flag("1")+flag("1")+flag("0"))
	r, err := marks.Read("marks.xlsx", file, quiz, marks.Options{})
	if err != nil || len(r.Papers) != 4 {
		t.Fatalf("%+v, %v", r, err)
	}
	for i, want := range []string{"P01A r(62) r(FALSE) w(74) r(TRUE)", "P02A r(62) w(TRUE) r(84) r(TRUE)", "P03A r r w r(TRUE)", "P04A w r r w"} {
		if got := paper(r.Papers[i]); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
}

// Every sheet of a workbook is accounted for: the one that is a grid is read, wherever it
// stands, the others are named, and of two grids neither is left out in silence.
func TestWorkbookOfSeveralSheets(t *testing.T) {
	heading := text("pupil") + text("form") + number("1") + number("2") + number("3")
	cover := []string{text("Marks of Friday"), text("read me first")}
	first := []string{heading, text("P01") + text("A") + number("1") + number("52") + text("3:30")}
	second := []string{heading, text("P02") + text("A") + number("1") + number("62") + text("3:30")}
	r, err := marks.Read("marks.xlsx", sheets(t, cover, first), friday(), marks.Options{})
	if err != nil || len(r.Papers) != 1 || !strings.Contains(words.Joined(r.Notes, "%s; %s").String(), `sheet "2A" was not read`) {
		t.Errorf("%+v, %v", r, err)
	}
	r, err = marks.Read("marks.xlsx", sheets(t, first, second), friday(), marks.Options{})
	if err == nil || !strings.Contains(err.Error(), `the sheets "2A" and "2B" are all grids of this quiz`) {
		t.Errorf("%+v, %v", r, err)
	}
	r, err = marks.Read("marks.xlsx", sheets(t, cover), friday(), marks.Options{})
	if err == nil || !strings.Contains(err.Error(), `the first line is "Marks of Friday"`) {
		t.Errorf("%+v, %v", r, err)
	}
}
