package bolt

import (
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"os"
)

// structure makes sure that every page that can be reached lies in the
// file, that no page is reached twice, and that what a page says of its own
// contents stays inside it. bbolt's own check, which looks closer, trusts all that
// and would take the program down.
//
// A page begins with its number (8 bytes), its kind and the count of its entries
// (2 each), and how many pages it goes on over (4). Entries of 16 bytes follow. A
// branch's entry is the distance to its key, the key's size (4 each) and a page;
// a leaf's is a flag, the distance to its key and the sizes of key and value. The
// value of a bucket begins with its first page, or with 0 if its only page is
// inside the value, 16 bytes on.
//
// Nobody may write meanwhile.
func structure(path string) error {
	file, err := os.Open(path)
	if err != nil {
		return err
	}
	defer file.Close()
	m, ok := latestMeta(file)
	if !ok {
		return fmt.Errorf("%s was replaced by another file", path)
	}
	w := walker{file, m, map[uint64]bool{0: true, 1: true}}
	if _, err := w.page(m.freeList); err != nil && m.freeList != noFreeList {
		return err
	}
	return w.tree(m.root)
}

const (
	branchPage  = 0x01
	leafPage    = 0x02
	bucketEntry = 0x01
	entrySize   = 16
	noFreeList  = 1<<64 - 1
)

type walker struct {
	file io.ReaderAt
	meta
	seen map[uint64]bool
}

// page reads a page with all that it goes on over.
func (w *walker) page(number uint64) ([]byte, error) {
	if number >= w.pages {
		return nil, fmt.Errorf("page %d is behind the end of the file", number)
	}
	header := make([]byte, pageHeader)
	if _, err := w.file.ReadAt(header, int64(number*w.pageSize)); err != nil {
		return nil, err
	}
	length := 1 + uint64(binary.NativeEndian.Uint32(header[12:]))
	if own := binary.NativeEndian.Uint64(header); own != number || number+length > w.pages {
		return nil, fmt.Errorf("page %d is overwritten", number)
	}
	for n := number; n < number+length; n++ {
		if w.seen[n] {
			return nil, fmt.Errorf("page %d is used twice", n)
		}
		w.seen[n] = true
	}
	raw := make([]byte, length*w.pageSize)
	_, err := w.file.ReadAt(raw, int64(number*w.pageSize))
	return raw, err
}

// tree walks over a page and all pages under it.
func (w *walker) tree(number uint64) error {
	raw, err := w.page(number)
	if err != nil {
		return err
	}
	if err := w.entries(raw); err != nil {
		return fmt.Errorf("page %d: %w", number, err)
	}
	return nil
}

// entries walks over a page's entries.
func (w *walker) entries(raw []byte) error {
	order := binary.NativeEndian
	kind, count := order.Uint16(raw[8:]), int(order.Uint16(raw[10:]))
	if kind != branchPage && kind != leafPage || pageHeader+count*entrySize > len(raw) {
		return errors.New("its beginning is overwritten")
	}
	for i := range count {
		entry := raw[pageHeader+i*entrySize:]
		visit := w.leaf
		if kind == branchPage {
			visit = w.branch
		}
		if err := visit(entry); err != nil {
			return err
		}
	}
	return nil
}

func (w *walker) branch(entry []byte) error {
	order := binary.NativeEndian
	if _, err := within(entry, order.Uint32(entry), order.Uint32(entry[4:])); err != nil {
		return err
	}
	return w.tree(order.Uint64(entry[8:]))
}

func (w *walker) leaf(entry []byte) error {
	order := binary.NativeEndian
	isBucket := order.Uint32(entry)&bucketEntry != 0
	key, err := within(entry, order.Uint32(entry[4:]), order.Uint32(entry[8:]))
	if err != nil {
		return err
	}
	value, err := within(key[:cap(key)], uint32(len(key)), order.Uint32(entry[12:]))
	if err != nil || !isBucket {
		return err
	}
	return w.bucket(value)
}

func (w *walker) bucket(value []byte) error {
	const head = 16
	if len(value) < head {
		return errors.New("a bucket in it is overwritten")
	}
	if root := binary.NativeEndian.Uint64(value); root != 0 {
		return w.tree(root)
	}
	if len(value) < head+pageHeader {
		return errors.New("a bucket in it is overwritten")
	}
	return w.entries(value[head:])
}

// within is the part of the bytes that begins at a distance and has a size.
func within(raw []byte, distance, size uint32) ([]byte, error) {
	if uint64(distance)+uint64(size) > uint64(len(raw)) {
		return nil, errors.New("an entry reaches out of it")
	}
	return raw[distance:][:size], nil
}
