package intake

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"path"
	"slices"
	"strings"

	"evenhand/standards/words"
)

// The .xlsx format (ECMA-376 Part 1, 18.3.1.73 and 18.3.1.13) allows a sheet so many rows
// and columns.
const (
	longestSheet = 1 << 20
	widestSheet  = 16384
)

// mostSheets is how many sheets a workbook may have.
const mostSheets = 1000

// workbook is an opened .xlsx file.
type workbook struct {
	parts  map[string]*zip.File
	bounds bounds
	shared []string
	dates  []bool // by style: numbers are shown as dates or times
	sheets []sheetPart
}

// sheetPart is where a sheet stands in a workbook.
type sheetPart struct {
	name   string
	hidden bool
	part   string
}

// isWorkbook says whether the bytes are a zip archive, as .xlsx files are.
func isWorkbook(data []byte) bool {
	return bytes.HasPrefix(data, []byte("PK\x03\x04")) || bytes.HasPrefix(data, []byte("PK\x05\x06")) // an empty one
}

// openWorkbook finds the sheets of a workbook without reading them.
func openWorkbook(data []byte) (*workbook, error) {
	archive, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, words.Errorf("this workbook is torn and can't be opened (%w); get it again, or save it as CSV and import that", err)
	}
	w := &workbook{parts: map[string]*zip.File{}, bounds: boundsOf(len(data))}
	for _, file := range archive.File {
		w.parts[strings.TrimPrefix(file.Name, "/")] = file
	}
	if what := otherArchive(archive); what != nil {
		return nil, what
	}
	switch err := w.readBook(); {
	case errors.Is(err, errUnpacked):
		return nil, errUnpacked
	case err != nil:
		return nil, words.Errorf("this .xlsx workbook can't be read (%w); save it as CSV and import that", err)
	case len(w.sheets) > mostSheets:
		return nil, words.Errorf("this workbook has %d sheets, and %d are the most; bring in its lists in several workbooks",
			len(w.sheets), mostSheets)
	}
	return w, nil
}

// otherArchive says what a zip archive is that is no .xlsx workbook, and what to do.
func otherArchive(archive *zip.Reader) *words.Told {
	has := func(name string) bool {
		return slices.ContainsFunc(archive.File, func(f *zip.File) bool { return strings.TrimPrefix(f.Name, "/") == name })
	}
	switch {
	case has("xl/workbook.xml"):
		return nil
	case has("xl/workbook.bin"):
		return words.Sayf("this is a binary workbook (.xlsb); open it and save it as .xlsx or CSV, and import that")
	case has("word/document.xml"):
		return words.Sayf("this is a text document (.docx); put its questions into a spreadsheet, " +
			"or save it as plain text with one question a line, and import that")
	case has("ppt/presentation.xml"):
		return words.Sayf("this is a presentation (.pptx), not a list; put its questions into a spreadsheet and import that")
	case has("imsmanifest.xml"):
		return words.Sayf("this is a package of test items (QTI), not a list; the command evenhand import reads it")
	case has("content.xml") && has("META-INF/manifest.xml"):
		return words.Sayf("this is an OpenDocument file (.ods, .odt); open it and save it as .xlsx or CSV, and import that")
	}
	return words.Sayf("this is a zip archive of %d files, not a list; unpack it and import the list in it", len(archive.File))
}

// readBook reads what stands beside the sheets. Shared texts and styles may be missing.
func (w *workbook) readBook() error {
	targets := map[string]string{}
	err := w.read("xl/_rels/workbook.xml.rels", func(d *xml.Decoder, start xml.StartElement) error {
		if start.Name.Local == "Relationship" {
			target := attribute(start, "Target")
			if !strings.HasPrefix(target, "/") {
				target = path.Join("xl", target)
			}
			targets[attribute(start, "Id")] = strings.TrimPrefix(target, "/")
			return w.bounds.keep(target)
		}
		return nil
	})
	if err != nil {
		return err
	}
	err = w.read("xl/workbook.xml", func(d *xml.Decoder, start xml.StartElement) error {
		if start.Name.Local == "sheet" {
			state := attribute(start, "state")
			w.sheets = append(w.sheets, sheetPart{attribute(start, "name"), state == "hidden" || state == "veryHidden", targets[attribute(start, "id")]})
			return w.bounds.keep(attribute(start, "name"))
		}
		return nil
	})
	if err != nil {
		return err
	}
	if err := w.readShared(); err != nil {
		return err
	}
	return w.readStyles()
}

