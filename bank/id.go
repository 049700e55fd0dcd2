package bank

import (
	"bufio"
	"crypto/rand"
	"fmt"
	"io"
	"time"

	"github.com/oklog/ulid/v2"
)

// newEntropy gives the random part of IDs: fresh in every millisecond, counting
// up from there within one, so that items added together stay in order. IDs from
// the system's entropy never meet, wherever they are made.
func newEntropy(source io.Reader) io.Reader {
	if source == nil {
		source = bufio.NewReader(rand.Reader)
	}
	return ulid.Monotonic(source, 0)
}

// newID makes an ID that is not in the bank yet. A seeded entropy may repeat one
// of an earlier run; it is passed over. Only writing transactions may call it.
func (b *Bank) newID(at time.Time, taken func(ulid.ULID) (bool, error)) (ulid.ULID, error) {
	for {
		id, err := ulid.New(ulid.Timestamp(at), b.entropy)
		if err != nil {
			return id, fmt.Errorf("no ID could be made for an item of %s: %w", at.Format(time.DateTime), err)
		}
		if there, err := taken(id); err != nil || !there {
			return id, err
		}
	}
}

// parseID reads an ID as people give it: in capitals or not.
func parseID(text string) (ulid.ULID, error) {
	id, err := ulid.ParseStrict(text)
	if err != nil {
		return id, fmt.Errorf("%q is no item ID; an ID has 26 letters and digits, as evenhand list shows them", text)
	}
	return id, nil
}
