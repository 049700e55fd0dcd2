package qti_test

import (
	"archive/zip"
	"bytes"
	"fmt"
	"strings"
	"testing"
	"unicode/utf16"

	"evenhand/assemble/export/qti"
)

// foreign is a package as another program may write one: the elements and attributes of the
// specification (1EdTech, QTI 3.0 Best Practices and Implementation Guide, 1 May 2022), none of our metadata.
func foreign(t testing.TB, items ...string) []byte {
	t.Helper()
	manifest := `<manifest xmlns="http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1" identifier="M"><resources>`
	var files []packed
	for i, item := range items {
		name := fmt.Sprintf("q%d.xml", i+1)
		manifest += fmt.Sprintf(`<resource identifier="Q%d" type="imsqti_item_xmlv3p0" href="%s"><file href="%s"/></resource>`, i+1, name, name)
		files = append(files, packed{name, []byte(item)})
	}
	return zipped(t, append([]packed{{"imsmanifest.xml", []byte(manifest + `</resources></manifest>`)}}, files...)...)
}

func foreignItem(declared, body string) string {
	return `<qti-assessment-item xmlns="http://www.imsglobal.org/xsd/imsqtiasi_v3p0" identifier="x" title="x" xml:lang="en-US">` +
		declared + `<qti-item-body>` + body + `</qti-item-body></qti-assessment-item>`
}

func declared(right ...string) string {
	values := ""
	for _, value := range right {
		values += "<qti-value>" + value + "</qti-value>"
	}
	return `<qti-response-declaration identifier="R" cardinality="single" base-type="string"><qti-correct-response>` + values +
		`</qti-correct-response></qti-response-declaration>`
}

func TestRowsOfOthers(t *testing.T) {
	data := foreign(t,
		foreignItem(declared("83"), `<div><p>47 + 36 = <qti-text-entry-interaction response-identifier="R"/></p></div>`),
		foreignItem(declared("B"), `<qti-choice-interaction response-identifier="R" max-choices="1"><qti-prompt>Which is <b>even</b>?</qti-prompt>`+
			`<qti-simple-choice identifier="A">7</qti-simple-choice><qti-simple-choice identifier="B">8</qti-simple-choice></qti-choice-interaction>`),
		foreignItem(declared("1", "2"), `<p>Two numbers?</p>`),
		`<qti-assessment-item xmlns="http://www.imsglobal.org/xsd/imsqtiasi_v3p0"`,
		foreignItem(declared("5"), ``),
	)
	rows, err := qti.Rows(bytes.NewReader(data), int64(len(data)))
	if err != nil || len(rows) != 5 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for i, want := range []qti.Row{
		{File: "q1.xml", Question: "47 + 36 = ___", Lang: "en", Answer: "83"},
		{File: "q2.xml", Question: "Which is even?", Lang: "en", Answer: "8"},
	} {
		got := rows[i]
		if got.File != want.File || got.Question != want.Question || got.Lang != want.Lang || got.Answer != want.Answer || got.Problem != "" {
			t.Errorf("row %d is %+v, want %+v", i+1, got, want)
		}
	}
	for i, problem := range map[int]string{2: "2 answers together", 3: "q4.xml", 4: "nothing is asked"} {
		if got := rows[i]; !strings.Contains(got.Problem, problem) || got.Question != map[int]string{2: "Two numbers?"}[i] { // to mend it by
			t.Errorf("row %d is %+v, want %q", i+1, got, problem)
		}
	}
	if !qti.IsPackage(data) || qti.IsPackage([]byte("question,answer")) || qti.IsPackage(zipped(t, packed{"xl/workbook.xml", nil})) {
		t.Error("what is a package isn't told from what is none")
	}
}

// Our own packages come back as tasks, skills and keys, whatever the way to answer.
func TestRowsOfOurs(t *testing.T) {
	data := few(t)
	rows, err := qti.Rows(bytes.NewReader(data), int64(len(data)))
	if err != nil || len(rows) != 7 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for i, want := range []string{"47 + 36 = ?", "read 4:30", "47 ? 74", "match 4:00, 7:00", "draw 4:30", "pairs of 7", "Why is 7 odd?"} {
		if rows[i].Question != want || rows[i].Problem != "" || rows[i].Skill == "" {
			t.Errorf("row %d is %+v, want %q", i+1, rows[i], want)
		}
	}
}

