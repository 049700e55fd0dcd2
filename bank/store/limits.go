package store

import (
	"errors"
	"fmt"
)

// The sizes that every maker can keep, in bytes. PostgreSQL sets the first: an entry
// of its index takes at most a third of a page of 8,192 bytes
// (https://www.postgresql.org/docs/15/btree-limits.html).
const (
	MaxKey   = 2048
	MaxValue = 64 << 20
)

// CheckEntry says what is wrong with an entry that is to be kept; every maker asks it.
func CheckEntry(bucket string, key, value []byte) error {
	switch {
	case bucket == "":
		return errors.New("a bucket of a store needs a name")
	case len(key) == 0:
		return fmt.Errorf("an entry for %q has an empty key", bucket)
	case len(key) > MaxKey:
		return fmt.Errorf("a key for %q is %d bytes long; at most %d can be kept", bucket, len(key), MaxKey)
	case len(value) > MaxValue:
		return fmt.Errorf("a value for %q is %d bytes long; at most %d can be kept", bucket, len(value), MaxValue)
	}
	return nil
}
