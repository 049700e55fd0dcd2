package desk

import (
	"context"
	"crypto/rand"
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"errors"
	"fmt"
	"runtime"
	"slices"
	"strings"
	"time"

	"evenhand/bank/store"

	"golang.org/x/crypto/argon2"
)

// Role is what a person may do on the desk.
type Role string

// The roles, each with all that the one before may.
const (
	Reader Role = "reader" // look at items, plans and quizzes
	Writer Role = "writer" // change them
	Owner  Role = "owner"  // invite people and bring back backups, too
)

var roles = []Role{Reader, Writer, Owner}

// may says whether the role has all that another one has.
func (r Role) may(wanted Role) bool { return slices.Index(roles, r) >= slices.Index(roles, wanted) }

// Person is somebody who can sign in.
type Person struct {
	Name     string    `json:"name"` // as it stands in histories, such as MK
	Role     Role      `json:"role"`
	Marks    bool      `json:"marks"` // sees and enters pupils' marks
	Password string    `json:"password"`
	Since    time.Time `json:"since"`
}

// Invitation lets one person in, once.
type Invitation struct {
	Role  Role      `json:"role"`
	Marks bool      `json:"marks"`
	By    string    `json:"by"`
	Until time.Time `json:"until"`
}

// The buckets in the bank's store.
const (
	peopleBucket     = "desk people"      // name in small letters: Person
	invitationBucket = "desk invitations" // SHA-256 of the secret: Invitation
)

// people are kept in the bank's store, so that every desk of a bank knows them.
type people struct{ store store.Store }

var (
	errTaken    = errors.New("this name is taken")
	errNobody   = errors.New("there is nobody of this name")
	errExpired  = errors.New("this invitation was used already or is too old")
	errPassword = errors.New("name and password don't belong together")
	errNoOwner  = errors.New("who asks is no owner any more")
	errLast     = errors.New("the last owner has to stay one")
)

func personKey(name string) []byte {
	return []byte(strings.ToLower(strings.Join(strings.Fields(name), " ")))
}

func sumOf(secret string) string {
	sum := sha256.Sum256([]byte(secret))
	return base64.RawURLEncoding.EncodeToString(sum[:])
}

// find reads a person.
func (p people) find(ctx context.Context, name string) (person Person, err error) {
	err = p.store.View(ctx, func(r store.Reader) error {
		person, err = readPerson(r, name)
		return err
	})
	return person, err
}

// peopleRead are people by what is kept of them, as every request asks for one.
var peopleRead = remembered[string, Person]{most: 1000}

func readPerson(r store.Reader, name string) (person Person, err error) {
	key := personKey(name)
	if len(key) == 0 {
		return person, errNobody
	}
	value, err := r.Get(peopleBucket, key)
	if err != nil {
		return person, err
	}
	if value == nil {
		return person, errNobody
	}
	return peopleRead.of(string(value), func() (person Person, err error) {
		err = json.Unmarshal(value, &person)
		return person, err
	})
}

func putPerson(w store.Writer, person Person) error {
	value, err := json.Marshal(person)
	if err != nil {
		return err
	}
	return w.Put(peopleBucket, personKey(person.Name), value)
}

// all lists everybody by name.
func (p people) all(ctx context.Context) (list []Person, err error) {
	err = p.store.View(ctx, func(r store.Reader) error {
		list, err = readPeople(r)
		return err
	})
	return list, err
}

func readPeople(r store.Reader) (list []Person, err error) {
	for entry, err := range r.Scan(peopleBucket, store.Range{}) {
		if err != nil {
			return nil, err
		}
		var person Person
		if err := json.Unmarshal(entry.Value, &person); err != nil {
			return nil, fmt.Errorf("a person of the desk can't be read: %w", err)
		}
		list = append(list, person)
	}
	return list, nil
}

// invite makes an invitation and gives its secret, which is kept nowhere.
func (p people) invite(ctx context.Context, invitation Invitation) (string, error) {
	word := secret()
	value, err := json.Marshal(invitation)
	if err != nil {
		return "", err
	}
	return word, p.store.Update(ctx, func(w store.Writer) error {
		if invitation.By != "" {
			if err := stillOwner(w, invitation.By); err != nil {
				return err
			}
		}
		return w.Put(invitationBucket, []byte(sumOf(word)), value)
	})
}

// invited reads an invitation that still holds.
func (p people) invited(ctx context.Context, word string, now time.Time) (invitation Invitation, err error) {
	err = p.store.View(ctx, func(r store.Reader) error {
		invitation, err = readInvitation(r, word, now)
		return err
	})
	return invitation, err
}

func readInvitation(r store.Reader, word string, now time.Time) (invitation Invitation, err error) {
	value, err := r.Get(invitationBucket, []byte(sumOf(word)))
	if err != nil {
		return invitation, err
	}
	if value == nil || json.Unmarshal(value, &invitation) != nil || now.After(invitation.Until) {
		return invitation, errExpired
	}
	return invitation, nil
}

