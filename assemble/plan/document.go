package plan

import (
	"bytes"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"evenhand/standards/words"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"
)

// document is a TOML text that remembers where every key and value stands, so
// that a mistake of meaning can be shown as exactly as one of spelling. All
// mistakes are gathered and told together.
type document struct {
	name     string // the file's name, for messages
	text     []byte
	places   map[string]place // by path in small letters, such as "row[1].where[0]"
	mistakes []Mistake
	broken   map[int]bool // lines that were told and put right for the reading
	readable bool         // after such lines were put right
}

// place is where a key and its value stand; an array's element has no key.
type place struct{ key, value span }

// span is a piece of the text, from one byte offset to another.
type span struct{ from, to int }

// newDocument drops a byte order mark, tells and mends what is no TOML and finds the places.
func newDocument(text []byte, name string) *document {
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	d := &document{name: name, text: text, places: map[string]place{}, broken: map[int]bool{}}
	d.readable = d.mendText()
	p := &unstable.Parser{}
	p.Reset(d.text)
	table, blocks := "", map[string]int{}
	for p.NextExpression() {
		switch e := p.Expression(); e.Kind {
		case unstable.KeyValue:
			d.keyValue(table, e)
		case unstable.Table, unstable.ArrayTable:
			table = d.heading(e, blocks)
		}
	}
	return d
}

// heading notes the place of a [table] or of one more block of an [[array]],
// and gives its path.
func (d *document) heading(e *unstable.Node, blocks map[string]int) string {
	path, at := "", span{}
	for it := e.Key(); it.Next(); {
		path = join(path, string(it.Node().Data))
		at = spanOf(it.Node())
		if last := it.IsLast(); e.Kind == unstable.ArrayTable && last {
			blocks[path]++
		}
		if n := blocks[path]; n > 0 {
			path = fmt.Sprintf("%s[%d]", path, n-1)
		}
	}
	d.places[path] = place{at, at}
	return path
}

func (d *document) keyValue(table string, e *unstable.Node) {
	path, key := table, span{}
	for it := e.Key(); it.Next(); {
		path = join(path, string(it.Node().Data))
		if at := spanOf(it.Node()); key.to == 0 {
			key = at
		} else {
			key.to = at.to
		}
	}
	value := spanOf(e)
	for value.from = key.to; value.from < value.to && strings.ContainsRune(" \t=", rune(d.text[value.from])); {
		value.from++
	}
	d.places[path] = place{key, value}
	d.inside(path, e.Value())
}

// inside notes the places in an array or an inline table.
func (d *document) inside(path string, n *unstable.Node) {
	i := 0
	for it := n.Children(); it.Next(); i++ {
		switch child := it.Node(); child.Kind {
		case unstable.KeyValue:
			d.keyValue(path, child)
		case unstable.Array, unstable.InlineTable:
			d.inside(fmt.Sprintf("%s[%d]", path, i), child)
		default:
			d.places[fmt.Sprintf("%s[%d]", path, i)] = place{value: spanOf(child)}
		}
	}
}

func join(table, key string) string {
	key = strings.ToLower(key)
	if table == "" {
		return key
	}
	return table + "." + key
}

func spanOf(n *unstable.Node) span {
	return span{int(n.Raw.Offset), int(n.Raw.Offset + n.Raw.Length)}
}

// decode reads the text into a struct whose fields carry toml tags. Keys that
// the struct doesn't know become mistakes; a block where a value should stand is
// one mistake and ends the reading, as a text does that can't be put right.
func (d *document) decode(into any) error {
	if !d.readable {
		return d.err()
	}
	decoder := toml.NewDecoder(bytes.NewReader(d.text))
	decoder.DisallowUnknownFields()
	err := decoder.Decode(into)
	var unknown *toml.StrictMissingError
	var broken *toml.DecodeError
	switch {
	case errors.As(err, &unknown):
		for i := range unknown.Errors {
			d.unknownKey(&unknown.Errors[i], reflect.TypeOf(into).Elem())
		}
	case errors.As(err, &broken):
		line, column := broken.Position()
		at := d.offset(line, column)
		d.add(span{at, at + 1}, brokenWords(broken), nil)
		return d.err()
	case err != nil:
		return words.Errorf("%s: %w", d.name, err)
	}
	return nil
}

