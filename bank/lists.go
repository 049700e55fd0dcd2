package bank

import (
	"encoding/binary"
	"errors"
	"iter"
	"maps"
	"slices"
	"strings"
	"time"

	"evenhand/bank/store"
	"evenhand/standards/words"
)

// Lists that came in are kept with what became of each of their rows.

const (
	listsBucket    = "lists"
	listRowsBucket = "list rows"
)

// rowsTogether is how many rows of a list stand in one entry.
const rowsTogether = 2000

// List is a colleague's list as it came in, once; the same list another time is another.
type List struct {
	Name    string         `json:"name"`    // of its file, without the folder
	Number  int            `json:"number"`  // 1, 2, ...: which time a list of this name came in
	Written string         `json:"written"` // how it was written, for people
	Columns []ListColumn   `json:"columns"`
	Asked   []string       `json:"asked,omitempty"` // what a person was asked about it
	Told    []*words.Told  `json:"told,omitempty"`  // Written and Asked for other languages; none in earlier versions
	Rows    int            `json:"rows"`
	Fates   map[string]int `json:"fates"` // how many rows had each fate

	By        string     `json:"by"`
	At        time.Time  `json:"at"`                   // UTC
	TakenBack *TakenBack `json:"taken_back,omitempty"` // its items are out of use again
}

// ListColumn is how a column was understood.
type ListColumn struct {
	Number  int    `json:"number"`
	Heading string `json:"heading"`
	Meaning string `json:"meaning"` // empty when it was not used
	Why     string `json:"why"`
}

// TakenBack says who took a list back, and when.
type TakenBack struct {
	By string    `json:"by"`
	At time.Time `json:"at"`
}

// ListRow is what became of a row.
type ListRow struct {
	Line   int    `json:"line"`
	Fate   string `json:"fate"`             // such as added, already here, set aside
	ID     string `json:"id,omitempty"`     // of the item that it is
	Column string `json:"column,omitempty"` // what the reason is about
	Reason string `json:"reason,omitempty"` // why it was set aside

	Told *words.Told `json:"told,omitempty"` // the reason, for other languages; nil in lists of earlier versions
}

// KeepList keeps a list that came in; number, rows and fates are counted here. The rows are asked for several times,
// and never held all at once.
func (b *Bank) KeepList(list List, rows iter.Seq[ListRow]) error {
	switch {
	case list.Name == "" || len(list.Name) > longest || strings.ContainsRune(list.Name, 0):
		return words.Errorf("a list is kept by a name of 1 to %d bytes", longest)
	case strings.TrimSpace(list.By) == "":
		return words.Errorf("say who brings the list")
	}
	list.Rows, list.Fates = fatesOf(rows)
	return b.update(func(w store.Writer) error {
		before, err := b.readLists(w, listPrefix(list.Name))
		if err != nil {
			return err
		}
		list.Number = len(before) + 1
		entries, some := uint32(0), make([]ListRow, 0, rowsTogether)
		put := func() error {
			key := binary.BigEndian.AppendUint32(list.key(), entries)
			entries++
			defer func() { some = some[:0] }()
			return putSealed(w, listRowsBucket, key, some)
		}
		for row := range rows {
			if some = append(some, row); len(some) < rowsTogether {
				continue
			}
			if err := put(); err != nil {
				return err
			}
		}
		if len(some) > 0 {
			if err := put(); err != nil {
				return err
			}
		}
		return putSealed(w, listsBucket, list.key(), list)
	})
}

// TakeListBack notes that the lists of the name are out of use again.
func (b *Bank) TakeListBack(name, by string, at time.Time) error {
	return b.update(func(w store.Writer) error {
		lists, err := b.readLists(w, listPrefix(name))
		for _, list := range lists {
			if list.TakenBack == nil {
				list.TakenBack = &TakenBack{By: by, At: at}
				err = errors.Join(err, putSealed(w, listsBucket, list.key(), list))
			}
		}
		return err
	})
}

// Lists lists the lists that came in, the first one first.
func (b *Bank) Lists() (lists []List, err error) {
	err = b.view(func(r store.Reader) error {
		lists, err = b.readLists(r, nil)
		return err
	})
	slices.SortStableFunc(lists, func(a, b List) int { return a.At.Compare(b.At) })
	return lists, err
}

// ListRows are the rows of a list, in its order.
func (b *Bank) ListRows(list List) (rows []ListRow, err error) {
	err = b.view(func(r store.Reader) error {
		rows, err = b.readListRows(r, list)
		return err
	})
	return rows, err
}

func (b *Bank) readListRows(r store.Reader, list List) (rows []ListRow, err error) {
	for e, err := range r.Scan(listRowsBucket, store.Prefix(list.key())) {
		if err != nil {
			return nil, err
		}
		var some []ListRow
		if unsealJSON(e.Key, e.Value, &some) != nil {
			return nil, b.damaged("rows of the list %s can't be read", list.Name)
		}
		rows = append(rows, some...)
	}
	return rows, nil
}

func (b *Bank) readLists(r store.Reader, prefix []byte) (lists []List, err error) {
	for e, err := range r.Scan(listsBucket, store.Prefix(prefix)) {
		if err != nil {
			return nil, err
		}
		var list List
		if unsealJSON(e.Key, e.Value, &list) != nil {
			return nil, b.damaged("the list %q can't be read", e.Key)
		}
		lists = append(lists, list)
	}
	return lists, nil
}

// lists reads every list and counts its rows.
func (c *checker) lists() error {
	lists, err := c.bank.readLists(c, nil)
	for _, list := range lists {
		c.report.Lists++
		rows, wrong := c.bank.readListRows(c, list)
		switch {
		case errors.As(wrong, new(store.Damaged)):
			c.found("%v", wrong)
		case wrong != nil:
			return wrong
		}
		if n, fates := fatesOf(slices.Values(rows)); wrong == nil && (n != list.Rows || !maps.Equal(fates, list.Fates)) {
			c.found("the list %s has %d rows and should have %d, or their fates are others", list.Name, n, list.Rows)
		}
	}
	if errors.As(err, new(store.Damaged)) {
		c.found("%v", err)
		return nil
	}
	return err
}

// fatesOf counts rows, in all and by fate.
func fatesOf(rows iter.Seq[ListRow]) (n int, fates map[string]int) {
	fates = map[string]int{}
	for row := range rows {
		n++
		fates[row.Fate]++
	}
	return n, fates
}

func listPrefix(name string) []byte { return append([]byte(name), 0) }

func (l List) key() []byte {
	return binary.BigEndian.AppendUint32(listPrefix(l.Name), uint32(l.Number))
}
