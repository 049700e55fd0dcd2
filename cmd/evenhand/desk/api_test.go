package desk

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/bank/store"
	"evenhand/bank/store/remote"
	"evenhand/standards/task"
)

// programs is a team's desk with a token for each kind of person.
type programs struct {
	*Desk
	bank    *bank.Bank
	address string
	tokens  map[string]string
}

// people of a team, of all roles; a name with m may see marks.
var kinds = map[string]Person{
	"reader": {Name: "SV", Role: Reader}, "marker": {Name: "JK", Role: Reader, Marks: true},
	"writer": {Name: "MO", Role: Writer}, "owner": {Name: "MK", Role: Owner, Marks: true},
}

func withPrograms(t *testing.T) programs {
	t.Helper()
	b, err := bank.Create(filepath.Join(t.TempDir(), "team.bank"))
	if err != nil {
		t.Fatal(err)
	}
	d, err := New(b, Options{Store: b.Store()})
	if err != nil {
		t.Fatal(err)
	}
	server := httptest.NewServer(d.Handler())
	t.Cleanup(func() { d.Leave(); server.Close(); must(t, b.Close()) })
	p := programs{d, b, server.URL, map[string]string{}}
	for kind, person := range kinds {
		must(t, b.Store().Update(t.Context(), func(w store.Writer) error { return putPerson(w, person) }))
		p.tokens[kind], err = d.people.makePass(t.Context(), person.Name, kind, time.Now())
		must(t, err)
	}
	return p
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// ask sends a request of a program.
func (p programs) ask(t *testing.T, method, path, token, body string) (status int, text []byte) {
	t.Helper()
	r := httptest.NewRequest(method, path, strings.NewReader(body))
	if token != "" {
		r.Header.Set("Authorization", "Bearer "+token)
	}
	r.Header.Set("Content-Type", "application/json")
	w := httptest.NewRecorder()
	p.Handler().ServeHTTP(w, r)
	return w.Code, w.Body.Bytes()
}

// open opens the bank as a kind of person's program does.
func (p programs) open(t *testing.T, kind string) (*bank.Bank, error) {
	t.Setenv(remote.TokenVariable, p.tokens[kind])
	return bank.Open(p.address, bank.Options{Timeout: time.Second})
}

var plus = []bank.Item{bank.NewItem(task.MustParse("47 + 36 = ?"), "", bank.Origin{Kind: "written"})}

// A program may do what its person may: nobody else's work is rewritten or signed, and no right is gained.
func TestAProgramMayWhatItsPersonMay(t *testing.T) {
	p := withPrograms(t)
	for kind, may := range map[string]bool{"reader": false, "marker": false, "writer": true, "owner": true} {
		b, err := p.open(t, kind)
		must(t, err)
		item := bank.NewItem(task.MustParse(fmt.Sprintf("47 + %d = ?", kind[0]%50+20)), "", bank.Origin{Kind: "written"})
		if _, err = b.Add([]bank.Item{item}, kinds[kind].Name, time.Now()); (err == nil) != may {
			t.Errorf("a %s adds an item: %v", kind, err)
		}
		must(t, b.Close())
	}
	b, err := p.open(t, "writer")
	must(t, err)
	if _, err := b.Add(plus, "MK", time.Now()); err == nil || !strings.Contains(err.Error(), `say --by "MO"`) {
		t.Errorf("a writer adds an item in another's name: %v", err)
	}
	if _, err := b.Add(plus, "MO", time.Now().Add(-48*time.Hour)); err == nil || !strings.Contains(err.Error(), "clock") {
		t.Errorf("a writer adds an item two days ago: %v", err)
	}
	added, err := b.Add(plus, "MO", time.Now())
	must(t, err)
	if _, err := b.Revise(added[0].ID, "MO", "look", time.Now(), func(it *bank.Item) error { it.Notes = "for Monday"; return nil }); err != nil {
		t.Errorf("a writer can't revise: %v", err)
	}
	if err := b.SetReview(bank.Review{Anyone: true, By: "MO", At: time.Now()}); err == nil {
		t.Error("a writer changes who reviews")
	}
	if history, err := p.bank.History(added[0].ID); err != nil || len(history) != 2 || history[1].By != "MO" {
		t.Errorf("the history is %v, %v", history, err)
	}
	report, err := p.bank.Check()
	if err != nil || !report.Whole() {
		t.Errorf("the bank is %v, %v", report.Problems, err)
	}
	for kind, may := range map[string]bool{"reader": false, "marker": true, "writer": false, "owner": true} {
		t.Setenv(remote.TokenVariable, p.tokens[kind])
		s, err := results.Open(results.Path(p.address), bank.Options{Timeout: time.Second})
		if err == nil {
			err = errors.Join(s.Enrol("2A", "P01", "P02"), s.Close())
		}
		if (err == nil) != may {
			t.Errorf("a %s notes pupils of a class: %v", kind, err)
		}
	}
}

// Raw requests that a program of ours would never send are refused, too.
func TestNothingIsRewrittenByRequests(t *testing.T) {
	p := withPrograms(t)
	added, err := p.bank.Add(plus, "MK", time.Now())
	must(t, err)
	var record, key []byte
	must(t, p.bank.Store().View(t.Context(), func(r store.Reader) error {
		for e, err := range r.Scan("items", store.Range{}) {
			must(t, err)
			key, record = bytes.Clone(e.Key), bytes.Clone(e.Value)
		}
		return nil
	}))
	at := func(bucket string, key, value []byte) map[string]any {
		return map[string]any{"bucket": bucket, "entries": []any{map[string]any{"key": key, "value": value}}}
	}
	for name, change := range map[string]map[string]any{
		"an item put again":      {"put": []any{at("items", key, record)}},
		"an item taken away":     {"delete": []any{at("items", key, nil)}},
		"an item that is noise":  {"put": []any{at("items", key, []byte("noise"))}},
		"a short key":            {"put": []any{at("items", []byte("a"), []byte("noise"))}},
		"a revision from before": {"put": []any{at("revisions", append(key, 0, 0, 0, 9), record)}},
		"a plan that is noise":   {"put": []any{at("plans", []byte("a"), []byte("noise"))}},
		"a quiz that is noise":   {"put": []any{at("quizzes", []byte("a"), []byte("noise"))}},
		"a list that is noise":   {"put": []any{at("lists", []byte("a"), []byte("noise"))}},
		"an unknown part":        {"put": []any{at("mine", []byte("a"), []byte("noise"))}},
		"the format's number":    {"put": []any{at("about", []byte("schema"), []byte("9"))}},
		"a person":               {"put": []any{at("desk people", []byte("mo"), []byte(`{"name":"MO","role":"owner"}`))}},
		"a pass":                 {"delete": []any{at("desk tokens", []byte("a"), nil)}},
		"another sequence":       {"next": []any{map[string]any{"bucket": "items", "count": "1"}}},
		"a sequence of the desk": {"next": []any{map[string]any{"bucket": "desk people", "count": "1"}}},
		"a bucket of the desk":   {"make": []any{"desk people"}},
	} {
		change["id"] = make([]byte, 16)
		text, err := json.Marshal(change)
		must(t, err)
		if status, said := p.ask(t, "POST", "/api/bank/write", p.tokens["writer"], string(text)); status != http.StatusForbidden {
			t.Errorf("%s: %d %s", name, status, said)
		}
	}
	for _, question := range []string{`{"bucket":"desk people","keys":["bWs="]}`, `{"bucket":"desk sessions","ranges":[{"to":null}],"most":9}`} {
		if status, said := p.ask(t, "POST", "/api/bank/read", p.tokens["owner"], question); status != http.StatusForbidden {
			t.Errorf("%s: %d %s", question, status, said)
		}
	}
	if it, err := p.bank.Get(added[0].ID); err != nil || it.Revision != 1 {
		t.Errorf("the item is %v, %v", it, err)
	}
}

// A pass is shown once, notes its last day, stops at once when it is taken back, and goes with its person.
func TestPassesAreTakenBackSingly(t *testing.T) {
	p := withPrograms(t)
	second, err := p.people.makePass(t.Context(), "MO", "laptop", time.Now())
	must(t, err)
	for _, token := range []string{p.tokens["writer"], second} {
		if status, said := p.ask(t, "GET", "/api/me", token, ""); status != 200 || !strings.Contains(string(said), `"MO"`) {
			t.Errorf("a pass gives %d %s", status, said)
		}
	}
	list, err := p.people.passes(t.Context(), "mo")
	if err != nil || len(list) != 2 || list[1].Used.IsZero() || strings.Contains(fmt.Sprint(list), second) {
		t.Fatalf("the passes are %v, %v", list, err)
	}
	if err := p.people.dropPass(t.Context(), sumOf(second), "SV"); !errors.Is(err, errNobody) {
		t.Errorf("another's pass is taken back: %v", err)
	}
	must(t, p.people.dropPass(t.Context(), sumOf(second), "MO"))
	if status, _ := p.ask(t, "GET", "/api/me", second, ""); status != http.StatusUnauthorized {
		t.Errorf("a pass that was taken back gives %d", status)
	}
	must(t, p.people.change(t.Context(), "MK", "MO", func(o *Person) { o.Role = Reader }))
	if status, _ := p.ask(t, "POST", "/api/bank/write", p.tokens["writer"], "{}"); status != http.StatusForbidden {
		t.Errorf("who became a reader writes: %d", status)
	}
	must(t, p.people.remove(t.Context(), "MK", "MO"))
	must(t, p.bank.Store().Update(t.Context(), func(w store.Writer) error { return putPerson(w, Person{Name: "MO", Role: Owner}) }))
	if status, _ := p.ask(t, "GET", "/api/me", p.tokens["writer"], ""); status != http.StatusUnauthorized {
		t.Errorf("the pass of who was removed lets another of the name in: %d", status)
	}
	for range mostPasses {
		_, err = p.people.makePass(t.Context(), "SV", "more", time.Now())
	}
	if !errors.Is(err, errManyPasses) {
		t.Errorf("one pass too many: %v", err)
	}
}

// The description names every address for programs with its right and what it may answer, and no other.
func TestDescriptionHoldsForTheHandlers(t *testing.T) {
	var api struct {
		Paths      map[string]map[string]operation
		Components struct {
			Schemas map[string]json.RawMessage
		}
	}
	must(t, json.Unmarshal(description, &api))
	rights := map[right]string{toAnyone: "anyone", toRead: "read", toWrite: "write", toMark: "marks", toOwn: "owner"}
	p := withPrograms(t)
	described := map[string]operation{}
	for path, operations := range api.Paths {
		for method, o := range operations {
			described[strings.ToUpper(method)+" "+path] = o
		}
	}
	for _, route := range apiRoutes {
		method, path, found := strings.Cut(route.pattern, " ")
		if !found {
			continue // what isn't there
		}
		o, ok := described[route.pattern]
		delete(described, route.pattern)
		if !ok || o.Right != rights[route.right] {
			t.Errorf("%s needs the right %q and is described with %q", route.pattern, rights[route.right], o.Right)
			continue
		}
		seen := map[int]bool{}
		for _, token := range []string{"", "wrong", p.tokens["reader"], p.tokens["marker"], p.tokens["writer"], p.tokens["owner"]} {
			for _, body := range []string{"", "{", `[]`, `{"moment":"gone"}`, `{"buckets":true}`, `{"id":"MDEyMzQ1Njc4OWFiY2RlZg==","make":["mine"]}`} {
				status, said := p.ask(t, method, path, token, body)
				seen[status] = true
				if strings.HasPrefix(string(said), `{"moment":"`) { // else a file waits for the moment to be over
					p.ask(t, "POST", strings.Replace(path, "/read", "/leave", 1), token, strings.SplitAfter(string(said), `",`)[0][:len(`{"moment":"`)+26]+`"}`)
				}
				if _, ok := o.Responses[fmt.Sprint(status)]; !ok {
					t.Errorf("%s answers %d, which is not described: %s", route.pattern, status, said)
				}
				want := o.Responses["200"].Content["application/json"].Schema
				if status != http.StatusOK {
					want.Ref = "#/components/schemas/Problem"
				}
				if want.Ref != "" {
					if err := fits(said, api.Components.Schemas[strings.TrimPrefix(want.Ref, "#/components/schemas/")]); err != nil {
						t.Errorf("%s answers %d with %.200s: %v", route.pattern, status, said, err)
					}
				}
			}
		}
		if open := route.right == toAnyone; seen[http.StatusUnauthorized] == open || !open && route.right != toRead && !seen[http.StatusForbidden] {
			t.Errorf("%s answered only %v", route.pattern, seen)
		}
		if status, _ := p.ask(t, map[string]string{"GET": "DELETE", "POST": "PUT"}[method], path, p.tokens["owner"], ""); status != http.StatusNotFound {
			t.Errorf("another method at %s gives %d", path, status)
		}
	}
	for pattern := range described {
		t.Errorf("%s is described and not there", pattern)
	}
}

// operation is what the description says of one method at an address.
type operation struct {
	Right     string `json:"x-right"`
	Responses map[string]struct {
		Content map[string]struct {
			Schema struct {
				Ref string `json:"$ref"`
			}
		}
	}
}

// fits says what is wrong with an object by the names that its schema has and requires.
func fits(text []byte, schema json.RawMessage) error {
	var s struct {
		Properties map[string]any
		Required   []string
	}
	var object map[string]any
	if err := errors.Join(json.Unmarshal(schema, &s), json.Unmarshal(text, &object)); err != nil {
		return err
	}
	for name := range object {
		if _, ok := s.Properties[name]; !ok {
			return fmt.Errorf("%q is not described", name)
		}
	}
	for _, name := range s.Required {
		if _, ok := object[name]; !ok {
			return fmt.Errorf("%q is missing", name)
		}
	}
	return nil
}

// Every address is named in the description's file as it is served.
func TestDescriptionIsServed(t *testing.T) {
	p := withPrograms(t)
	status, text := p.ask(t, "GET", "/api/openapi.json", "", "")
	file, err := os.ReadFile("openapi.json")
	if err != nil || status != 200 || !slices.Equal(text, file) {
		t.Errorf("%d, %v", status, err)
	}
}