// readShared reads the texts that cells point to, without their phonetic guides.
func (w *workbook) readShared() error {
	return w.optional("xl/sharedStrings.xml", func(d *xml.Decoder, start xml.StartElement) error {
		if start.Name.Local != "si" {
			return nil
		}
		text, err := richText(d, start.Name.Local)
		if err == nil {
			err = w.bounds.keep(text)
		}
		w.shared = append(w.shared, text)
		return err
	})
}

// richText is the text up to the end of an element, of all its parts.
func richText(d *xml.Decoder, until string) (string, error) {
	var b strings.Builder
	inText := false
	for {
		token, err := d.Token()
		if err != nil {
			return "", err
		}
		switch token := token.(type) {
		case xml.StartElement:
			inText = token.Name.Local == "t"
			if token.Name.Local == "rPh" {
				if err := d.Skip(); err != nil {
					return "", err
				}
			}
		case xml.CharData:
			if inText {
				b.Write(token)
			}
		case xml.EndElement:
			inText = false
			if token.Name.Local == until {
				return b.String(), nil
			}
		}
	}
}

// readStyles finds out which styles show numbers as dates or times.
func (w *workbook) readStyles() error {
	formats := map[string]bool{}
	inCells := false
	return w.optional("xl/styles.xml", func(d *xml.Decoder, start xml.StartElement) error {
		switch start.Name.Local {
		case "numFmt":
			formats[attribute(start, "numFmtId")] = isDateFormat(attribute(start, "formatCode"))
		case "cellXfs":
			inCells = true
		case "cellStyles", "dxfs":
			inCells = false
		case "xf":
			if inCells {
				id := attribute(start, "numFmtId")
				w.dates = append(w.dates, formats[id] || slices.Contains(dateFormats, id))
			}
		}
		return nil
	})
}

// dateFormats are the built-in formats of dates and times (ECMA-376 Part 1, 18.8.30).
var dateFormats = []string{"14", "15", "16", "17", "18", "19", "20", "21", "22", "45", "46", "47"}

// isDateFormat says whether a format shows a date or a time: it has a letter for a part
// of one, outside quotation marks and brackets.
func isDateFormat(code string) bool {
	depth, quoted := 0, false
	for _, r := range strings.ToLower(code) {
		switch {
		case r == '"':
			quoted = !quoted
		case quoted:
		case r == '[':
			depth++
		case r == ']':
			depth--
		case depth == 0 && strings.ContainsRune("ymdhs", r):
			return true
		}
	}
	return false
}

// optional reads a part that a workbook may do without.
func (w *workbook) optional(name string, take func(*xml.Decoder, xml.StartElement) error) error {
	if w.parts[name] == nil {
		return nil
	}
	return w.read(name, take)
}

// read gives the elements of a part, one after the other; take may read on.
func (w *workbook) read(name string, take func(*xml.Decoder, xml.StartElement) error) error {
	part := w.parts[name]
	if part == nil {
		return words.Errorf("its part %s is missing", name)
	}
	d, end, err := w.bounds.open(part)
	if err != nil {
		return words.Errorf("%s: %w", name, err)
	}
	defer end()
	for {
		token, err := d.Token()
		if err == io.EOF {
			return nil
		}
		if start, ok := token.(xml.StartElement); ok && err == nil {
			err = take(d, start)
		}
		if err != nil {
			return words.Errorf("%s: %w", name, torn(err))
		}
	}
}

// torn is an error that was not told here, of a part in which the archive or its XML breaks off.
func torn(err error) error {
	if errors.As(err, new(*words.Told)) {
		return err
	}
	return words.Errorf("it is cut off or damaged: %s", err)
}

func attribute(start xml.StartElement, name string) string {
	for _, a := range start.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}
