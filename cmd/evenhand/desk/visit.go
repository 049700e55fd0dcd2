package desk

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"sync"
	"syscall"
	"time"
	"unicode/utf8"
)

// visit is one request with who asks and in which language.
type visit struct {
	*http.Request
	w    http.ResponseWriter
	desk *Desk
	said sentences
	who  Person // nobody where the right is toAnyone
}

// handler answers a visit; its error becomes a page.
type handler func(v *visit) error

// fault is an error with the status that a browser gets and a sentence for the person.
type fault struct {
	status int
	text   string // nothing where the error says it
	link   string // the way on; empty for the first page
	unmet         // what of a plan can't be kept together, where that is why
	err    error  // what happened, for the log; nil where the sentence says all
}

func (f *fault) Error() string {
	if f.text == "" && f.err != nil {
		return f.err.Error()
	}
	return f.text
}
func (f *fault) Unwrap() error { return f.err }

// wrong is a fault of the request: what was read, and what would be right.
func (v *visit) wrong(key string, args ...any) error {
	return &fault{status: http.StatusBadRequest, text: v.said.say(key, args...)}
}

// missing is a fault for an address that names nothing.
func (v *visit) missing(key string, args ...any) error {
	return &fault{status: http.StatusNotFound, text: v.said.say(key, args...)}
}

// by is who asks, as it stands in histories.
func (v *visit) by() string { return v.who.Name }

// now is the time of a change, in whole seconds.
func (v *visit) now() time.Time { return v.desk.o.Now().UTC().Truncate(time.Second) }

// answer lets a handler answer those who have the right.
func (d *Desk) answer(needed right, handle handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		out, began := &watched{ResponseWriter: w}, time.Now()
		v := &visit{Request: r, w: out, desk: d, said: d.pages.said(languageOf(r))}
		defer func() { d.observed(v, out, began); v.tellOthers(out.status) }()
		err := v.admit(needed)
		if err == nil {
			err = v.readForm()
		}
		if err == nil {
			err = v.handled(handle)
		}
		if err != nil {
			v.fail(err)
		}
	})
}

// readForm reads the form that was sent, so that one too large or garbled is refused before anything is
// done. A form with a file is left to its handler.
func (v *visit) readForm() error {
	err := v.ParseForm()
	switch {
	case tooLarge(err):
		return &fault{status: http.StatusRequestEntityTooLarge, text: v.said.say("fault.toolarge")}
	case err != nil:
		return v.wrong("fault.garbled")
	}
	for _, form := range []url.Values{v.Form, v.PostForm} {
		for _, values := range form {
			for i, value := range values { // browsers send every line end as two characters
				values[i] = strings.ReplaceAll(value, "\r\n", "\n")
			}
		}
	}
	for name, values := range v.Form {
		if !utf8.ValidString(name+strings.Join(values, "")) || strings.ContainsRune(name+strings.Join(values, ""), 0) {
			return v.wrong("fault.garbled")
		}
	}
	return nil
}

// fail shows an error as a page, with a plain sentence where it is not one for people.
func (v *visit) fail(err error) {
	if v.fromProgram() {
		v.failProgram(err)
		return
	}
	f := v.faultOf(err)
	if f.status == http.StatusSeeOther || f.link != "" && v.Method == http.MethodGet && v.Header.Get("Part") == "" {
		http.Redirect(v.w, v.Request, f.link, http.StatusSeeOther)
		return
	}
	if f.status >= http.StatusInternalServerError {
		v.failed(err)
	}
	if f.status == http.StatusUnauthorized && v.signInAgain() {
		return
	}
	v.w.WriteHeader(f.status)
	data := struct {
		unmet
		Text, Link string
	}{f.unmet, f.text, cmp.Or(f.link, "/")}
	if err := v.show("fault", data); err != nil {
		fmt.Fprintln(v.w, f.text)
	}
}

// faultOf is an error as it is told: a fault as it stands, else one with a plain sentence.
func (v *visit) faultOf(err error) *fault {
	var f *fault
	switch {
	case errors.As(err, &f) && f.text == "" && f.err != nil:
		told := *f
		told.text = v.said.Tell(f.err)
		return &told
	case errors.As(err, &f):
		return f
	case noRoom(err):
		return &fault{status: http.StatusInsufficientStorage, text: v.said.say("fault.noroom")}
	case v.Context().Err() != nil && !errors.As(err, new(*panicked)): // nobody hears it
		return &fault{status: http.StatusRequestTimeout, text: v.said.say("fault.ours")}
	}
	return &fault{status: http.StatusInternalServerError, text: v.said.say("fault.ours")}
}

// noRoom says that the disk is full or lets nothing be written.
func noRoom(err error) bool {
	return errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EROFS) || errors.Is(err, syscall.EDQUOT)
}

// pageText is room to write pages in, used again and again.
var pageText = sync.Pool{New: func() any { return new(bytes.Buffer) }}

// show answers with a page: the template of that name in the frame, or with ?part=NAME (or the
// header that desk.js sends) the part of it that has this name, to be put in place of the old.
func (v *visit) show(page string, data any) error {
	rooms, err := v.rooms()
	if err != nil {
		return err
	}
	text := pageText.Get().(*bytes.Buffer)
	defer pageText.Put(text)
	text.Reset()
	if err := v.desk.pages.write(text, page, v.Header.Get("Part"), frame{
		Said: v.said, Who: v.who, SignedIn: !v.desk.alone() && v.who.Name != "",
		Rooms: rooms, Page: page, Path: v.back(), Data: data,
		Demo: v.desk.o.ThrowAway != nil, Home: v.desk.o.Home, Closes: v.desk.o.Stop != nil && v.who.Name != "",
	}); err != nil {
		return err
	}
	v.w.Header().Set("Content-Type", "text/html; charset=utf-8")
	shown := inOrder(text.Bytes())
	v.w.Header().Set("Content-Length", strconv.Itoa(len(shown)))
	_, err = v.w.Write(shown)
	return err
}

// turns says that a character turns round or bounds the order in which letters are shown (Unicode Standard Annex 9, explicit
// formatting), by which a title could show its neighbors backwards.
func turns(r rune) bool { return '\u202a' <= r && r <= '\u202e' || '\u2066' <= r && r <= '\u2069' }

// inOrder is a page without such characters.
func inOrder(page []byte) []byte {
	const first = 0xe2 // byte of each of them in UTF-8, and of few others
	for at := bytes.IndexByte(page, first); at >= 0; {
		if r, _ := utf8.DecodeRune(page[at:]); turns(r) {
			return bytes.Map(func(r rune) rune {
				if turns(r) {
					return -1
				}
				return r
			}, page)
		}
		next := bytes.IndexByte(page[at+1:], first)
		if next < 0 {
			break
		}
		at += 1 + next
	}
	return page
}

// to answers a form that was sent with the page to go on with.
func (v *visit) to(path string) error {
	http.Redirect(v.w, v.Request, path, http.StatusSeeOther)
	return nil
}

// back is the address to come back to after a form of the frame: the page itself, if it can be asked
// for again.
func (v *visit) back() string {
	if v.Method != http.MethodGet {
		return "/"
	}
	return v.URL.RequestURI()
}

func nothingHere(v *visit) error { return v.missing("fault.nothing") }

// roomOf is the room to which an address belongs: /items/ID to /items.
func roomOf(path string) string {
	first, _, _ := strings.Cut(strings.TrimPrefix(path, "/"), "/")
	switch first {
	case "generate":
		first = "items"
	case "terms":
		first = "plans"
	}
	return "/" + first
}
