package plan

import (
	"bytes"
	"errors"
	"regexp"
	"strings"
	"unicode/utf8"

	"evenhand/standards/words"

	"github.com/pelletier/go-toml/v2"
)

// A line that is no TOML would hide every mistake below it. So each such line is told in a
// teacher's words and put right for the reading only, which then goes on.

// maxBroken bounds how many lines are put right: a text with more is no plan.
const maxBroken = 40

// mendText tells every line that can't be read and leaves a text that can be; false says
// that it gave up, and that what the text means can't be told.
func (d *document) mendText() bool {
	d.mendBytes()
	for range maxBroken {
		var anything map[string]any
		var broken *toml.DecodeError
		if !errors.As(toml.Unmarshal(d.text, &anything), &broken) {
			return true
		}
		line, column := d.blamed(broken)
		at := d.offset(line, column)
		around := d.lineAt(at)
		from, to := around.from, around.to
		typed := strings.TrimRight(string(d.text[from:to]), "\r")
		mended := ""
		if !d.broken[line] {
			message, first := brokenLine(typed, at-from, broken)
			d.add(span{from + first, from + wordEnd(typed, first)}, message, nil)
			mended = mendLine(typed)
		}
		if mended == typed || mended == "" && !keyLine.MatchString(typed) {
			return false
		}
		d.broken[line] = true
		d.text = bytes.Join([][]byte{d.text[:from], []byte(mended), d.text[to:]}, nil)
	}
	return false
}

// blamed is where the mistake was made: a list without an end is found at the next line only.
func (d *document) blamed(e *toml.DecodeError) (line, column int) {
	line, column = e.Position()
	if !strings.Contains(e.Error(), "array") {
		return line, column
	}
	lines := strings.Split(string(d.text), "\n")
	for i := line - 1; i > 0; i-- {
		if key := keyLine.FindStringSubmatch(lines[i-1]); key != nil {
			if key[2] == "=" && strings.HasPrefix(key[3], "[") && !strings.Contains(key[3], "]") {
				return i, 1
			}
			break
		}
	}
	return line, column
}

// mendBytes tells the first line that isn't UTF-8, and sets plain quotes where an older
// encoding has those of a word processor.
func (d *document) mendBytes() {
	if utf8.Valid(d.text) {
		return
	}
	lines, told := bytes.Split(d.text, []byte("\n")), false
	for i, at := 0, 0; i < len(lines); i++ {
		length := len(lines[i]) + 1
		if !utf8.Valid(lines[i]) {
			if !told {
				const unread = "a letter here can't be read; save the file again as plain text in UTF-8"
				d.add(span{at, at}, words.Sayf(unread), nil)
			}
			told, d.broken[i+1] = true, true
			quoted := bytes.ReplaceAll(bytes.ReplaceAll(lines[i], []byte{0x93}, []byte{'"'}), []byte{0x94}, []byte{'"'})
			lines[i] = bytes.ReplaceAll(bytes.ToValidUTF8(quoted, []byte("?")), []byte{0}, nil)
		}
		at += length
	}
	d.text = bytes.Join(lines, []byte("\n"))
}

const (
	curlyQuotes = "“”„‟«»″＂"
	curlySingle = "‘’‚‛`´"
	oddSpaces   = "\u00a0\u2007\u202f\u2003\u2002\u200b\u3000"
)

var (
	keyLine     = regexp.MustCompile(`^\s*([\pL\d_-]+)\s*(=|:|\s)\s*(.*)$`)
	headingLine = regexp.MustCompile(`^\s*(\[+)\s*([\pL\d_-]+)\s*(\]*)`)
	bareWord    = regexp.MustCompile(`^[\pL_]`)
	listedWord  = regexp.MustCompile(`[\[,]\s*[\pL_]`)
	digitsFirst = regexp.MustCompile(`^[\d+-]`)
)

// numberKeys are the keys whose value is a number, each with one that could stand there.
var numberKeys = map[string]string{
	"items": "10", "minutes": "15", "forms": "2", "share_right": "75", "rest": "4", "count": "4", "shared": "2",
	"warm-up": "[2, 4]", "core": "[4, 6]", "stretch": "[1, 2]",
}

