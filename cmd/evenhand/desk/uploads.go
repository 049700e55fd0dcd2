package desk

import (
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"slices"
	"strings"
	"time"
	"unicode"

	"evenhand/bank/store"
	intake "evenhand/import"
	"evenhand/standards"
	"evenhand/standards/words"
)

// Lists on their way into the bank stand in the store, so that closing the window loses nothing: what
// was said of each under its ID, and its file under the file's SHA-256, as the sheets of a workbook
// share one.
const (
	uploadBucket     = "desk lists"
	uploadFileBucket = "desk list files"
)

// The bounds of lists: bytes of one, and how many may be on their way at once.
const (
	largestUpload = 16 << 20
	mostUploads   = 40
)

// upload is a list on its way, with all that was said of it.
type upload struct {
	ID       string                    `json:"ID"`
	Name     string                    `json:"Name"`  // of the file, and with its sheet where the file has several lists
	File     string                    `json:"File"`  // SHA-256 of its bytes
	Sheet    string                    `json:"Sheet"` // of a workbook; empty for a text
	By       string                    `json:"By"`
	At       time.Time                 `json:"At"`
	Left     []*words.Told             `json:"Left"`     // what was not read of the file, and why
	Unread   []string                  `json:"Unread"`   // sheets of its workbook that were not read
	Revise   bool                      `json:"Revise"`   // rows of the bank's own export that differ become revisions
	Columns  map[int]string            `json:"Columns"`  // by their number, where they were understood wrongly
	Encoding string                    `json:"Encoding"` // where it was found wrongly
	LeaveOut intake.LeaveOut           `json:"LeaveOut"` // what to ask for in whole sentences
	Skill    standards.SkillID         `json:"Skill"`    // of questions that name none
	Mends    map[string]map[int]string `json:"Mends"`    // cells mended, by row and column
	Accepted *acceptance               `json:"Accepted"` // nil before it came in
	Done     bool                      `json:"Done"`     // it came in, nothing is left to mend, and its file is gone
}

// acceptance says how a list came in.
type acceptance struct {
	By    string    `json:"By"`
	At    time.Time `json:"At"`
	Added int       `json:"Added"`
	Here  int       `json:"Here"`
}

var (
	errNoUpload = errors.New("no list of this name is on its way")
	errUploads  = errors.New("too many lists are on their way")
)

// uploads keeps lists on their way in a store.
type uploads struct{ store store.Store }

// add keeps the lists of a file.
func (u uploads) add(ctx context.Context, data []byte, list []upload) error {
	return u.store.Update(ctx, func(w store.Writer) error {
		waiting, err := readUploads(w)
		if err != nil {
			return err
		}
		open := slices.DeleteFunc(slices.Clone(waiting), func(one upload) bool { return one.Done })
		if len(open)+len(list) > mostUploads {
			return errUploads
		}
		for _, one := range list {
			if err := putUpload(w, one); err != nil {
				return err
			}
		}
		return w.Put(uploadFileBucket, []byte(list[0].File), data)
	})
}

// all lists what is on its way, the newest first.
func (u uploads) all(ctx context.Context) (list []upload, err error) {
	err = u.store.View(ctx, func(r store.Reader) error {
		list, err = readUploads(r)
		return err
	})
	slices.SortStableFunc(list, func(a, b upload) int { return b.At.Compare(a.At) })
	return list, err
}

// find reads a list with the bytes of its file.
func (u uploads) find(ctx context.Context, id string) (one upload, data []byte, err error) {
	err = u.store.View(ctx, func(r store.Reader) error {
		if one, err = readUpload(r, id); err != nil {
			return err
		}
		value, err := r.Get(uploadFileBucket, []byte(one.File))
		data = slices.Clone(value)
		return err
	})
	return one, data, err
}

// change rewrites what was said of a list.
func (u uploads) change(ctx context.Context, id string, change func(*upload)) error {
	return u.store.Update(ctx, func(w store.Writer) error {
		one, err := readUpload(w, id)
		if err != nil {
			return err
		}
		change(&one)
		return putUpload(w, one)
	})
}

