package intake_test

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"runtime"
	"strings"
	"testing"

	intake "evenhand/import"
	"evenhand/standards/words"
)

// archive makes a zip file of named parts.
func archive(t testing.TB, parts map[string]string) []byte {
	t.Helper()
	var file bytes.Buffer
	z := zip.NewWriter(&file)
	for name, content := range parts {
		part, err := z.Create(name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := part.Write([]byte(content)); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return file.Bytes()
}

const sheetML = `xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" ` +
	`xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"`

// bare is a workbook of nothing but sheets, which is all that ECMA-376 asks for; sheets are
// given as attributes and rows by turns.
func bare(t testing.TB, sheets ...string) map[string]string {
	t.Helper()
	parts, list, relations := map[string]string{}, "", ""
	for i := 0; i < len(sheets); i += 2 {
		list += fmt.Sprintf(`<sheet %s sheetId="%d" r:id="r%d"/>`, sheets[i], i+1, i)
		relations += fmt.Sprintf(`<Relationship Id="r%d" Target="worksheets/s%d.xml"/>`, i, i)
		parts[fmt.Sprintf("xl/worksheets/s%d.xml", i)] = `<worksheet ` + sheetML + `><sheetData>` + sheets[i+1] + `</worksheet>`
	}
	for name, part := range parts {
		if !strings.Contains(part, "</sheetData>") {
			parts[name] = strings.Replace(part, "</worksheet>", "</sheetData></worksheet>", 1)
		}
	}
	parts["xl/workbook.xml"] = `<workbook ` + sheetML + `><sheets>` + list + `</sheets></workbook>`
	parts["xl/_rels/workbook.xml.rels"] = `<Relationships>` + relations + `</Relationships>`
	return parts
}

// sheetRows are rows of text cells, from row 1.
func sheetRows(rows ...[]string) string {
	var b strings.Builder
	for i, row := range rows {
		fmt.Fprintf(&b, `<row r="%d">`, i+1)
		for j, cell := range row {
			b.WriteString(text(fmt.Sprintf("%c%d", 'A'+j, i+1), cell))
		}
		b.WriteString(`</row>`)
	}
	return b.String()
}

// Every sheet is read or named: filled ones that can be seen are read, hidden ones and
// covers are told of, and any of them is read when it is asked for.
func TestEverySheetIsAccountedFor(t *testing.T) {
	book := archive(t, bare(t,
		`name="Cover"`, sheetRows([]string{"Grade 1 team lists"}),
		`name="Mon"`, sheetRows([]string{"Question", "Answer"}, []string{"47 + 36", "83"}),
		`name="Old" state="hidden"`, sheetRows([]string{"Question", "Answer"}, []string{"5 + 3", "8"}, []string{"6 + 3", "9"}),
		`name="Nothing"`, "",
		`name="Tue"`, sheetRows([]string{"27 + 35", "62"})))
	for _, c := range []struct {
		sheets     []string
		read, left string
	}{
		{nil, "w.xlsx (Mon) 1, w.xlsx (Tue) 1", `sheet "Old" is hidden, and its 3 rows were not read; --sheet "Old" reads it` + "\n" +
			`sheet "Cover" with 1 row was not read, as it doesn't look like a list of items; --sheet "Cover" reads it`},
		{[]string{"old"}, "w.xlsx 2", ""},
		{[]string{"Mon", "Old"}, "w.xlsx (Mon) 1, w.xlsx (Old) 2", ""},
		{[]string{"all"}, "w.xlsx (Cover) 1, w.xlsx (Mon) 1, w.xlsx (Old) 2, w.xlsx (Tue) 1", ""},
	} {
		b, err := intake.OpenBook("w.xlsx", book, intake.Options{Sheets: c.sheets})
		if err != nil {
			t.Fatal(c.sheets, err)
		}
		var read []string
		for _, l := range b.Lists {
			read = append(read, fmt.Sprintf("%s %d", l.Name, l.Rows()))
		}
		if got := strings.Join(read, ", "); got != c.read || words.Joined(b.Left, "%s\n%s").String() != c.left {
			t.Errorf("%v: read %s\nleft %s\nwant %s\nleft %s", c.sheets, got, words.Joined(b.Left, "%s\n%s").String(), c.read, c.left)
		}
	}
	_, err := intake.OpenBook("w.xlsx", book, intake.Options{Sheets: []string{"Wed"}})
	if want := `no sheet "Wed"; the workbook has "Cover", "Mon", "Old", "Nothing", "Tue"`; err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("got %v, want %s", err, want)
	}
}

// ECMA-376 Part 1, 18.18.11: a cell of type b holds 1 or 0; 18.3.1.55: a merged cell's
// text stands in its first cell only.
func TestTruthAndMergedCells(t *testing.T) {
	rows := `<row r="1">` + text("A1", "Skill") + text("B1", "Question") + text("C1", "Answer") + `</row>` +
		`<row r="2">` + text("A2", "tens and ones") + text("B2", "true or false: 7 + 8 = 15") + `<c r="C2" t="b"><v>1</v></c></row>` +
		`<row r="3">` + text("B3", "true or false: 7 + 8 = 16") + `<c r="C3" t="b"><v>1</v></c></row>` +
		`<row r="4">` + text("B4", "How many tens are in ninety?") + `<c r="C4"><v>9</v></c></row></sheetData><mergeCells><mergeCell ref="A2:A4"/></mergeCells>`
	l, err := intake.Open("w.xlsx", archive(t, bare(t, `name="S"`, rows)), intake.Options{})
	if err != nil {
		t.Fatal(err)
	}
	b := newBank(t)
	r := mustImport(t, b, l, intake.ImportOptions{})
	if want := "line 3, answer: the answer to true or false: 7 + 8 = 16 is false, the list says TRUE"; problems(r) != want {
		t.Errorf("got %s, want %s", problems(r), want)
	}
	if all := items(t, b, r); len(all) != 2 || all[1].Skill != "tens-and-ones" {
		t.Errorf("items %v", all)
	}
}

// Files that look like workbooks are named, and what to do with them.
func TestArchivesAreNamed(t *testing.T) {
	for part, want := range map[string]string{
		"word/document.xml":    "this is a text document (.docx)",
		"ppt/presentation.xml": "this is a presentation (.pptx)",
		"xl/workbook.bin":      "this is a binary workbook (.xlsb)",
		"imsmanifest.xml":      "this is a package of test items (QTI)",
		"week.csv":             "this is a zip archive of 1 files",
	} {
		_, err := intake.Open("list.xlsx", archive(t, map[string]string{part: "x"}), intake.Options{})
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: got %v, want %s", part, err, want)
		}
	}
	_, err := intake.Open("list.ods", archive(t, map[string]string{"content.xml": "x", "META-INF/manifest.xml": "x"}), intake.Options{})
	if err == nil || !strings.Contains(err.Error(), "OpenDocument") {
		t.Errorf("ODS: got %v", err)
	}
	if _, err := intake.Open("list.json", []byte("{\"items\": [1, 2]}\n"), intake.Options{}); err == nil || !strings.Contains(err.Error(), "this is JSON") {
		t.Errorf("JSON: got %v", err)
	}
}

