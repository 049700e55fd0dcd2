package sheet

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"unicode/utf16"
)

// structure is what the parts of a file are and in which order they are read: the tree of tags that
// makes a PDF readable by a screen reader (ISO 32000-1, 14.7).
type structure struct {
	elements []element // the first is the document
	open     []int     // elements begun and not ended, the document first; -1 for one that was left out
	marked   bool      // an element with content of its own is open
	page     int       // from 0
	content  []int     // how many pieces of content each page has
}

// element is one node of the tree.
type element struct {
	tag    tag
	alt    string
	lang   string // where it is not the file's
	parent int
	page   int   // where its content is
	kids   []kid // in reading order
}

// kid is an element or, where that is negative, a piece of content by its number on the page.
type kid struct{ element, content int }

func newStructure() *structure {
	return &structure{elements: []element{{tag: "Document", parent: -1}}, open: []int{0}, page: -1}
}

// nextPage begins a page.
func (s *structure) nextPage() { s.page, s.content = s.page+1, append(s.content, 0) }

// begin opens an element below the last one open. It returns the operator that begins its content, empty
// where it has none of its own. Inside content nothing is opened.
func (s *structure) begin(t tag, alt, lang string) string {
	if s.marked {
		s.open = append(s.open, -1)
		return ""
	}
	parent := s.open[len(s.open)-1]
	at := len(s.elements)
	s.elements = append(s.elements, element{tag: t, alt: alt, lang: lang, parent: parent, page: s.page})
	s.elements[parent].kids = append(s.elements[parent].kids, kid{element: at})
	s.open = append(s.open, at)
	if t.holds() {
		return ""
	}
	s.marked = true
	number := s.content[s.page]
	s.content[s.page]++
	s.elements[at].kids = []kid{{-1, number}}
	return fmt.Sprintf("/%s <</MCID %d>> BDC", t, number)
}

// end closes what was opened last, and returns the operator that ends its content.
func (s *structure) end() string {
	last := s.open[len(s.open)-1]
	s.open = s.open[:len(s.open)-1]
	if last >= 0 && !s.elements[last].tag.holds() {
		s.marked = false
		return "EMC"
	}
	return ""
}

// What is looked for in a file as fpdf writes it: its dictionaries are plain text.
var (
	pageObject    = regexp.MustCompile(`(?m)^(\d+) 0 obj\n<</Type /Page\n`)
	catalogObject = regexp.MustCompile(`(?m)^(\d+) 0 obj\n<<\n/Type /Catalog\n`)
	trailerSize   = regexp.MustCompile(`/Size (\d+)`)
	trailerInfo   = regexp.MustCompile(`/Info (\d+ 0 R)`)
	lastXref      = regexp.MustCompile(`startxref\n(\d+)\n`)
)

// addTo appends the structure to a finished file as an incremental update (ISO 32000-1, 7.5.6): new
// versions of its pages and its catalog, and the tree.
func (s *structure) addTo(file []byte) ([]byte, error) {
	pages, catalog := pageObject.FindAllSubmatchIndex(file, -1), catalogObject.FindSubmatchIndex(file)
	size, info, xref := trailerSize.FindSubmatch(file), trailerInfo.FindSubmatch(file), lastXref.FindSubmatch(file)
	if len(pages) != len(s.content) || catalog == nil || size == nil || info == nil || xref == nil {
		return nil, errors.New("the PDF writer's file has another form than its tags were made for")
	}
	first, _ := strconv.Atoi(string(size[1]))
	u := update{file: file, first: first, offsets: map[int]int{}}
	pageNumbers := make([]string, len(pages))
	for i, at := range pages {
		pageNumbers[i] = string(file[at[2]:at[3]])
		u.revise(at, "<<", fmt.Sprintf("<</StructParents %d /Tabs /S ", i))
	}
	root, parents := first, first+1
	number := func(element int) int { return first + 2 + element }
	u.revise(catalog, "<<\n", fmt.Sprintf("<<\n/Version /1.7 /MarkInfo <</Marked true>> "+
		"/StructTreeRoot %d 0 R /ViewerPreferences <</DisplayDocTitle true>>\n", root))
	u.object(root, "<</Type /StructTreeRoot /K [%d 0 R] /ParentTree %d 0 R /ParentTreeNextKey %d>>", number(0), parents, len(pages))
	u.object(parents, "<</Nums [%s]>>", s.parents(number))
	for i, e := range s.elements {
		u.object(number(i), "%s", e.dictionary(number, root, pageNumbers))
	}
	return u.end(string(catalogNumber(file, catalog)), string(info[1]), string(xref[1])), nil
}

