package remote

import (
	"context"
	"encoding/json"
	"errors"
	"io"
	"io/fs"
	"net/http"
	"strconv"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
)

// Server answers clients. Whom it answers, and what they may do, is for its caller to say.
type Server struct {
	moments moments
	writes  chan struct{} // holds a place for each write in hand, as writes may be large
	ctx     context.Context
	end     context.CancelFunc
}

// LongestWrite is how many bytes a request may have: room for the longest value, as base64.
const LongestWrite = store.MaxValue/3*4 + 16<<20

// writesAtOnce is how many writes are read into memory at a time.
const writesAtOnce = 2

// NewServer makes a server without clients.
func NewServer() *Server {
	s := &Server{writes: make(chan struct{}, writesAtOnce)}
	s.ctx, s.end = context.WithCancel(context.Background())
	return s
}

// Close ends what clients read, so that the stores can be closed.
func (s *Server) Close() {
	s.end()
	s.moments.all.Wait()
}

// The requests and answers that aren't in wire.go.
type (
	reading struct {
		Moment string `json:"moment,omitempty"` // none begins one
		question
	}
	wasRead struct {
		Moment string `json:"moment"`
		answer
	}
	leaving struct {
		Moment string `json:"moment"`
	}
	wasWritten struct {
		Kept bool `json:"kept"`
	}
	found struct {
		Problems []string `json:"problems"`
	}
)

// See says that the store is there.
func (s *Server) See(w http.ResponseWriter, _ *http.Request, access Access) error {
	_, done, err := access.Open(false)
	if err != nil {
		return inStatus(err)
	}
	done()
	return reply(w, struct {
		There bool `json:"there"`
	}{true})
}

// Read answers a question as of a moment.
func (s *Server) Read(w http.ResponseWriter, r *http.Request, access Access) error {
	var asked reading
	if err := readJSON(r, &asked); err != nil {
		return err
	}
	id, at := asked.Moment, s.moments.find(asked.Moment, access)
	switch {
	case id != "" && at == nil:
		return errGone
	case id == "":
		var err error
		if id, at, err = s.moments.begin(s.ctx, access); err != nil {
			return err
		}
	}
	a, err := at.ask(r.Context(), asked.question)
	if err != nil {
		return inStatus(err)
	}
	return reply(w, wasRead{id, a})
}

// Leave ends a moment; one that is over already is none of its business.
func (s *Server) Leave(w http.ResponseWriter, r *http.Request, access Access) error {
	var asked leaving
	if err := readJSON(r, &asked); err != nil {
		return err
	}
	if at := s.moments.find(asked.Moment, access); at != nil {
		at.leave()
		<-at.gone // so that the store is free when the client is told so
	}
	return reply(w, struct{}{})
}

// Write keeps an Update if all that it read still stands.
func (s *Server) Write(w http.ResponseWriter, r *http.Request, access Access) error {
	var sent write
	if err := s.receive(r, &sent); err != nil {
		return err
	}
	at, done, err := access.Open(true)
	if err != nil {
		return inStatus(err)
	}
	defer done()
	change := sent.change()
	if err := at.Update(r.Context(), func(to store.Writer) error { return sent.keep(to, change, access) }); err != nil {
		return inStatus(err)
	}
	if access.Written != nil {
		access.Written(change)
	}
	return reply(w, wasWritten{true})
}

// Make makes the store.
func (s *Server) Make(w http.ResponseWriter, r *http.Request, access Access) error {
	var sent write
	if err := s.receive(r, &sent); err != nil {
		return err
	}
	if access.Create == nil {
		return &Refused{http.StatusForbidden, "no bank is made through a desk; make it with evenhand init where it will stand"}
	}
	if err := access.Create(sent.apply); err != nil {
		return inStatus(err)
	}
	return reply(w, wasWritten{true})
}

// Rewrite writes the store anew, so that nothing of what was deleted is left in it.
func (s *Server) Rewrite(w http.ResponseWriter, _ *http.Request, access Access) error {
	at, done, err := access.Open(true)
	if err != nil {
		return inStatus(err)
	}
	defer done()
	if file, ok := at.(store.Rewriter); ok {
		if err := file.Rewrite(); err != nil {
			return err
		}
	}
	return reply(w, wasWritten{true})
}

