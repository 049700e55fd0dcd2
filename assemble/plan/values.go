package plan

import (
	"fmt"

	"evenhand/standards/words"
)

// These read one value of a document each. A value that is of another kind or
// out of range becomes a mistake, and something harmless is given in its place.

// whole reads a whole number from least to most; a missing one is given as
// missing.
func (d *document) whole(path string, value any, missing, least, most int) int {
	if value == nil {
		return missing
	}
	n, ok := value.(int64)
	if !ok || n < int64(least) || n > int64(most) {
		d.wrong(path, nil, "%s is a whole number from %d to %d, not %s", words.Term(lastKey(path)), least, most, d.read(path))
		return missing
	}
	return int(n)
}

// words reads a text; a missing one is empty.
func (d *document) words(path string, value any) string {
	if value == nil {
		return ""
	}
	s, ok := value.(string)
	if !ok {
		d.wrong(path, nil, "%s is a text in quotes, not %s", words.Term(lastKey(path)), d.read(path))
	}
	return s
}

// texts reads a list of texts, or one text as a list of one.
func (d *document) texts(path string, value any) []string {
	switch v := value.(type) {
	case nil:
		return nil
	case string:
		return []string{v}
	case []any:
		list := make([]string, len(v))
		for i := range v {
			list[i] = d.words(element(path, i), v[i])
		}
		return list
	}
	d.wrong(path, nil, "%s is a list of texts in brackets, not %s", words.Term(lastKey(path)), d.read(path))
	return nil
}

// counts reads [at least, at most], or one number as both. No more than most can be
// asked for; an upper bound beyond it says nothing more than most.
func (d *document) counts(path string, value any, most int) (atLeast, atMost int) {
	pair, ok := value.([]any)
	switch {
	case value == nil:
		d.wrong(path, nil, "%s is missing; write [at least, at most]", words.Term(lastKey(path)))
	case !ok:
		n := d.whole(path, value, 0, 0, most)
		return n, n
	case len(pair) != 2:
		d.wrong(path, nil, "%s needs two numbers, [at least, at most], not %d", words.Term(lastKey(path)), len(pair))
	default:
		atLeast = d.whole(element(path, 0), pair[0], 0, 0, most)
		atMost = min(most, d.whole(element(path, 1), pair[1], most, 0, MaxItems))
		if atLeast > atMost {
			d.wrong(path, nil, "at least %d can't be more than at most %d; turn them around", atLeast, atMost)
		}
		return atLeast, atMost
	}
	return 0, most
}

// element is the path of an element of a list.
func element(path string, i int) string { return fmt.Sprintf("%s[%d]", path, i) }

// lastKey names a value for a message: "count" for "row[1].count".
func lastKey(path string) string {
	for i := len(path) - 1; i >= 0; i-- {
		switch path[i] {
		case '.':
			return path[i+1:]
		case '[':
			path = path[:i]
		}
	}
	return path
}

// read is a value as the file has it, cut where it is long.
func (d *document) read(path string) string {
	at := d.find(path).value
	text := []rune(string(d.text[at.from:at.to]))
	if len(text) > 40 {
		return string(text[:40]) + "..."
	}
	return string(text)
}
