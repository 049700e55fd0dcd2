package remote

import (
	"context"
	"errors"
	"fmt"
	"net/http"

	"evenhand/bank/store"
)

// Update gathers what is written and sends it with all that it builds on.
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
	var own error
	err := s.again(ctx, func(ctx context.Context) error {
		if err := ctx.Err(); err != nil {
			return err
		}
		r := &reader{ctx: ctx, store: s, asked: new([]checked)}
		defer r.leave()
		w := newWriter(r)
		if own = write(w); own != nil || r.failed != nil {
			return r.failed
		}
		if err := ctx.Err(); err != nil {
			return err
		}
		sent := w.written()
		if sent.empty() {
			return nil
		}
		r.leave() // a file that has to grow waits for open moments
		sent.Read = *r.asked
		return s.keep(ctx, sent)
	})
	if err != nil {
		return err
	}
	return own
}

// keep sends a write until the desk has said what became of it: the same write is never kept twice.
func (s *Store) keep(ctx context.Context, sent write) error {
	unsure := false
	err := s.again(ctx, func(ctx context.Context) error {
		err := s.once(ctx, http.MethodPost, "/write", sent, nil)
		if r := refused(err); r != nil && r.Status == http.StatusConflict {
			return settled{err}
		}
		var way lost
		unsure = unsure || errors.As(err, &way) && !way.unsent || ctx.Err() != nil
		return err
	})
	var s2 settled
	switch {
	case errors.As(err, &s2): // another try has to read anew
		return s2.error
	case err != nil && unsure && refused(err) == nil:
		return errors.Join(store.ErrUnsure, err)
	}
	return err
}

// settled is a refusal that the same write would meet again.
type settled struct{ error }
