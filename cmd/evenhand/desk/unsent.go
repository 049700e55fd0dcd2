package desk

import (
	"net/http"
	"net/url"
	"strings"
)

// unsent is a form that came from somebody who was signed out meanwhile: the page that lets them in again carries it,
// so that nothing that was typed is lost.
type unsent struct{ To, Form string }

// longestUnsent is how many bytes of a form are carried; spelled out once more they still fit into one.
const longestUnsent = longestForm / 4

// signInPage is what the page shows that asks for name and password.
type signInPage struct {
	Back, Problem string
	Name          string // that was typed
	Unsent        unsent // no address where there is none
}

// signInAgain asks who sent a form to sign in, and keeps the form meanwhile; false where there is none to keep.
func (v *visit) signInAgain() bool {
	own := v.Method == http.MethodPost && v.Header.Get("Part") == "" && !v.desk.alone() &&
		strings.HasPrefix(v.Header.Get("Content-Type"), "application/x-www-form-urlencoded") // no file
	if !own || v.readForm() != nil {
		return false
	}
	form := v.PostForm.Encode()
	if form == "" || len(form) > longestUnsent {
		return false
	}
	v.w.WriteHeader(http.StatusUnauthorized)
	return v.show("signin", signInPage{Back: "/", Unsent: unsent{v.URL.RequestURI(), form}}) == nil
}

// unsentSent is what the page that let somebody in carried.
func (v *visit) unsentSent() unsent {
	u := unsent{v.PostForm.Get("unsent-to"), v.PostForm.Get("unsent")}
	if ownPath(u.To) != u.To || len(u.Form) > longestUnsent {
		return unsent{}
	}
	return u
}

// sendAgain lets who came in again send the form, by a button of its own: what it does is not done unseen.
func (v *visit) sendAgain(u unsent) error {
	fields, err := url.ParseQuery(u.Form)
	if err != nil {
		return v.wrong("fault.garbled")
	}
	return v.show("unsent", struct {
		To     string
		Fields url.Values
	}{u.To, fields})
}
