package words

import (
	"encoding/json"
	"fmt"
	"reflect"
	"regexp"
	"strings"
)

// Told is a sentence for people: its English, with verbs of package fmt, and what goes into them. It reads as
// English by itself; who speaks another language puts its own sentence in the place of the English one, as
// catalogues of messages do. Nil tells nothing.
type Told struct {
	Format string `json:"says"`
	Args   []any  `json:"with,omitempty"` // numbers, texts, and things told themselves
}

// Sayf is a sentence with what goes into it. Bytes go into it as a text of their own, since they may be a store's,
// gone before the sentence is read.
func Sayf(format string, args ...any) *Told {
	for i, arg := range args {
		if bytes, ok := arg.([]byte); ok {
			args[i] = string(bytes)
		}
	}
	return &Told{format, args}
}

// Errorf is a sentence as an error, which wraps every error among what goes into it.
func Errorf(format string, args ...any) error { return Sayf(format, args...) }

// SayCount is the sentence about a number: one for 1, else many.
func SayCount(n int, one, many string) *Told {
	if n == 1 {
		return Sayf(one, n)
	}
	return Sayf(many, n)
}

// Term is a word or name that other languages may have their own for, such as that of a delimiter.
func Term(name string) *Told { return &Told{Format: name} }

// Joined is a list in one sentence: the format puts each behind those before it, such as "%s or %s".
func Joined[T any](list []T, format string) *Told {
	var all *Told
	for i, one := range list {
		if i == 0 {
			all = Sayf("%s", one)
		} else {
			all = Sayf(format, all, one)
		}
	}
	return all
}

// String is the sentence in English.
func (t *Told) String() string {
	if t == nil {
		return ""
	}
	return fmt.Sprintf(plainVerbs(t.Format), t.Args...)
}

// Error is the sentence in English.
func (t *Told) Error() string { return t.String() }

// Unwrap gives the errors that went into the sentence.
func (t *Told) Unwrap() (inside []error) {
	if t == nil {
		return nil
	}
	for _, arg := range t.Args {
		if err, ok := arg.(error); ok && arg != (*Told)(nil) {
			inside = append(inside, err)
		}
	}
	return inside
}

// In is the sentence in another language: other gives its format for the English one, and each what is said
// there for a thing that goes into it. A format without words of its own stays.
func (t *Told) In(other func(format string) (string, bool), each func(arg any) any) string {
	if t == nil {
		return ""
	}
	format, known := other(t.Format)
	if !known {
		if format = t.Format; SaysWords(format) {
			return t.String()
		}
	}
	args := make([]any, len(t.Args))
	for i, arg := range t.Args {
		args[i] = each(arg)
	}
	return fmt.Sprintf(plainVerbs(format), args...)
}

var verb = regexp.MustCompile(`%[^a-zA-Z%]*[a-zA-Z%]`)

// SaysWords says whether a format has letters beside its verbs.
func SaysWords(format string) bool {
	return strings.ContainsFunc(verb.ReplaceAllString(format, ""), func(r rune) bool { return r >= 'A' })
}

// plainVerbs has %v where an error is wrapped, so that all formats are written the same way.
func plainVerbs(format string) string { return strings.ReplaceAll(format, "%w", "%v") }

// ToldBy is the sentence that an error tells, several ones where it joins errors; an error of another kind tells
// its English.
func ToldBy(err error) *Told {
	switch e := err.(type) {
	case nil:
		return nil
	case *Told:
		return e
	case Teller:
		return e.Told()
	case interface{ Unwrap() error }:
		if inside := e.Unwrap(); inside != nil {
			return ToldBy(inside)
		}
	case interface{ Unwrap() []error }:
		var all []*Told
		for _, one := range e.Unwrap() {
			all = append(all, ToldBy(one))
		}
		return Joined(all, "%s; %s")
	}
	return saidBySystem(err)
}

// Teller is an error or a note of its own type that a sentence tells.
type Teller interface{ Told() *Told }

// MarshalJSON keeps the sentence; things that go into it are kept as they read in English, and a sentence that
// is nothing but a text as that text.
func (t *Told) MarshalJSON() ([]byte, error) {
	if t == nil {
		return []byte("null"), nil
	}
	type record Told
	kept := record{Format: t.Format}
	for _, arg := range t.Args {
		kept.Args = append(kept.Args, asKept(arg))
	}
	if text, ok := t.text(); ok {
		return json.Marshal(text)
	}
	return json.Marshal(kept)
}

// text is what a sentence says that is nothing but a text.
func (t *Told) text() (text string, ok bool) {
	if t.Format != "%s" || len(t.Args) != 1 {
		return "", false
	}
	text, ok = t.Args[0].(string)
	return text, ok
}

func asKept(arg any) any {
	if err, ok := arg.(error); ok {
		return ToldBy(err)
	}
	if _, named := arg.(fmt.Stringer); !named && reflect.ValueOf(arg).CanInt() {
		return arg
	}
	return fmt.Sprint(arg)
}

// UnmarshalJSON reads what MarshalJSON kept.
func (t *Told) UnmarshalJSON(data []byte) error {
	var text string
	if json.Unmarshal(data, &text) == nil {
		t.Format, t.Args = "%s", []any{text}
		return nil
	}
	var record struct {
		Says string            `json:"says"`
		With []json.RawMessage `json:"with"`
	}
	if err := json.Unmarshal(data, &record); err != nil {
		return err
	}
	t.Format, t.Args = record.Says, nil
	for _, kept := range record.With {
		var number int
		var text string
		told := &Told{}
		switch {
		case json.Unmarshal(kept, &number) == nil:
			t.Args = append(t.Args, number)
		case json.Unmarshal(kept, &text) == nil:
			t.Args = append(t.Args, text)
		default:
			if err := json.Unmarshal(kept, told); err != nil {
				return err
			}
			t.Args = append(t.Args, told)
		}
	}
	return nil
}
