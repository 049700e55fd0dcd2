package intake_test

import (
	"archive/zip"
	"bytes"
	"fmt"
	"strings"
	"testing"

	intake "evenhand/import"
	"evenhand/standards/words"
)

// workbook makes an .xlsx file (ECMA-376) whose sheets hold the rows given as XML. Style
// 1 shows numbers as times. Shared text 0 is "27 + 35".
func workbook(t testing.TB, sheets ...string) []byte {
	t.Helper()
	const (
		head   = `<?xml version="1.0" encoding="UTF-8"?>`
		main   = `xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"`
		office = `http://schemas.openxmlformats.org/officeDocument/2006/relationships`
	)
	var list, relations string
	parts := map[string]string{
		"xl/sharedStrings.xml": `<sst ` + main + `><si><t>27 + 35</t></si></sst>`,
		"xl/styles.xml":        `<styleSheet ` + main + `><cellXfs><xf numFmtId="0"/><xf numFmtId="20"/></cellXfs></styleSheet>`,
	}
	for i, rows := range sheets {
		list += fmt.Sprintf(`<sheet name="Week %d" sheetId="%d" r:id="r%d"/>`, i+1, i+1, i+1)
		relations += fmt.Sprintf(`<Relationship Id="r%d" Type="%s/worksheet" Target="worksheets/sheet%d.xml"/>`, i+1, office, i+1)
		parts[fmt.Sprintf("xl/worksheets/sheet%d.xml", i+1)] = `<worksheet ` + main + `><sheetData>` + rows + `</sheetData></worksheet>`
	}
	parts["xl/workbook.xml"] = `<workbook ` + main + ` xmlns:r="` + office + `"><sheets>` + list + `</sheets></workbook>`
	parts["xl/_rels/workbook.xml.rels"] = `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">` + relations + `</Relationships>`
	var file bytes.Buffer
	archive := zip.NewWriter(&file)
	for name, content := range parts {
		part, err := archive.Create(name)
		if err != nil {
			t.Fatal(err)
		}
		part.Write([]byte(head + content))
	}
	if err := archive.Close(); err != nil {
		t.Fatal(err)
	}
	return file.Bytes()
}

func text(ref, content string) string {
	return fmt.Sprintf(`<c r="%s" t="inlineStr"><is><t>%s</t></is></c>`, ref, content)
}

// The first sheet is empty; rows keep the numbers that the spreadsheet shows.
func TestWorkbook(t *testing.T) {
	rows := `<row r="1">` + text("B1", "Clocks and sums") + `</row>` +
		`<row r="3">` + text("A3", "Answer") + text("C3", "Question") + `</row>` +
		`<row r="4"><c r="A4"><v>83</v></c>` + text("C4", "47 + 36") + `</row>` +
		`<row r="5"><c r="A5"><v>61</v></c><c r="C5" t="s"><v>0</v></c></row>` +
		`<row r="6"><c r="A6" s="1"><v>0.14583333333333334</v></c>` + text("C6", "read 3:30") + `</row>` +
		`<row r="9"><c r="C9" s="1"><v>0.14583333333333334</v></c></row>` +
		`<row r="10"><c r="A10"><v>-5</v></c>` + text("C10", "5 - 8") + `</row>` +
		`<row r="11">` + text("C11", "How many?") + text("E11", "4") + `</row>`
	l, err := intake.Open("week.xlsx", workbook(t, "", rows), intake.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if l.Written().String() != `workbook, sheet "Week 2"` || l.Total != 11 || meanings(l) != "answer - question" {
		t.Errorf("read as %s, %d lines, %s", l.Written(), l.Total, meanings(l))
	}
	b := newBank(t)
	r := mustImport(t, b, l, intake.ImportOptions{})
	want := "line 5, answer: 27 + 35 is 62, the list says 61\n" +
		"line 10, question: 5 - 8 is less than 0; quizzes for these grades stay with 0 and more\n" +
		"line 11: this row has 5 cells, the list has 3 columns; see whether a cell has slipped to the right"
	if problems(r) != want {
		t.Errorf("got\n%s\nwant\n%s", problems(r), want)
	}
	if all := items(t, b, r); len(all) != 3 || all[1].Task != "read 3:30" || all[2].ID != all[1].ID {
		t.Errorf("items %v", all)
	}
}

func TestWorkbooksThatAreNoLists(t *testing.T) {
	for name, c := range map[string]struct {
		data []byte
		want string
	}{
		"no rows":          {workbook(t, "", `<row r="1"></row>`), "the workbook has no sheet with anything in it"},
		"no workbook":      {zipped(t, "word/document.xml"), "this is a text document (.docx)"},
		"torn":             {workbook(t, `<row r="1">`+text("A1", "47 + 36")+`</row>`)[:300], "this workbook is torn"},
		"broken XML":       {workbook(t, `<row r="1"><c r="A1"><v>1</v></row>`), `sheet "Week 1" can't be read`},
		"string before 0":  {workbook(t, `<row r="1"><c r="A1" t="s"><v>-1</v></c></row>`), "points to shared text number -1"},
		"string after all": {workbook(t, `<row r="1"><c r="A1" t="s"><v>7</v></c></row>`), `sheet "Week 1" can't be read (xl/worksheets/sheet1.xml: row 1: `},
	} {
		_, err := intake.Open("list.xlsx", c.data, intake.Options{})
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: got %v, want %s", name, err, c.want)
		}
	}
}

