package bank

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"evenhand/bank/files"
	"evenhand/bank/store"
	"evenhand/bank/store/bolt"
	"evenhand/bank/store/postgres"
	"evenhand/bank/store/remote"
)

// NameOf is what a bank is called where its whole address would be too much: the name
// of the file, the bank's name in the database, or the desk's name in the network.
func NameOf(address string) string {
	if InDatabase(address) {
		return postgres.BankOf(address)
	}
	if AtDesk(address) {
		return remote.NameOf(address)
	}
	return filepath.Base(address)
}

// Copy copies what is kept at one address, a bank or its marks, to another at which
// nothing is yet, as it stands at one moment. It appears there whole or not at all, and is
// proved equal; the number of its entries is returned.
func Copy(from, to string, o Options) (entries int, err error) {
	if AtDesk(to) {
		return 0, fmt.Errorf("%s has its bank already; copy to a file or a database", to)
	}
	s, err := OpenStore(from, o)
	if err != nil {
		return 0, err
	}
	ctx := o.context()
	err = s.View(ctx, func(r store.Reader) error {
		if InDatabase(to) {
			entries, err = copyToDatabase(ctx, r, to, o)
		} else {
			entries, err = copyToFile(ctx, r, to)
		}
		return err
	})
	if errors.Is(err, fs.ErrExist) {
		err = fmt.Errorf("%s is there already; choose another name for the copy", to)
	}
	return entries, errors.Join(err, s.Close())
}

// GoBack makes what is kept in a database, a bank or its marks, what a file of it holds, all but the buckets to keep
// if anything stands in one. What stood there is kept in a new file first, if there was anything. Both is one Update,
// which writers of all programs wait for: what they write is in the new file, or comes after.
func GoBack(address, from, before string, o Options, keep ...string) (kept bool, err error) {
	s, err := OpenStore(address, o)
	if errors.Is(err, fs.ErrNotExist) {
		_, err = Copy(from, address, o)
		return false, err
	}
	if err != nil {
		return false, err
	}
	file, err := bolt.Open(from, store.Options{ReadOnly: true})
	if err != nil {
		return false, errors.Join(err, s.Close())
	}
	ctx := o.context()
	err = file.View(ctx, func(r store.Reader) error {
		return s.Update(ctx, func(w store.Writer) error {
			if kept { // by a try whose connection was lost
				if err := os.Remove(before); err != nil {
					return err
				}
			}
			_, err := copyToFile(ctx, w, before)
			if kept = err == nil; !kept {
				return err
			}
			keep, err := store.Filled(w, keep)
			if err != nil {
				return err
			}
			return store.Replace(w, r, keep...)
		})
	})
	return kept, errors.Join(err, file.Close(), s.Close())
}

func copyToFile(ctx context.Context, r store.Reader, path string) (entries int, err error) {
	temp := files.TempName(path)
	if err := bolt.Create(temp, func(store.Writer) error { return nil }); err != nil {
		return 0, err
	}
	defer os.Remove(temp) // nothing is there any more when all went well
	file, err := bolt.Open(temp, store.Options{})
	if err != nil {
		return 0, err
	}
	err = store.Copy(r, func(write func(store.Writer) error) error { return file.Update(ctx, write) })
	if err == nil {
		entries, err = proveEqual(ctx, r, file)
	}
	if err := errors.Join(err, file.Close()); err != nil {
		return 0, err
	}
	return entries, files.Place(temp, path)
}

func copyToDatabase(ctx context.Context, r store.Reader, to string, o Options) (entries int, err error) {
	o.ReadOnly = false
	err = NewStore(to, o, func(w store.Writer) error {
		return store.Copy(r, func(write func(store.Writer) error) error { return write(w) })
	})
	if err != nil {
		return 0, err
	}
	s, err := OpenStore(to, o)
	if err != nil {
		return 0, err
	}
	entries, err = proveEqual(ctx, r, s)
	return entries, errors.Join(err, s.Close())
}

func proveEqual(ctx context.Context, r store.Reader, s store.Store) (entries int, err error) {
	err = s.View(ctx, func(other store.Reader) error {
		entries, err = store.Equal(r, other)
		return err
	})
	if err != nil {
		err = fmt.Errorf("the copy is not equal: %w", err)
	}
	return entries, err
}
