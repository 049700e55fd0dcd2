package sheet_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"evenhand/assemble/sheet"
	"evenhand/standards"
	"evenhand/standards/task"
)

// picture is an SVG as another program's XML reader sees it.
type picture struct {
	Lang  string `xml:"lang,attr"`
	Title string `xml:"title"`
	Desc  string `xml:"desc"`
	Group struct {
		Texts   []string   `xml:"text"`
		Lines   []struct{} `xml:"line"`
		Circles []struct{} `xml:"circle"`
		Shapes  []struct{} `xml:"polygon"`
	} `xml:"g"`
}

func svg(t *testing.T, asked string, look task.Look, o sheet.Options) (picture, []byte) {
	t.Helper()
	o.Font = sheet.BuiltInFont
	file, err := sheet.SVG(sheet.Question{Number: 1, Task: task.MustParse(asked), Look: look}, o)
	if err != nil {
		t.Fatal(err)
	}
	var p picture
	if err := xml.Unmarshal(file, &p); err != nil {
		t.Fatalf("%s: %v", asked, err)
	}
	return p, file
}

func TestEverySkillHasItsPictures(t *testing.T) {
	for _, skill := range standards.Catalogue() {
		asked := task.MustParse(skill.Example)
		for _, look := range asked.Looks() {
			for _, o := range []sheet.Options{{}, {Key: true}, {Lang: "es", Large: true}} {
				p, file := svg(t, skill.Example, look, o)
				if p.Title == "" || p.Desc == "" || len(p.Group.Texts)+len(p.Group.Circles)+len(p.Group.Shapes)+len(p.Group.Lines) == 0 {
					t.Errorf("%s as %s: title %q, description %q, nothing in it", asked, look, p.Title, p.Desc)
				}
				wellFormed(t, file)
			}
		}
	}
}

// wellFormed reads to the very end.
func wellFormed(t *testing.T, file []byte) {
	t.Helper()
	decoder := xml.NewDecoder(bytes.NewReader(file))
	for {
		if _, err := decoder.Token(); errors.Is(err, io.EOF) {
			return
		} else if err != nil {
			t.Fatal(err)
		}
	}
}

func TestDescriptionsDoNotTellTheAnswer(t *testing.T) {
	p, file := svg(t, "read 4:30", task.LookClockFace, sheet.Options{})
	if p.Title != "clock face" || strings.Contains(string(file), "4:30") {
		t.Errorf("the picture of a clock to read is titled %q: %s", p.Title, file)
	}
	for _, skill := range standards.Catalogue() {
		asked := task.MustParse(skill.Example)
		whole := strings.Replace(asked.String(), "?", asked.Key(), 1)
		for _, look := range asked.Looks() {
			p, _ := svg(t, skill.Example, look, sheet.Options{})
			if strings.Contains(p.Desc, whole) && strings.Contains(asked.String(), "?") || strings.Contains(p.Title, asked.Key()) {
				t.Errorf("%s as %s: %q, %q tells the answer %s", asked, look, p.Title, p.Desc, asked.Key())
			}
		}
	}
}

func TestPictureIsTheSheetsDrawing(t *testing.T) {
	p, _ := svg(t, "draw 4:30", task.LookBlankFace, sheet.Options{Lang: "es"})
	if p.Lang != "es" || p.Title != "reloj sin manecillas" || len(p.Group.Lines) != 60 || strings.Join(p.Group.Texts, " ") != "4:30 1 2 3 4 5 6 7 8 9 10 11 12" {
		t.Errorf("the blank face is %+v", p)
	}
	p, _ = svg(t, "47 ? 74", task.LookCompare, sheet.Options{Key: true})
	if strings.Join(p.Group.Texts, " ") != "47 < 74" {
		t.Errorf("the key of a comparison shows %q", p.Group.Texts)
	}
}
