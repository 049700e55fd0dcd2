package desk

import (
	_ "embed"
	"encoding/json"
	"errors"
	"io/fs"
	"net/http"
	"strings"

	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/bank/store"
	"evenhand/bank/store/remote"
)

// Programs ask the desk under /api/, with a token in place of a session, and are answered in JSON.

// description is what is written of these addresses, in OpenAPI 3.1.
//
//go:embed openapi.json
var description []byte

// apiRoutes are the addresses for programs. The bank and its marks have the same ones.
var apiRoutes = append(append([]route{
	{"GET /api/openapi.json", toAnyone, describe},
	{"GET /api/me", toRead, whoAmI},
	{"GET /api/activity", toRead, listActivity},
	{"/api/", toAnyone, nothingInAPI},
}, storeRoutes("bank", toRead, toWrite, (*visit).bankAccess)...), storeRoutes("marks", toMark, toMark, (*visit).marksAccess)...)

// storeRoutes are those by which commands reach a store (package remote).
func storeRoutes(part string, reads, writes right, access func(*visit) remote.Access) []route {
	through := func(do func(*remote.Server, http.ResponseWriter, *http.Request, remote.Access) error) handler {
		return func(v *visit) error { return do(v.desk.remote, v.w, v.Request, access(v)) }
	}
	list := []route{
		{"GET /api/" + part, reads, through((*remote.Server).See)},
		{"POST /api/" + part + "/read", reads, through((*remote.Server).Read)},
		{"POST /api/" + part + "/leave", reads, through((*remote.Server).Leave)},
		{"POST /api/" + part + "/write", writes, through((*remote.Server).Write)},
		{"GET /api/" + part + "/inspect", reads, through((*remote.Server).Inspect)},
		{"GET /api/" + part + "/backup", reads, through((*remote.Server).Backup)},
	}
	if part == "marks" {
		list = append(list,
			route{"POST /api/marks/make", writes, through((*remote.Server).Make)},
			route{"POST /api/marks/rewrite", toOwn, through((*remote.Server).Rewrite)})
	}
	return list
}

// bankAccess is what a program may do with the bank: an owner's all, another person's what the person may.
func (v *visit) bankAccess() remote.Access {
	a := remote.Access{
		Who: v.who.Name, Part: "bank",
		Open:    func(bool) (store.Store, func(), error) { return v.desk.bank.Store(), func() {}, nil },
		Written: func(store.Change) { v.desk.news.tell(happened{What: "program", By: v.by()}) },
	}
	if !v.who.Role.may(Owner) {
		a.Prove = func(now store.Reader, change store.Change) error {
			return v.desk.bank.ProveChange(now, change, v.by(), v.now())
		}
	}
	return a
}

// marksAccess is the same for the pupils' results, which are opened for each request.
func (v *visit) marksAccess() remote.Access {
	path := results.Path(v.desk.bank.Path())
	a := remote.Access{
		Who: v.who.Name, Part: "marks",
		Open: func(write bool) (store.Store, func(), error) {
			s, err := bank.OpenStore(path, bank.Options{ReadOnly: !write, Direct: true})
			if err != nil {
				return nil, nil, err
			}
			return s, func() { _ = s.Close() }, nil // it was only used; what was written is on the disk
		},
		Create: func(layOut func(store.Writer) error) error { return bank.NewStore(path, bank.Options{}, layOut) },
	}
	if !v.who.Role.may(Owner) {
		a.Prove = func(now store.Reader, change store.Change) error {
			return results.ProveChange(now, change, v.by(), v.now())
		}
	}
	return a
}

// describe gives the description of these addresses.
func describe(v *visit) error {
	v.w.Header().Set("Content-Type", "application/json")
	_, err := v.w.Write(description)
	return err
}

// whoAmI tells a program whose token it has and what it may do.
func whoAmI(v *visit) error {
	me := struct {
		Name  string `json:"name"`
		Role  Role   `json:"role"`
		Marks bool   `json:"marks"`
		Enter string `json:"enter,omitempty"` // where a browser of this computer gets in, at the desk of one person
	}{Name: v.who.Name, Role: v.who.Role, Marks: v.who.Marks}
	if v.desk.alone() {
		me.Enter = v.desk.Entrance()
	}
	return v.tell(me)
}

// tell answers a program.
func (v *visit) tell(value any) error {
	v.w.Header().Set("Content-Type", "application/json")
	return json.NewEncoder(v.w).Encode(value)
}

// LocalToken lets in programs of this computer that can read the bank's file anyway: it may do all, in
// whatever name, as a command on the file may.
func (d *Desk) LocalToken() string { return d.local }

// fromProgram says that a program asks.
func (v *visit) fromProgram() bool { return strings.HasPrefix(v.URL.Path, "/api/") }

// admitProgram finds out whose program asks. A browser's session counts for nothing here, so that no page
// can make it ask.
func (v *visit) admitProgram() error {
	token, ok := strings.CutPrefix(v.Header.Get("Authorization"), "Bearer ")
	switch {
	case !ok || token == "":
		return nil
	case same(token, v.desk.local):
		v.who = Person{Name: "this computer", Role: Owner, Marks: true}
		if v.desk.alone() {
			v.who.Name = v.desk.o.By
		}
		return nil
	case v.desk.alone():
		return nil
	}
	person, err := v.desk.people.byToken(v.Context(), token, v.now())
	if errors.Is(err, errNobody) {
		return nil
	}
	v.who = person
	return err
}

// failProgram tells a program what went wrong, as RFC 9457 has it.
func (v *visit) failProgram(err error) {
	f := v.faultOf(v.storeFault(err))
	if f.status >= http.StatusInternalServerError && f.status != http.StatusServiceUnavailable {
		v.failed(err)
	}
	switch f.status {
	case http.StatusUnauthorized:
		v.w.Header().Set("WWW-Authenticate", "Bearer")
	case http.StatusServiceUnavailable:
		v.w.Header().Set("Retry-After", "1")
	}
	v.w.Header().Set("Content-Type", "application/problem+json")
	v.w.WriteHeader(f.status)
	_ = json.NewEncoder(v.w).Encode(struct {
		Status int    `json:"status"`
		Title  string `json:"title"`
		Detail string `json:"detail"`
	}{f.status, http.StatusText(f.status), f.text})
}

// storeFault makes a fault of what only programs meet at a store. What went wrong inside is told only
// where it says what to do.
func (v *visit) storeFault(err error) error {
	var refused *remote.Refused
	var damaged store.Damaged
	switch {
	case errors.As(err, new(*fault)), noRoom(err):
		return err
	case errors.As(err, &refused):
		return &fault{status: refused.Status, text: refused.What}
	case errors.Is(err, fs.ErrPermission):
		return &fault{status: http.StatusInsufficientStorage, text: v.said.say("fault.noroom")}
	case errors.As(err, &damaged):
		return &fault{status: http.StatusInternalServerError, text: damaged.What.String()}
	}
	return err
}

func nothingInAPI(v *visit) error {
	return &fault{status: http.StatusNotFound, text: "there is nothing at this address; /api/openapi.json says what there is"}
}
