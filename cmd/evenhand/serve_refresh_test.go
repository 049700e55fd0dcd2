package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"evenhand/standards"
)

// A desk on a bank of an earlier evenhand says so and leaves it as it is; with --refresh it first brings the bank along,
// as revisions by who started it, and once only.
func TestServeRefresh(t *testing.T) {
	dir := t.TempDir()
	must(t, os.CopyFS(dir, os.DirFS("../../testdata/formats/1")))
	t.Setenv("EVENHAND_BANK", filepath.Join(dir, "team.bank"))
	t.Setenv("EVENHAND_BY", "SV")
	const item = "01M89PY9E8R9MNDJT19W8WMKT7" // 402 - 178, whose difficulty was another
	before := mustDo(t, "show "+item)

	serve := func(options, pattern string) string {
		t.Helper()
		found, desk := deskOpen(t, "serve --listen 127.0.0.1:0 "+options, pattern)
		must(t, desk.Process.Kill())
		_ = desk.Wait() // killed
		return found
	}
	older := serve("", `start again with --refresh to bring ([0-9]+) items along`)
	if after := mustDo(t, "show "+item); after != before {
		t.Errorf("a desk changed an item unasked:\n%s\nit was\n%s", after, before)
	}
	// What is said comes after the change, so that a desk killed then has made it.
	brought := serve("--refresh", fmt.Sprintf("([0-9]+) items brought along to catalogue %d\n", standards.CatalogueNumber))
	if brought != older || older == "0" {
		t.Errorf("%s items were said to be older, %s were brought along", older, brought)
	}
	if after := mustDo(t, "show "+item); !strings.Contains(after, "by SV on") ||
		!strings.Contains(after, fmt.Sprintf("catalogue %d", standards.CatalogueNumber)) {
		t.Errorf("brought along, it is\n%s", after)
	}
	serve("--refresh", "^(the desk) for") // nothing is said of an earlier evenhand before
	if _, _, said := evenhand("check"); strings.Contains(said, "refresh") {
		t.Errorf("check says %s", said)
	}
}