// brokenLine says in a teacher's words what is wrong with a line, and from which byte of it.
func brokenLine(line string, at int, e *toml.DecodeError) (message *words.Told, first int) {
	key := keyLine.FindStringSubmatch(line)
	if i := strings.IndexAny(line, curlyQuotes); i >= 0 {
		r, _ := utf8.DecodeRuneInString(line[i:])
		return words.Sayf("%c is a quote of a word processor; type straight ones, \"like this\"", r), i
	}
	if i := strings.IndexAny(line, oddSpaces); i >= 0 {
		return words.Sayf("there is a space here that is no plain one; type it again with the space bar"), i
	}
	if heading := headingLine.FindStringSubmatch(line); heading != nil && len(heading[1]) != len(heading[3]) {
		return words.Sayf("a heading has as many brackets after its name as before it, such as %s", headingOf(heading[2])), 0
	}
	if key == nil || strings.HasPrefix(strings.TrimSpace(line), "[") {
		return brokenWords(e), at
	}
	name, value := key[1], strings.TrimSpace(key[3])
	first = len(line) - len(key[3])
	switch {
	case strings.Contains(e.Error(), "already"):
		return words.Sayf("%s stands here a second time; leave one of them out", name), 0
	case key[2] != "=" && value != "":
		return words.Sayf("write %s = and then its value", name), 0
	case value == "" || strings.HasPrefix(value, "#"):
		return words.Sayf("%s has no value", name), 0
	case strings.IndexAny(value, curlySingle) == 0:
		r, _ := utf8.DecodeRuneInString(value)
		return words.Sayf("%c is no quote for a text; type straight ones, \"like this\"", r), first
	case strings.Count(value, `"`)%2 == 1 || strings.HasPrefix(value, "'") && strings.Count(value, "'")%2 == 1:
		return words.Sayf("a quote is missing; a text stands between two, %s = \"like this\"", name), first
	case strings.HasPrefix(value, "[") && listedWord.MatchString(value):
		return words.Sayf("each text in a list stands in quotes, %s = [\"like this\", \"and this\"]", name), first
	case strings.HasPrefix(value, "[") && !strings.Contains(value, "]"):
		return words.Sayf("the list has no end; write ] after its last value"), first
	case strings.EqualFold(word(value), "true") || strings.EqualFold(word(value), "false"):
		return words.Sayf("write it in small letters, %s = %s", name, strings.ToLower(word(value))), first
	case numberKeys[name] != "":
		return words.Sayf("%s is written in digits alone, such as %s = %s, not %s",
			name, name, numberKeys[name], value), first
	case bareWord.MatchString(value):
		return words.Sayf("a text stands in straight quotes, %s = \"%s\"", name, value), first
	case digitsFirst.MatchString(value):
		return words.Sayf("%s is neither a number in digits nor a text in quotes", value), first
	}
	return brokenWords(e), at
}

// word is the first word of a text.
func word(text string) string { return strings.Trim(strings.Fields(text + " ")[0], `",.;`) }

// wordEnd is where what begins at a byte of the line ends: at the end of the line, before a remark.
func wordEnd(line string, from int) int {
	if _, size := utf8.DecodeRuneInString(line[from:]); size > 1 {
		return from + size
	}
	if i := strings.IndexByte(line[from:], '#'); i > 0 {
		return from + i
	}
	return len(line)
}

func headingOf(name string) string {
	switch name {
	case "row", "quota", "new", "review":
		return "[[" + name + "]]"
	}
	return "[" + name + "]"
}

// mendLine puts a line right for the reading: its quotes and spaces made plain, its
// heading closed, or its value left empty. Nothing said of such a line later is told.
func mendLine(line string) string {
	plain := strings.Map(func(r rune) rune {
		switch {
		case strings.ContainsRune(curlyQuotes, r):
			return '"'
		case strings.ContainsRune(oddSpaces, r):
			return ' '
		}
		return r
	}, line)
	if plain != line && tomlReads(plain) {
		return plain
	}
	if heading := headingLine.FindStringSubmatch(line); heading != nil {
		return headingOf(heading[2])
	}
	if key := keyLine.FindStringSubmatch(line); key != nil && !strings.HasSuffix(strings.TrimSpace(key[3]), "[") {
		return key[1] + ` = ""`
	}
	return line
}

func tomlReads(line string) bool {
	var anything map[string]any
	return toml.Unmarshal([]byte(line), &anything) == nil
}
