// Package postgres keeps a store in a PostgreSQL database, which may hold the stores
// of many banks.
//
// An address names the database as libpq does and, after the question mark, the bank:
//
//	postgres://db.alderhill.example/evenhand?bank=alder-hill-2
//	postgres://one:5432,two:5432/evenhand?bank=alder-hill-2&target_session_attrs=read-write
//
// Passwords come from the usual places (PGPASSFILE, ~/.pgpass, PGPASSWORD) and never
// stand in an address.
//
// # How it works
//
// A View is one read-only transaction that sees one snapshot; long reads come in
// pages. An Update first locks its bank's row, so that writers of one bank take turns
// and each sees what the one before has written; writers of other banks are not held up.
// Writes are gathered in memory and sent together.
//
// A lost connection, a server that changes places with its standby, a deadlock or a
// failed serialisation is no error for the caller: the transaction is begun anew until
// Options.Timeout is over. Where the connection is lost on the commit itself, the next
// one finds out whether it was kept (settle), so that nothing is written twice.
package postgres

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"net"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"
	"github.com/jackc/pgx/v5/pgxpool"

	"evenhand/bank/store"
)

// Store is one bank, or its marks, in a database. It is a store.Store.
type Store struct {
	place
	options store.Options
	pool    *pgxpool.Pool
	sql     statements
	number  int64         // of the bank
	turn    chan struct{} // holds one token: the right to write
	writer  [16]byte      // names this Store among all writers
	writes  int64         // so many so far; belongs to who has the turn
	known   buckets
}

// Create makes a new store of the address's name, with what layOut writes in it, and the
// tables for all if there are none. Where there is one of that name the error is fs.ErrExist.
func Create(ctx context.Context, address string, o store.Options, layOut func(store.Writer) error) error {
	s, err := connect(address, o)
	if err != nil {
		return err
	}
	defer s.Close()
	return s.again(ctx, func(ctx context.Context, c *pgxpool.Conn) error {
		return pgx.BeginFunc(ctx, c, func(tx pgx.Tx) error {
			if err := s.create(ctx, tx); err != nil {
				return err
			}
			return s.writeIn(ctx, tx, layOut)
		})
	})
}

// Open opens a store that is there; else the error is fs.ErrNotExist.
func Open(ctx context.Context, address string, o store.Options) (*Store, error) {
	s, err := connect(address, o)
	if err != nil {
		return nil, err
	}
	if err := s.again(ctx, s.find); err != nil {
		s.pool.Close()
		return nil, err
	}
	return s, nil
}

// mostConnections is how many a program uses at once.
const mostConnections = 4

// connect readies the connections; the first is made when it is needed.
func connect(address string, o store.Options) (*Store, error) {
	p, err := parse(address)
	if err != nil {
		return nil, err
	}
	config, err := pgxpool.ParseConfig(p.database)
	if err != nil {
		return nil, fmt.Errorf("%s is no address of a database: %w", address, err)
	}
	config.MaxConns = mostConnections
	config.ConnConfig.RuntimeParams["application_name"] = "evenhand"
	if config.ConnConfig.ConnectTimeout == 0 {
		config.ConnConfig.ConnectTimeout = 5 * time.Second
	}
	alive := net.KeepAliveConfig{Enable: true, Idle: 10 * time.Second, Interval: 5 * time.Second, Count: 3}
	config.ConnConfig.DialFunc = (&net.Dialer{KeepAliveConfig: alive}).DialContext
	pool, err := pgxpool.NewWithConfig(context.Background(), config)
	if err != nil {
		return nil, err
	}
	s := &Store{place: p, options: o, pool: pool, sql: p.statements(), turn: make(chan struct{}, 1)}
	s.turn <- struct{}{}
	rand.Read(s.writer[:])
	return s, nil
}

// layoutLock is a number of our own for the lock under which tables are made.
const layoutLock = 0x6576656e68616e64

// create makes the tables and the bank's row.
func (s *Store) create(ctx context.Context, tx pgx.Tx) error {
	if _, err := tx.Exec(ctx, `select pg_advisory_xact_lock($1)`, int64(layoutLock)); err != nil {
		return err
	}
	var there bool
	if err := tx.QueryRow(ctx, `select to_regclass($1) is not null`, s.schema+".entries").Scan(&there); err != nil {
		return err
	}
	if !there {
		if _, err := tx.Exec(ctx, s.in(layout)); err != nil {
			return err
		}
	}
	insert := s.in(`insert into $schema.banks (name, format) values ($1, $2) on conflict do nothing returning number`)
	err := tx.QueryRow(ctx, insert, s.bank, layoutFormat).Scan(&s.number)
	if errors.Is(err, pgx.ErrNoRows) {
		return fmt.Errorf("%s is there already: %w", s.Name(), fs.ErrExist)
	}
	return err
}

// find looks the bank's number up.
func (s *Store) find(ctx context.Context, c *pgxpool.Conn) error {
	format := 0
	err := c.QueryRow(ctx, s.in(`select number, format from $schema.banks where name = $1`), s.bank).Scan(&s.number, &format)
	switch {
	case errors.Is(err, pgx.ErrNoRows), hasCode(err, undefinedTable, undefinedSchema):
		return fmt.Errorf("the database holds no bank %q: %w", s.bank, fs.ErrNotExist)
	case err == nil && format > layoutFormat:
		return fmt.Errorf("%s was written by a newer evenhand (tables of format %d, this one reads up to %d); "+
			"use that evenhand, or bring this one up to date", s.Name(), format, layoutFormat)
	}
	return err
}

// Name is the address as it was given.
func (s *Store) Name() string { return s.address }

// Close gives all connections back.
func (s *Store) Close() error {
	if s.writes > 0 { // it's only tidying: a row that stays is taken away a week later
		ctx, done := context.WithTimeout(context.Background(), time.Second)
		defer done()
		s.pool.Exec(ctx, s.sql.forgotten, s.number, s.writer[:])
	}
	s.pool.Close()
	return nil
}

// pgError is what the server said, if the error came from it.
func pgError(err error) *pgconn.PgError {
	var said *pgconn.PgError
	errors.As(err, &said)
	return said
}

// hasCode says whether the server gave one of these codes.
func hasCode(err error, codes ...string) bool {
	said := pgError(err)
	for _, code := range codes {
		if said != nil && said.Code == code {
			return true
		}
	}
	return false
}
