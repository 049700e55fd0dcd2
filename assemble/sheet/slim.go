package sheet

import (
	"encoding/binary"
	"errors"
	"slices"
)

// paperTables are the parts of a TrueType font that a file for printing needs: those that
// ISO 32000-1 (9.9) asks for, where the font has them, and those that our PDF writer
// reads. Names and the rules for setting other scripts would only make every file larger.
var paperTables = []string{"OS/2", "cmap", "cvt ", "fpgm", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post", "prep"}

// noNames is a table of names with none in it: format 0, count 0, where the text would begin.
var noNames = []byte{0, 0, 0, 0, 0, 6}

// slim is the font with only those tables. A font file begins with a header of 12 bytes, then
// 16 bytes for each table: its tag, a checksum, where it begins and how long it is
// (ISO/IEC 14496-22).
func slim(file []byte) ([]byte, error) {
	tables, err := tablesOf(file)
	if err != nil {
		return nil, err
	}
	tables["name"] = noNames
	kept := slices.DeleteFunc(slices.Clone(paperTables), func(tag string) bool { return tables[tag] == nil })
	head := append([]byte{}, file[:4]...)
	head = binary.BigEndian.AppendUint16(head, uint16(len(kept)))
	head = append(head, make([]byte, 6)...) // help for searching, unused
	start := len(head) + 16*len(kept)
	var body []byte
	for _, tag := range kept {
		head = append(head, tag...)
		head = binary.BigEndian.AppendUint32(head, 0)
		head = binary.BigEndian.AppendUint32(head, uint32(start+len(body)))
		head = binary.BigEndian.AppendUint32(head, uint32(len(tables[tag])))
		body = append(body, tables[tag]...)
		body = append(body, make([]byte, (4-len(tables[tag])%4)%4)...)
	}
	return append(head, body...), nil
}

// tablesOf are the tables of a font file by tag.
func tablesOf(file []byte) (map[string][]byte, error) {
	cut := errors.New("the font file is cut off")
	if len(file) < 12 {
		return nil, cut
	}
	tables := map[string][]byte{}
	for i := range int(binary.BigEndian.Uint16(file[4:])) {
		at := 12 + 16*i
		if at+16 > len(file) {
			return nil, cut
		}
		begin, size := uint64(binary.BigEndian.Uint32(file[at+8:])), uint64(binary.BigEndian.Uint32(file[at+12:]))
		if begin+size > uint64(len(file)) {
			return nil, cut
		}
		tables[string(file[at:at+4])] = file[begin : begin+size]
	}
	return tables, nil
}
