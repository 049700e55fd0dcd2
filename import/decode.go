package intake

import (
	"bytes"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/htmlindex"
	utf "golang.org/x/text/encoding/unicode"
	"golang.org/x/text/transform"
)

// encodings are those that lists come in, each with the name shown to people.
var (
	utf8Text    = namedEncoding{"UTF-8", utf.UTF8, false}
	utf16Little = namedEncoding{"UTF-16", utf.UTF16(utf.LittleEndian, utf.IgnoreBOM), false}
	utf16Big    = namedEncoding{"UTF-16 (big-endian)", utf.UTF16(utf.BigEndian, utf.IgnoreBOM), false}
)

// byteEncodings have a letter for nearly every byte, so that which of them a text is in
// can only be guessed from the words that come out, the likeliest first.
var byteEncodings = []namedEncoding{
	{"Windows-1252", charmap.Windows1252, true},
	{"Mac Roman", charmap.Macintosh, true},
	{"Windows-1250", charmap.Windows1250, true},
	{"ISO-8859-2", charmap.ISO8859_2, true},
	{"Windows-1251", charmap.Windows1251, true},
	{"CP 850", charmap.CodePage850, true},
}

type namedEncoding struct {
	name string
	encoding.Encoding
	guessed bool // from the words only
}

// decodeAs is decode, but with the encoding that a person named, if any.
func decodeAs(data []byte, name string) (text string, found namedEncoding, err error) {
	if name == "" {
		text, found = decode(data)
		return text, found, nil
	}
	named, err := namedBy(name)
	if err != nil {
		return "", found, wrongf("no encoding %q; it can be utf-8, utf-16, windows-1252, windows-1250, mac-roman, iso-8859-2 and others", name)
	}
	_, mark := byteOrderMark(data)
	return decodeIn(data[mark:], namedEncoding{name, named, false}), namedEncoding{name, named, false}, nil
}

func namedBy(name string) (encoding.Encoding, error) {
	switch strings.ToLower(strings.NewReplacer("-", "", "_", "", " ", "").Replace(name)) {
	case "macroman", "mac", "macintosh":
		return charmap.Macintosh, nil
	case "cp850", "ibm850":
		return charmap.CodePage850, nil
	case "cp437", "ibm437":
		return charmap.CodePage437, nil
	}
	return htmlindex.Get(strings.TrimSpace(name))
}

// decode turns a file's bytes into text whose lines end in "\n" or "\r\n", without
// byte-order mark, and names the encoding. A byte-order mark decides; else many NULs
// mean UTF-16, valid UTF-8 is UTF-8, and what is left is the encoding of bytes in
// which its words look most like words.
func decode(data []byte) (text string, found namedEncoding) {
	found, mark := byteOrderMark(data)
	if mark == 0 {
		found = guessEncoding(data)
	}
	return decodeIn(data[mark:], found), found
}

func decodeIn(data []byte, found namedEncoding) string {
	decoded, _, err := transform.Bytes(found.NewDecoder(), data)
	if err != nil { // no decoder here fails; should one, its bytes are still read
		decoded = data
	}
	return plainLines(strings.ToValidUTF8(string(decoded), "�"))
}

// byteOrderMark is the encoding that the first bytes announce, and their number.
func byteOrderMark(data []byte) (namedEncoding, int) {
	switch {
	case bytes.HasPrefix(data, []byte("\xef\xbb\xbf")):
		return utf8Text, 3
	case bytes.HasPrefix(data, []byte("\xff\xfe")):
		return utf16Little, 2
	case bytes.HasPrefix(data, []byte("\xfe\xff")):
		return utf16Big, 2
	}
	return namedEncoding{}, 0
}

// guessEncoding looks at the first bytes. Western text in UTF-16 has a NUL in
// nearly every second byte: the even ones when the high byte comes first.
func guessEncoding(data []byte) namedEncoding {
	head := data[:min(len(data), 4096)]
	var nuls [2]int
	for i, b := range head {
		if b == 0 {
			nuls[i%2]++
		}
	}
	switch many := len(head) / 5; {
	case nuls[1] > many && nuls[1] > nuls[0]:
		return utf16Little
	case nuls[0] > many:
		return utf16Big
	case utf8.Valid(data):
		return utf8Text
	}
	return likeliest(data)
}

// likeliest is the encoding of bytes that leaves the fewest odd letters.
func likeliest(data []byte) namedEncoding {
	best, fewest := byteEncodings[0], -1
	for _, e := range byteEncodings {
		if odd := oddLetters(decodeIn(data[:min(len(data), sniffedBytes)], e)); fewest < 0 || odd < fewest {
			best, fewest = e, odd
		}
	}
	return best
}

// oddLetters counts the foreign characters that no word has where they stand: a sign or a
// capital right behind a small letter, a sign right before one, a third foreign letter in a
// row, a letter of another alphabet, or none at all.
func oddLetters(text string) int {
	odd, foreign := 0, 0
	var before rune
	runes := []rune(text)
	for i, r := range runes {
		var after rune
		if i+1 < len(runes) {
			after = runes[i+1]
		}
		if foreign++; r < 0x80 || !unicode.Is(unicode.Latin, r) {
			foreign = 0
		}
		switch letters := unicode.IsLetter(before) || unicode.IsLetter(after); {
		case unicode.IsLetter(r) && unicode.IsLetter(before) && unicode.Is(unicode.Cyrillic, r) != unicode.Is(unicode.Cyrillic, before):
			odd++
		case r < 0x80:
		case r == '�', unicode.IsControl(r):
			odd += 2
		case unicode.IsUpper(r) && unicode.IsLower(before) || foreign > 2 || r == 'µ' && unicode.IsLetter(before):
			odd++
		case strings.ContainsRune("’‘“”«»–—…¿¡ºª€½¼¾²³×÷·°−\u00a0", r):
			if unicode.IsLower(before) && unicode.IsLower(after) && r != '’' && r != '–' && r != '—' {
				odd++
			}
		case !unicode.IsLetter(r) && letters:
			odd++
		}
		before = r
	}
	return odd
}

// foreignWords are some words of a text with characters beyond ASCII, by which a person sees
// whether its encoding was found.
func foreignWords(text string) (words []string) {
	for word := range strings.FieldsFuncSeq(text, func(r rune) bool { return unicode.IsSpace(r) || strings.ContainsRune(`,;|"`, r) }) {
		if len(words) == 3 {
			break
		}
		if strings.ContainsFunc(word, func(r rune) bool { return r >= 0x80 }) && !slices.Contains(words, word) {
			words = append(words, shorten(word))
		}
	}
	return words
}

// plainLines drops NULs and makes line feeds of lone carriage returns, which end lines too;
// within quotation marks they stay, where lines of the text end in line feeds.
func plainLines(text string) string {
	text = strings.ReplaceAll(text, "\x00", "")
	if !strings.Contains(text, "\n") {
		return strings.ReplaceAll(text, "\r", "\n")
	}
	if strings.Count(text, "\r") == strings.Count(text, "\r\n") {
		return text
	}
	plain, quoted := []byte(text), false
	for i, b := range plain {
		switch {
		case b == '"':
			quoted = !quoted
		case b == '\r' && !quoted && (i+1 == len(plain) || plain[i+1] != '\n'):
			plain[i] = '\n'
		}
	}
	return string(plain)
}
