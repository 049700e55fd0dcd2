package bank

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"evenhand/bank/store"
	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
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
func layOut(w store.Writer) error {
	for _, name := range dataBuckets {
		if err := w.Make(name); err != nil {
			return err
		}
	}
	return cmp.Or(
		w.Put(aboutBucket, traitsKey, []byte(traitNames())),
		putCatalogue(w, standards.CatalogueNumber),
		w.Put(aboutBucket, schemaKey, strconv.AppendInt(nil, schema, 10)),
		w.Put(aboutBucket, whatKey, []byte(kindOfFile)),
	)
}

// adopt notes the traits that this program adds to the list, so that an older one
// leaves the bank alone.
func (b *Bank) adopt() error {
	same := false
	err := b.view(func(r store.Reader) error {
		names, err := r.Get(aboutBucket, traitsKey)
		same = string(names) == traitNames()
		return err
	})
	if err != nil || same {
		return err
	}
	return b.update(func(w store.Writer) error { return w.Put(aboutBucket, traitsKey, []byte(traitNames())) })
}

// recognise says what is wrong when the store is no bank that this program reads.
func recognise(address string, r store.Reader) error {
	about, err := r.GetAll(aboutBucket, [][]byte{schemaKey, traitsKey, whatKey})
	if err != nil {
		return err
	}
	if string(about[2]) != kindOfFile {
		return words.Errorf("%s holds no item bank; name another file with --bank", address)
	}
	written, err := strconv.Atoi(string(about[0]))
	if err != nil || written < 1 {
		return store.Damaged{Name: address, What: words.Sayf("the number of its format can't be read")}
	}
	if written > schema {
		return words.Errorf("%s was written by a newer evenhand (bank format %d, this one reads up to %d); "+
			"use that evenhand, or bring this one up to date", address, written, schema)
	}
	if !strings.HasPrefix(traitNames()+" ", string(about[1])+" ") {
		return words.Errorf("%s was written by an evenhand that knows other traits; use that evenhand, or export there and import here", address)
	}
	names, err := r.Buckets()
	if err != nil {
		return err
	}
	for _, name := range dataBuckets {
		if !slices.Contains(names, name) {
			return store.Damaged{Name: address, What: words.Sayf("its part %q is missing", name)}
		}
	}
	return nil
}
