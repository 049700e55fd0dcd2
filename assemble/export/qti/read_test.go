package qti_test

import (
	"archive/zip"
	"bytes"
	"io"
	"slices"
	"strings"
	"testing"

	"evenhand/assemble/export/qti"
	"evenhand/bank"
	"evenhand/standards/task"
)

// few is a package with one item of each kind of response.
func few(t testing.TB) []byte {
	t.Helper()
	p := qti.Package{Title: "Friday check", Lang: "en", Tests: []qti.Test{{ID: "form-A", Title: "A"}}}
	for i, asked := range []string{"47 + 36 = ?", "read 4:30", "47 ? 74", "match 4:00, 7:00", "draw 4:30", "pairs of 7"} {
		item := bank.NewItem(task.MustParse(asked), "", bank.Origin{})
		item.ID = "0" + string(rune('A'+i))
		add(t, &p, item)
	}
	hand := bank.NewHandItem("Why is 7 odd?", "", "odd-or-even", "en", bank.Origin{})
	hand.ID = "0Z"
	add(t, &p, hand)
	return written(t, p)
}

// packed is one file of a package.
type packed struct {
	name string
	text []byte
}

// unpacked is the files of a package in their order.
func unpacked(t testing.TB, data []byte) (files []packed) {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range z.File {
		open, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(open)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, packed{f.Name, text})
	}
	return files
}

