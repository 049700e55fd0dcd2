package bank

import (
	"fmt"
	"strconv"
	"strings"

	"go.etcd.io/bbolt"

	"evenhand/standards/task"
)

// schema is the number of the file's format. It grows when an older program
// could no longer read or rightly change the file.
const schema = 1

const kindOfFile = "evenhand item bank"

var (
	whatKey   = []byte("what")
	schemaKey = []byte("schema")
	traitsKey = []byte("traits")
)

// traitNames is the traits that this program knows. An item's traits are kept by
// their place in this list; a later program may have more of them at its end.
func traitNames() string {
	var names []string
	for _, trait := range task.AllTraits() {
		names = append(names, trait.String())
	}
	return strings.Join(names, " ")
}

// layOut makes the buckets of a new bank.
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
	if err := about.Put(traitsKey, []byte(traitNames())); err != nil {
		return err
	}
	if err := about.Put(schemaKey, strconv.AppendInt(nil, schema, 10)); err != nil {
		return err
	}
	return about.Put(whatKey, []byte(kindOfFile))
}

// adopt notes the traits that this program adds to the list, so that an older one
// leaves the bank alone.
func adopt(file *File) error {
	same := false
	err := file.View(func(tx *bbolt.Tx) error {
		same = string(tx.Bucket(aboutBucket).Get(traitsKey)) == traitNames()
		return nil
	})
	if err != nil || same {
		return err
	}
	return file.Update(func(tx *bbolt.Tx) error {
		return tx.Bucket(aboutBucket).Put(traitsKey, []byte(traitNames()))
	})
}

// recognise says what is wrong when the store is no bank that this program reads.
func recognise(path string, tx *bbolt.Tx) error {
	about := tx.Bucket(aboutBucket)
	if about == nil || string(about.Get(whatKey)) != kindOfFile {
		return fmt.Errorf("%s holds no item bank; name another file with --bank", path)
	}
	written, err := strconv.Atoi(string(about.Get(schemaKey)))
	if err != nil || written < 1 {
		return damaged(path, "the number of its format can't be read")
	}
	if written > schema {
		return fmt.Errorf("%s was written by a newer evenhand (bank format %d, this one reads up to %d); use that evenhand, or bring this one up to date", path, written, schema)
	}
	if !strings.HasPrefix(traitNames()+" ", string(about.Get(traitsKey))+" ") {
		return fmt.Errorf("%s was written by an evenhand that knows other traits; use that evenhand, or export there and import here", path)
	}
	for _, name := range dataBuckets {
		if tx.Bucket(name) == nil {
			return damaged(path, fmt.Sprintf("its part %q is missing", name))
		}
	}
	return nil
}
