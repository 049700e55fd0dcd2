package bank

import (
	"bytes"
	"cmp"
	"encoding/binary"
	"encoding/json"
	"slices"
	"time"

	"evenhand/bank/lineage"
	"evenhand/bank/store"
)

// cameIn is a list that came in, with its rows.
type cameIn struct {
	List List      `json:"list"`
	Rows []ListRow `json:"rows"`
}

// lists merges the lists that came in, by their names. A list that both banks have is one;
// where one of them took it back, it is taken back.
func (g *merger) lists() error {
	var theirs []cameIn
	err := g.from.view(func(r store.Reader) (err error) {
		theirs, err = g.from.cameIn(r, nil)
		return err
	})
	if err != nil {
		return err
	}
	for len(theirs) > 0 {
		n := 1
		for n < len(theirs) && theirs[n].List.Name == theirs[0].List.Name {
			n++
		}
		before := *g.told
		err := g.write(func(w *writer) error {
			*g.told = before
			return g.list(w, theirs[:n])
		})
		if err != nil {
			return err
		}
		theirs = theirs[n:]
	}
	return nil
}

func (b *Bank) cameIn(r store.Reader, prefix []byte) (all []cameIn, err error) {
	lists, err := b.readLists(r, prefix)
	if err != nil {
		return nil, err
	}
	for _, list := range lists {
		rows, err := b.readListRows(r, list)
		if err != nil {
			return nil, err
		}
		all = append(all, cameIn{list, rows})
	}
	return all, nil
}

// list merges the lists of one name.
func (g *merger) list(w *writer, theirs []cameIn) error {
	name := theirs[0].List.Name
	ours, err := g.into.cameIn(w, listPrefix(name))
	if err != nil || bytes.Equal(inJSON(ours), inJSON(theirs)) {
		return err
	}
	next := theirs
	if len(ours) > 0 {
		a, b := listLine(ours), listLine(theirs)
		joined, _ := lineage.Join(a, b)
		next = make([]cameIn, len(joined))
		for i, e := range joined {
			next[i] = e.Value
			next[i].List.TakenBack = takenBack(e, a, b)
			next[i].List.Number, next[i].List.At = i+1, time.Unix(0, e.Place).UTC()
		}
	}
	if bytes.Equal(inJSON(ours), inJSON(next)) {
		return nil
	}
	g.told.Lists = append(g.told.Lists, name)
	return w.putLists(name, next)
}

// putLists writes all lists of one name in the place of those that were there.
func (w *writer) putLists(name string, all []cameIn) error {
	for _, bucket := range []string{listsBucket, listRowsBucket} {
		if err := w.deleteAll(bucket, listPrefix(name)); err != nil {
			return err
		}
	}
	for _, came := range all {
		if err := putSealed(w, listsBucket, came.List.key(), came.List); err != nil {
			return err
		}
		for i, some := range slices.Collect(slices.Chunk(came.Rows, rowsTogether)) {
			key := binary.BigEndian.AppendUint32(came.List.key(), uint32(i))
			if err := putSealed(w, listRowsBucket, key, some); err != nil {
				return err
			}
		}
	}
	return nil
}

// deleteAll deletes what has the prefix.
func (w *writer) deleteAll(bucket string, prefix []byte) error {
	var keys [][]byte
	for e, err := range w.Scan(bucket, store.Prefix(prefix)) {
		if err != nil {
			return err
		}
		keys = append(keys, bytes.Clone(e.Key))
	}
	for _, key := range keys {
		if err := w.Delete(bucket, key); err != nil {
			return err
		}
	}
	return nil
}

// takenBack is who first took back a list, in either line.
func takenBack(e lineage.Entry[cameIn], lines ...lineage.Line[cameIn]) (first *TakenBack) {
	for _, l := range lines {
		for _, other := range l {
			back := other.Value.List.TakenBack
			if back == nil || other.Place != e.Place || other.Body != e.Body {
				continue
			}
			if first == nil || cmp.Or(back.At.Compare(first.At), cmp.Compare(back.By, first.By)) < 0 {
				first = back
			}
		}
	}
	return first
}

func listLine(all []cameIn) lineage.Line[cameIn] {
	l := make(lineage.Line[cameIn], len(all))
	for i, came := range all {
		said := came
		said.List.Number, said.List.At, said.List.TakenBack = 0, time.Time{}, nil
		l[i] = lineage.Entry[cameIn]{Value: came, Body: string(inJSON(said)), At: came.List.At.UnixNano(), Human: true}
	}
	l.Places()
	return l
}

// inJSON is a value that was read from JSON.
func inJSON(value any) []byte {
	text, _ := json.Marshal(value)
	return text
}
