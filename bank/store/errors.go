package store

import "evenhand/standards/words"

// ErrUnsure says that a connection was lost while an Update was being committed, and
// that nobody could be asked any more whether it was: all of it may be there, or nothing.
var ErrUnsure = words.Errorf("it is not known whether this was kept; look before doing it again")

// ErrLost says that a connection was lost in the middle of something that can be done again.
var ErrLost = words.Errorf("the connection was lost in the middle; try again")

// ErrInUse says that another program has the store open.
var ErrInUse = words.Errorf("in use by another evenhand command or window")

// Damaged is a store that can't be trusted any more, and what to do.
type Damaged struct {
	Name string
	What *words.Told
}

func (d Damaged) Error() string { return d.Told().String() }

// Told is the sentence that it tells.
func (d Damaged) Told() *words.Told {
	return words.Sayf("%s is damaged (%s); put a backup in its place with evenhand restore BACKUP", d.Name, d.What)
}

// LostChange is the problem that Inspect tells when one of a file's two beginnings, which are
// written in turn, can't be read: then the state before the last change stands, and the next
// change mends the beginning.
var LostChange = words.Sayf("one of the file's two beginnings can't be read, and the last change may be lost")
