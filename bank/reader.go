package bank

import (
	"encoding/binary"
	"math/bits"
	"time"

	"evenhand/standards"
	"evenhand/standards/task"
)

// reader walks over a record's bytes; raw and text hold the same. After the first
// wrong byte it gives only zeros, and end says so.
type reader struct {
	raw  []byte
	text string
	at   int
	bad  bool
}

// end is nil when the record was read to its last byte without a fault.
func (r *reader) end() error {
	if r.bad || r.at != len(r.raw) {
		return errRecord
	}
	return nil
}

func (r *reader) fail() { r.bad, r.at = true, len(r.raw) }

func (r *reader) octet() byte {
	if r.at >= len(r.raw) {
		r.fail()
		return 0
	}
	r.at++
	return r.raw[r.at-1]
}

func (r *reader) flag() bool {
	b := r.octet()
	if b > 1 {
		r.fail()
	}
	return b == 1
}

// count reads an unsigned varint.
func (r *reader) count() uint64 {
	if r.at < len(r.raw) && r.raw[r.at] < 0x80 { // nearly all are this short
		r.at++
		return uint64(r.raw[r.at-1])
	}
	n, size := binary.Uvarint(r.raw[r.at:])
	if size <= 0 {
		r.fail()
		return 0
	}
	r.at += size
	return n
}

// number reads a signed varint.
func (r *reader) number() int64 {
	n, size := binary.Varint(r.raw[r.at:])
	if size <= 0 {
		r.fail()
		return 0
	}
	r.at += size
	return n
}

func (r *reader) string() string {
	size := len(r.skip())
	return r.text[r.at-size : r.at]
}

// skip goes over a text; it is valid as long as the record is.
func (r *reader) skip() []byte {
	size := r.count()
	if size > uint64(len(r.raw)-r.at) {
		r.fail()
		return nil
	}
	r.at += int(size)
	return r.raw[r.at-int(size) : r.at]
}

func (r *reader) time() time.Time {
	seconds, nanos := r.number(), r.count()
	if nanos >= uint64(time.Second) {
		r.fail()
		return time.Time{}
	}
	return time.Unix(seconds, int64(nanos)).UTC()
}

// entries reads how many entries follow, each of at least one byte, so that a
// damaged count can't ask for more memory than the record's own size.
func (r *reader) entries() int {
	n := r.count()
	if n > uint64(len(r.raw)-r.at) {
		r.fail()
		return 0
	}
	return int(n)
}

func (r *reader) codes() []task.Code {
	n := r.entries()
	if n == 0 {
		return nil
	}
	codes := make([]task.Code, n)
	for i := range codes {
		codes[i] = task.Code(r.string())
	}
	return codes
}

func (r *reader) traits(ts *task.Traits) {
	applies := r.count()
	if bits.Len64(applies) > len(ts) {
		r.fail()
		return
	}
	for ; applies != 0; applies &= applies - 1 {
		ts[bits.TrailingZeros64(applies)] = r.string()
	}
}

func (r *reader) measured() *Measured {
	if !r.flag() {
		return nil
	}
	return &Measured{standards.Difficulty(r.number()), standards.Difficulty(r.number()), int(r.number())}
}

func (r *reader) wording() map[string]string {
	n := r.entries()
	if n == 0 {
		return nil
	}
	wording := make(map[string]string, n)
	for range n {
		lang := r.string()
		wording[lang] = r.string()
	}
	return wording
}
