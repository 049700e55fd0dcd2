package main

import (
	"context"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"time"

	"evenhand/bank/results"
	"evenhand/cmd/evenhand/desk"
	"evenhand/testdata"
)

// school is the demo school beside a person's own bank: a bank of its own on a desk of its own, to play
// with and to throw away.
type school struct {
	by   string
	home string // the address of the person's own desk
	ctx  context.Context

	lock   sync.Mutex
	folder string
	open   *host
	served sync.WaitGroup
}

// schoolBank is the bank's name in the school's folder.
const schoolBank = "alder-hill.bank"

// schoolDay is when the demo school's desk is opened: the Thursday after the demo's week, when its
// quiz is marked and the next one is due.
var schoolDay = time.Date(2026, time.December, 3, 13, 0, 0, 0, time.UTC)

// enter makes the school, unless it is there, and gives the link to its desk.
func (s *school) enter() (link string, err error) {
	s.lock.Lock()
	defer s.lock.Unlock()
	if s.open != nil && s.open.ctx.Err() == nil {
		return s.open.link(), nil
	}
	if s.folder == "" {
		own, err := ownFolder()
		if err != nil {
			return "", err
		}
		s.folder = filepath.Join(own, "demo school")
	}
	path := filepath.Join(s.folder, schoolBank)
	if !exists(path) {
		if err := s.make(); err != nil {
			return "", err
		}
	}
	opened := time.Now()
	h, err := openHost(s.ctx, path, 0, func(*host) desk.Options {
		return desk.Options{
			By: s.by, Home: s.home, ThrowAway: s.throwAway,
			Now: func() time.Time { return schoolDay.Add(time.Since(opened)) },
		}
	})
	if err != nil {
		return "", err
	}
	s.open = h
	s.served.Go(func() { _ = h.serve() })
	return h.link(), nil
}

// make plays the demo beside the school's folder and keeps its bank, marks and lists.
func (s *school) make() (err error) {
	if err := os.MkdirAll(s.folder, 0o700); err != nil {
		return err
	}
	temp, err := os.MkdirTemp(s.folder, "making-")
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(temp)) }()
	made := filepath.Join(temp, "demo")
	app := newApp()
	app.Writer, app.ErrWriter = io.Discard, io.Discard
	if err := app.RunContext(s.ctx, []string{app.Name, "demo", "--dir", made}); err != nil {
		return err
	}
	names := s.files()
	for i := range names { // the bank last: where it stands, the school is whole
		name := names[len(names)-1-i]
		if err := os.Rename(filepath.Join(made, name), filepath.Join(s.folder, name)); err != nil {
			return err
		}
	}
	return nil
}

// files are those of the school in its folder, the bank first.
func (s *school) files() []string {
	names := []string{schoolBank, filepath.Base(results.Path(schoolBank))}
	lists, _ := fs.Glob(testdata.Lists, "lists/*") // the pattern is a right one
	for _, list := range lists {
		names = append(names, filepath.Base(list))
	}
	return names
}

// throwAway closes the school's desk once it has answered, and removes what was made for it; what else a
// person put into the folder stays.
func (s *school) throwAway() {
	s.served.Go(func() {
		s.lock.Lock()
		defer s.lock.Unlock()
		if s.open == nil {
			return
		}
		s.open.stop()
		<-s.open.ended
		s.open = nil
		for _, name := range s.files() {
			_ = os.Remove(filepath.Join(s.folder, name))
		}
		_ = os.Remove(s.folder) // unless something else is in it
	})
}

// wait waits until the school's desk has closed.
func (s *school) wait() { s.served.Wait() }