// What an attacker may pack is refused before it costs anything (OWASP: zip slip, zip bombs).
func TestUnsafePackages(t *testing.T) {
	for name, want := range map[string]string{"../out.xml": "leads out", "/etc/x": "leads out", `a\..\b`: "leads out"} {
		data := zipped(t, packed{"imsmanifest.xml", []byte("<manifest/>")}, packed{name, nil})
		if _, err := qti.Rows(bytes.NewReader(data), int64(len(data))); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", name, err)
		}
	}
	var bomb bytes.Buffer
	z := zip.NewWriter(&bomb)
	w, err := z.Create("imsmanifest.xml")
	if err != nil {
		t.Fatal(err)
	}
	for range 20 {
		if _, err := w.Write(bytes.Repeat([]byte(" "), 1<<20)); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	if _, err := qti.Rows(bytes.NewReader(bomb.Bytes()), int64(bomb.Len())); err == nil || !strings.Contains(err.Error(), "too large") {
		t.Errorf("20 MB from %d bytes: %v", bomb.Len(), err)
	}
	deep := foreign(t, foreignItem(declared("5"), strings.Repeat("<div>", 60)+"deep"+strings.Repeat("</div>", 60)))
	if rows, err := qti.Rows(bytes.NewReader(deep), int64(len(deep))); err != nil || !strings.Contains(rows[0].Problem, "deep") {
		t.Errorf("60 elements deep: %+v, %v", rows, err)
	}
}

// Items of kinds that a list has no place for are set aside with the reason; those that words tell whole come in.
// The elements are those of the specification (1EdTech, QTI 3.0 Best Practices and Implementation Guide, 1 May 2022).
func TestKindsOfOthers(t *testing.T) {
	ordered := strings.Replace(declared("A"), "single", "ordered", 1)
	rows := []struct{ item, question, answer, problem string }{
		{foreignItem(declared("x"), `<p>A cat is <qti-inline-choice-interaction response-identifier="R">`+
			`<qti-inline-choice identifier="x">an animal</qti-inline-choice>`+
			`<qti-inline-choice identifier="y">a shape</qti-inline-choice></qti-inline-choice-interaction>.</p>`), "A cat is ___ .", "an animal", ""},
		{foreignItem(declared(""), `<p>Why is 7 odd?</p><qti-extended-text-interaction response-identifier="R"/>`), "Why is 7 odd?", "", ""},
		{foreignItem(declared("4:30"), `<p><img src="clock.png" alt="a clock"/> What time is it?</p>`), "What time is it?", "", "img"},
		{foreignItem(declared("A"), `<p>Put them in order.</p><qti-order-interaction response-identifier="R"/>`), "Put them in order.", "", "qti-order-interaction"},
		{foreignItem(ordered, `<p>Which comes first?</p>`), "Which comes first?", "", "ordered"},
		{`<!DOCTYPE q [<!ENTITY x SYSTEM "file:///etc/passwd">]>` + foreignItem(declared("1"), `<p>&x;</p>`), "", "", "document type"},
	}
	var items []string
	for _, row := range rows {
		items = append(items, row.item)
	}
	data := foreign(t, items...)
	got, err := qti.Rows(bytes.NewReader(data), int64(len(data)))
	if err != nil || len(got) != len(rows) {
		t.Fatal(got, err)
	}
	for i, want := range rows {
		if is := got[i]; is.Question != want.question || is.Answer != want.answer ||
			(is.Problem == "") != (want.problem == "") || !strings.Contains(is.Problem, want.problem) {
			t.Errorf("row %d is %+v, want %q", i+1, is, want)
		}
	}
}

