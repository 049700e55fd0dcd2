package remote

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net"
	"net/http"
	"net/url"
	"os"
	"strings"
	"syscall"
	"time"

	"evenhand/bank/store"
	"evenhand/standards/words"
)

// Store is a store at a running desk.
type Store struct {
	name     string
	endpoint string
	token    string
	options  store.Options
	turn     chan struct{} // holds one token: the right to write
}

// The variables that hold the token of a person's program, or name the file that does.
const (
	TokenVariable     = "EVENHAND_TOKEN"
	TokenFileVariable = "EVENHAND_TOKEN_FILE"
)

// IsAddress says whether a bank's address is one of a running desk.
func IsAddress(text string) bool {
	return strings.HasPrefix(text, "http://") || strings.HasPrefix(text, "https://")
}

// marksPart ends the address of the marks of a bank at a desk.
const marksPart = "/api/marks"

// MarksOf is the address of the marks of a bank.
func MarksOf(address string) string { return strings.TrimRight(address, "/") + marksPart }

// endpoint is where the requests for an address go. The address of a desk means its bank.
func endpoint(address string) (string, error) {
	parsed, err := url.Parse(address)
	if err != nil || parsed.Host == "" || parsed.User != nil || parsed.RawQuery != "" {
		return "", fmt.Errorf("%s is no address of a desk; one looks like http://127.0.0.1:8080", address)
	}
	if ip := net.ParseIP(parsed.Hostname()); parsed.Scheme == "http" && parsed.Hostname() != "localhost" && (ip == nil || !ip.IsLoopback()) {
		return "", fmt.Errorf("%s would send the token over the network in the clear; write https://", address)
	}
	address = strings.TrimRight(address, "/")
	if strings.Contains(address, "/api/") {
		return address, nil
	}
	return address + "/api/bank", nil
}

// Open opens a store at a desk, with the token that the environment gives.
func Open(ctx context.Context, address string, o store.Options) (*Store, error) {
	token, err := tokenFromEnvironment()
	if err != nil {
		return nil, err
	}
	return OpenWith(ctx, address, token, o)
}

// OpenWith opens a store at a desk with a token. If there is none the error is fs.ErrNotExist.
func OpenWith(ctx context.Context, address, token string, o store.Options) (*Store, error) {
	s, err := at(address, token, o)
	if err == nil {
		err = s.once(ctx, http.MethodGet, "", nil, nil)
	}
	if err != nil {
		return nil, err
	}
	return s, nil
}

// Create makes a store at a desk, with what layOut writes in it; one that is there is fs.ErrExist.
func Create(ctx context.Context, address string, o store.Options, layOut func(store.Writer) error) error {
	token, err := tokenFromEnvironment()
	if err != nil {
		return err
	}
	s, err := at(address, token, o)
	if err != nil {
		return err
	}
	w := newWriter(nothing{})
	if err := layOut(w); err != nil {
		return err
	}
	err = s.once(ctx, http.MethodPost, "/make", w.written(), nil)
	if r := refused(err); r != nil && r.Status == http.StatusConflict {
		return fs.ErrExist
	}
	return err
}

// NameOf is the desk's name in the network.
func NameOf(address string) string {
	if parsed, err := url.Parse(address); err == nil && parsed.Host != "" {
		return parsed.Host
	}
	return address
}

func at(address, token string, o store.Options) (*Store, error) {
	to, err := endpoint(address)
	if err != nil {
		return nil, err
	}
	s := &Store{name: address, endpoint: to, token: token, options: o, turn: make(chan struct{}, 1)}
	s.turn <- struct{}{}
	return s, nil
}

func tokenFromEnvironment() (string, error) {
	if token := os.Getenv(TokenVariable); token != "" {
		return token, nil
	}
	path := os.Getenv(TokenFileVariable)
	if path == "" {
		return "", nil
	}
	text, err := os.ReadFile(path)
	if err != nil {
		return "", fmt.Errorf("$%s names a file that can't be read: %w", TokenFileVariable, err)
	}
	return strings.TrimSpace(string(text)), nil
}

// Name is the address as it was given.
func (s *Store) Name() string { return s.name }

// Close ends the use of the store. Nothing of it is open between two transactions.
func (s *Store) Close() error { return nil }

// Inspect asks the desk to look for damage.
func (s *Store) Inspect(ctx context.Context) (problems []*words.Told, err error) {
	var answer found
	err = s.again(ctx, func(ctx context.Context) error { return s.once(ctx, http.MethodGet, "/inspect", nil, &answer) })
	for _, problem := range answer.Problems {
		problems = append(problems, words.Sayf("%s", problem))
	}
	return problems, err
}

