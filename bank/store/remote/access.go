package remote

import (
	"errors"
	"net/http"
	"strings"

	"evenhand/bank/store"
)

// Access is what one client may do, and where.
type Access struct {
	Who  string // tells clients apart
	Part string // which store it is: the bank or its marks

	// Open opens the store to read or to write; done is called when it isn't needed any more. If
	// there is none the error is fs.ErrNotExist.
	Open func(write bool) (s store.Store, done func(), err error)

	// Create makes the store, where it isn't there; nil where clients make none.
	Create func(layOut func(store.Writer) error) error

	// Prove says what is wrong with a change before it is kept; nil where nothing has to be
	// proved. The change is not written yet.
	Prove func(now store.Reader, change store.Change) error

	// Written is told of every change that was kept; nil means nobody.
	Written func(change store.Change)
}

// change is what a write does, in order.
func (w write) change() store.Change {
	c := store.Change{Put: map[string][]store.Entry{}, Delete: map[string][]store.Entry{}}
	for _, some := range w.Put {
		for _, e := range some.Entries {
			c.Put[some.Bucket] = append(c.Put[some.Bucket], store.Entry(e))
		}
	}
	for _, some := range w.Delete {
		for _, e := range some.Entries {
			c.Delete[some.Bucket] = append(c.Delete[some.Bucket], store.Entry{Key: e.Key})
		}
	}
	for _, n := range w.Next {
		c.Next = append(c.Next, n.Bucket)
	}
	c.Sort()
	return c
}

// ours is how the names of buckets begin that are the desk's own: no client sees or writes them.
const ours = "desk "

func hidden(bucket string) bool { return strings.HasPrefix(bucket, ours) }

// Refused is why the server did not do what it was asked, with a status of HTTP.
type Refused struct {
	Status int
	What   string
}

func (r *Refused) Error() string { return r.What }

// refused is nil for an error that is no refusal.
func refused(err error) *Refused {
	var r *Refused
	errors.As(err, &r)
	return r
}

var (
	errHidden = &Refused{http.StatusForbidden, "this part of the store belongs to the desk itself"}
	errStale  = &Refused{http.StatusConflict, "somebody has changed what this builds on; read it anew"}
	errGone   = &Refused{http.StatusGone, "this moment is over; begin another"}
	errMany   = &Refused{http.StatusServiceUnavailable, "too many programs are reading at once; wait a moment"}
	errBroken = &Refused{http.StatusBadRequest, "the request can't be read; /api/openapi.json says what it should hold"}
	errNone   = &Refused{http.StatusNotFound, "there is nothing here yet"}
	errThere  = &Refused{http.StatusConflict, "it is there already"}
)
