package postgres

import (
	"context"
	"errors"
	"math/rand/v2"
	"net"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"evenhand/bank/store"
)

// Codes of the server's errors:
// https://www.postgresql.org/docs/15/errcodes-appendix.html.
const (
	serializationFailure = "40001"
	deadlockDetected     = "40P01"
	uniqueViolation      = "23505"
	lockNotAvailable     = "55P03"
	readOnlyTransaction  = "25006" // the server has become a standby
	tooManyConnections   = "53300"
	adminShutdown        = "57P01"
	crashShutdown        = "57P02"
	cannotConnectNow     = "57P03" // it starts up or goes down
	idleTooLong          = "25P03"
	undefinedTable       = "42P01"
	undefinedSchema      = "3F000"
	noPrivilege          = "42501"
	noSuchDatabase       = "3D000"
	badPassword          = "28P01"
	badAuthorization     = "28000"
	noSuchSetting        = "42704"
)

// callers is an error of the function that a caller gave: it is handed back as it is.
type callers struct{ error }

func asked(err error) error {
	if err == nil {
		return nil
	}
	return callers{err}
}

// again does some work on a connection, and begins anew when a connection is lost or
// the server asks for it, until the store's patience is over.
func (s *Store) again(ctx context.Context, work func(context.Context, *pgxpool.Conn) error) error {
	p := s.patience()
	for {
		err := s.once(ctx, work)
		var own callers
		switch {
		case err == nil:
			return nil
		case errors.As(err, &own):
			return own.error
		case ctx.Err() != nil:
			return errors.Join(ctx.Err(), unsure(err))
		case !passing(err) || !p.wait(ctx):
			return s.explain(err)
		}
	}
}

func (s *Store) once(ctx context.Context, work func(context.Context, *pgxpool.Conn) error) error {
	c, err := s.pool.Acquire(ctx)
	if err != nil {
		return lost{err}
	}
	defer c.Release()
	err = work(ctx, c)
	var own callers
	switch {
	case err == nil, errors.As(err, &own):
		return err
	case hasCode(err, readOnlyTransaction):
		c.Conn().Close(ctx) // so that the next one is looked for elsewhere
	case c.Conn().IsClosed():
		return lost{err}
	}
	return err
}

// unsure keeps of an error that it is store.ErrUnsure.
func unsure(err error) error {
	if errors.Is(err, store.ErrUnsure) {
		return store.ErrUnsure
	}
	return nil
}

// patience is how long a store goes on trying.
type patience struct {
	store *Store
	until time.Time // not set before the first wait
	told  time.Time
	pause time.Duration
}

func (s *Store) patience() *patience { return &patience{store: s, pause: 10 * time.Millisecond} }

// wait waits a little, longer from time to time; it says false when patience is over.
func (p *patience) wait(ctx context.Context) bool {
	now := time.Now()
	if p.until.IsZero() {
		p.until, p.told = now.Add(p.store.options.Patience()), now.Add(time.Second)
	}
	if now.After(p.until) {
		return false
	}
	if !p.told.IsZero() && now.After(p.told) {
		p.store.options.Told(p.store.Name())
		p.told = time.Time{}
	}
	select {
	case <-ctx.Done():
		return false
	case <-time.After(p.pause/2 + rand.N(p.pause)):
		p.pause = min(2*p.pause, time.Second)
		return true
	}
}

// passing says whether an error may be gone at the next try.
func passing(err error) bool {
	if errors.Is(err, store.ErrUnsure) {
		return false
	}
	var lookup *net.DNSError
	if errors.As(err, &lookup) && lookup.IsNotFound || refusesTLS(err) {
		return false
	}
	if said := pgError(err); said != nil {
		return said.Code[:2] == "08" || hasCode(err, serializationFailure, deadlockDetected, lockNotAvailable,
			readOnlyTransaction, tooManyConnections, adminShutdown, crashShutdown, cannotConnectNow, idleTooLong)
	}
	return isLost(err)
}

func isLost(err error) bool {
	var l lost
	return errors.As(err, &l)
}

// lost is an error of the connection, not of what was asked.
type lost struct{ error }

func (l lost) Unwrap() error { return l.error }