// zipped is the package of some files.
func zipped(t testing.TB, files ...packed) []byte {
	t.Helper()
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, f := range files {
		file, err := w.Create(f.name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := file.Write(f.text); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// changed is the package with a text replaced in the files whose names begin with name; an
// empty text drops the file.
func changed(t testing.TB, data []byte, name, from, to string) []byte {
	t.Helper()
	var files []packed
	hit := false
	for _, f := range unpacked(t, data) {
		if strings.HasPrefix(f.name, name) {
			hit = hit || bytes.Contains(f.text, []byte(from))
			f.text = bytes.ReplaceAll(f.text, []byte(from), []byte(to))
			if from == "" {
				continue
			}
		}
		files = append(files, f)
	}
	if !hit {
		t.Fatalf("%q is in no file %s", from, name)
	}
	return zipped(t, files...)
}

func TestReadSaysWhatIsWrong(t *testing.T) {
	good := few(t)
	for _, row := range []struct{ name, from, to, want string }{
		{"imsmanifest.xml", "", "", "there is no imsmanifest.xml in it"},
		{"imsmanifest.xml", "</manifest>", "", "imsmanifest.xml: XML syntax error on line"},
		{"imsmanifest.xml", "qtiv3p0/imscp_v1p1\"", "other\"", "imsmanifest.xml holds manifest of"},
		{"imsmanifest.xml", `identifier="item-0B"`, `identifier="item-0A"`, `identifier "item-0A" is empty or stands twice`},
		{"imsmanifest.xml", "imsqti_test_xmlv3p0", "webcontent", `form-A is of type "webcontent"`},
		{"imsmanifest.xml", "PT", "about ", `working time "about 45S" is not like PT30S`},
		{"items/pictures", "", "", `which is not in the package`},
		{"items/item-0A", "", "", `lists "items/item-0A.xml", which is not in the package`},
		{"items/item-0A", "<?xml", "<!DOCTYPE x><?xml", "items/item-0A.xml: a document type"},
		{"items/item-0A", `response-identifier="RESPONSE"`, `response-identifier="R"`, `items/item-0A.xml: response "R" is asked for but not declared`},
		{"items/item-0A", "<qti-value>83</qti-value>", "", `response "RESPONSE" has no right value`},
		{"items/item-0A", "qti-text-entry", "qti-slider", "qti-slider-interaction in a paragraph"},
		{"items/item-0A", "match_correct", "my_own", "scoring by"},
		{"items/item-0F", "qti-sum", "qti-product", "qti-product with 2 parts in the rule for the score"},
		{"items/item-0F", `<qti-variable identifier="RESPONSE1"/>`, `<qti-variable identifier="OTHER"/>`, `names "OTHER", which is not declared`},
		{"items/item-0C", "qti-choice-interaction", "qti-order-interaction", "qti-order-interaction in the question"},
		{"items/item-0D", "<qti-simple-match-set>", "<qti-simple-match-set/><qti-simple-match-set>", "4 sets to join"},
		{"items/item-0A", "<p>", strings.Repeat("<p>", 50), "elements more than 40 deep"},
		{"form-A", `ref identifier="item-0A"`, `ref identifier="item-00"`, `form-A.xml refers to "item-00"`},
	} {
		data := changed(t, good, row.name, row.from, row.to)
		p, err := qti.Read(bytes.NewReader(data), int64(len(data)))
		if err == nil || !strings.Contains(err.Error(), row.want) || p.Items != nil {
			t.Errorf("%s, %q: got %v\nwant %s", row.name, row.from, err, row.want)
		}
	}
	if _, err := qti.Read(strings.NewReader("no zip"), 6); err == nil || !strings.Contains(err.Error(), "not a zip file") {
		t.Errorf("got %v", err)
	}
}

// A small zip that unpacks to more than is read is refused before it fills the memory.
func TestReadRefusesWhatGrows(t *testing.T) {
	data := zipped(t, packed{"imsmanifest.xml", bytes.Repeat([]byte(" "), 65<<20)})
	_, err := qti.Read(bytes.NewReader(data), int64(len(data)))
	if err == nil || !strings.Contains(err.Error(), "imsmanifest.xml is too large") {
		t.Errorf("got %v", err)
	}
}

// A zip whose names all lead to the same bytes unpacks to many times itself without any one file growing much.
// Where a central directory says where a file's bytes are: PKWARE's APPNOTE 6.3, 4.3.12.
func TestReadRefusesWhatOverlaps(t *testing.T) {
	random := make([]byte, 4000)
	for i := range random {
		random[i] = byte(i * i * i >> 5)
	}
	data := zipped(t, packed{"imsmanifest.xml", random}, packed{"items/item-0A.xml", random[:8]})
	if _, err := qti.Read(bytes.NewReader(data), int64(len(data))); err == nil || strings.Contains(err.Error(), "overlap") {
		t.Errorf("side by side: got %v", err)
	}
	first := bytes.Index(data, []byte("PK\x01\x02"))
	second := first + 4 + bytes.Index(data[first+4:], []byte("PK\x01\x02"))
	for _, field := range [][2]int{{16, 28}, {42, 46}} { // the checksum and both sizes; the place
		copy(data[second+field[0]:second+field[1]], data[first+field[0]:])
	}
	if _, err := qti.Read(bytes.NewReader(data), int64(len(data))); err == nil || !strings.Contains(err.Error(), "they overlap") {
		t.Errorf("over each other: got %v", err)
	}
}

// Whatever is read has items with IDs of their own, which can be asked for their key and score.
func FuzzRead(f *testing.F) {
	good := few(f)
	f.Add(good)
	f.Add(changed(f, good, "items/item-0F", "qti-and", "qti-sum"))
	f.Add(changed(f, good, "imsmanifest.xml", "identifier=\"item-0A\"", "identifier=\"\""))
	f.Add(good[:len(good)/2])
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := qti.Read(bytes.NewReader(data), int64(len(data)))
		if err != nil {
			if p.Items != nil {
				t.Errorf("items with an error: %v", err)
			}
			return
		}
		var ids []string
		for _, item := range p.Items {
			_ = item.Key()
			right := make(map[string][]string)
			for _, r := range item.Responses {
				right[r.ID] = r.Correct
			}
			_ = item.Score(right)
			ids = append(ids, item.ID)
		}
		slices.Sort(ids)
		if len(slices.Compact(ids)) != len(p.Items) || ids[0] == "" {
			t.Errorf("items %v", ids)
		}
	})
}

// Fuzzing whole zip files seldom gets past the checksum, so an item's file is fuzzed within a good
// package.
func FuzzReadItem(f *testing.F) {
	good := few(f)
	for _, file := range unpacked(f, good) {
		if strings.HasPrefix(file.name, "items/item-") {
			f.Add(file.text)
		}
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		manifest := `<manifest xmlns="http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1"><resources>` +
			`<resource identifier="item-0A" type="imsqti_item_xmlv3p0" href="a.xml"><metadata><lom><educational><typicalLearningTime>` +
			`<duration>PT30S</duration></typicalLearningTime></educational></lom></metadata></resource></resources></manifest>`
		data := zipped(t, packed{"imsmanifest.xml", []byte(manifest)}, packed{"a.xml", text}, packed{"pictures/item-0A.svg", []byte("<svg/>")})
		p, err := qti.Read(bytes.NewReader(data), int64(len(data)))
		if err != nil {
			return
		}
		right := make(map[string][]string)
		for _, r := range p.Items[0].Responses {
			right[r.ID] = r.Correct
		}
		_, _ = p.Items[0].Key(), p.Items[0].Score(right)
	})
}
