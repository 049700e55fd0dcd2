package results

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"strconv"

	"go.etcd.io/bbolt"

	"evenhand/bank"
)

// Store is an open file of results. Close it soon: while it is open, other
// programs wait.
type Store struct {
	file *bank.File
}

// The buckets of the file; see the package comment.
var (
	aboutBucket   = []byte("about")
	classesBucket = []byte("classes")
	quizzesBucket = []byte("quizzes")
	papersBucket  = []byte("papers")
	earlierBucket = []byte("earlier")

	dataBuckets = [][]byte{classesBucket, quizzesBucket, papersBucket, earlierBucket}
)

// schema is the number of the file's format.
const schema = 1

const kindOfFile = "evenhand results"

// ErrNone says that there are no results yet.
var ErrNone = errors.New("no papers have been marked yet; evenhand mark QUIZ --out marks.csv makes a grid to fill in")

// Path is where the results of a bank stand.
func Path(bankPath string) string { return bankPath + ".marks" }

// Open opens the file of results. One that is missing is made, readable by its
// owner only; to read, its missing is ErrNone. A file that is in use, damaged or of
// another kind gives an error that says so in one sentence.
func Open(path string, o bank.Options) (*Store, error) {
	_, err := os.Stat(path)
	missing := errors.Is(err, os.ErrNotExist)
	if missing && o.ReadOnly {
		return nil, ErrNone
	}
	file, err := bank.OpenFile(path, o, missing)
	if err != nil {
		return nil, err
	}
	if missing {
		if err := file.Update(layOut); err != nil {
			return nil, errors.Join(err, file.Close(), os.Remove(path))
		}
	}
	if err := file.View(func(tx *bbolt.Tx) error { return recognise(path, tx) }); err != nil {
		return nil, errors.Join(err, file.Close())
	}
	return &Store{file}, nil
}

// Close lets other programs use the file.
func (s *Store) Close() error { return s.file.Close() }

func layOut(tx *bbolt.Tx) error {
	about, err := tx.CreateBucket(aboutBucket)
	if err != nil {
		return err
	}
	for _, name := range dataBuckets {
		if _, err := tx.CreateBucket(name); err != nil {
			return err
		}
	}
	if err := about.Put([]byte("schema"), strconv.AppendInt(nil, schema, 10)); err != nil {
		return err
	}
	return about.Put([]byte("what"), []byte(kindOfFile))
}

// recognise says what is wrong when the file holds no results that this program reads.
func recognise(path string, tx *bbolt.Tx) error {
	about := tx.Bucket(aboutBucket)
	if about == nil || string(about.Get([]byte("what"))) != kindOfFile {
		return fmt.Errorf("%s holds no results; move it away, and a new file is made", path)
	}
	written, err := strconv.Atoi(string(about.Get([]byte("schema"))))
	if err != nil || written > schema {
		return fmt.Errorf("%s was written by a newer evenhand (format %q, this one reads up to %d); use that evenhand, or bring this one up to date", path, about.Get([]byte("schema")), schema)
	}
	for _, name := range dataBuckets {
		if tx.Bucket(name) == nil {
			return fmt.Errorf("%s is damaged (its part %q is missing); put a copy in its place", path, name)
		}
	}
	return nil
}

// put writes a value as JSON.
func put(tx *bbolt.Tx, bucket, key []byte, value any) error {
	text, err := json.Marshal(value)
	if err != nil {
		return err
	}
	return tx.Bucket(bucket).Put(key, text)
}

// get reads a value; ok is false when there is none.
func get(tx *bbolt.Tx, bucket, key []byte, value any) (ok bool, err error) {
	text := tx.Bucket(bucket).Get(key)
	if text == nil {
		return false, nil
	}
	return true, decode(text, value)
}

// decode reads a record.
func decode(text []byte, value any) error {
	if err := json.Unmarshal(text, value); err != nil {
		return fmt.Errorf("the results are damaged: a record can't be read (%w); put a copy of the file in its place", err)
	}
	return nil
}

// key is names one after the other, each ended by a zero byte.
func key(names ...string) []byte {
	var k []byte
	for _, name := range names {
		k = append(append(k, name...), 0)
	}
	return k
}
