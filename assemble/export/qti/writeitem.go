package qti

import "fmt"

// tree is the item's file.
func (it Item) tree() node {
	n := root("qti-assessment-item", itemSpace, itemSchema, "identifier", it.ID, "title", it.Title,
		"xml:lang", it.Lang, "adaptive", "false", "time-dependent", "false")
	for _, r := range it.Responses {
		n = n.with(r.declaration())
	}
	return n.with(it.Scoring.outcome(), it.body()).with(it.Scoring.processing()...)
}

// declaration says what a response is and which is right.
func (r Response) declaration() node {
	form := forms[r.Kind]
	n := element("qti-response-declaration", "identifier", r.ID, "cardinality", form.cardinality, "base-type", form.base)
	if len(r.Correct) > 0 {
		right := element("qti-correct-response")
		for _, value := range r.Correct {
			right = right.with(element("qti-value").saying(value))
		}
		n = n.with(right)
	}
	if len(r.Accepted) > 0 {
		mapping := element("qti-mapping", "lower-bound", "0", "upper-bound", "1", "default-value", "0")
		for _, text := range r.Accepted {
			mapping = mapping.with(element("qti-map-entry", "map-key", text, "mapped-value", "1", "case-sensitive", "false"))
		}
		n = n.with(mapping)
	}
	return n
}

// outcome declares the score.
func (s Scoring) outcome() node {
	n := element("qti-outcome-declaration", "identifier", "SCORE", "cardinality", "single", "base-type", "float", "normal-maximum", "1", "normal-minimum", "0")
	if s.By == ByPerson {
		n.attrs = append(n.attrs, attr{"external-scored", "human"})
	}
	return n.with(element("qti-default-value").with(element("qti-value").saying("0")))
}

// processing is how the score is found; nothing where a person finds it.
func (s Scoring) processing() []node {
	switch s.By {
	case ByPerson:
		return nil
	case ByRule:
		one := element("qti-set-outcome-value", "identifier", "SCORE").with(element("qti-base-value", "base-type", "float").saying("1"))
		condition := element("qti-response-condition").with(element("qti-response-if").with(s.Rule.tree(), one))
		return []node{element("qti-response-processing").with(condition)}
	}
	return []node{element("qti-response-processing", "template", templates+string(s.By)+".xml")}
}

func (r Rule) tree() node {
	n := element("qti-" + r.Op)
	switch r.Op {
	case "variable", "correct":
		n = element("qti-"+r.Op, "identifier", r.Name)
	case "base-value":
		n = element("qti-base-value", "base-type", "integer").saying(fmt.Sprint(r.N))
	case "equal":
		n = element("qti-equal", "tolerance-mode", "exact")
	}
	for _, arg := range r.Args {
		n = n.with(arg.tree())
	}
	return n
}

// body is what is seen: the picture, the question with places to type at, or the question with what
// is to be chosen, joined or drawn.
func (it Item) body() node {
	n := element("qti-item-body")
	r := it.Responses[0]
	if it.Picture != nil && r.Kind != Drawing {
		n = n.with(element("p").with(it.Picture.image(it.ID)))
	}
	stem := it.Stem
	if !r.Kind.typedIn() {
		stem = stem[:len(stem)-1]
	}
	for _, parts := range stem {
		n = n.with(it.paragraph(parts))
	}
	if !r.Kind.typedIn() {
		n = n.with(it.block(r, it.Stem[len(stem)]))
	}
	if it.Rubric != "" {
		text := element("qti-content-body").with(element("p").saying(it.Rubric))
		n = n.with(element("qti-rubric-block", "use", "scoring", "view", "scorer").with(text))
	}
	return n
}

func (it Item) paragraph(parts []Part) node {
	p := element("p")
	for _, part := range parts {
		if part.Response == "" {
			p = p.saying(part.Text)
			continue
		}
		p = p.with(element("qti-text-entry-interaction", "response-identifier", part.Response, "expected-length", it.room(part.Response)))
	}
	return p
}

// room is how many characters a place to type shows: more than any answer of its kind needs, so that
// it does not tell how long the right one is.
func (it Item) room(response string) string {
	for _, r := range it.Responses {
		if r.ID == response && r.Kind == Words {
			return fmt.Sprint(longest)
		}
	}
	return "5"
}

// block is an interaction that stands by itself, with the last paragraph of the question as its
// prompt.
func (it Item) block(r Response, prompt []Part) node {
	n := element(forms[r.Kind].element, "response-identifier", r.ID)
	question := element("qti-prompt").saying(prompt[0].Text)
	switch r.Kind {
	case Choice:
		n.attrs = append(n.attrs, attr{"shuffle", "false"}, attr{"max-choices", "1"})
		n = n.with(question).with(it.options(r.Options, "qti-simple-choice")...)
	case Match:
		n.attrs = append(n.attrs, attr{"shuffle", "false"}, attr{"max-associations", fmt.Sprint(len(r.Options))})
		n = n.with(question)
		for _, side := range [][]Option{r.Options, r.Others} {
			n = n.with(element("qti-simple-match-set").with(it.options(side, "qti-simple-associable-choice", "match-max", "1")...))
		}
	case Drawing:
		n = n.with(question, it.Picture.image(it.ID))
	case Text:
		n = n.with(question)
	}
	return n
}

func (it Item) options(options []Option, name string, attributes ...string) []node {
	var list []node
	for _, option := range options {
		n := element(name, append([]string{"identifier", option.ID}, attributes...)...)
		if option.Picture != nil {
			n = n.with(option.Picture.image(it.ID + "-" + option.ID))
		} else {
			n = n.saying(option.Text)
		}
		list = append(list, n)
	}
	return list
}

// image refers to a picture's file from an item's file.
func (p Picture) image(name string) node {
	return element("img", "src", "pictures/"+name+".svg", "alt", p.Alt)
}

// pictures are the item's pictures by the names of their files without folder and ending.
func (it Item) pictures() (names []string, pictures []*Picture) {
	if it.Picture != nil {
		names, pictures = append(names, it.ID), append(pictures, it.Picture)
	}
	for _, option := range it.Responses[0].Options {
		if option.Picture != nil {
			names, pictures = append(names, it.ID+"-"+option.ID), append(pictures, option.Picture)
		}
	}
	return names, pictures
}