// drop takes a list away, and its file with the last list of it.
func (u uploads) drop(ctx context.Context, id string) error {
	return u.store.Update(ctx, func(w store.Writer) error {
		one, err := readUpload(w, id)
		if err != nil {
			return err
		}
		if err := w.Delete(uploadBucket, []byte(id)); err != nil {
			return err
		}
		return dropFile(w, one.File)
	})
}

// dropFile takes a file away that no list on its way needs any more.
func dropFile(w store.Writer, sum string) error {
	rest, err := readUploads(w)
	if err != nil || slices.ContainsFunc(rest, func(other upload) bool { return other.File == sum && !other.Done }) {
		return err
	}
	return w.Delete(uploadFileBucket, []byte(sum))
}

// accept notes that a list came in; one with nothing left to mend is done.
func (u uploads) accept(ctx context.Context, id string, how acceptance, done bool) error {
	return u.store.Update(ctx, func(w store.Writer) error {
		one, err := readUpload(w, id)
		if err != nil {
			return err
		}
		if one.Accepted != nil { // more of it came in: what came before is here now
			how.Added += one.Accepted.Added
			how.Here -= one.Accepted.Added
		}
		one.Accepted, one.Done = &how, done
		if err := putUpload(w, one); err != nil || !done {
			return err
		}
		return dropFile(w, one.File)
	})
}

func readUpload(r store.Reader, id string) (one upload, err error) {
	if id == "" || len(id) > 100 {
		return one, errNoUpload
	}
	value, err := r.Get(uploadBucket, []byte(id))
	if err != nil {
		return one, err
	}
	if value == nil {
		return one, errNoUpload
	}
	return one, json.Unmarshal(value, &one)
}

func readUploads(r store.Reader) (list []upload, err error) {
	for entry, err := range r.Scan(uploadBucket, store.Range{}) {
		if err != nil {
			return nil, err
		}
		var one upload
		if err := json.Unmarshal(entry.Value, &one); err != nil {
			return nil, err
		}
		list = append(list, one)
	}
	return list, nil
}

func putUpload(w store.Writer, one upload) error {
	value, err := json.Marshal(one)
	if err != nil {
		return err
	}
	return w.Put(uploadBucket, []byte(one.ID), value)
}

// newUploads opens a file and gives an upload of each list in it, by the person who brings it.
func newUploads(name string, data []byte, by string, at time.Time) ([]upload, error) {
	sum := sha256.Sum256(data)
	made := func(name, sheet string, left []*words.Told) upload {
		return upload{
			ID: secret(), Name: name, File: hex.EncodeToString(sum[:]), Sheet: sheet, By: by, At: at, Left: left,
			Columns: map[int]string{}, Mends: map[string]map[int]string{},
		}
	}
	book, err := intake.OpenBook(name, data, intake.Options{})
	if errors.As(err, new(*intake.NoQuestionsError)) {
		return []upload{made(name, "", nil)}, nil // a person can say which they are
	}
	if err != nil {
		return nil, err
	}
	var list []upload
	for i, l := range book.Lists {
		sheet, left := "", []*words.Told(nil)
		if l.Encoding == "xlsx" {
			sheet = l.Delimiter
		}
		if i == 0 {
			left = book.Left
		}
		list = append(list, made(l.Name, sheet, left))
		if i == 0 {
			list[0].Unread = book.Unread
		}
	}
	return list, nil
}

// fileName is a file's name as a browser sends it, made one that can stand in a history.
func fileName(sent string) string {
	name := sent[strings.LastIndexAny(sent, `/\`)+1:]
	name = strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) {
			return -1
		}
		return r
	}, name)
	if letters := []rune(name); len(letters) > 100 {
		name = string(letters[len(letters)-100:])
	}
	return cmp.Or(strings.TrimSpace(name), "list.csv")
}
