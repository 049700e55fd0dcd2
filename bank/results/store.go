package results

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strconv"

	"evenhand/bank"
	"evenhand/bank/files"
	"evenhand/bank/store"
	"evenhand/bank/store/postgres"
	"evenhand/bank/store/remote"
	"evenhand/standards/words"
)

// Store is an open file of results. Close it soon: while it is open, other
// programs wait.
type Store struct {
	store store.Store
	ctx   context.Context
}

// The buckets of the file; see the package comment.
const (
	aboutBucket   = "about"
	classesBucket = "classes"
	quizzesBucket = "quizzes"
	papersBucket  = "papers"
	earlierBucket = "earlier"
)

var dataBuckets = []string{classesBucket, quizzesBucket, papersBucket, earlierBucket}

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
// Of a bank in a database they stand in a schema of their own; a desk has them beside its bank.
func Path(bankPath string) string {
	switch {
	case bank.InDatabase(bankPath):
		return postgres.MarksOf(bankPath)
	case bank.AtDesk(bankPath):
		return remote.MarksOf(bankPath)
	}
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
	at, err := bank.OpenStore(path, o)
	if errors.Is(err, fs.ErrNotExist) {
		if about := AboutOrphans(path); o.ReadOnly && about != "" {
			return nil, fmt.Errorf("%w; %s", ErrNone, about)
		}
		if o.ReadOnly {
			return nil, ErrNone
		}
		if err := bank.NewStore(path, o, layOut); err != nil && !errors.Is(err, fs.ErrExist) {
			return nil, err
		}
		at, err = bank.OpenStore(path, o)
	}
	if err != nil {
		return nil, err
	}
	s := &Store{at, cmp.Or(o.Context, context.Background())}
	if err = s.view(func(r store.Reader) error { return recognise(path, r) }); err == nil && !o.ReadOnly {
		err = s.adopt()
	}
	if err == nil {
		err = s.hangsTogether()
	}
	if err == nil {
		err = s.view(prove)
	}
	if err != nil {
		return nil, errors.Join(err, at.Close())
	}
	return s, nil
}

// hangsTogether says whether the pages of the file do, so that no paper is overlooked. That
// the last change may be lost is for Check to say: what stands is whole.
func (s *Store) hangsTogether() error {
	problems, err := s.store.Inspect(s.ctx)
	if err == nil && slices.ContainsFunc(problems, func(problem *words.Told) bool { return problem.String() != store.LostChange.String() }) {
		err = s.named(damaged("its pages don't hang together"))
	}
	return err
}

// Close lets other programs use the file.
func (s *Store) Close() error { return s.store.Close() }

// Path is the file's name as it was opened.
func (s *Store) Path() string { return s.store.Name() }

// BackupFile writes a copy to a file, as bank.BackupFile does.
func (s *Store) BackupFile(path string) (size int64, err error) {
	return bank.BackupStore(s.ctx, s.store, path, ProveFile)
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
func (s *Store) view(read func(store.Reader) error) error {
	return s.named(s.store.View(s.ctx, read))
}

func (s *Store) update(write func(store.Writer) error) error {
	return s.named(s.store.Update(s.ctx, write))
}

func (s *Store) named(err error) error {
	if found := (damage{}); errors.As(err, &found) {
		return store.Damaged{Name: s.Path(), What: found.Told}
	}
	return err
}

func layOut(w store.Writer) error {
	for _, name := range dataBuckets {
		if err := w.Make(name); err != nil {
			return err
		}
	}
	return cmp.Or(
		w.Put(aboutBucket, whatKey, []byte(kindOfFile)),
		w.Put(aboutBucket, schemaKey, strconv.AppendInt(nil, schema, 10)),
		account{}.put(w),
	)
}

// recognise says what is wrong when the file holds no results that this program reads.
func recognise(path string, r store.Reader) error {
	about, err := r.GetAll(aboutBucket, [][]byte{schemaKey, whatKey})
	if err != nil {
		return err
	}
	if string(about[1]) != kindOfFile {
		return words.Errorf("%s holds no results; move it away, and a new file is made", path)
	}
	written, err := strconv.Atoi(string(about[0]))
	if err != nil || written < 1 {
		return damaged("the number of its format can't be read")
	}
	if written > schema {
		return words.Errorf("%s was written by a newer evenhand (format %d, this one reads up to %d); use that "+
			"evenhand, or bring this one up to date", path, written, schema)
	}
	names, err := r.Buckets()
	if err != nil {
		return err
	}
	for _, name := range dataBuckets {
		if !slices.Contains(names, name) {
			return damaged("its part %q is missing", name)
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
