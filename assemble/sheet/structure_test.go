package sheet_test

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"os"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"

	"evenhand/assemble/sheet"
	"evenhand/testdata/outside"
)

// tagNode is an element of a file's structure as this test reads it, by the object syntax of ISO 32000-1.
type tagNode struct {
	kind, alt string
	page      int
	parent    int
	contents  []int // pieces of content on its page
	kids      []int // other elements
}

var (
	elementPattern = regexp.MustCompile(`(?s)\n(\d+) 0 obj\n<</Type /StructElem /S /(\w+) /P (\d+) 0 R` +
		`(?: /Alt <([0-9A-F]+)>)?(?: /Pg (\d+) 0 R)? /K \[([^\]]*)\]>>`)
	streamPattern  = regexp.MustCompile(`(?s)<</Filter /FlateDecode /Length (\d+)>>\nstream\n`)
	parentsPattern = regexp.MustCompile(`(\d+) \[((?:\d+ 0 R )*)\]`)
	kidPattern     = regexp.MustCompile(`(\d+) 0 R|(\d+)`)
)

// tags reads the elements of a file by their object's number, and the content of its pages.
func tags(t *testing.T, file []byte) (map[int]tagNode, []string) {
	t.Helper()
	nodes := map[int]tagNode{}
	for _, m := range elementPattern.FindAllSubmatch(file, -1) {
		number, _ := strconv.Atoi(string(m[1]))
		parent, _ := strconv.Atoi(string(m[3]))
		page, _ := strconv.Atoi(string(m[5]))
		node := tagNode{kind: string(m[2]), alt: utf16Text(t, string(m[4])), page: page, parent: parent}
		for _, kid := range kidPattern.FindAllStringSubmatch(string(m[6]), -1) {
			element, err := strconv.Atoi(kid[1])
			if err == nil {
				node.kids = append(node.kids, element)
				continue
			}
			content, _ := strconv.Atoi(kid[2])
			node.contents = append(node.contents, content)
		}
		nodes[number] = node
	}
	var pages []string
	for _, at := range streamPattern.FindAllSubmatchIndex(file, -1) {
		length, _ := strconv.Atoi(string(file[at[2]:at[3]]))
		reader, err := zlib.NewReader(bytes.NewReader(file[at[1] : at[1]+length]))
		if err != nil {
			t.Fatal(err)
		}
		content, err := io.ReadAll(reader)
		if err != nil {
			t.Fatal(err)
		}
		if bytes.Contains(content, []byte("BDC")) {
			pages = append(pages, string(content))
		}
	}
	return nodes, pages
}

func utf16Text(t *testing.T, hex string) string {
	t.Helper()
	var units []uint16
	for i := 4; i+4 <= len(hex); i += 4 {
		unit, err := strconv.ParseUint(hex[i:i+4], 16, 16)
		if err != nil {
			t.Fatal(err)
		}
		units = append(units, uint16(unit))
	}
	return string(utf16.Decode(units))
}

// Operators that draw (ISO 32000-1, annex A).
var drawing = regexp.MustCompile(`(?m)(^| )(S|s|f|F|f\*|B|B\*|b|b\*|Tj|TJ)$`)

// ISO 14289-1 (PDF/UA-1), 7.1 and 7.3, from memory: everything drawn is tagged or marked as decoration, every
// figure has words in its place, and the file says its language and title.
func TestEverythingDrawnIsTagged(t *testing.T) {
	for _, o := range []sheet.Options{{}, {Key: true, Lang: "es"}, {Large: true}, {Layout: sheet.Strips}} {
		p := gallery
		if o.Layout == sheet.Strips {
			p = paper("47 + 36 = ?", "read 4:30 pm")
		}
		file := pdf(t, p, o)
		nodes, pages := tags(t, file)
		lang := map[bool]string{true: "es", false: "en"}[o.Lang == "es"]
		for _, want := range []string{"/MarkInfo <</Marked true>>", "/StructTreeRoot ", "/DisplayDocTitle true", "/Lang (" + lang + ")"} {
			if !bytes.Contains(file, []byte(want)) {
				t.Errorf("%+v: the file lacks %s", o, want)
			}
		}
		figures := 0
		for number, node := range nodes {
			if node.kind == "Figure" {
				if figures++; strings.TrimSpace(node.alt) == "" {
					t.Errorf("%+v: figure %d has no words in its place", o, number)
				}
			}
			for _, kid := range node.kids {
				if nodes[kid].parent != number {
					t.Errorf("%+v: element %d is not its parent's", o, kid)
				}
			}
		}
		if figures < len(p.Questions)/2 {
			t.Errorf("%+v: %d figures for %d items", o, figures, len(p.Questions))
		}
		for i, content := range pages {
			checkMarks(t, fmt.Sprintf("%+v page %d", o, i+1), content)
		}
		// The parent tree has an entry for each piece of content of each page.
		tree := file[bytes.LastIndex(file, []byte("<</Nums [")):]
		for _, m := range parentsPattern.FindAllStringSubmatch(string(tree[:bytes.Index(tree, []byte("endobj"))]), -1) {
			page, _ := strconv.Atoi(m[1])
			if owners, pieces := strings.Count(m[2], " R "), strings.Count(pages[page], " BDC"); owners != pieces {
				t.Errorf("%+v page %d: %d pieces of content, %d owners", o, page+1, pieces, owners)
			}
		}
	}
}

