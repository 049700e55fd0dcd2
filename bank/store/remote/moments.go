package remote

import (
	"context"
	"crypto/rand"
	"sync"
	"time"

	"evenhand/bank/store"
)

// How long a client may keep a moment open: it keeps the pages of a file from being used again, and may
// keep a file from growing.
const (
	idleFor   = 5 * time.Second
	longest   = 30 * time.Second
	mostOpen  = 32
	mostOfOne = 12
)

// moments are the Views that clients hold open.
type moments struct {
	sync.Mutex
	open map[string]*moment
	all  sync.WaitGroup
}

// moment is a View at the server that one client asks.
type moment struct {
	who, part string
	asks      chan asked
	leave     context.CancelFunc
	gone      chan struct{} // closed when the View has ended
	err       error         // why, then
}

// asked is a question on its way into a View.
type asked struct {
	question question
	answer   chan answered
}

type answered struct {
	answer answer
	err    error
}

// begin opens a moment.
func (m *moments) begin(ctx context.Context, access Access) (id string, opened *moment, err error) {
	m.Lock()
	defer m.Unlock()
	ofOne := 0
	for _, other := range m.open {
		if other.who == access.Who {
			ofOne++
		}
	}
	if len(m.open) >= mostOpen || ofOne >= mostOfOne {
		return "", nil, errMany
	}
	if m.open == nil {
		m.open = map[string]*moment{}
	}
	id = rand.Text()
	opened = &moment{who: access.Who, part: access.Part, asks: make(chan asked), gone: make(chan struct{})}
	ctx, opened.leave = context.WithTimeout(ctx, longest)
	m.open[id] = opened
	m.all.Go(func() {
		opened.err = opened.hold(ctx, access)
		opened.leave()
		m.Lock()
		delete(m.open, id)
		m.Unlock()
		close(opened.gone)
	})
	return id, opened, nil
}

// find is the moment of an ID, if it is this client's.
func (m *moments) find(id string, access Access) *moment {
	m.Lock()
	defer m.Unlock()
	if found := m.open[id]; found != nil && found.who == access.Who && found.part == access.Part {
		return found
	}
	return nil
}

// hold keeps a View open and answers from it.
func (o *moment) hold(ctx context.Context, access Access) error {
	s, done, err := access.Open(false)
	if err != nil {
		return err
	}
	defer done()
	began := false
	return s.View(ctx, func(r store.Reader) error {
		if began { // a connection was lost: another View would be another moment
			return errGone
		}
		for idle := time.NewTimer(idleFor); ; idle.Reset(idleFor) {
			select {
			case <-ctx.Done():
				return errGone
			case <-idle.C:
				return errGone
			case a := <-o.asks:
				began = true
				result, err := ask(r, a.question, hidden)
				a.answer <- answered{result.clone(), err}
			}
		}
	})
}

// clone is a copy that outlives the View.
func (a answer) clone() answer {
	for i, value := range a.Values {
		if value != nil {
			a.Values[i] = append([]byte{}, value...)
		}
	}
	for i, e := range a.Entries {
		a.Entries[i] = entry{append([]byte{}, e.Key...), append([]byte{}, e.Value...)}
	}
	return a
}

// ask asks the View.
func (o *moment) ask(ctx context.Context, q question) (answer, error) {
	a := asked{q, make(chan answered, 1)}
	select {
	case o.asks <- a:
		result := <-a.answer
		return result.answer, result.err
	case <-o.gone:
		if o.err != nil {
			return answer{}, o.err
		}
		return answer{}, errGone
	case <-ctx.Done():
		return answer{}, ctx.Err()
	}
}