// Wide, deep and blown-up workbooks cost memory in proportion to their bytes: here at most
// 200 MB in all for files of up to 300 KB, where one string a cell of their widest
// row took gigabytes.
func TestWorkbooksCostWhatTheyWeigh(t *testing.T) {
	stray := func(rows int) string {
		var b strings.Builder
		for i := range rows {
			question := text(fmt.Sprintf("A%d", i+1), fmt.Sprintf("%d + 2", i%90+1))
			answer := text(fmt.Sprintf("B%d", i+1), fmt.Sprint(i%90+3))
			fmt.Fprintf(&b, `<row r="%d">%s%s<c r="XFD%d"><v>1</v></c></row>`, i+1, question, answer, i+1)
		}
		return b.String()
	}
	var diagonal strings.Builder
	for i := range 16384 {
		fmt.Fprintf(&diagonal, `<row r="%d"><c r="%s%d"><v>1</v></c></row>`, i+1, intake.Column{Number: i + 1}.Letter(), i+1)
	}
	shared := bare(t, `name="S"`, strings.Repeat(`<row><c t="s"><v>0</v></c></row>`, 20000))
	shared["xl/sharedStrings.xml"] = `<sst ` + sheetML + `><si><t>` + strings.Repeat("How many? ", 40000) + `</t></si></sst>`
	padded := bare(t, `name="S"`, sheetRows([]string{"47 + 36", "83"})+strings.Repeat(" ", 100<<20))
	media := bare(t, `name="S"`, sheetRows([]string{"47 + 36", "83"}))
	media["xl/media/1.png"] = strings.Repeat("\x00", 100<<20)
	for _, c := range []struct {
		name  string
		parts map[string]string
		want  string // of the error; empty for a list
	}{
		{"stray cells in the last column", bare(t, `name="S"`, stray(4000)), ""},
		{"a cell in each column", bare(t, `name="S"`, diagonal.String()), "something stands in 16384 columns"},
		{"one long text in every row", shared, "unpacks to far more"},
		{"a sheet of spaces", padded, "unpacks to far more"},
		{"pictures", media, ""},
	} {
		data := archive(t, c.parts)
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		l, err := intake.Open("w.xlsx", data, intake.Options{})
		runtime.ReadMemStats(&after)
		if c.want == "" && err != nil || c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)) {
			t.Errorf("%s: got %v, want %q", c.name, err, c.want)
		}
		if mb := (after.TotalAlloc - before.TotalAlloc) >> 20; mb > 200 || len(data) > 300<<10 {
			t.Errorf("%s: %d bytes cost %d MB", c.name, len(data), mb)
		}
		if err == nil && len(l.Columns) > 3 {
			t.Errorf("%s: %d columns are spoken of", c.name, len(l.Columns))
		}
	}
}