// accept uses an invitation up and lets its person in.
func (p people) accept(ctx context.Context, word, name, password string, now time.Time) (person Person, err error) {
	sealed := sealPassword(password)
	err = p.store.Update(ctx, func(w store.Writer) error {
		invitation, err := readInvitation(w, word, now)
		if err != nil {
			return err
		}
		if _, err := readPerson(w, name); !errors.Is(err, errNobody) {
			return errors.Join(errTaken, err)
		}
		person = Person{
			Name: strings.Join(strings.Fields(name), " "), Role: invitation.Role, Marks: invitation.Marks, Password: sealed, Since: now,
		}
		if err := w.Delete(invitationBucket, []byte(sumOf(word))); err != nil {
			return err
		}
		return putPerson(w, person)
	})
	return person, err
}

// change rewrites a person, as an owner wishes; the last owner stays one.
func (p people) change(ctx context.Context, by, name string, change func(*Person)) error {
	return p.store.Update(ctx, func(w store.Writer) error {
		if err := stillOwner(w, by); err != nil {
			return err
		}
		person, err := readPerson(w, name)
		if err != nil {
			return err
		}
		change(&person)
		if err := putPerson(w, person); err != nil {
			return err
		}
		if person.Role != Owner {
			if err := dropInvitations(w, name); err != nil {
				return err
			}
		}
		return stillOwned(w)
	})
}

// remove takes a person out, as an owner wishes; their name stays in histories.
func (p people) remove(ctx context.Context, by, name string) error {
	return p.store.Update(ctx, func(w store.Writer) error {
		if err := stillOwner(w, by); err != nil {
			return err
		}
		if _, err := readPerson(w, name); err != nil {
			return err
		}
		if err := errors.Join(w.Delete(peopleBucket, personKey(name)), dropPasses(w, name), dropInvitations(w, name)); err != nil {
			return err
		}
		return stillOwned(w)
	})
}

// dropInvitations takes away the invitations of who may invite nobody any more.
func dropInvitations(w store.Writer, by string) error {
	for entry, err := range w.Scan(invitationBucket, store.Range{}) {
		if err != nil {
			return err
		}
		var one Invitation
		if json.Unmarshal(entry.Value, &one) == nil && strings.EqualFold(one.By, by) {
			if err := w.Delete(invitationBucket, entry.Key); err != nil {
				return err
			}
		}
	}
	return nil
}

// stillOwner says that a person is an owner at this moment: somebody else may have taken that away since they asked.
func stillOwner(r store.Reader, name string) error {
	person, err := readPerson(r, name)
	if errors.Is(err, errNobody) || err == nil && !person.Role.may(Owner) {
		return errNoOwner
	}
	return err
}

func stillOwned(r store.Reader) error {
	list, err := readPeople(r)
	if err != nil {
		return err
	}
	if !slices.ContainsFunc(list, func(p Person) bool { return p.Role == Owner }) {
		return errLast
	}
	return nil
}

// signIn finds the person to whom name and password belong. It takes as long for an unknown name.
func (p people) signIn(ctx context.Context, name, password string) (Person, error) {
	person, err := p.find(ctx, name)
	if err != nil && !errors.Is(err, errNobody) {
		return Person{}, err
	}
	if !passwordFits(person.Password, password) {
		return Person{}, errPassword
	}
	return person, nil
}

// The cost of a password: argon2id with 19 MiB, two passes and one thread, the least that the OWASP
// Password Storage Cheat Sheet recommends.
const (
	passes    = 2
	memory    = 19 << 10 // KiB
	threads   = 1
	saltSize  = 16
	proofSize = 32
)

// sealPassword is what is kept of a password: a salt and what argon2id makes of both.
func sealPassword(password string) string {
	salt := make([]byte, saltSize)
	_, _ = rand.Read(salt) // never fails (crypto/rand)
	return base64.RawStdEncoding.EncodeToString(append(salt, stretched(password, salt)...))
}

func passwordFits(sealed, password string) bool {
	kept, err := base64.RawStdEncoding.DecodeString(sealed)
	if err != nil || len(kept) != saltSize+proofSize {
		kept = make([]byte, saltSize+proofSize)
		password += "\x00" // fits nothing, and takes its time
	}
	return same(string(kept[saltSize:]), string(stretched(password, kept[:saltSize])))
}

// stretching holds a place for each password that is being stretched: each takes its memory.
var stretching = make(chan struct{}, runtime.GOMAXPROCS(0))

func stretched(password string, salt []byte) []byte {
	stretching <- struct{}{}
	defer func() { <-stretching }()
	return argon2.IDKey([]byte(password), salt, passes, memory, threads, proofSize)
}
