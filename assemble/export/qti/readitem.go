package qti

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// readItem reads an item's file; folder is where its pictures are looked for.
func (in *reader) readItem(n node, folder string) (Item, error) {
	it := Item{ID: n.attr("identifier"), Title: n.attr("title"), Lang: n.attr("lang")}
	for _, declaration := range n.all("qti-response-declaration") {
		it.Responses = append(it.Responses, readDeclaration(declaration))
	}
	if len(it.Responses) == 0 {
		return it, errors.New("nothing is to be answered")
	}
	if err := in.readBody(&it, n.first("qti-item-body"), folder); err != nil {
		return it, err
	}
	for _, r := range it.Responses {
		form, ok := forms[r.Kind]
		if !ok {
			return it, fmt.Errorf("response %q is declared but not asked for", r.ID)
		}
		if len(r.Correct) == 0 && form.base != "file" && r.Kind != Text {
			return it, fmt.Errorf("response %q has no right value", r.ID)
		}
	}
	return it, it.readProcessing(n.all("qti-response-processing"))
}

// readDeclaration reads all of a response but its kind, which the body shows.
func readDeclaration(n node) Response {
	r := Response{ID: n.attr("identifier"), Correct: n.first("qti-correct-response").values("qti-value")}
	for _, entry := range n.first("qti-mapping").all("qti-map-entry") {
		r.Accepted = append(r.Accepted, entry.attr("map-key"))
	}
	if n.attr("base-type") == "integer" {
		r.Kind = Number // for now: readText checks it
	}
	return r
}

// readBody reads paragraphs, pictures and interactions.
func (in *reader) readBody(it *Item, body node, folder string) (err error) {
	for _, n := range body.kids {
		switch {
		case n.name == "p" && len(n.kids) == 1 && n.kids[0].name == "img":
			it.Picture, err = in.picture(n.kids[0], folder)
		case n.name == "p":
			err = it.readParagraph(n)
		case n.name == "qti-rubric-block":
			it.Rubric = n.first("qti-content-body", "p").string()
		default:
			err = in.readBlock(it, n, folder)
		}
		if err != nil {
			return err
		}
	}
	if len(it.Stem) == 0 {
		return errors.New("nothing is asked")
	}
	return nil
}

func (it *Item) readParagraph(p node) error {
	var parts []Part
	for _, n := range p.kids {
		switch n.name {
		case "":
			parts = append(parts, Part{Text: n.text})
		case "qti-text-entry-interaction":
			r, err := it.asked(n)
			if err != nil {
				return err
			}
			if r.Kind == "" {
				r.Kind = Words
			}
			parts = append(parts, Part{Response: r.ID})
		default:
			return fmt.Errorf("%s in a paragraph; files of ours have none", n.name)
		}
	}
	it.Stem = append(it.Stem, parts)
	return nil
}

// asked is the declared response that an interaction is for.
func (it *Item) asked(n node) (*Response, error) {
	id := n.attr("response-identifier")
	at := slices.IndexFunc(it.Responses, func(r Response) bool { return r.ID == id })
	if at < 0 {
		return nil, fmt.Errorf("response %q is asked for but not declared", id)
	}
	return &it.Responses[at], nil
}

// readBlock reads an interaction that stands by itself.
func (in *reader) readBlock(it *Item, n node, folder string) error {
	kind, ok := blockKind(n.name)
	if !ok {
		return fmt.Errorf("%s in the question; files of ours have none", n.name)
	}
	r, err := it.asked(n)
	if err != nil {
		return err
	}
	r.Kind = kind
	it.Stem = append(it.Stem, []Part{{Text: n.first("qti-prompt").string()}})
	switch kind {
	case Choice:
		r.Options, err = in.readOptions(n.all("qti-simple-choice"), folder)
	case Match:
		sets := n.all("qti-simple-match-set")
		if len(sets) != 2 {
			return fmt.Errorf("%d sets to join; there are two", len(sets))
		}
		if r.Options, err = in.readOptions(sets[0].kids, folder); err == nil {
			r.Others, err = in.readOptions(sets[1].kids, folder)
		}
	case Drawing:
		it.Picture, err = in.picture(n.first("img"), folder)
	}
	return err
}

// blockKind is the kind of response of an element that stands by itself.
func blockKind(name string) (Kind, bool) {
	for kind, form := range forms {
		if form.element == name && !kind.typedIn() {
			return kind, true
		}
	}
	return "", false
}

func (in *reader) readOptions(list []node, folder string) (options []Option, err error) {
	for _, n := range list {
		option := Option{ID: n.attr("identifier"), Text: n.string()}
		if images := n.all("img"); len(images) > 0 {
			if option.Picture, err = in.picture(images[0], folder); err != nil {
				return nil, err
			}
		}
		options = append(options, option)
	}
	return options, nil
}

// readProcessing reads how the score is found.
func (it *Item) readProcessing(list []node) error {
	if len(list) == 0 {
		it.Scoring.By = ByPerson
		return nil
	}
	template := strings.TrimSuffix(strings.TrimPrefix(list[0].attr("template"), templates), ".xml")
	switch way := Way(template); way {
	case ByMatch, ByMap:
		it.Scoring.By = way
		return nil
	case "":
		condition := list[0].first("qti-response-condition", "qti-response-if")
		if len(condition.kids) == 0 {
			return errors.New("no rule for the score")
		}
		rule, err := it.readRule(condition.kids[0])
		it.Scoring = Scoring{ByRule, rule}
		return err
	}
	return fmt.Errorf("scoring by %q; files of ours have no such template", template)
}

// readRule reads an expression and checks that it can be evaluated.
func (it *Item) readRule(n node) (Rule, error) {
	r := Rule{Op: strings.TrimPrefix(n.name, "qti-"), Name: n.attr("identifier")}
	args, ok := arity[r.Op]
	if r.Op == "base-value" {
		whole, err := strconv.Atoi(n.string())
		if err != nil {
			return r, fmt.Errorf("%q in a rule is not a whole number", n.string())
		}
		r.N, n.kids = whole, nil
	}
	if !ok || args >= 0 && len(n.kids) != args || args < 0 && len(n.kids) == 0 {
		return r, fmt.Errorf("%s with %d parts in the rule for the score; files of ours have none", n.name, len(n.kids))
	}
	if r.Op == "variable" || r.Op == "correct" {
		if !slices.ContainsFunc(it.Responses, func(response Response) bool { return response.ID == r.Name }) {
			return r, fmt.Errorf("the rule for the score names %q, which is not declared", r.Name)
		}
	}
	for _, kid := range n.kids {
		arg, err := it.readRule(kid)
		if err != nil {
			return r, err
		}
		r.Args = append(r.Args, arg)
	}
	return r, nil
}
