package desk

import (
	"context"
	"errors"
	"net/http"
	"slices"
	"strings"
	"time"
	"unicode/utf8"
)

// How long an invitation holds, and how long a password has to be (NIST SP 800-63B, 5.1.1.2: at
// least 8 characters, and no rules about their kinds).
const (
	invitedFor    = 7 * 24 * time.Hour
	leastPassword = 8
)

// team shows who is here and how safe all is.
func team(v *visit) error { return v.showTeam("") }

// showTeam shows the page with a link to pass on, once.
func (v *visit) showTeam(link string) error {
	safe, err := v.safe()
	if err != nil {
		return err
	}
	var list []Person
	if !v.desk.alone() {
		if list, err = v.desk.people.all(v.Context()); err != nil {
			return err
		}
	}
	return v.show("team", struct {
		People []Person
		Roles  []Role
		Owner  bool
		Writer bool
		Link   string
		Safe   safePage
	}{list, roles, v.who.Role.may(Owner), v.who.Role.may(Writer), link, safe})
}

// roleAsked is the role that a form gives a person.
func (v *visit) roleAsked() (Role, error) {
	role := Role(v.FormValue("role"))
	if !slices.Contains(roles, role) {
		return role, v.wrong("team.norole")
	}
	return role, nil
}

// invitePerson makes a link that lets one person in.
func invitePerson(v *visit) error {
	role, err := v.roleAsked()
	if err != nil {
		return err
	}
	word, err := v.desk.people.invite(v.Context(), Invitation{
		Role: role, Marks: v.FormValue("marks") != "", By: v.by(), Until: v.now().Add(invitedFor),
	})
	if err != nil {
		return v.afterTeam(err)
	}
	return v.showTeam(v.address("/invited/" + word))
}

// address is a path of this desk as the browser reaches it.
func (v *visit) address(path string) string {
	scheme := "http://"
	if v.desk.o.Secure {
		scheme = "https://"
	}
	return scheme + v.Host + path
}

// changePerson gives another role, or the right to marks.
func changePerson(v *visit) error {
	role, err := v.roleAsked()
	if err != nil {
		return err
	}
	err = v.desk.people.change(v.Context(), v.by(), v.PathValue("name"), func(p *Person) {
		p.Role, p.Marks = role, v.FormValue("marks") != ""
	})
	return v.afterTeam(err)
}

// removePerson takes a person out and signs them out everywhere.
func removePerson(v *visit) error {
	name := v.PathValue("name")
	err := v.desk.people.remove(v.Context(), v.by(), name)
	if err == nil {
		err = v.desk.endSessions(v.Context(), name)
	}
	return v.afterTeam(err)
}

func (v *visit) afterTeam(err error) error {
	switch {
	case errors.Is(err, errNobody):
		return v.missing("team.nobody")
	case errors.Is(err, errNoOwner):
		return &fault{status: http.StatusForbidden, text: v.said.say("signin.needed")}
	case errors.Is(err, errLast):
		return v.wrong("team.last")
	case err != nil:
		return err
	}
	return v.to("/team")
}

// showInvited asks an invited person for a name and a password.
func showInvited(v *visit) error { return v.showInvitation("") }

func (v *visit) showInvitation(problem string) error {
	invitation, err := v.desk.people.invited(v.Context(), v.PathValue("secret"), v.desk.o.Now())
	if errors.Is(err, errExpired) {
		return &fault{status: http.StatusGone, text: v.said.say("invited.expired")}
	}
	if err != nil {
		return err
	}
	if problem != "" {
		v.w.WriteHeader(http.StatusBadRequest)
	}
	return v.show("invited", struct {
		Invitation
		Secret, Name, Problem string
	}{invitation, v.PathValue("secret"), v.FormValue("name"), problem})
}

// acceptInvitation lets the invited person in.
func acceptInvitation(v *visit) error {
	name, password := strings.TrimSpace(v.FormValue("name")), v.FormValue("password")
	switch {
	case name == "" || utf8.RuneCountInString(name) > 40:
		return v.showInvitation(v.said.say("invited.name"))
	case utf8.RuneCountInString(password) < leastPassword || len(password) > 200:
		return v.showInvitation(v.said.say("invited.password", leastPassword))
	}
	person, err := v.desk.people.accept(v.Context(), v.PathValue("secret"), name, password, v.now())
	switch {
	case errors.Is(err, errTaken):
		return v.showInvitation(v.said.say("invited.taken"))
	case errors.Is(err, errExpired):
		return &fault{status: http.StatusGone, text: v.said.say("invited.expired")}
	case err != nil:
		return err
	}
	return v.signedIn(person, "/")
}

// FirstOwner is the path of the link that makes the first owner of a team's desk; empty where the
// desk has one.
func (d *Desk) FirstOwner(ctx context.Context) (path string, err error) {
	list, err := d.people.all(ctx)
	if err != nil || len(list) > 0 {
		return "", err
	}
	word, err := d.people.invite(ctx, Invitation{Role: Owner, Marks: true, Until: d.o.Now().UTC().Add(invitedFor)})
	return "/invited/" + word, err
}
