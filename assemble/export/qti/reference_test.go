package qti_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"evenhand/testdata/outside"
)

// xmllint checks files with libxml2's xmllint; the test is skipped without it.
func xmllint(t *testing.T, options []string, files ...string) {
	t.Helper()
	outside.Installed(t, "checking packages with xmllint", "xmllint")
	for len(files) > 0 {
		n := min(100, len(files))
		out, err := exec.Command("xmllint", append(append([]string{"--noout", "--nonet"}, options...), files[:n]...)...).CombinedOutput()
		if err != nil {
			t.Fatalf("%v: %.2000s", err, out)
		}
		files = files[n:]
	}
}

// onDisk writes the package's files into a folder and gives their names.
func onDisk(t *testing.T, data []byte) (names []string) {
	t.Helper()
	folder := t.TempDir()
	for _, f := range unpacked(t, data) {
		name := filepath.Join(folder, strings.ReplaceAll(f.name, "/", "-"))
		if err := os.WriteFile(name, f.text, 0o600); err != nil {
			t.Fatal(err)
		}
		names = append(names, name)
	}
	return names
}

// Another reader of XML than ours finds every file well formed, with namespaces.
func TestReferenceWellFormed(t *testing.T) {
	outside.Full(t, "reading every file of a package with xmllint", "xmllint")
	xmllint(t, nil, onDisk(t, written(t, every(t, "es")))...)
}

// The published schemas are not ours to keep here. Whoever has them in a folder can hold the
// package to them.
func TestReferenceSchemas(t *testing.T) {
	schemas := outside.Named(t, "validating against the published schemas of QTI 3.0", "EVENHAND_QTI_SCHEMAS", "FOLDER")
	byRoot := make(map[string][]string)
	for _, name := range onDisk(t, written(t, every(t, "en"))) {
		schema := "imsqti_asiv3p0_v1p0.xsd"
		if filepath.Base(name) == "imsmanifest.xml" {
			schema = "imsqtiv3p0_imscpv1p2_v1p0.xsd"
		}
		if filepath.Ext(name) == ".xml" {
			byRoot[schema] = append(byRoot[schema], name)
		}
	}
	for schema, names := range byRoot {
		xmllint(t, []string{"--schema", filepath.Join(schemas, schema)}, names...)
	}
}
