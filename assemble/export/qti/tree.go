package qti

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"

	"golang.org/x/text/encoding/htmlindex"
	"golang.org/x/text/encoding/unicode"
	"golang.org/x/text/transform"
)

// node is an element of an XML file, or with an empty name a piece of text.
type node struct {
	name  string
	space string // namespace, as read
	attrs []attr
	kids  []node
	text  string
	raw   []byte // an element already written, which goes out as it is
}

type attr struct{ name, value string }

// element makes a node; attributes are names and values in turn.
func element(name string, attributes ...string) node {
	n := node{name: name}
	for i := 0; i < len(attributes); i += 2 {
		n.attrs = append(n.attrs, attr{attributes[i], attributes[i+1]})
	}
	return n
}

// with adds elements inside.
func (n node) with(kids ...node) node {
	n.kids = append(n.kids, kids...)
	return n
}

// saying adds text inside.
func (n node) saying(text string) node { return n.with(node{text: text}) }

// document is the whole file of a root element.
func (n node) document() []byte {
	var b bytes.Buffer
	b.WriteString(xml.Header)
	n.write(&b, "\n")
	b.WriteByte('\n')
	return b.Bytes()
}

// write writes the node; a new line with its indentation goes between elements, and nothing
// where there is text.
func (n node) write(b *bytes.Buffer, line string) {
	if n.name == "" {
		escape(b, n.text)
		return
	}
	if n.raw != nil {
		b.Write(n.raw)
		return
	}
	fmt.Fprintf(b, "<%s", n.name)
	for _, a := range n.attrs {
		fmt.Fprintf(b, ` %s="`, a.name)
		escape(b, a.value)
		b.WriteByte('"')
	}
	if len(n.kids) == 0 {
		b.WriteString("/>")
		return
	}
	b.WriteByte('>')
	inner := line + "  "
	for _, kid := range n.kids {
		if kid.name == "" {
			line, inner = "", ""
		}
	}
	for _, kid := range n.kids {
		b.WriteString(inner)
		kid.write(b, inner)
	}
	fmt.Fprintf(b, "%s</%s>", line, n.name)
}

func escape(b *bytes.Buffer, text string) { _ = xml.EscapeText(b, []byte(text)) } // a buffer takes all

// maxDepth is deeper than any file of ours.
const maxDepth = 40

// parse reads an XML file of so many elements, attributes and texts at most. Comments go, and so does the white space between lines.
func parse(data []byte, most int) (node, error) {
	d := decoder(data)
	stack, parts := []node{{}}, 0
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return node{}, err
		}
		top := &stack[len(stack)-1]
		if parts > most {
			return node{}, fmt.Errorf("more than %d elements", most)
		}
		switch t := token.(type) {
		case xml.StartElement:
			if len(stack) > maxDepth {
				return node{}, fmt.Errorf("elements more than %d deep", maxDepth)
			}
			parts += 1 + len(t.Attr)
			stack = append(stack, opened(t))
		case xml.EndElement:
			stack = stack[:len(stack)-1]
			below := &stack[len(stack)-1]
			below.kids = append(below.kids, *top)
		case xml.CharData:
			if text := string(t); len(stack) > 1 && !isLayout(text) {
				top.kids, parts = append(top.kids, node{text: text}), parts+1
			}
		case xml.Directive:
			return node{}, errors.New("a document type; a file of ours has none")
		}
	}
	if len(stack[0].kids) != 1 {
		return node{}, errors.New("not one element that holds all others")
	}
	return stack[0].kids[0], nil
}

// decoder reads a file in the encoding that its byte order mark or its first line names.
func decoder(data []byte) *xml.Decoder {
	d := xml.NewDecoder(transform.NewReader(bytes.NewReader(data), unicode.BOMOverride(transform.Nop)))
	d.CharsetReader = func(label string, in io.Reader) (io.Reader, error) {
		if strings.HasPrefix(strings.ToLower(label), "utf-16") {
			return in, nil // decoded by its mark
		}
		named, err := htmlindex.Get(label)
		if err != nil {
			return nil, fmt.Errorf("an unknown encoding %q", label)
		}
		return named.NewDecoder().Reader(in), nil
	}
	return d
}

func opened(t xml.StartElement) node {
	n := node{name: t.Name.Local, space: t.Name.Space}
	for _, a := range t.Attr {
		if a.Name.Space != "xmlns" && a.Name.Local != "xmlns" {
			n.attrs = append(n.attrs, attr{a.Name.Local, a.Value})
		}
	}
	return n
}

// isLayout says that a text only sets elements on new lines.
func isLayout(text string) bool {
	return strings.TrimSpace(text) == "" && strings.ContainsAny(text, "\r\n")
}

// attr is the value of an attribute, empty where there is none.
func (n node) attr(name string) string {
	for _, a := range n.attrs {
		if a.name == name {
			return a.value
		}
	}
	return ""
}

// all are the elements inside of a name.
func (n node) all(name string) []node {
	var list []node
	for _, kid := range n.kids {
		if kid.name == name {
			list = append(list, kid)
		}
	}
	return list
}

// first is the first element at the end of a path of names; empty where there is none.
func (n node) first(path ...string) node {
	for _, name := range path {
		list := n.all(name)
		if len(list) == 0 {
			return node{}
		}
		n = list[0]
	}
	return n
}

// string is all text inside.
func (n node) string() string {
	text := n.text
	for _, kid := range n.kids {
		text += kid.string()
	}
	return text
}

// values are the texts of the elements of a name.
func (n node) values(name string) []string {
	var list []string
	for _, kid := range n.all(name) {
		list = append(list, kid.string())
	}
	return list
}
