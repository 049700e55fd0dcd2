package remote_test

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"evenhand/bank/store"
	"evenhand/bank/store/bolt"
	"evenhand/bank/store/remote"
	"evenhand/bank/store/storetest"
)

var background = context.Background()

// hall serves many stores, each under a number, to whoever asks.
type hall struct {
	sync.Mutex
	dir    string
	server *remote.Server
	open   map[string]*bolt.File
}

// at opens a store once; it stays open, as a desk's bank does.
func (h *hall) at(name string) (store.Store, func(), error) {
	h.Lock()
	defer h.Unlock()
	if h.open[name] == nil {
		file, err := bolt.Open(filepath.Join(h.dir, name), store.Options{})
		if err != nil {
			return nil, nil, err
		}
		h.open[name] = file
	}
	return h.open[name], func() {}, nil
}

func (h *hall) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	name := r.PathValue("store")
	access := remote.Access{
		Who: "test", Part: name,
		Open:   func(bool) (store.Store, func(), error) { return h.at(name) },
		Create: func(layOut func(store.Writer) error) error { return bolt.Create(filepath.Join(h.dir, name), layOut) },
	}
	serve := map[string]func(http.ResponseWriter, *http.Request, remote.Access) error{
		"": h.server.See, "read": h.server.Read, "leave": h.server.Leave, "write": h.server.Write,
		"make": h.server.Make, "backup": h.server.Backup, "inspect": h.server.Inspect, "rewrite": h.server.Rewrite,
	}[r.PathValue("what")]
	var refused *remote.Refused
	switch err := serve(w, r, access); {
	case errors.As(err, &refused):
		w.WriteHeader(refused.Status)
		_ = json.NewEncoder(w).Encode(map[string]string{"detail": refused.What})
	case err != nil:
		w.WriteHeader(http.StatusInternalServerError)
		_ = json.NewEncoder(w).Encode(map[string]string{"detail": err.Error()})
	}
}

var (
	once   sync.Once
	base   string
	served http.Handler
	number int
)

// place is an address of the one hall of all tests.
func place(testing.TB) string {
	once.Do(func() {
		dir, err := os.MkdirTemp("", "evenhand-remote-")
		if err != nil {
			panic(err)
		}
		h := &hall{dir: dir, server: remote.NewServer(), open: map[string]*bolt.File{}}
		mux := http.NewServeMux()
		mux.Handle("/api/{store}", h)
		mux.Handle("/api/{store}/{what}", h)
		base, served = httptest.NewServer(mux).URL, mux
		clean = func() { os.RemoveAll(dir) }
	})
	number++
	return fmt.Sprintf("%s/api/%d", base, number)
}

var clean = func() {}

var maker = storetest.Maker{
	Place: place,
	Create: func(address string, layOut func(store.Writer) error) error {
		return remote.Create(background, address, store.Options{}, layOut)
	},
	Open: func(address string, o store.Options) (store.Store, error) {
		s, err := remote.OpenWith(background, address, "", o)
		if err != nil {
			return nil, err
		}
		return s, nil
	},
	Shared: true,
}

func TestLaws(t *testing.T) { storetest.Laws(t, maker) }

func TestMain(m *testing.M) {
	status := storetest.Main(m, maker)
	clean()
	os.Exit(status)
}
