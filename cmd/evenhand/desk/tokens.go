package desk

import (
	"cmp"
	"context"
	"encoding/json"
	"errors"
	"net/http"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"evenhand/bank/store"
)

// A pass lets a program of a person's work here in that person's name. Its secret, the token, is shown
// once; only its sum is kept. What it may do is what the person may at that moment.

// tokenBucket holds passes: SHA-256 of the token: pass.
const tokenBucket = "desk tokens"

// mostPasses is how many passes a person may have at a time.
const mostPasses = 20

// pass is a program's way in.
type pass struct {
	Sum    string    `json:"-"`
	Person string    `json:"person"`
	Name   string    `json:"name"` // what it is for
	Made   time.Time `json:"made"`
	Used   time.Time `json:"used"` // the day on which it was used last; zero for never
}

var errManyPasses = errors.New("there are too many passes")

// makePass makes a pass and returns its token.
func (p people) makePass(ctx context.Context, person, name string, now time.Time) (token string, err error) {
	token = "evenhand-" + secret() + secret()
	err = p.store.Update(ctx, func(w store.Writer) error {
		all, err := readPasses(w)
		if err != nil {
			return err
		}
		own := 0
		for _, other := range all {
			if strings.EqualFold(other.Person, person) {
				own++
			}
		}
		if own >= mostPasses {
			return errManyPasses
		}
		return putPass(w, pass{Sum: sumOf(token), Person: person, Name: name, Made: now})
	})
	return token, err
}

func putPass(w store.Writer, made pass) error {
	value, err := json.Marshal(made)
	if err != nil {
		return err
	}
	return w.Put(tokenBucket, []byte(made.Sum), value)
}

func readPasses(r store.Reader) (list []pass, err error) {
	for e, err := range r.Scan(tokenBucket, store.Range{}) {
		if err != nil {
			return nil, err
		}
		one := pass{Sum: string(e.Key)}
		if err := json.Unmarshal(e.Value, &one); err != nil {
			return nil, err
		}
		list = append(list, one)
	}
	return list, nil
}

// passes lists those of a person, or of everybody where person is empty, by person and age.
func (p people) passes(ctx context.Context, person string) (list []pass, err error) {
	err = p.store.View(ctx, func(r store.Reader) error {
		list, err = readPasses(r)
		return err
	})
	list = slices.DeleteFunc(list, func(one pass) bool { return person != "" && !strings.EqualFold(one.Person, person) })
	slices.SortFunc(list, func(a, b pass) int {
		return cmp.Or(strings.Compare(strings.ToLower(a.Person), strings.ToLower(b.Person)), a.Made.Compare(b.Made))
	})
	return list, err
}

// byToken finds the person whose program has the token, and notes the day.
func (p people) byToken(ctx context.Context, token string, now time.Time) (person Person, err error) {
	sum := sumOf(token)
	var found pass
	err = p.store.View(ctx, func(r store.Reader) error {
		if found, err = readPass(r, sum); err != nil {
			return err
		}
		person, err = readPerson(r, found.Person)
		return err
	})
	today := now.UTC().Truncate(24 * time.Hour)
	if err != nil || found.Used.Equal(today) {
		return person, err
	}
	return person, p.store.Update(ctx, func(w store.Writer) error {
		found, err := readPass(w, sum)
		if err != nil {
			return err
		}
		found.Used = today
		return putPass(w, found)
	})
}

func readPass(r store.Reader, sum string) (found pass, err error) {
	value, err := r.Get(tokenBucket, []byte(sum))
	if err != nil {
		return found, err
	}
	if value == nil {
		return found, errNobody
	}
	found.Sum = sum
	return found, json.Unmarshal(value, &found)
}

// dropPass takes a pass back, of the person or, where that is empty, of anybody.
func (p people) dropPass(ctx context.Context, sum, person string) error {
	return p.store.Update(ctx, func(w store.Writer) error {
		found, err := readPass(w, sum)
		if err != nil {
			return err
		}
		if person != "" && !strings.EqualFold(found.Person, person) {
			return errNobody
		}
		return w.Delete(tokenBucket, []byte(sum))
	})
}

// dropPasses takes all passes of a person back.
func dropPasses(w store.Writer, person string) error {
	all, err := readPasses(w)
	if err != nil {
		return err
	}
	for _, one := range all {
		if strings.EqualFold(one.Person, person) {
			if err := w.Delete(tokenBucket, []byte(one.Sum)); err != nil {
				return err
			}
		}
	}
	return nil
}

// passesOf is whose passes a person may see and take back: their own, or for an owner everybody's, as "".
func (v *visit) passesOf() string {
	if v.who.Role.may(Owner) {
		return ""
	}
	return v.who.Name
}

// passesPage lists a person's passes; an owner sees everybody's.
func passesPage(v *visit) error { return v.showPasses("") }

func (v *visit) showPasses(token string) error {
	list, err := v.desk.people.passes(v.Context(), v.passesOf())
	if err != nil {
		return err
	}
	return v.show("passes", struct {
		Passes         []pass
		Token, Address string
	}{list, token, v.address("")})
}

// makePass makes a pass and shows its token, this once.
func makePass(v *visit) error {
	name := strings.Join(strings.Fields(v.FormValue("name")), " ")
	if name == "" || utf8.RuneCountInString(name) > 40 {
		return v.wrong("passes.noname")
	}
	token, err := v.desk.people.makePass(v.Context(), v.who.Name, name, v.now())
	if errors.Is(err, errManyPasses) {
		return v.wrong("passes.many", mostPasses)
	}
	if err != nil {
		return err
	}
	return v.showPasses(token)
}

// dropPass takes a pass back: one's own or, for an owner, anybody's.
func dropPass(v *visit) error {
	err := v.desk.people.dropPass(v.Context(), v.FormValue("pass"), v.passesOf())
	if errors.Is(err, errNobody) {
		return &fault{status: http.StatusNotFound, text: v.said.say("passes.gone"), link: "/passes"}
	}
	if err != nil {
		return err
	}
	return v.to("/passes")
}