func catalogNumber(file []byte, at []int) []byte { return file[at[2]:at[3]] }

// parents lists for each page the elements of its pieces of content.
func (s *structure) parents(number func(int) int) string {
	owners := make([][]int, len(s.content))
	for i, e := range s.elements {
		for _, k := range e.kids {
			if k.element < 0 {
				owners[e.page] = append(owners[e.page], i) // content is numbered as it is begun
			}
		}
	}
	var b bytes.Buffer
	for page, list := range owners {
		fmt.Fprintf(&b, "%d [", page)
		for _, element := range list {
			fmt.Fprintf(&b, "%d 0 R ", number(element))
		}
		b.WriteString("] ")
	}
	return b.String()
}

// dictionary is the element as an object of the file.
func (e element) dictionary(number func(int) int, root int, pages []string) string {
	parent := root
	if e.parent >= 0 {
		parent = number(e.parent)
	}
	var b bytes.Buffer
	fmt.Fprintf(&b, "<</Type /StructElem /S /%s /P %d 0 R", e.tag, parent)
	if e.alt != "" {
		fmt.Fprintf(&b, " /Alt %s", textString(e.alt))
	}
	if e.lang != "" {
		fmt.Fprintf(&b, " /Lang (%s)", e.lang)
	}
	if len(e.kids) > 0 && e.kids[0].element < 0 {
		fmt.Fprintf(&b, " /Pg %s 0 R", pages[e.page])
	}
	b.WriteString(" /K [")
	for _, k := range e.kids {
		if k.element < 0 {
			fmt.Fprintf(&b, "%d ", k.content)
		} else {
			fmt.Fprintf(&b, "%d 0 R ", number(k.element))
		}
	}
	b.WriteString("]>>")
	return b.String()
}

// textString is a text as PDF has it: UTF-16 with its mark, in hexadecimal digits.
func textString(s string) string {
	var b bytes.Buffer
	b.WriteString("<FEFF")
	for _, unit := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", unit)
	}
	b.WriteString(">")
	return b.String()
}

// update is what is appended to a file.
type update struct {
	file    []byte
	first   int         // the number of the first new object
	offsets map[int]int // where each object begins
	last    int
}

// revise appends a new version of the object found at a place, with other words at its beginning.
func (u *update) revise(at []int, beginning, other string) {
	number, _ := strconv.Atoi(string(u.file[at[2]:at[3]]))
	body := u.file[at[0]:]
	body = body[bytes.Index(body, []byte(beginning))+len(beginning):]
	body = bytes.Clone(body[:bytes.Index(body, []byte("endobj"))])
	u.object(number, "%s", other+string(bytes.TrimRight(body, "\n")))
}

// object appends an object.
func (u *update) object(number int, format string, args ...any) {
	u.offsets[number] = len(u.file)
	u.last = max(u.last, number)
	u.file = fmt.Appendf(u.file, "%d 0 obj\n"+format+"\nendobj\n", append([]any{number}, args...)...)
}

// end appends where the objects are and how the file is entered, and gives the whole file.
func (u *update) end(root, info, previous string) []byte {
	start := len(u.file)
	u.file = append(u.file, "xref\n"...)
	for number := 0; number <= u.last; number++ {
		if offset, ok := u.offsets[number]; ok {
			u.file = fmt.Appendf(u.file, "%d 1\n%010d 00000 n \n", number, offset)
		}
	}
	return fmt.Appendf(u.file, "trailer\n<</Size %d /Root %s 0 R /Info %s /Prev %s>>\nstartxref\n%d\n%%%%EOF\n", u.last+1, root, info, previous, start)
}
