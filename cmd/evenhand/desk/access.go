package desk

import (
	"bytes"
	"context"

	"evenhand/bank/store"
)

// Access is who may come in at a desk: its people, invitations, passes and sessions. Going back to a backup of the
// bank leaves it as it stands, so that who was removed since stays out, and who signed out stays signed out.
type Access struct{ entries map[string][]store.Entry }

// AccessBuckets are the parts of a bank's store that it is kept in.
var AccessBuckets = []string{peopleBucket, invitationBucket, tokenBucket, sessionBucket}

// AccessIn reads it from the store of a bank.
func AccessIn(ctx context.Context, s store.Store) (a Access, err error) {
	err = s.View(ctx, func(r store.Reader) error {
		a.entries = map[string][]store.Entry{}
		for _, bucket := range AccessBuckets {
			for e, err := range r.Scan(bucket, store.Range{}) {
				if err != nil {
					return err
				}
				a.entries[bucket] = append(a.entries[bucket], store.Entry{Key: bytes.Clone(e.Key), Value: bytes.Clone(e.Value)})
			}
		}
		return nil
	})
	return a, err
}

// Put makes it that of a store, in place of what is there.
func (a Access) Put(ctx context.Context, s store.Store) error {
	return s.Update(ctx, func(w store.Writer) error {
		for _, bucket := range AccessBuckets {
			var old [][]byte
			for e, err := range w.Scan(bucket, store.Range{}) {
				if err != nil {
					return err
				}
				old = append(old, bytes.Clone(e.Key))
			}
			for _, key := range old {
				if err := w.Delete(bucket, key); err != nil {
					return err
				}
			}
			for _, e := range a.entries[bucket] {
				if err := w.Put(bucket, e.Key, e.Value); err != nil {
					return err
				}
			}
		}
		return nil
	})
}
