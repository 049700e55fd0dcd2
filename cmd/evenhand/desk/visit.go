package desk

import (
	"bytes"
	"errors"
	"fmt"
	"net/http"
	"time"
)

// visit is one request with who asks and in which language.
type visit struct {
	*http.Request
	w    http.ResponseWriter
	desk *Desk
	said sentences
}

// handler answers a visit; its error becomes a page.
type handler func(v *visit) error

// fault is an error with the status that a browser gets and a sentence for the person.
type fault struct {
	status int
	text   string
	err    error // what happened, for the log; nil where the sentence says all
}

func (f *fault) Error() string { return f.text }
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
func (v *visit) by() string { return v.desk.o.By }

// now is the time of a change, in whole seconds.
func (v *visit) now() time.Time { return v.desk.o.Now().UTC().Truncate(time.Second) }

// open lets anybody in.
func (d *Desk) open(handle handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		v := &visit{Request: r, w: w, desk: d, said: d.pages.said(languageOf(r))}
		if err := handle(v); err != nil {
			v.fail(err)
		}
	})
}

// only lets in who has shown the entrance's secret.
func (d *Desk) only(handle handler) http.Handler {
	return d.open(func(v *visit) error {
		if !d.known(v.Request) {
			return &fault{status: http.StatusUnauthorized, text: v.said.say("closed.alone")}
		}
		return handle(v)
	})
}

// fail shows an error as a page, with a plain sentence where it is not one for people.
func (v *visit) fail(err error) {
	status, text := http.StatusInternalServerError, v.said.say("fault.ours")
	var f *fault
	if errors.As(err, &f) {
		status, text = f.status, f.text
	}
	if status >= http.StatusInternalServerError {
		v.desk.o.Log.Error("failed", "path", v.URL.Path, "error", err)
	}
	v.w.WriteHeader(status)
	data := struct{ Text string }{text}
	if err := v.show("fault", data); err != nil {
		fmt.Fprintln(v.w, text)
	}
}

// show answers with a page: the template of that name in the frame, or with ?part=NAME (or the
// header that desk.js sends) the part of it that has this name, to be put in place of the old.
func (v *visit) show(page string, data any) error {
	var text bytes.Buffer
	if err := v.desk.pages.write(&text, page, v.Header.Get("Part"), frame{
		Said: v.said, Page: page, Path: v.URL.RequestURI(), Data: data,
	}); err != nil {
		return err
	}
	v.w.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, err := text.WriteTo(v.w)
	return err
}

// to answers a form that was sent with the page to go on with.
func (v *visit) to(path string) error {
	http.Redirect(v.w, v.Request, path, http.StatusSeeOther)
	return nil
}

func nothingHere(v *visit) error { return v.missing("fault.nothing") }
