package qti

import (
	"archive/zip"
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"iter"
	"time"
)

// Count is how many items were written, and how many of them a person marks.
type Count struct{ Items, ByPerson int }

// Write writes a package. Its items are those of the sequence, in place of p.Items, so that a large
// bank need not be in memory; every item of a test must be among them. The same package
// gives the same bytes.
func Write(w io.Writer, p Package, items iter.Seq2[Item, error]) (Count, error) {
	out := &writer{zip: zip.NewWriter(w), written: make(map[string]bool)}
	for item, err := range items {
		if err != nil {
			return Count{}, err
		}
		if err := out.item(item); err != nil {
			return Count{}, err
		}
	}
	if out.count.Items == 0 {
		return Count{}, errors.New("there is no item to write; generate or import some first")
	}
	for _, test := range p.Tests {
		if err := out.test(test); err != nil {
			return Count{}, err
		}
	}
	if err := out.file(manifestName, out.manifest(p).document()); err != nil {
		return Count{}, err
	}
	return out.count, out.zip.Close()
}

// writer is a package being written. The manifest's resources gather while the files go out.
type writer struct {
	zip       *zip.Writer
	written   map[string]bool // items, by ID
	count     Count
	resources []node // written already
}

// zipTime stands on every file; a package has no time of its own, and zip files begin in 1980.
var zipTime = time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)

func (out *writer) file(name string, data []byte) error {
	f, err := out.zip.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Deflate, Modified: zipTime})
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	return err
}

func (out *writer) item(it Item) error {
	if out.written[it.ID] {
		return nil // an item that stands in several tests is one file
	}
	out.written[it.ID] = true
	out.count.Items++
	if it.Scoring.By == ByPerson {
		out.count.ByPerson++
	}
	path := "items/" + it.ID + ".xml"
	resource := element("resource", "identifier", it.ID, "type", itemType, "href", path).with(it.metadata(), fileNode(path))
	names, pictures := it.pictures()
	for i, name := range names {
		path := "items/pictures/" + name + ".svg"
		if err := out.file(path, []byte(pictures[i].SVG)); err != nil {
			return err
		}
		resource = resource.with(fileNode(path))
	}
	out.list(resource)
	return out.file(path, it.tree().document())
}

func (out *writer) test(t Test) error {
	path := t.ID + ".xml"
	resource := element("resource", "identifier", t.ID, "type", testType, "href", path).with(fileNode(path))
	seen := make(map[string]bool)
	for _, id := range t.Items {
		if !out.written[id] {
			return fmt.Errorf("%s refers to %s, which is not among the items", t.ID, id)
		}
		if !seen[id] {
			resource = resource.with(element("dependency", "identifierref", id))
		}
		seen[id] = true
	}
	out.list(resource)
	return out.file(path, t.tree().document())
}

func fileNode(path string) node { return element("file", "href", path) }

// list keeps a resource for the manifest, as bytes, which are smaller than its nodes.
func (out *writer) list(resource node) {
	var b bytes.Buffer
	resource.write(&b, "\n    ")
	out.resources = append(out.resources, node{name: resource.name, raw: b.Bytes()})
}

// manifest lists all files. Its identifier follows from them.
func (out *writer) manifest(p Package) node {
	sum := sha256.New()
	for _, resource := range out.resources {
		sum.Write(resource.raw)
	}
	about := element("metadata").with(
		element("schema").saying("QTI Package"), element("schemaversion").saying("3.0.0"),
		element("lom", "xmlns", lomSpace).with(element("general").with(
			element("title").with(phrase(p.Title, p.Lang)), element("language").saying(p.Lang))))
	return root("manifest", manifestSpace, manifestSchema, "identifier", fmt.Sprintf("package-%x", sum.Sum(nil)[:8])).
		with(about, element("organizations"), element("resources").with(out.resources...))
}