// A wide CSV file is refused in one line, and one long line is no work.
func TestWideAndLongTexts(t *testing.T) {
	wide := strings.Repeat(strings.Repeat("x,", 16383)+"x\n", 10)
	if _, err := intake.Open("w.csv", []byte(wide), intake.Options{}); err == nil || len(err.Error()) > 300 {
		t.Errorf("wide: %v", err)
	}
	stray := "Question,Answer" + strings.Repeat(",", 16000) + "x\n47 + 36,83\n"
	if l := mustOpen(t, stray); len(l.Columns) != 3 || l.Columns[2].Number != 16002 {
		t.Errorf("stray: %d columns", len(l.Columns))
	}
	_, r := importText(t, "Question,Answer\n\""+strings.Repeat("How many? ", 100000)+"\",4\n47 + 36,83\n")
	if want := "line 2, question: this is 999999 characters long; a question has at most 2000"; problems(r) != want {
		t.Errorf("got %s, want %s", problems(r), want)
	}
}

// FuzzSheet reads any XML as the rows of a sheet: nothing panics, and lines and rows add up.
func FuzzSheet(f *testing.F) {
	f.Add(sheetRows([]string{"Question", "Answer"}, []string{"47 + 36", "83"}))
	f.Add(`<row r="2"><c r="XFD2" t="b"><v>1</v></c></row><row><c t="inlineStr"><is><r><t>5</t></r><rPh><t>x</t></rPh></is></c></row>`)
	f.Add(`<row r="1"><c s="1"><v>1e300</v></c><c r="A1"><v/></c></row></sheetData><mergeCells><mergeCell ref="A1:B7"/></mergeCells>`)
	f.Fuzz(func(t *testing.T, rows string) {
		parts := bare(t, `name="S"`, rows)
		parts["xl/styles.xml"] = `<styleSheet ` + sheetML + `><cellXfs><xf numFmtId="0"/><xf numFmtId="20"/></cellXfs></styleSheet>`
		l, err := intake.Open("w.xlsx", archive(t, parts), intake.Options{})
		if err != nil {
			return
		}
		if len(l.Columns) > 100 || l.Rows() > len(rows) {
			t.Fatalf("%d columns, %d rows of %d bytes", len(l.Columns), l.Rows(), len(rows))
		}
	})
}

// Options that say nothing about the kind of file are refused as such, not passed over.
func TestOptionsOfAnotherKindOfFileAreRefused(t *testing.T) {
	book := archive(t, bare(t, `name="Mon"`, sheetRows([]string{"Question", "Answer"}, []string{"47 + 36", "83"})))
	for said, open := range map[string]func() (*intake.Book, error){
		"leave off the encoding": func() (*intake.Book, error) {
			return intake.OpenBook("sums.xlsx", book, intake.Options{Encoding: "windows-1252"})
		},
		"only a workbook has sheets": func() (*intake.Book, error) {
			return intake.OpenBook("sums.csv", []byte("question,answer\n47 + 36,83\n"), intake.Options{Sheets: []string{"Mon"}})
		},
	} {
		_, err := open()
		if !errors.As(err, new(*intake.WrongOptionsError)) || !strings.Contains(err.Error(), said) {
			t.Errorf("want %q, got %v", said, err)
		}
	}
}