// The names of files stand in the manifest as addresses (IMS Content Packaging 1.2, 4.3), the files in any encoding that
// XML allows, and some people pack the folder once more.
func TestPackagesAsOthersPackThem(t *testing.T) {
	item := foreignItem(declared("83"), `<p>¿Cuánto es 47 + 36?</p>`)
	latin := []byte(`<?xml version="1.0" encoding="ISO-8859-1"?>` + strings.NewReplacer("¿", "\xbf", "á", "\xe1").Replace(item))
	wide := []byte{0xfe, 0xff} // the mark of UTF-16 whose high byte comes first
	for _, letter := range utf16.Encode([]rune(`<?xml version="1.0" encoding="UTF-16"?>` + item)) {
		wide = append(wide, byte(letter>>8), byte(letter))
	}
	manifest := `<manifest xmlns="http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1" identifier="M"><resources>`
	for i, href := range []string{"more%20sums/q%201.xml", "q2.xml?v=1", "q3.xml#top", "http://school.example/q3.xml", "q2.xml"} {
		manifest += fmt.Sprintf(`<resource identifier="Q%d" type="imsqti_item_xmlv3p0" href="%s"/>`, i, href)
	}
	data := zipped(t, packed{"week 48/imsmanifest.xml", []byte(manifest + `</resources></manifest>`)},
		packed{"week 48/more sums/q 1.xml", []byte("\ufeff" + item)}, packed{"week 48/q2.xml", latin}, packed{"week 48/q3.xml", wide})
	if !qti.IsPackage(data) {
		t.Error("it is taken for none")
	}
	rows, err := qti.Rows(bytes.NewReader(data), int64(len(data)))
	if err != nil || len(rows) != 5 {
		t.Fatal(rows, err)
	}
	for i, row := range rows[:3] {
		if row.Question != "¿Cuánto es 47 + 36?" || row.Answer != "83" || row.Problem != "" {
			t.Errorf("row %d is %+v", i+1, row)
		}
	}
	for i, problem := range map[int]string{3: "there is no http://school.example/q3.xml in it", 4: "more than once"} {
		if !strings.Contains(rows[i].Problem, problem) {
			t.Errorf("row %d is %+v, want %q", i+1, rows[i], problem)
		}
	}
	earlier := zipped(t, packed{"imsmanifest.xml", []byte(`<manifest xmlns="http://www.imsglobal.org/xsd/imscp_v1p1"/>`)})
	if _, err := qti.Rows(bytes.NewReader(earlier), int64(len(earlier))); err == nil || !strings.Contains(err.Error(), "have it exported as QTI 3.0") {
		t.Errorf("of an earlier version: %v", err)
	}
}

// What takes much more memory or time than its size is refused: elements are counted, and items.
func TestPackagesOfTooMany(t *testing.T) {
	var attributes, resources strings.Builder
	for i := range 50_000 {
		fmt.Fprintf(&attributes, ` a%x="%x"`, i, i*i)
	}
	for i := range 100_001 {
		fmt.Fprintf(&resources, `<resource type="imsqti_item_xmlv3p0" href="%x.xml"/>`, i*i)
	}
	data := foreign(t, foreignItem(declared("83"), `<p`+attributes.String()+`>47 + 36 = ?</p>`), foreignItem(declared("83"), `<p>47 + 36 = ?</p>`))
	rows, err := qti.Rows(bytes.NewReader(data), int64(len(data)))
	if err != nil || !strings.Contains(rows[0].Problem, "more than 50000 elements") || rows[1].Problem != "" {
		t.Errorf("%+v, %v", rows, err)
	}
	data = zipped(t, packed{"imsmanifest.xml", []byte(`<manifest xmlns="http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1"><resources>` +
		resources.String() + `</resources></manifest>`)})
	if _, err := qti.Rows(bytes.NewReader(data), int64(len(data))); err == nil || !strings.Contains(err.Error(), "more than 100000 items are in it") {
		t.Errorf("%d bytes: %v", len(data), err)
	}
}

func FuzzRows(f *testing.F) {
	f.Add(few(f))
	f.Add(foreign(f, foreignItem(declared("83"), `<p>47 + 36 = ?</p>`)))
	f.Fuzz(func(t *testing.T, data []byte) {
		rows, err := qti.Rows(bytes.NewReader(data), int64(len(data)))
		for _, row := range rows {
			if err != nil || row.Question == "" && row.Problem == "" {
				t.Errorf("%+v beside %v", row, err)
			}
		}
	})
}