// has says whether the document has a key at its top.
func (d *document) has(key string) bool {
	var top map[string]any
	return toml.Unmarshal(d.text, &top) == nil && top[key] != nil
}

// brokenWords is the library's message, save where it speaks of Go's types.
func brokenWords(e *toml.DecodeError) *words.Told {
	message := strings.TrimPrefix(e.Error(), "toml: ")
	if strings.HasPrefix(message, "cannot ") && len(e.Key()) > 0 {
		return words.Sayf("%q can't be written like this; the example that evenhand plan writes shows how",
			strings.Join(e.Key(), "."))
	}
	return words.Sayf("this can't be read: %s", message)
}

func (d *document) unknownKey(e *toml.DecodeError, t reflect.Type) {
	key := e.Key()
	name, where := key[len(key)-1], (*words.Told)(nil)
	known := keysOf(t)
	for _, table := range key[:len(key)-1] {
		t = fieldType(t, table)
		if t == nil {
			break
		}
		known, where = keysOf(t), words.Sayf(" in %s", table)
	}
	message := words.Sayf("no key %q%s%s", name, where, words.Suggest(name, known))
	line, column := e.Position()
	at := d.offset(line, column)
	d.add(span{at, at + len(name)}, message, words.Sayf("The keys here are %s.", strings.Join(known, ", ")))
}

// keysOf lists the toml tags of a struct, those of an embedded one included.
func keysOf(t reflect.Type) (keys []string) {
	for _, f := range reflect.VisibleFields(t) {
		if key := f.Tag.Get("toml"); key != "" {
			keys = append(keys, key)
		}
	}
	return keys
}

// fieldType is the struct that a key of a struct holds, or nil.
func fieldType(t reflect.Type, key string) reflect.Type {
	for _, f := range reflect.VisibleFields(t) {
		if f.Tag.Get("toml") == key {
			for t = f.Type; t.Kind() == reflect.Slice; {
				t = t.Elem()
			}
			if t.Kind() == reflect.Struct {
				return t
			}
		}
	}
	return nil
}

// offset turns a line and a column, counted from 1 in bytes, into an offset.
func (d *document) offset(line, column int) int {
	at := 0
	for ; line > 1; line-- {
		next := bytes.IndexByte(d.text[at:], '\n')
		if next < 0 {
			break
		}
		at += next + 1
	}
	return min(at+column-1, len(d.text))
}

// wrong notes a mistake in the value at the path, or in what is around it when
// the value isn't there.
func (d *document) wrong(path string, hint *words.Told, format string, args ...any) {
	d.add(d.find(path).value, words.Sayf(format, args...), hint)
}

// wrongKey is wrong about the key instead of the value.
func (d *document) wrongKey(path string, hint *words.Told, format string, args ...any) {
	if d.misspelt(path) {
		return // which is told of the key as it stands
	}
	d.add(d.find(path).key, words.Sayf(format, args...), hint)
}

// misspelt says whether a key beside the path is most likely the path's own, spelt wrongly.
func (d *document) misspelt(path string) bool {
	path = strings.ToLower(path)
	table := parent(path)
	for other := range d.places {
		if other == path || parent(other) != table && parent(other) != strings.Replace(table, "[0]", "", 1) || strings.HasSuffix(other, "]") {
			continue
		}
		if _, near := words.Nearest(other[strings.LastIndexByte(other, '.')+1:], []string{strings.TrimPrefix(path[len(table):], ".")}); near {
			return true
		}
	}
	return false
}

// find is the place of the path or of the nearest thing around it; a block of
// which there is only one may be written [row] as well as [[row]].
func (d *document) find(path string) place {
	for path = strings.ToLower(path); path != ""; path = parent(path) {
		for _, p := range []string{path, strings.Replace(path, "[0]", "", 1)} {
			if at, ok := d.places[p]; ok {
				return at
			}
		}
	}
	return place{}
}

func parent(path string) string {
	return path[:max(0, strings.LastIndexAny(path, ".["))]
}

// err is all mistakes in the order of the text, or nil.
func (d *document) err() error {
	if len(d.mistakes) == 0 {
		return nil
	}
	slices.SortStableFunc(d.mistakes, func(a, b Mistake) int {
		if a.Line != b.Line {
			return a.Line - b.Line
		}
		return a.Column - b.Column
	})
	return &MistakesError{Name: d.name, Mistakes: d.mistakes}
}
