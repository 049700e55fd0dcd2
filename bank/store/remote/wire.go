package remote

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"hash"

	"evenhand/bank/store"
)

// What client and server send each other is JSON; keys and values are base64 in it, and a value
// that isn't there is null.

// question is one thing that is read of a bucket, or the list of buckets.
type question struct {
	Buckets  bool     `json:"buckets,omitempty"`
	Bucket   string   `json:"bucket,omitempty"`
	Sequence bool     `json:"sequence,omitempty"`
	Keys     [][]byte `json:"keys,omitempty"`
	Ranges   []span   `json:"ranges,omitempty"`
	Most     int      `json:"most,omitempty"` // entries of the ranges
}

// span is a store.Range.
type span struct {
	From     []byte `json:"from,omitempty"`
	To       []byte `json:"to"` // null is open
	Backward bool   `json:"backward,omitempty"`
	Limit    int    `json:"limit,omitempty"`
}

type entry struct {
	Key   []byte `json:"key"`
	Value []byte `json:"value"`
}

// answer is what was read. Of many keys or of long ranges it may be only the beginning.
type answer struct {
	Buckets  []string `json:"buckets,omitempty"`
	Sequence uint64   `json:"sequence,string,omitempty"`
	Values   [][]byte `json:"values,omitempty"`  // of the first keys
	Entries  []entry  `json:"entries,omitempty"` // of the ranges, one after the other
	Done     int      `json:"done,omitempty"`    // so many ranges are read to their end
	In       int      `json:"in,omitempty"`      // so many entries are of the range that isn't
}

// mostBytes is how much one answer holds, but for a single value that is longer.
const mostBytes = 2 << 20

// ask answers a question from a reader. What is hidden from the asker isn't there.
func ask(r store.Reader, q question, hidden func(bucket string) bool) (a answer, err error) {
	switch {
	case q.Buckets:
		names, err := r.Buckets()
		for _, name := range names {
			if !hidden(name) {
				a.Buckets = append(a.Buckets, name)
			}
		}
		return a, err
	case hidden(q.Bucket):
		return a, errHidden
	case q.Sequence:
		a.Sequence, err = r.Sequence(q.Bucket)
		return a, err
	case len(q.Ranges) > 0:
		return askRanges(r, q)
	}
	values, err := r.GetAll(q.Bucket, q.Keys)
	size := 0
	for _, value := range values {
		if size += len(value); size > mostBytes && len(a.Values) > 0 {
			break
		}
		a.Values = append(a.Values, value)
	}
	return a, err
}

func askRanges(r store.Reader, q question) (a answer, err error) {
	size := 0
	for _, asked := range q.Ranges {
		a.In = 0
		for e, err := range r.Scan(q.Bucket, asked.of()) {
			if err != nil {
				return a, err
			}
			if len(a.Entries) > 0 && (len(a.Entries) >= q.Most || size > mostBytes) {
				return a, nil
			}
			a.Entries = append(a.Entries, entry(e))
			size += len(e.Key) + len(e.Value)
			a.In++
		}
		a.Done++
	}
	a.In = 0
	return a, nil
}

func (s span) of() store.Range { return store.Range(s) }

// sum tells answers apart.
func (a answer) sum() []byte {
	h := sha256.New()
	number := func(n int) { _ = binary.Write(h, binary.BigEndian, uint64(n)) } // a hash never fails
	number(len(a.Buckets))
	for _, name := range a.Buckets {
		piece(h, []byte(name))
	}
	number(int(a.Sequence))
	number(len(a.Values))
	for _, value := range a.Values {
		piece(h, value)
	}
	number(len(a.Entries))
	for _, e := range a.Entries {
		piece(h, e.Key)
		piece(h, append([]byte{}, e.Value...))
	}
	number(a.Done)
	number(a.In)
	return h.Sum(nil)[:16]
}

// piece adds bytes to a sum; none differs from nil.
func piece(h hash.Hash, b []byte) {
	var length [9]byte
	if b != nil {
		length[0] = 1
	}
	binary.BigEndian.PutUint64(length[1:], uint64(len(b)))
	h.Write(length[:])
	h.Write(b)
}

// write is all that an Update read and wrote.
type write struct {
	ID     []byte    `json:"id"` // 16 bytes of the client's choice, later ones above earlier ones
	Read   []checked `json:"read,omitempty"`
	Make   []string  `json:"make,omitempty"`
	Put    []changed `json:"put,omitempty"`
	Delete []changed `json:"delete,omitempty"`
	Next   []next    `json:"next,omitempty"`
}

// checked is a question with the sum of the answer on which an Update builds.
type checked struct {
	question
	Sum []byte `json:"sum"`
}

type changed struct {
	Bucket  string  `json:"bucket"`
	Entries []entry `json:"entries"` // without values where they are deleted
}

type next struct {
	Bucket string `json:"bucket"`
	Count  uint64 `json:"count,string"`
}

// fresh says that all answers are still those that the client was given.
func (w write) fresh(r store.Reader, hidden func(string) bool) (bool, error) {
	for _, c := range w.Read {
		a, err := ask(r, c.question, hidden)
		if err != nil {
			return false, err
		}
		if !bytes.Equal(a.sum(), c.Sum) {
			return false, nil
		}
	}
	return true, nil
}

// apply writes what the client gathered.
func (w write) apply(to store.Writer) error {
	for _, name := range w.Make {
		if err := to.Make(name); err != nil {
			return err
		}
	}
	for _, n := range w.Next {
		if _, err := to.Next(n.Bucket, n.Count); err != nil {
			return err
		}
	}
	for _, c := range w.Put {
		for _, e := range c.Entries {
			if err := to.Put(c.Bucket, e.Key, e.Value); err != nil {
				return err
			}
		}
	}
	for _, c := range w.Delete {
		for _, e := range c.Entries {
			if err := to.Delete(c.Bucket, e.Key); err != nil {
				return err
			}
		}
	}
	return nil
}

// buckets are those that the client writes to.
func (w write) buckets() (names []string) {
	names = append(names, w.Make...)
	for _, c := range append(w.Put, w.Delete...) {
		names = append(names, c.Bucket)
	}
	for _, n := range w.Next {
		names = append(names, n.Bucket)
	}
	return names
}
