package main

import (
	"encoding/json"
	"fmt"
	"os"
	"reflect"
	"slices"
	"testing"

	"evenhand/assemble/export"
)

// What JSON.md says of practice and term is what they print, name by name.
func TestDocumentedFollowupJSON(t *testing.T) {
	fields := documented(t)
	t.Setenv("EVENHAND_BY", "MK")
	t.Setenv("EVENHAND_BANK", "team.bank")
	t.Chdir(t.TempDir())
	for name, text := range map[string]string{
		"friday.toml": "title = 'Friday check'\n[[row]]\nskill = 'add-two-digit'\ncount = 6\n",
		"marks.csv":   "pupil,form,1,2,3,4,5,6\nP01,A,x,x,x,x,x,x\nP02,A,✓,✓,✓,✓,✓,✓\n",
		"pacing.toml": "title = 'Term'\nitems = 6\nreturn = [1]\n[[new]]\nweek = 1\nskill = 'add-two-digit'\nwhere = ['largest <= 99']\n",
	} {
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, line := range []string{
		"init", "generate --skill add-two-digit --count 60", "assemble friday.toml --out friday --week 2026-W48", "mark friday marks.csv --pupils P01-P02",
	} {
		if code, _, said := evenhand(line); code != 0 {
			t.Fatalf("%s: %s", line, said)
		}
	}
	var ours []export.Item
	if _, out, _ := evenhand("list --format json"); json.Unmarshal([]byte(out), &ours) != nil || len(ours) == 0 {
		t.Fatal(out)
	}
	oneShape(t, fields["An item"], "list --format json",
		"show "+ours[0].ID+" --json", "quizzes friday --json", "practice friday --out first --json --try",
		"assemble friday.toml --out next --week 2026-W49 --json")
	for line, heading := range map[string]string{
		"practice friday --out monday --json":                   "practice --json",
		"term pacing.toml --from-week 2026-W48 --json":          "term --json",
		"practice 2026-W48 --out again --json --strips --large": "practice --json",
	} {
		code, out, said := evenhand(line)
		var value any
		if err := json.Unmarshal([]byte(out), &value); err != nil || code != 0 {
			t.Errorf("%s: %v, exit code %d: %s", line, err, code, said)
			continue
		}
		holdToDocument(t, fields[heading], line, value)
	}
}

// itemsIn are all items of a JSON value, wherever they stand.
func itemsIn(value any) (items []map[string]any) {
	switch v := value.(type) {
	case map[string]any:
		if v["skill"] != nil && v["key"] != nil {
			items = append(items, v)
		}
		for _, inner := range v {
			items = append(items, itemsIn(inner)...)
		}
	case []any:
		for _, inner := range v {
			items = append(items, itemsIn(inner)...)
		}
	}
	return items
}

// oneShape says that an item has the same fields, which say the same, wherever the lines print it.
func oneShape(t *testing.T, told map[string]bool, lines ...string) {
	t.Helper()
	var always []string
	for name, sometimes := range told {
		if !sometimes {
			always = append(always, name)
		}
	}
	first := map[string]map[string]any{}
	for _, line := range lines {
		_, out, said := evenhand(line)
		var value any
		if err := json.Unmarshal([]byte(out), &value); err != nil {
			t.Fatalf("%s: %v: %s", line, err, said)
		}
		items := itemsIn(value)
		if len(items) == 0 {
			t.Errorf("%s prints no item", line)
		}
		for _, item := range items {
			for _, name := range always {
				if item[name] == nil {
					t.Errorf("%s prints item %v without its %s", line, item["id"], name)
				}
			}
			known := fmt.Sprint(item["id"], item["revision"])
			if first[known] == nil {
				first[known] = item
			}
			for name, value := range item {
				if slices.Contains([]string{"number", "uses", "look", "seconds"}, name) {
					continue // of the place where it stands
				}
				if was, both := first[known][name]; both && !reflect.DeepEqual(was, value) {
					t.Errorf("%s says %s %v of item %v, where another said %v", line, name, value, known, was)
				}
			}
		}
	}
}
