package marks_test

import (
	"archive/zip"
	"bytes"
	"testing"

	"evenhand/import/marks"
)

// A workbook keeps 3:30 as a share of a day in a cell shown as a time (ECMA-376, number
// format 20), and numbers without quotes.
func TestWorkbook(t *testing.T) {
	const (
		head   = `<?xml version="1.0" encoding="UTF-8"?>`
		main   = `xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"`
		office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
	)
	text := func(s string) string { return `<c t="inlineStr"><is><t>` + s + `</t></is></c>` }
	number := func(s string) string { return `<c><v>` + s + `</v></c>` }
	rows := `<row>` + text("pupil") + text("form") + number("1") + number("2") + number("3") + `</row>` +
		`<row>` + text("P01") + text("A") + number("2") + number("512") + `<c s="1"><v>0.14583333333333334</v></c></row>` +
		`<row>` + text("P02") + text("B") + text("✓") + text("-") + text("half past 4") + `</row>`
	var file bytes.Buffer
	archive := zip.NewWriter(&file)
	for name, content := range map[string]string{
		"xl/sharedStrings.xml":       `<sst ` + main + `/>`,
		"xl/styles.xml":              `<styleSheet ` + main + `><cellXfs><xf numFmtId="0"/><xf numFmtId="20"/></cellXfs></styleSheet>`,
		"xl/worksheets/sheet1.xml":   `<worksheet ` + main + `><sheetData>` + rows + `</sheetData></worksheet>`,
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
	r, err := marks.Read("marks.xlsx", file.Bytes(), friday(), marks.Options{})
	if err != nil || len(r.Papers) != 2 {
		t.Fatalf("%+v, %v", r, err)
	}
	for i, want := range []string{"P01A w(2) w(512) r(3:30)", "P02B r a r(half past 4)"} {
		if got := paper(r.Papers[i]); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
}
