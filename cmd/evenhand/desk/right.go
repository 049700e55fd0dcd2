package desk

import (
	"errors"
	"net/http"
	"net/url"
)

// right is what an address asks of who asks for it.
type right int

const (
	toAnyone right = iota
	toRead         // somebody of the team
	toWrite        // a writer
	toMark         // who may see pupils' marks
	toOwn          // an owner
)

// admit finds out who asks and refuses who lacks the right.
func (v *visit) admit(needed right) error {
	if v.fromProgram() {
		if err := v.admitProgram(); err != nil {
			return err
		}
	} else if v.desk.alone() {
		cookie, err := v.Cookie(enterCookie(v.Request))
		if err == nil && same(cookie.Value, v.desk.entrance) {
			v.who = Person{Name: v.desk.o.By, Role: Owner, Marks: true}
		}
	} else if name := v.desk.sessions.GetString(v.Context(), "person"); name != "" {
		person, err := v.desk.people.find(v.Context(), name)
		if err != nil && !errors.Is(err, errNobody) {
			return err
		}
		v.who = person
	}
	switch {
	case needed == toAnyone:
		return nil
	case v.who.Name == "":
		return v.closed()
	case needed == toWrite && !v.who.Role.may(Writer), needed == toMark && !v.who.Marks, needed == toOwn && !v.who.Role.may(Owner):
		return &fault{status: http.StatusForbidden, text: v.said.say("signin.needed")}
	}
	return nil
}

// closed is the answer to who is not known here: the way in, or how to find it.
func (v *visit) closed() error {
	if v.fromProgram() {
		return &fault{status: http.StatusUnauthorized, text: v.said.say("closed.program")}
	}
	if v.desk.alone() {
		return &fault{status: http.StatusUnauthorized, text: v.said.say("closed.alone")}
	}
	return &fault{status: http.StatusUnauthorized, text: v.said.say("closed.team"), link: "/signin?back=" + url.QueryEscape(v.back())}
}
