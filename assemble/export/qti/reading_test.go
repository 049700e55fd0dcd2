package qti

import (
	"errors"
	"fmt"
	"io"
	"path"
	"slices"
	"strconv"
	"strings"
)

// Reading a package back as it was written, and scoring answers as a test program would: what the checks
// hold the written packages to.

// Read reads a package that Write wrote. Anything else is refused with an error that names the file
// in the package and what is wrong with it.
func Read(r io.ReaderAt, size int64) (Package, error) {
	in, err := openPackage(r, size)
	if err != nil {
		return Package{}, err
	}
	manifest, err := in.tree(manifestName, "manifest", manifestSpace)
	if err != nil {
		return Package{}, err
	}
	return in.contents(manifest)
}

// contents reads what the manifest lists.
func (in *reader) contents(manifest node) (Package, error) {
	about := manifest.first("metadata", "lom", "general")
	p := Package{Title: about.first("title", "string").string(), Lang: about.first("language").string()}
	known := make(map[string]bool)
	for _, resource := range manifest.first("resources").all("resource") {
		id, href := resource.attr("identifier"), resource.attr("href")
		if id == "" || known[id] {
			return Package{}, fmt.Errorf("%s: identifier %q is empty or stands twice", manifestName, id)
		}
		known[id] = true
		for _, file := range resource.all("file") {
			if in.files[file.attr("href")] == nil {
				return Package{}, fmt.Errorf("%s: %s lists %q, which is not in the package", manifestName, id, file.attr("href"))
			}
		}
		var err error
		switch resource.attr("type") {
		case itemType:
			err = in.item(&p, id, href, resource.first("metadata"))
		case testType:
			err = in.test(&p, id, href)
		default:
			err = fmt.Errorf("%s: %s is of type %q; packages of ours hold items and tests", manifestName, id, resource.attr("type"))
		}
		if err != nil {
			return Package{}, err
		}
	}
	for _, test := range p.Tests {
		for _, id := range test.Items {
			if !known[id] {
				return Package{}, fmt.Errorf("%s.xml refers to %q, which the manifest does not list", test.ID, id)
			}
		}
	}
	if len(p.Items) == 0 {
		return Package{}, errors.New("there are no items in it")
	}
	return p, nil
}

func (in *reader) item(p *Package, id, href string, metadata node) error {
	n, err := in.tree(href, "qti-assessment-item", itemSpace)
	if err != nil {
		return err
	}
	it, err := in.readItem(n, path.Dir(href))
	if err == nil {
		err = it.about(metadata)
	}
	if err == nil && it.ID != id {
		err = fmt.Errorf("its identifier is %q, in the manifest it is %q", it.ID, id)
	}
	if err != nil {
		return fmt.Errorf("%s: %w", href, err)
	}
	p.Items = append(p.Items, it)
	return nil
}

func (in *reader) test(p *Package, id, href string) error {
	n, err := in.tree(href, "qti-assessment-test", itemSpace)
	if err != nil {
		return err
	}
	t := Test{ID: n.attr("identifier"), Title: n.attr("title")}
	for _, ref := range n.first("qti-test-part", "qti-assessment-section").all("qti-assessment-item-ref") {
		t.Items = append(t.Items, ref.attr("identifier"))
	}
	if t.ID != id || len(t.Items) == 0 {
		return fmt.Errorf("%s: test %q, in the manifest %q, with %d items", href, t.ID, id, len(t.Items))
	}
	p.Tests = append(p.Tests, t)
	return nil
}

// Score is 1 for a right answer and else 0; answers are by the response's ID. What a person
// marks scores 0 here.
func (it Item) Score(answers map[string][]string) int {
	right := false
	switch first := it.Responses[0]; it.Scoring.By {
	case ByMatch:
		right = sameValues(first, answers[first.ID])
	case ByMap:
		given := answers[first.ID]
		right = len(given) == 1 && slices.ContainsFunc(first.Accepted, func(a string) bool { return strings.EqualFold(a, given[0]) })
	case ByRule:
		n, known := it.value(it.Scoring.Rule, answers)
		right = known && n == 1
	}
	if right {
		return 1
	}
	return 0
}

// sameValues compares values in any order; whole numbers by what they are worth.
func sameValues(r Response, given []string) bool {
	want, got := slices.Clone(r.Correct), slices.Clone(given)
	if r.Kind == Number {
		for i, value := range got {
			if n, err := strconv.Atoi(value); err == nil {
				got[i] = strconv.Itoa(n)
			}
		}
	}
	slices.Sort(want)
	slices.Sort(got)
	return slices.Equal(want, got)
}

// value evaluates a rule; truth is 1 or 0. It is not known where it is null in the
// standard's sense.
func (it Item) value(r Rule, answers map[string][]string) (n int, known bool) {
	var args []int
	all := true
	for _, arg := range r.Args {
		n, ok := it.value(arg, answers)
		if r.Op == "and" && ok && n == 0 {
			return 0, true // false whatever the unknown ones are
		}
		args, all = append(args, n), all && ok
	}
	if !all {
		return 0, false
	}
	switch r.Op {
	case "variable":
		return wholeNumber(answers[r.Name])
	case "correct":
		at := slices.IndexFunc(it.Responses, func(response Response) bool { return response.ID == r.Name })
		return wholeNumber(it.Responses[at].Correct)
	case "base-value":
		return r.N, true
	case "sum":
		for _, arg := range args {
			n += arg
		}
		return n, true
	case "match", "equal":
		return truth(args[0] == args[1]), true
	case "gte":
		return truth(args[0] >= args[1]), true
	case "not":
		return 1 - args[0], true
	}
	return 1, true // and
}

func truth(is bool) int {
	if is {
		return 1
	}
	return 0
}

func wholeNumber(values []string) (int, bool) {
	if len(values) != 1 {
		return 0, false
	}
	n, err := strconv.Atoi(values[0])
	return n, err == nil
}