// Rewrite lets the desk write the store anew, so that nothing of what was deleted is left in it.
func (s *Store) Rewrite() error {
	return s.once(context.Background(), http.MethodPost, "/rewrite", struct{}{}, nil)
}

// Backup writes a copy of what the desk shows of the store.
func (s *Store) Backup(ctx context.Context, to io.Writer) (size int64, err error) {
	response, err := s.send(ctx, http.MethodGet, "/backup", nil)
	if err != nil {
		return 0, err
	}
	defer response.Body.Close()
	size, err = io.Copy(to, response.Body)
	if err == nil && size != response.ContentLength {
		err = store.ErrLost
	}
	return size, err
}

// lost is an error of the way to the desk, which may be gone the next time.
type lost struct {
	error
	unsent bool // the desk has certainly not heard it
}

func (l lost) Unwrap() error { return l.error }

// client follows no redirects, so that the token goes where it was meant for.
var client = &http.Client{CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}

// send sends a request and returns the response to one that was understood and done.
func (s *Store) send(ctx context.Context, method, path string, body any) (*http.Response, error) {
	var sent io.Reader
	if body != nil {
		text, err := json.Marshal(body)
		if err != nil {
			return nil, err
		}
		sent = bytes.NewReader(text)
	}
	request, err := http.NewRequestWithContext(ctx, method, s.endpoint+path, sent)
	if err != nil {
		return nil, err
	}
	request.Header.Set("Content-Type", "application/json")
	if s.token != "" {
		request.Header.Set("Authorization", "Bearer "+s.token)
	}
	response, err := client.Do(request)
	switch {
	case ctx.Err() != nil:
		if err == nil {
			response.Body.Close()
		}
		return nil, ctx.Err()
	case err != nil:
		return nil, lost{fmt.Errorf("the desk at %s doesn't answer; is it running?", s.name), errors.Is(err, syscall.ECONNREFUSED)}
	case response.StatusCode == http.StatusOK:
		return response, nil
	}
	defer response.Body.Close()
	return nil, s.refusal(response)
}

// refusal is the error for a response that isn't what was asked for.
func (s *Store) refusal(response *http.Response) error {
	var told struct {
		Detail string `json:"detail"`
	}
	if json.NewDecoder(io.LimitReader(response.Body, 64<<10)).Decode(&told) != nil || told.Detail == "" {
		told.Detail = response.Status
	}
	switch response.StatusCode {
	case http.StatusUnauthorized:
		told.Detail = "the desk doesn't know the token; make one on its page Passes, and put it into $" + TokenVariable +
			", or into a private file that $" + TokenFileVariable + " names"
	case http.StatusNotFound:
		return fs.ErrNotExist
	case http.StatusBadGateway, http.StatusGatewayTimeout:
		return lost{error: fmt.Errorf("%s: %s", s.name, told.Detail)}
	}
	return fmt.Errorf("%s: %w", s.name, &Refused{response.StatusCode, told.Detail})
}

// once sends a request and reads the answer.
func (s *Store) once(ctx context.Context, method, path string, body, answer any) error {
	response, err := s.send(ctx, method, path, body)
	if err != nil {
		return err
	}
	defer response.Body.Close()
	if answer == nil {
		answer = &struct{}{}
	}
	if err := json.NewDecoder(response.Body).Decode(answer); err != nil {
		if ctx.Err() != nil {
			return ctx.Err()
		}
		return lost{error: fmt.Errorf("%s sent an answer that can't be read: %w", s.name, err)}
	}
	_, _ = io.Copy(io.Discard, response.Body) // so that the connection is used again
	return nil
}

// again does something until it is done, as long as only the way to the desk or others are in between.
func (s *Store) again(ctx context.Context, do func(context.Context) error) error {
	began, told := time.Now(), false
	for pause := 5 * time.Millisecond; ; pause = min(2*pause, time.Second) {
		err := do(ctx)
		if err == nil || !passing(err) || ctx.Err() != nil || time.Since(began) > s.options.Patience() {
			return err
		}
		if time.Since(began) > time.Second && !told {
			told = true
			s.options.Told(s.name)
		}
		select {
		case <-ctx.Done():
			return ctx.Err()
		case <-time.After(jitter(pause)):
		}
	}
}

// passing says that the next try may go better.
func passing(err error) bool {
	if errors.As(err, new(lost)) {
		return true
	}
	r := refused(err)
	return r != nil && (r.Status == http.StatusConflict || r.Status == http.StatusGone ||
		r.Status == http.StatusServiceUnavailable || r.Status == http.StatusTooManyRequests)
}
