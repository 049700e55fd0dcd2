package intake_test

import (
	"testing"

	"evenhand/testdata"

	intake "evenhand/import"
)

// FuzzOpen reads any bytes as a list: nothing panics, and if there is a list its lines
// and rows add up.
func FuzzOpen(f *testing.F) {
	entries, err := testdata.Lists.ReadDir("lists")
	if err != nil || len(entries) != 3 {
		f.Fatalf("%d lists, %v", len(entries), err)
	}
	for _, entry := range entries {
		data, err := testdata.Lists.ReadFile("lists/" + entry.Name())
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Add([]byte("question,answer\n\"47 + 36,83\n\"\"\"\n,,,\n"))
	f.Add([]byte("sep=;\nfoo;bar\n1;2\n"))
	f.Add([]byte("a\x00b\x00\n\x00"))
	f.Add(workbook(f, `<row r="1"><c r="A1" t="inlineStr"><is><t>47 + 36</t></is></c><c r="B1"><v>83</v></c></row>`))
	b := newBank(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		l, err := intake.Open("list.csv", data, intake.Options{})
		if err != nil {
			return
		}
		if l.Encoding == "UTF-8" {
			checkLines(t, l, plain(string(data)))
		}
		checkOutcomes(t, mustImport(t, b, l, intake.ImportOptions{DryRun: true}))
	})
}
