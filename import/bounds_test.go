package intake_test

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"runtime"
	"strings"
	"testing"

	intake "evenhand/import"
)

// Workbooks made to fill memory or time are refused early, in words of what to do: at the most 60 MB are taken up in
// all for files of a few hundred KB that said they unpack to hundreds of MB, or whose 3 MB would become as much.
func TestBombsAreRefusedEarly(t *testing.T) {
	row := sheetRows([]string{"47 + 36", "83"})
	with := func(name, text string) []byte {
		parts := bare(t, `name="S"`, row)
		parts[name] = text
		return archive(t, parts)
	}
	sheet := func(rows string) []byte { return archive(t, bare(t, `name="S"`, rows)) }
	book := func(sheets string) []byte {
		return with("xl/workbook.xml", `<workbook `+sheetML+`><sheets>`+sheets+`</sheets></workbook>`)
	}
	for name, data := range map[string][]byte{
		"spaces":             sheet(row + strings.Repeat(" ", 30<<20)),
		"the same rows":      sheet(strings.Repeat(`<row><c><v>1</v></c></row>`, 500_000)),
		"styles":             with("xl/styles.xml", "<styleSheet><cellXfs>"+strings.Repeat("<xf/>", 2<<20)+"</cellXfs></styleSheet>"),
		"texts":              with("xl/sharedStrings.xml", "<sst>"+strings.Repeat("<si><t>a</t></si>", 1<<20)+"</sst>"),
		"no texts":           with("xl/sharedStrings.xml", "<sst>"+strings.Repeat("<si/>", 800_000)+"</sst>"),
		"a long text":        sheet(`<row><c t="inlineStr"><is><t>` + strings.Repeat("1 + ", 900_000) + `1</t></is></c></row>`),
		"tags in tags":       sheet(strings.Repeat("<a>", 1<<20)),
		"tags in a cell":     sheet(`<row><c>` + strings.Repeat("<a>", 1<<20)),
		"attributes":         sheet(`<row` + strings.Repeat(` a=""`, 700_000) + "/>"),
		"cells past columns": sheet(`<row>` + strings.Repeat(`<c/>`, 17_000) + `</row>`),
		"rows past rows":     sheet(`<row r="1048576"/><row><c><v>1</v></c></row>`),
		"names of sheets":    book(`<sheet name="` + strings.Repeat(`S"/><sheet name="`, 170_000) + `"/>`),
	} {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_, err := intake.Open("w.xlsx", data, intake.Options{})
		runtime.ReadMemStats(&after)
		if want := "w.xlsx: this workbook unpacks to far more than a list of items needs"; err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("%s: got %v", name, err)
		}
		if mb := (after.TotalAlloc - before.TotalAlloc) >> 20; mb > 60 && !testing.Short() { // which takes more beside the race detector
			t.Errorf("%s: %d KB cost %d MB", name, len(data)>>10, mb)
		}
	}
	var sheets strings.Builder
	for i := range 1001 {
		fmt.Fprintf(&sheets, `<sheet name="S%d" sheetId="%d" r:id="r0"/>`, i, i+1)
	}
	_, err := intake.Open("w.xlsx", book(sheets.String()), intake.Options{})
	if err == nil || !strings.Contains(err.Error(), "has 1001 sheets, and 1000") {
		t.Errorf("many sheets in one part: got %v", err)
	}
}

// A part may say that it is shorter than it is; it is read no further than it said.
func TestAPartLongerThanItSays(t *testing.T) {
	honest := archive(t, bare(t, `name="S"`, sheetRows([]string{"47 + 36", "83"})+strings.Repeat(" ", 30<<20)))
	from, err := zip.NewReader(bytes.NewReader(honest), int64(len(honest)))
	if err != nil {
		t.Fatal(err)
	}
	var file bytes.Buffer
	to := zip.NewWriter(&file)
	for _, part := range from.File {
		header := part.FileHeader
		header.UncompressedSize64 = min(header.UncompressedSize64, 900)
		w, err := to.CreateRaw(&header)
		if err != nil {
			t.Fatal(err)
		}
		raw, err := part.OpenRaw()
		if err != nil {
			t.Fatal(err)
		}
		_, err = io.Copy(w, raw)
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := to.Close(); err != nil {
		t.Fatal(err)
	}
	_, err = intake.Open("w.xlsx", file.Bytes(), intake.Options{})
	if err == nil || !strings.Contains(err.Error(), "save it as CSV") {
		t.Errorf("got %v", err)
	}
}

// What people and spreadsheets make in good faith comes in, however large: 100,000 rows, the last row and column that
// there can be, a sheet that is said to be all of it, cells that have a style and nothing else.
func TestLargeWorkbooksComeIn(t *testing.T) {
	var rows, styled strings.Builder
	for i := range 100_000 {
		fmt.Fprintf(&rows, `<row r="%d" spans="1:2"><c r="A%d" t="inlineStr"><is><t>%d + %d</t></is></c><c r="B%d"><v>%d</v></c></row>`,
			i+1, i+1, i/300+1, i%300, i+1, i/300+1+i%300)
	}
	styled.WriteString(sheetRows([]string{"47 + 36", "83"}))
	for i := range 100_000 {
		fmt.Fprintf(&styled, `<row r="%d"><c r="A%d" s="1"/></row>`, i+2, i+2)
	}
	all := bare(t, `name="S"`, sheetRows([]string{"47 + 36", "83"})+`<row r="1048576">`+text("XFD1048576", "47 + 35")+`</row>`)
	for name, part := range all {
		all[name] = strings.Replace(part, "<sheetData>", `<dimension ref="A1:XFD1048576"/><sheetData>`, 1)
	}
	for name, c := range map[string]struct {
		parts map[string]string
		total int
	}{
		"100,000 rows":   {bare(t, `name="S"`, rows.String()), 100_000},
		"styled rows":    {bare(t, `name="S"`, styled.String()), 1},
		"the last place": {all, 1 << 20},
	} {
		l, err := intake.Open("w.xlsx", archive(t, c.parts), intake.Options{})
		if err != nil || l.Total != c.total {
			t.Errorf("%s: %v", name, err)
		}
	}
}
