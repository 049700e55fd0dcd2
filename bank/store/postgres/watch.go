package postgres

import (
	"context"
	"encoding/hex"
	"encoding/json"
	"time"

	"github.com/jackc/pgx/v5"
)

// channel is the one of the database on which writers tell of what they have written, when it is kept
// (https://www.postgresql.org/docs/15/sql-notify.html).
const channel = "evenhand"

// longestNews is how many bytes the server lets one notification have, less one.
const longestNews = 7999

// news is what a write changed.
type news struct {
	Schema  string            `json:"schema"`
	Bank    int64             `json:"bank"`
	Writer  string            `json:"writer"`
	Changed map[string][]byte `json:"changed"` // by bucket: one of the keys
}

// news is what this write changed; where that would be too much, only that it did.
func (w *writer) news() (string, error) {
	n := news{w.store.schema, w.store.number, hex.EncodeToString(w.store.writer[:]), w.changed}
	text, err := json.Marshal(n)
	if err == nil && len(text) > longestNews {
		n.Changed = nil
		text, err = json.Marshal(n)
	}
	return string(text), err
}

// Watch tells of what others write to this store while it happens, by the buckets that each write changed, with one
// of the keys, until the context ends. A lost connection is made anew; what is written until then isn't told.
func (s *Store) Watch(ctx context.Context, told func(changed map[string][]byte)) {
	for ctx.Err() == nil {
		s.watchOnce(ctx, told) // whatever ended it: it is tried again
		select {
		case <-ctx.Done():
		case <-time.After(2 * time.Second):
		}
	}
}

func (s *Store) watchOnce(ctx context.Context, told func(changed map[string][]byte)) {
	conn, err := pgx.ConnectConfig(ctx, s.pool.Config().ConnConfig.Copy())
	if err != nil {
		return
	}
	defer func() {
		ctx, done := context.WithTimeout(context.WithoutCancel(ctx), time.Second)
		defer done()
		conn.Close(ctx)
	}()
	if _, err := conn.Exec(ctx, "listen "+channel); err != nil {
		return
	}
	own := hex.EncodeToString(s.writer[:])
	for {
		said, err := conn.WaitForNotification(ctx)
		if err != nil {
			return
		}
		var n news
		if json.Unmarshal([]byte(said.Payload), &n) == nil && n.Schema == s.schema && n.Bank == s.number && n.Writer != own {
			told(n.Changed)
		}
	}
}
