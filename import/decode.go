package intake

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
	"golang.org/x/text/transform"
)

// encodings are those that lists come in, each with the name shown to people.
var (
	utf8Text    = namedEncoding{"UTF-8", unicode.UTF8}
	utf16Little = namedEncoding{"UTF-16", unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM)}
	utf16Big    = namedEncoding{"UTF-16 (big-endian)", unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM)}
	windows1252 = namedEncoding{"Windows-1252", charmap.Windows1252}
)

type namedEncoding struct {
	name string
	encoding.Encoding
}

// decode turns a file's bytes into text whose lines end in "\n" or "\r\n", without
// byte-order mark, and names the encoding. A byte-order mark decides; else many NULs
// mean UTF-16, valid UTF-8 is UTF-8, and what is left is Windows-1252.
func decode(data []byte) (text, name string) {
	found, mark := byteOrderMark(data)
	if mark == 0 {
		found = guessEncoding(data)
	}
	decoded, _, err := transform.Bytes(found.NewDecoder(), data[mark:])
	if err != nil { // no decoder here fails; should one, its bytes are still read
		decoded = data[mark:]
	}
	return plainLines(strings.ToValidUTF8(string(decoded), "�")), found.name
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
	return windows1252
}

// plainLines drops NULs and, where a file ends its lines in lone carriage returns,
// makes them line feeds.
func plainLines(text string) string {
	text = strings.ReplaceAll(text, "\x00", "")
	if !strings.Contains(text, "\n") {
		text = strings.ReplaceAll(text, "\r", "\n")
	}
	return text
}
