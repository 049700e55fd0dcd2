package postgres

import (
	"context"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"

	"evenhand/bank/store"
)

// View reads one snapshot.
func (s *Store) View(ctx context.Context, read func(store.Reader) error) error {
	return s.again(ctx, func(ctx context.Context, c *pgxpool.Conn) error {
		v := &view{conn: c.Conn()}
		r := &reader{ctx: ctx, store: s, tx: v}
		err := read(r)
		v.end(ctx)
		if r.failed != nil {
			return r.failed
		}
		return asked(err)
	})
}

// view is a transaction that only reads. It begins with its first question, in the same round trip.
type view struct {
	conn  *pgx.Conn
	begun bool
}

func (v *view) Query(ctx context.Context, sql string, args ...any) (pgx.Rows, error) {
	if v.begun {
		return v.conn.Query(ctx, sql, args...)
	}
	v.begun = true
	var batch pgx.Batch
	batch.Queue(`begin isolation level repeatable read read only`)
	batch.Queue(byKey)
	batch.Queue(sql, args...)
	answers := v.conn.SendBatch(ctx, &batch)
	for range batch.Len() - 1 {
		if _, err := answers.Exec(); err != nil {
			answers.Close()
			return nil, err
		}
	}
	rows, err := answers.Query()
	if err != nil {
		answers.Close()
		return nil, err
	}
	return &first{rows, answers}, nil
}

// end gives the snapshot up. What was read stays true if that fails; the connection is then
// not used again.
func (v *view) end(ctx context.Context) {
	if v.begun {
		v.conn.Exec(ctx, `commit`)
	}
}

// first is the answer to a transaction's first question, the last of its batch.
type first struct {
	pgx.Rows
	batch pgx.BatchResults
}

func (f *first) Close() {
	f.Rows.Close()
	f.batch.Close()
}
