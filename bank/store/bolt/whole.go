package bolt

import (
	"encoding/binary"
	"hash/fnv"
	"io"
	"os"

	"evenhand/bank/store"
	"evenhand/standards/words"
)

// openWhole opens the file for bbolt and makes sure that it is all there: bbolt
// maps the file into memory and dies, beyond any recovery, on reading a page
// behind the end. So what the file says of its own length is compared with the
// length it has. It is read before its length is taken, as a bank that is being
// written only grows.
func openWhole(path string, flag int, mode os.FileMode) (*os.File, error) {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, err
	case info.IsDir():
		return nil, words.Errorf("%s is a folder; name a file", path)
	case !info.Mode().IsRegular():
		return nil, words.Errorf("%s is no ordinary file; name another", path)
	}
	file, err := os.OpenFile(path, flag, mode)
	if err != nil {
		return nil, err
	}
	if err := checkLength(path, file); err != nil {
		file.Close()
		return nil, err
	}
	return file, nil
}

func checkLength(path string, file *os.File) error {
	m, found := latestMeta(file)
	needs := int64(m.pages * m.pageSize)
	info, err := file.Stat()
	switch {
	case err != nil:
		return err
	case info.Size() == 0:
		return words.Errorf("%s is empty; put a backup in its place with evenhand restore BACKUP, or name another file", path)
	case !found:
		return words.Errorf("%s is not a file that evenhand made, or its beginning is lost; "+
			"name another, or put a backup in its place with evenhand restore BACKUP", path)
	case info.Size() < needs:
		return store.Damaged{Name: path, What: words.Sayf("it is cut short: %d of at least %d bytes are there", info.Size(), needs)}
	}
	return nil
}

// A bbolt file begins with two meta pages, written in turn. The valid one with
// the higher transaction number counts. After a page header of 16 bytes a meta
// holds, in the byte order of the machine: magic, version, page size, flags (4
// bytes each), root page and its sequence, free list page, high-water mark in
// pages, transaction number, and the FNV-1a sum of all before it (8 bytes each).
const (
	pageHeader = 16
	metaSize   = 64
	magic      = 0xED0CDAED
)

type meta struct{ pageSize, root, freeList, pages, transaction uint64 }

// latestMeta is the meta page that counts; found is false if none is valid.
func latestMeta(file io.ReaderAt) (latest meta, found bool) {
	for _, m := range metas(file) {
		if !found || m.transaction > latest.transaction {
			latest, found = m, true
		}
	}
	return latest, found
}

// metas reads the valid ones of the two meta pages. The page size, where the
// second begins, is a power of two; it is tried out, as the first may be broken.
func metas(file io.ReaderAt) (valid []meta) {
	if first, ok := readMeta(file, 0); ok {
		valid = append(valid, first)
	}
	for size := int64(1 << 10); size <= 1<<16; size <<= 1 {
		if second, ok := readMeta(file, size); ok && second.pageSize == uint64(size) {
			valid = append(valid, second)
		}
	}
	return valid
}

func readMeta(file io.ReaderAt, offset int64) (m meta, ok bool) {
	var raw [metaSize]byte
	if n, _ := file.ReadAt(raw[:], offset+pageHeader); n < metaSize {
		return m, false
	}
	order := binary.NativeEndian
	sum := fnv.New64a()
	sum.Write(raw[:metaSize-8])
	if order.Uint32(raw[:]) != magic || order.Uint64(raw[metaSize-8:]) != sum.Sum64() {
		return m, false
	}
	m = meta{uint64(order.Uint32(raw[8:])), order.Uint64(raw[16:]), order.Uint64(raw[32:]), order.Uint64(raw[40:]), order.Uint64(raw[48:])}
	const most = 1 << 46 // pages of a file that any disk could hold
	return m, m.pageSize >= 1<<10 && m.pageSize <= 1<<16 && m.pages <= most
}
