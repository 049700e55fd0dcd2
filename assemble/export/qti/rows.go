package qti

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
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
	Problem  string // why the item can't be read; the rest is empty then
}

// Rows reads the items of a package, whoever wrote it, in the order of its manifest. An item that can't
// be read is a row with its reason, so that it costs no other; an error means that the file is no package
// of QTI 3.0 or not a safe one.
func Rows(r io.ReaderAt, size int64) ([]Row, error) {
	in, err := openPackage(r, size)
	if err != nil {
		return nil, err
	}
	manifest, err := in.tree(manifestName, "manifest", manifestSpace)
	if err != nil {
		return nil, err
	}
	var rows []Row
	for _, resource := range manifest.first("resources").all("resource") {
		if !strings.HasPrefix(resource.attr("type"), "imsqti_item") {
			continue
		}
		row := Row{File: resource.attr("href")}
		if err := in.row(&row, resource.first("metadata")); err != nil {
			row = Row{File: row.File, Problem: err.Error()}
		}
		rows = append(rows, row)
	}
	if len(rows) == 0 {
		return nil, fmt.Errorf("%s lists no items of QTI 3.0", manifestName)
	}
	return rows, nil
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
	declared := n.all("qti-response-declaration")
	if len(declared) != 1 {
		return fmt.Errorf("%d answers are asked for; a question of a list has one", len(declared))
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
	case n.name == "qti-text-entry-interaction":
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

// option is the text of the choice that an identifier names, else the identifier, which is then what is
// typed.
func (n node) option(id string) string {
	if n.name == "qti-simple-choice" && n.attr("identifier") == id {
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
	return err == nil && slices.ContainsFunc(z.File, func(f *zip.File) bool { return f.Name == manifestName })
}
