package qti

import (
	"archive/zip"
	"bytes"
	"cmp"
	"fmt"
	"io"
	"net/url"
	"path"
	"slices"
	"strings"

	"evenhand/standards"
	"evenhand/standards/task"
)

// Row is one item of a package as a row of a list: what it asks and what is right, or why it can't be
// read.
type Row struct {
	File     string // in the package
	Question string // the task in plain text form where the package tells it, else its words
	Lang     string // of the words
	Answer   string
	Skill    standards.SkillID // empty where the package tells none
	Codes    []task.Code
	Problem  string // why the item can't be read; there may be words all the same, to mend it by
}

// Rows reads the items of a package, whoever wrote it, in the order of its manifest. An item that can't
// be read is a row with its reason, so that it costs no other; an error means that the file is no package
// of QTI 3.0 or not a safe one.
func Rows(r io.ReaderAt, size int64) ([]Row, error) {
	in, err := openPackage(r, size)
	if err != nil {
		return nil, err
	}
	manifest, err := in.manifest()
	if err != nil {
		return nil, err
	}
	var rows []Row
	read := map[string]bool{}
	for _, resource := range manifest.first("resources").all("resource") {
		if !strings.HasPrefix(resource.attr("type"), "imsqti_item") {
			continue
		}
		if len(rows) == maxItems {
			return nil, fmt.Errorf("more than %d items are in it; have it exported in parts", maxItems)
		}
		row := Row{File: in.named(resource.attr("href"))}
		if read[row.File] {
			row.Problem = row.File + " is listed more than once"
		} else if err := in.row(&row, resource.first("metadata")); err != nil {
			row.Problem = err.Error()
		}
		read[row.File] = true
		rows = append(rows, row)
	}
	if len(rows) == 0 {
		return nil, fmt.Errorf("%s lists no items of QTI 3.0", manifestName)
	}
	return rows, nil
}

// manifest is what lists the contents of a package.
func (in *reader) manifest() (node, error) {
	n, err := in.any(manifestName)
	if err == nil && (n.name != "manifest" || n.space != manifestSpace) {
		return n, fmt.Errorf("this is a package of another kind or version (%s of %q); have it exported as QTI 3.0", n.name, n.space)
	}
	return n, err
}

// named is the file that an address in the manifest means (RFC 3986: %20 is a space, and what follows ? or # is no part of its name).
func (in *reader) named(href string) string {
	if address, err := url.Parse(href); err == nil && in.files[href] == nil && address.Host == "" {
		return path.Clean(address.Path)
	}
	return href
}

// row reads one item: as ours where it is, else its words and its right response.
func (in *reader) row(row *Row, metadata node) error {
	n, err := in.tree(row.File, "qti-assessment-item", itemSpace)
	if err != nil {
		return err
	}
	row.Lang = strings.ToLower(strings.SplitN(n.attr("lang"), "-", 2)[0])
	it, err := in.readItem(n, path.Dir(row.File))
	if err == nil && it.about(metadata) == nil && it.Task != "" {
		row.Question, row.Answer, row.Skill, row.Codes = it.Task, it.Key(), it.Skill, it.Codes
		return nil
	}
	row.Question = strings.Join(strings.Fields(n.first("qti-item-body").asked()), " ")
	if row.Question == "" {
		return fmt.Errorf("nothing is asked in words")
	}
	row.Skill, row.Codes = it.Skill, it.Codes
	if strange := n.first("qti-item-body").strange(); strange != "" {
		return fmt.Errorf("it has %s in it, which a question of a list has no place for", strange)
	}
	declared := n.all("qti-response-declaration")
	if len(declared) != 1 {
		return fmt.Errorf("%d answers are asked for; a question of a list has one", len(declared))
	}
	if many := declared[0].attr("cardinality"); many != "single" {
		return fmt.Errorf("its answer is %s; that of a question of a list is single", cmp.Or(many, "of no kind"))
	}
	right := declared[0].first("qti-correct-response").values("qti-value")
	switch {
	case len(right) == 1:
		row.Answer = n.first("qti-item-body").option(right[0])
	case len(right) > 1:
		return fmt.Errorf("%d answers together are right; a question of a list has one", len(right))
	case len(it.Responses) == 1:
		row.Answer = it.Key()
	}
	return nil
}

// quiet are elements whose words are no part of the question.
var quiet = []string{"qti-simple-choice", "qti-rubric-block", "qti-feedback-block", "qti-feedback-inline", "qti-modal-feedback"}

// asked are the words of a question, with a blank where something is typed.
func (n node) asked() string {
	switch {
	case n.name == "qti-text-entry-interaction" || n.name == "qti-inline-choice-interaction":
		return " ___ "
	case slices.Contains(quiet, n.name):
		return ""
	}
	text := n.text
	for _, kid := range n.kids {
		text += kid.asked()
	}
	if n.name == "p" || n.name == "div" || n.name == "qti-prompt" {
		text += " "
	}
	return text
}

// inWords are the ways to answer that words and one right answer tell whole.
var inWords = []string{"qti-text-entry-interaction", "qti-extended-text-interaction", "qti-choice-interaction", "qti-inline-choice-interaction"}

// strange is what a question shows or asks that is lost in its words; empty for none.
func (n node) strange() string {
	if slices.Contains([]string{"img", "picture", "object", "svg", "video", "audio", "table"}, n.name) ||
		strings.HasSuffix(n.name, "-interaction") && !slices.Contains(inWords, n.name) {
		return n.name
	}
	for _, kid := range n.kids {
		if what := kid.strange(); what != "" {
			return what
		}
	}
	return ""
}

// option is the text of the choice that an identifier names, else the identifier, which is then what is
// typed.
func (n node) option(id string) string {
	if (n.name == "qti-simple-choice" || n.name == "qti-inline-choice") && n.attr("identifier") == id {
		return strings.Join(strings.Fields(n.string()), " ")
	}
	for _, kid := range n.kids {
		if text := kid.option(id); text != id {
			return text
		}
	}
	return id
}

// IsPackage says whether the bytes are a zip archive with a manifest in its place.
func IsPackage(data []byte) bool {
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	return err == nil && slices.ContainsFunc(z.File, func(f *zip.File) bool { return f.Name == folderOf(z)+manifestName })
}
