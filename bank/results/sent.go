package results

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"time"

	"evenhand/bank"
	"evenhand/bank/store"
)

// What a colleague's program sends through a desk is proved before it is kept, as of a bank (bank.ProveChange).

var errRewrites = errors.New("markings are not rewritten or taken away through a desk; an owner may, with evenhand forget")

// ProveChange says what is wrong with a change of the results that a person's program sends, as they stand
// in r: no marking is lost, no pupil leaves a class, papers are marked by the person, and the account of
// all records is right.
func ProveChange(r store.Reader, change store.Change, by string, now time.Time) error {
	if len(change.Delete) > 0 || len(change.Next) > 0 {
		return errRewrites
	}
	if sealed, err := isSealed(r); err != nil || !sealed {
		return errors.Join(err, errors.New("these marks are of an older evenhand; open them once where they stand"))
	}
	all, err := readAccount(r)
	if err != nil {
		return err
	}
	for bucket, entries := range change.Put {
		if bucket == aboutBucket {
			continue
		}
		if !slices.Contains(dataBuckets, bucket) {
			return fmt.Errorf("marks have no part %q", bucket)
		}
		for _, e := range entries {
			old, err := r.Get(bucket, e.Key)
			if err != nil {
				return err
			}
			text, ok := bank.Unseal(sealKey(bucket, e.Key), e.Value)
			if !ok {
				return unreadable(bucket, e.Key)
			}
			if old != nil {
				all.take(old, -1)
			}
			all.take(e.Value, 1)
			if err := proveRecord(r, change, bucket, e.Key, old, text, by, now); err != nil {
				return err
			}
		}
	}
	return proveAccount(change, all)
}

// proveAccount says that the account is put as the records make it, and nothing else of its part.
func proveAccount(change store.Change, want account) error {
	for _, e := range change.Put[aboutBucket] {
		if string(e.Key) != string(accountKey) {
			return errRewrites
		}
	}
	sent := change.Putting(aboutBucket, accountKey)
	if sent == nil && len(change.Put) == 0 {
		return nil
	}
	if wanted := bank.Seal(sealKey(aboutBucket, accountKey), want.bytes()); string(sent) != string(wanted) {
		return errors.New("the account of all markings would be wrong")
	}
	return nil
}

func proveRecord(r store.Reader, change store.Change, bucket string, key, old, text []byte, by string, now time.Time) error {
	switch bucket {
	case classesBucket:
		return provePupils(r, key, old, text)
	case papersBucket:
		var paper, before Paper
		if json.Unmarshal(text, &paper) != nil {
			return unreadable(bucket, key)
		}
		if err := bank.ProveSigned(paper.By, paper.At, by, now); err != nil {
			return err
		}
		if old == nil {
			return nil
		}
		if err := decode(r, bucket, key, old, &before); err != nil {
			return err
		}
		kept := earlierKey(key, before.Revision)
		want, err := unsealed(r, bucket, key, old)
		if err != nil {
			return err
		}
		sent, ok := bank.Unseal(sealKey(earlierBucket, kept), change.Putting(earlierBucket, kept))
		if !ok || string(want) != string(sent) || paper.Revision != before.Revision+1 {
			return errRewrites
		}
	case earlierBucket:
		if old != nil {
			return errRewrites
		}
	}
	return nil
}

// provePupils says that nobody leaves a class.
func provePupils(r store.Reader, key, old, text []byte) error {
	var codes, before []string
	if json.Unmarshal(text, &codes) != nil {
		return unreadable(classesBucket, key)
	}
	if old == nil {
		return nil
	}
	if err := decode(r, classesBucket, key, old, &before); err != nil {
		return err
	}
	for _, code := range before {
		if !slices.Contains(codes, code) {
			return errRewrites
		}
	}
	return nil
}