// checkMarks wants marks that are not nested, numbered from 0, with all drawing inside.
func checkMarks(t *testing.T, where, content string) {
	t.Helper()
	open, next := false, 0
	for line := range strings.Lines(content) {
		line = strings.TrimSpace(line)
		switch {
		case strings.HasSuffix(line, "BDC"), strings.HasSuffix(line, "BMC"):
			if open {
				t.Fatalf("%s: %s inside another mark", where, line)
			}
			if open = true; strings.HasSuffix(line, "BDC") {
				if !strings.Contains(line, fmt.Sprintf("/MCID %d>>", next)) {
					t.Fatalf("%s: %s, want number %d", where, line, next)
				}
				next++
			}
		case line == "EMC":
			open = false
		case drawing.MatchString(line) && !open:
			t.Fatalf("%s: %q is drawn outside all marks", where, line)
		}
	}
	if next == 0 {
		t.Errorf("%s has no tagged content", where)
	}
}

// The tree of a small sheet, read by following it from the document on.
func TestReadingOrder(t *testing.T) {
	nodes, _ := tags(t, pdf(t, paper("47 + ? = 83", "count 7", "read 4:30"), sheet.Options{Font: sheet.BuiltInFont}))
	var said []string
	var walk func(number int)
	walk = func(number int) {
		if node := nodes[number]; node.alt != "" {
			said = append(said, node.kind+": "+node.alt)
		} else {
			said = append(said, node.kind)
		}
		for _, kid := range nodes[number].kids {
			walk(kid)
		}
	}
	for number, node := range nodes {
		if node.kind == "Document" {
			walk(number)
		}
	}
	want := []string{"Document", "P", "H1",
		"H2", "Sect", "P", "Figure: 47 plus blank equals 83.",
		"H2", "Sect", "P", "Figure: How many dots are there? dot, dot, dot, dot, dot; dot, dot.",
		"H2", "Sect", "P", "Figure: A clock face. The short hand is between the 4 and the 5. The long hand points to the 6. What time is it?"}
	if fmt.Sprint(said) != fmt.Sprint(want) {
		t.Errorf("the sheet reads\n%q\nwant\n%q", said, want)
	}
}

// Poppler and qpdf, two programs of other people, find the tags and nothing wrong with the file.
func TestTagsBesideOtherPrograms(t *testing.T) {
	outside.Full(t, "the tags of printed files beside poppler and qpdf", "pdfinfo", "qpdf")
	for _, o := range []sheet.Options{{}, {Key: true}, {Large: true, PaperSize: "a4"}} {
		name := t.TempDir() + "/sheet.pdf"
		if err := os.WriteFile(name, pdf(t, gallery, o), 0o600); err != nil {
			t.Fatal(err)
		}
		info, err := exec.Command("pdfinfo", name).Output()
		if err != nil || !regexp.MustCompile(`Tagged: +yes`).Match(info) {
			t.Errorf("pdfinfo: %v %s", err, info)
		}
		tree, err := exec.Command("pdfinfo", "-struct-text", name).CombinedOutput()
		if err != nil || !strings.Contains(string(tree), "H1 (block)\n    \"Friday check, week 48\"") || strings.Contains(string(tree), "Error") {
			t.Errorf("pdfinfo -struct-text: %v %.300s", err, tree)
		}
		if out, err := exec.Command("qpdf", "--check", name).CombinedOutput(); err != nil {
			t.Errorf("qpdf --check: %v %s", err, out)
		}
	}
}
