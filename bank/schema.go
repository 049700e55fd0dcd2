package bank

import (
	"fmt"
	"strconv"

	"go.etcd.io/bbolt"
)

// schema is the number of the file's format. It grows when an older program
// could no longer read or rightly change the file.
const schema = 1

const kindOfFile = "evenhand item bank"

var (
	whatKey   = []byte("what")
	schemaKey = []byte("schema")
)

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
	if err := about.Put(schemaKey, strconv.AppendInt(nil, schema, 10)); err != nil {
		return err
	}
	return about.Put(whatKey, []byte(kindOfFile))
}

// recognise says what is wrong when the store is no bank that this program reads.
func recognise(path string, tx *bbolt.Tx) error {
	about := tx.Bucket(aboutBucket)
	if about == nil || string(about.Get(whatKey)) != kindOfFile {
		return fmt.Errorf("%s was not made by evenhand: it holds no item bank; name another file with --bank", path)
	}
	written, err := strconv.Atoi(string(about.Get(schemaKey)))
	if err != nil {
		return damaged(path, "the number of its format can't be read")
	}
	if written > schema {
		return fmt.Errorf("%s was written by a newer evenhand (bank format %d, this one reads up to %d); use that evenhand, or bring this one up to date", path, written, schema)
	}
	for _, name := range dataBuckets {
		if tx.Bucket(name) == nil {
			return damaged(path, fmt.Sprintf("its part %q is missing", name))
		}
	}
	return nil
}
