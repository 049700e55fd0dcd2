package intake

import (
	"archive/zip"
	"encoding/xml"
	"io"

	"evenhand/standards/words"
)

// A part of a workbook may unpack to a start and so many times its packed size, all that is read to the same of the
// workbook's size, up to a bound. Sheets of like rows pack to a tenth, texts that tell the same again and again to a
// twentieth; what packs to less than a fortieth was made to fill memory. What is kept of the parts, many cells of which
// may show one text, is held to the same.
const (
	unpackedStart = 4 << 20
	unpackedTimes = 40
	unpackedMost  = 512 << 20
)

// A text in a cell has at most 32,767 characters; tags and nesting stay far below these bounds (ECMA-376 Part 1 has
// elements of a sheet some ten deep).
const (
	longestToken  = 1 << 20 // bytes
	deepestNested = 100
)

var errUnpacked = words.Errorf("this workbook unpacks to far more than a list of items needs, so it was not read; " +
	"copy the rows of the list into a new workbook, or save the sheet as CSV, and import that")

// bounds are how much of a workbook may still be read and kept.
type bounds struct{ unpacked, kept, token int64 }

func boundsOf(packed int) bounds {
	most := mostUnpacked(int64(packed))
	return bounds{unpacked: most, kept: most}
}

// mostUnpacked is the bytes to which something may unpack.
func mostUnpacked(packed int64) int64 {
	return unpackedStart + unpackedTimes*min(packed, (unpackedMost-unpackedStart)/unpackedTimes)
}

// keep counts a text that is kept, with what the keeping takes.
func (b *bounds) keep(text string) error {
	if b.kept -= int64(len(text)) + 32; b.kept < 0 {
		return errUnpacked
	}
	return nil
}

// open gives the tokens of a part as far as the bounds go. A part that says beforehand that it goes further isn't read;
// package zip fails where one is longer than it said.
func (b *bounds) open(part *zip.File) (d *xml.Decoder, end func() error, err error) {
	if part.UncompressedSize64 > uint64(min(mostUnpacked(int64(part.CompressedSize64)), b.unpacked)) {
		return nil, nil, errUnpacked
	}
	body, err := part.Open()
	if err != nil {
		return nil, nil, err
	}
	return xml.NewTokenDecoder(&tokens{Decoder: xml.NewDecoder(bounded{body, b}), bounds: b}), body.Close, nil
}

// bounded reads no further than the bounds go.
type bounded struct {
	io.Reader
	*bounds
}

func (r bounded) Read(p []byte) (int, error) {
	n, err := r.Reader.Read(p)
	r.unpacked -= int64(n)
	if r.token -= int64(n); r.unpacked < 0 || r.token < 0 {
		return 0, errUnpacked
	}
	return n, err
}

// tokens are those of a part, none too long or nested too deep.
type tokens struct {
	*xml.Decoder
	bounds *bounds
	depth  int
}

func (t *tokens) Token() (xml.Token, error) {
	t.bounds.token = longestToken
	token, err := t.RawToken()
	switch token.(type) {
	case xml.StartElement:
		if t.depth++; t.depth > deepestNested {
			return nil, errUnpacked
		}
	case xml.EndElement:
		t.depth--
	}
	return token, err
}
