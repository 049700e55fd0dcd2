package bolt

import (
	"context"
	"errors"
	"os"

	"go.etcd.io/bbolt"

	"evenhand/bank/store"
	"evenhand/standards/words"
)

// Inspect walks over all pages of the file and, if they can be trusted so far, lets
// bbolt look at them, too.
func (f *File) Inspect(ctx context.Context) (problems []*words.Told, err error) {
	err = f.undisturbed(ctx, func(tx *bbolt.Tx) error {
		if err := structure(f.path); err != nil {
			problems = append(problems, words.Sayf("the file's structure: %v", err))
			return nil
		}
		if lost, err := lostChange(f.path); err != nil {
			return err
		} else if lost {
			problems = append(problems, store.LostChange)
		}
		for problem := range tx.Check() {
			problems = append(problems, words.Sayf("the file's structure: %v", problem))
		}
		return nil
	})
	return problems, err
}

// lostChange says that only one of the file's beginnings can be read.
func lostChange(path string) (bool, error) {
	file, err := os.Open(path)
	if err != nil {
		return false, err
	}
	defer file.Close()
	return len(metas(file)) < 2, nil
}

// undisturbed reads while nobody writes, as bbolt's check demands.
func (f *File) undisturbed(ctx context.Context, read func(*bbolt.Tx) error) error {
	if f.db.IsReadOnly() { // then no other program can write
		return guard(f.path, func() error { return f.db.View(read) })
	}
	done := errors.New("done, nothing is to be written")
	err := f.update(ctx, func(tx *bbolt.Tx) error {
		if err := read(tx); err != nil {
			return err
		}
		return done
	})
	if errors.Is(err, done) {
		return nil
	}
	return err
}