func zipped(t *testing.T, name string) []byte {
	var file bytes.Buffer
	archive := zip.NewWriter(&file)
	if _, err := archive.Create(name); err != nil {
		t.Fatal(err)
	}
	archive.Close()
	return file.Bytes()
}

// Rows and cells may leave out where they stand.
func TestWorkbookWithoutReferences(t *testing.T) {
	cell := func(s string) string { return `<c t="inlineStr"><is><t>` + s + `</t></is></c>` }
	l, err := intake.Open("list.xlsx", workbook(t, `<row>`+cell("question")+cell("answer")+`</row><row>`+cell("47 + 36")+cell("73")+`</row>`), intake.Options{})
	if err != nil {
		t.Fatal(err)
	}
	r := mustImport(t, newBank(t), l, intake.ImportOptions{})
	if want := "line 2, answer: 47 + 36 is 83, the list says 73"; problems(r) != want {
		t.Errorf("got %q, want %q", problems(r), want)
	}
}

// Cells in which a formula failed (ECMA-376 Part 1, 18.17.3: #REF!, #NAME?, #DIV/0!) and days
// of the calendar as a workbook keeps them are asked about; rows that are hidden are said.
func TestCellsThatSayNothing(t *testing.T) {
	row := func(n int, hidden, question, answer string) string {
		return fmt.Sprintf(`<row r="%d" %s>%s%s</row>`, n, hidden, text(fmt.Sprintf("A%d", n), question), text(fmt.Sprintf("B%d", n), answer))
	}
	rows := row(1, "", "Question", "Answer") +
		row(2, "", "#NAME?", "34") +
		row(3, "", "How many legs has a dog?", "#DIV/0!") +
		row(4, "", "Which day comes after May 4?", "2026-05-05") +
		row(5, "", "Which day comes after May 5?", "May 6") +
		row(6, `hidden="1"`, "52 - 18", "34") +
		row(7, `hidden="true"`, "12 + 5", "17")
	l, err := intake.Open("week.xlsx", workbook(t, rows), intake.Options{})
	if err != nil {
		t.Fatal(err)
	}
	r := mustImport(t, newBank(t), l, intake.ImportOptions{})
	want := "line 2, question: #NAME? is what a spreadsheet writes when it can't work out a formula; write what was meant\n" +
		"line 3, answer: #DIV/0! is what a spreadsheet writes when it can't work out a formula; write what was meant\n" +
		"line 4, answer: 2026-05-05 is a date, which a spreadsheet may have made of 5-5, 5-5 or 5/5; write what was meant"
	if problems(r) != want || r.Count(intake.Added) != 3 {
		t.Errorf("%s\n%s", r.Summary(), problems(r))
	}
	hidden := "2 rows hidden in the sheet and read like the others: 6, 7; --undo takes the list back, to import it without"
	if asked := words.Joined(l.Asked, "%s; %s").String(); asked != hidden {
		t.Error(asked)
	}
}
