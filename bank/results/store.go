package results

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strconv"

	"go.etcd.io/bbolt"

	"evenhand/bank"
	"evenhand/bank/files"
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

// schema is the number of the file's format. In format 1 records had no seal and were not
// counted; see sealed.go.
const schema = 2

const kindOfFile = "evenhand results"

var (
	whatKey   = []byte("what")
	schemaKey = []byte("schema")
)

// ErrNone says that there are no results yet.
var ErrNone = errors.New("no papers have been marked yet; evenhand mark QUIZ --out marks.csv makes a grid to fill in")

// ending makes a bank's name that of its results.
const ending = ".marks"

// Path is where the results of a bank stand: beside the bank itself, also when it was
// opened through a link. Results that an earlier program put beside the link are found, too.
func Path(bankPath string) string {
	path, beside := files.Real(bankPath)+ending, bankPath+ending
	if missing(path) && !missing(beside) {
		return beside
	}
	return shorter(beside, path)
}

// shorter is the name as it was typed, where that is the same.
func shorter(typed, real string) string {
	if files.Real(typed) == real {
		return typed
	}
	return real
}

func missing(path string) bool {
	_, err := os.Stat(path)
	return errors.Is(err, fs.ErrNotExist)
}

// Open opens the file of results. One that is missing is made, readable by its
// owner only; to read, its missing is ErrNone. A file that is in use, damaged or of
// another kind gives an error that says so in one sentence: every record is proved
// to be as it was written, and none to be lost. A file of an earlier format is brought
// along when it is opened to write.
func Open(path string, o bank.Options) (*Store, error) {
	if missing(path) {
		if o.ReadOnly {
			return nil, ErrNone
		}
		if err := bank.NewFile(path, layOut); err != nil && !errors.Is(err, fs.ErrExist) {
			return nil, err
		}
	}
	file, err := bank.OpenFile(path, o)
	if err != nil {
		return nil, err
	}
	s := &Store{file}
	if err = s.view(func(tx *bbolt.Tx) error { return recognise(path, tx) }); err == nil && !o.ReadOnly {
		err = s.adopt()
	}
	if err == nil {
		err = s.view(prove)
	}
	if err != nil {
		return nil, errors.Join(err, file.Close())
	}
	return s, nil
}

// Close lets other programs use the file.
func (s *Store) Close() error { return s.file.Close() }

// Path is the file's name as it was opened.
func (s *Store) Path() string { return s.file.Path() }

// BackupFile writes a copy to a file, as bank.BackupFile does.
func (s *Store) BackupFile(path string) (size int64, err error) {
	return s.file.BackupFile(path, ProveFile)
}

// ProveFile says what is damaged in a file of results.
func ProveFile(path string) error {
	s, err := Open(path, bank.Options{ReadOnly: true})
	if err != nil {
		return err
	}
	_, err = s.Check()
	return errors.Join(err, s.Close())
}

// view reads, and update writes; damage that they meet is told with the file's name.
func (s *Store) view(read func(*bbolt.Tx) error) error {
	return s.named(s.file.View(read))
}

func (s *Store) update(write func(*bbolt.Tx) error) error {
	return s.named(s.file.Update(write))
}

func (s *Store) named(err error) error {
	if found := damage(""); errors.As(err, &found) {
		return bank.Damaged{Path: s.file.Path(), What: string(found)}
	}
	return err
}

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
	if err := about.Put(whatKey, []byte(kindOfFile)); err != nil {
		return err
	}
	if err := about.Put(schemaKey, strconv.AppendInt(nil, schema, 10)); err != nil {
		return err
	}
	return account{}.put(tx)
}

// recognise says what is wrong when the file holds no results that this program reads.
func recognise(path string, tx *bbolt.Tx) error {
	about := tx.Bucket(aboutBucket)
	if about == nil || string(about.Get(whatKey)) != kindOfFile {
		return fmt.Errorf("%s holds no results; move it away, and a new file is made", path)
	}
	written, err := strconv.Atoi(string(about.Get(schemaKey)))
	if err != nil || written < 1 {
		return damage("the number of its format can't be read")
	}
	if written > schema {
		return fmt.Errorf("%s was written by a newer evenhand (format %d, this one reads up to %d); use that evenhand, or bring this one up to date", path, written, schema)
	}
	for _, name := range dataBuckets {
		if tx.Bucket(name) == nil {
			return damage(fmt.Sprintf("its part %q is missing", name))
		}
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
