package postgres

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"

	"evenhand/bank/store"
)

// beginWrite begins a transaction that locks its bank's row first. What it reads after
// that nobody else can change, though each statement sees a snapshot of its own. A program
// that holds the lock and is heard of no more loses it after a minute.
const beginWrite = `begin isolation level read committed read write; ` + byKey +
	`; set local idle_in_transaction_session_timeout = '60s'; set local lock_timeout = '%dms'`

// Update locks the bank, gathers what write puts and deletes, and sends it.
func (s *Store) Update(ctx context.Context, write func(store.Writer) error) error {
	if s.options.ReadOnly {
		return fmt.Errorf("%s was opened only to read", s.Name())
	}
	select {
	case <-ctx.Done():
		return ctx.Err()
	case <-s.turn:
		defer func() { s.turn <- struct{}{} }()
	}
	s.writes++
	lockWait := aWhile
	return s.again(ctx, func(ctx context.Context, c *pgxpool.Conn) error {
		begin := fmt.Sprintf(beginWrite, lockWait.Milliseconds())
		lockWait = max(aWhile, s.options.Patience())
		committing := false
		err := pgx.BeginTxFunc(ctx, c, pgx.TxOptions{BeginQuery: begin}, func(tx pgx.Tx) error {
			err := s.writeIn(ctx, tx, write)
			committing = err == nil
			return err
		})
		if err == nil || !committing || errors.Is(err, pgx.ErrTxCommitRollback) ||
			hasCode(err, serializationFailure, deadlockDetected) {
			return err
		}
		return s.settle(ctx, err)
	})
}

// aWhile is how long is waited for another writer before anybody is told.
const aWhile = time.Second

// writeIn does an Update's work within a transaction, up to its commit.
func (s *Store) writeIn(ctx context.Context, tx pgx.Tx, write func(store.Writer) error) error {
	w := &writer{
		reader: reader{ctx: ctx, store: s, tx: tx}, tx: tx,
		pending: map[int16]*pending{}, there: map[spot]bool{}, changed: map[string][]byte{},
	}
	if err := w.begin(); err != nil {
		return err
	}
	err := write(w)
	if w.failed != nil {
		return w.failed
	}
	if err != nil {
		return asked(err)
	}
	return w.finish()
}

// settle finds out whether a write was kept whose connection was lost on the commit: each
// write leaves its number, and the lock of the bank is only to be had when the server has
// done with it. An error that it returns is passing if nothing was kept.
func (s *Store) settle(ctx context.Context, cause error) error {
	for p := s.patience(); ; {
		kept, err := s.wasKept(ctx)
		switch {
		case err == nil && kept:
			return nil
		case err == nil:
			return lost{cause}
		case !passing(err) && !isLost(err) || !p.wait(ctx):
			return errors.Join(store.ErrUnsure, cause)
		}
	}
}

func (s *Store) wasKept(ctx context.Context) (kept bool, err error) {
	err = s.once(ctx, func(ctx context.Context, c *pgxpool.Conn) error {
		begin := fmt.Sprintf(beginWrite, aWhile.Milliseconds())
		return pgx.BeginTxFunc(ctx, c, pgx.TxOptions{BeginQuery: begin}, func(tx pgx.Tx) error {
			if _, err := tx.Exec(ctx, s.sql.lock, s.number); err != nil {
				return err
			}
			var last int64
			err := tx.QueryRow(ctx, s.sql.settled, s.number, s.writer[:]).Scan(&last)
			if errors.Is(err, pgx.ErrNoRows) {
				return nil
			}
			kept = last == s.writes
			return err
		})
	})
	return kept, err
}
