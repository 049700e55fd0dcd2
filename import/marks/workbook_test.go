package marks_test

import (
	"archive/zip"
	"bytes"
	"testing"

	"evenhand/import/marks"
)

// number and flag are cells of a workbook as it keeps numbers and TRUE or FALSE.
func text(s string) string   { return `<c t="inlineStr"><is><t>` + s + `</t></is></c>` }
func number(s string) string { return `<c><v>` + s + `</v></c>` }
func flag(s string) string   { return `<c t="b"><v>` + s + `</v></c>` }

// workbook is a workbook of one sheet, whose style 1 shows a time (ECMA-376, number format 20).
func workbook(t *testing.T, rows ...string) []byte {
	t.Helper()
	const (
		head   = `<?xml version="1.0" encoding="UTF-8"?>`
		main   = `xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"`
		office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
	)
	sheet := ""
	for _, row := range rows {
		sheet += "<row>" + row + "</row>"
	}
	var file bytes.Buffer
	archive := zip.NewWriter(&file)
	for name, content := range map[string]string{
		"xl/sharedStrings.xml":       `<sst ` + main + `/>`,
		"xl/styles.xml":              `<styleSheet ` + main + `><cellXfs><xf numFmtId="0"/><xf numFmtId="20"/></cellXfs></styleSheet>`,
		"xl/worksheets/sheet1.xml":   `<worksheet ` + main + `><sheetData>` + sheet + `</sheetData></worksheet>`,
		"xl/workbook.xml":            `<workbook ` + main + ` xmlns:r="` + office + `"><sheets><sheet name="Friday" sheetId="1" r:id="r1"/></sheets></workbook>`,
		"xl/_rels/workbook.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r1" Type="` + office + `/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
	} {
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