// receive reads a write, a few at a time.
func (s *Server) receive(r *http.Request, sent *write) error {
	select {
	case s.writes <- struct{}{}:
		defer func() { <-s.writes }()
	case <-r.Context().Done():
		return r.Context().Err()
	}
	if err := readJSON(r, sent); err != nil {
		return err
	}
	if len(sent.ID) != len(ulid.ULID{}) {
		return errBroken
	}
	for _, name := range sent.buckets() {
		if hidden(name) {
			return errHidden
		}
	}
	return nil
}

// Backup sends a copy of what clients see, as of one moment: a file that bolt opens.
func (s *Server) Backup(w http.ResponseWriter, r *http.Request, access Access) error {
	at, done, err := access.Open(false)
	if err != nil {
		return inStatus(err)
	}
	defer done()
	file, err := copied(r.Context(), at)
	if err != nil {
		return inStatus(err)
	}
	defer file.remove()
	w.Header().Set("Content-Type", "application/octet-stream")
	w.Header().Set("Content-Length", strconv.FormatInt(file.size, 10))
	_, err = io.Copy(w, file)
	return err
}

// Inspect looks for damage below the entries.
func (s *Server) Inspect(w http.ResponseWriter, r *http.Request, access Access) error {
	at, done, err := access.Open(false)
	if err != nil {
		return inStatus(err)
	}
	defer done()
	problems, err := at.Inspect(r.Context())
	if err != nil {
		return inStatus(err)
	}
	var answer found
	for _, problem := range problems {
		answer.Problems = append(answer.Problems, problem.String())
	}
	return reply(w, answer)
}

// writesBucket holds the IDs of the writes of the last day that were kept.
const writesBucket = ours + "writes"

// keep proves a write, which makes a change, and keeps it with its number, unless that was done before.
func (w write) keep(to store.Writer, change store.Change, access Access) error {
	if before, err := to.Get(writesBucket, w.ID); before != nil || err != nil {
		return err
	}
	fresh, err := w.fresh(to, hidden)
	if err != nil {
		return err
	}
	if !fresh {
		return errStale
	}
	if access.Prove != nil {
		if err := access.Prove(to, change); err != nil {
			return &Refused{http.StatusForbidden, err.Error()}
		}
	}
	if err := w.apply(to); err != nil {
		return &Refused{http.StatusUnprocessableEntity, err.Error()}
	}
	if err := to.Put(writesBucket, w.ID, []byte{}); err != nil {
		return err
	}
	return prune(to, w.ID)
}

// remembered is for how long a client may ask whether a write was kept, in milliseconds of its ID.
const remembered = 24 * 60 * 60 * 1000

// prune forgets a few of the writes of days before.
func prune(to store.Writer, id []byte) error {
	var before ulid.ULID
	if now := ulid.ULID(id).Time(); now > remembered {
		if err := before.SetTime(now - remembered); err != nil {
			return err
		}
	}
	var old [][]byte
	for e, err := range to.Scan(writesBucket, store.Range{To: before[:], Limit: 4}) {
		if err != nil {
			return err
		}
		old = append(old, append([]byte{}, e.Key...))
	}
	for _, key := range old {
		if err := to.Delete(writesBucket, key); err != nil {
			return err
		}
	}
	return nil
}

// inStatus gives errors that clients have to tell apart a status.
func inStatus(err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return errNone
	case errors.Is(err, fs.ErrExist):
		return errThere
	}
	return err
}

func readJSON(r *http.Request, to any) error {
	err := json.NewDecoder(r.Body).Decode(to)
	var large *http.MaxBytesError
	if errors.As(err, &large) {
		return &Refused{http.StatusRequestEntityTooLarge, "this is too much for one request; write it in parts"}
	}
	if err != nil {
		return errBroken
	}
	return nil
}

func reply(w http.ResponseWriter, value any) error {
	w.Header().Set("Content-Type", "application/json")
	return json.NewEncoder(w).Encode(value)
}
