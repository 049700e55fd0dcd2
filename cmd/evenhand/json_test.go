package main

import (
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"evenhand/assemble/export"
)

// documented reads JSON.md: of each heading, the fields and whether they stand only sometimes.
func documented(t *testing.T) map[string]map[string]bool {
	t.Helper()
	text, err := os.ReadFile("JSON.md")
	if err != nil {
		t.Fatal(err)
	}
	field, fields := regexp.MustCompile("^- `([^`]*)`(.*)$"), map[string]map[string]bool{}
	heading := ""
	for line := range strings.Lines(string(text)) {
		line = strings.TrimSpace(line)
		if name, ok := strings.CutPrefix(line, "## "); ok {
			heading, fields[name] = name, map[string]bool{}
		}
		m := field.FindStringSubmatch(line)
		switch {
		case m == nil:
		case strings.HasPrefix(m[2], " *an item*"):
			for name, sometimes := range fields["An item"] {
				fields[heading][strings.TrimPrefix(m[1]+"."+name, ".")] = sometimes
			}
		default:
			fields[heading][m[1]] = strings.HasPrefix(m[2], " sometimes")
		}
	}
	return fields
}

// paths are the names of a JSON value: [] for each element of a list.
func paths(value any, at string, into map[string]bool) {
	switch v := value.(type) {
	case map[string]any:
		for name, inner := range v {
			paths(inner, strings.TrimPrefix(at+"."+name, "."), into)
		}
	case []any:
		plain := true
		for _, inner := range v {
			if _, table := inner.(map[string]any); table {
				plain = false
				paths(inner, at+"[]", into)
			}
		}
		if plain {
			into[at] = true
		}
	default:
		into[at] = true
	}
}

// What JSON.md says of a command is what the command prints, name by name.
func TestDocumentedJSON(t *testing.T) {
	fields := documented(t)
	t.Setenv("EVENHAND_BY", "MK")
	t.Setenv("EVENHAND_BANK", "team.bank")
	old, err := os.ReadFile("../../testdata/formats/1/team.bank")
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	for name, text := range map[string]string{
		"more.csv":    "question\n65 + 27\n",
		"week.csv":    "question,answer\n47 + 36,83\n58 + 27,75\n",
		"friday.toml": "title = 'Friday check'\nforms = 2\n[[row]]\nskill = 'add-two-digit'\ncount = 3\n",
		"old.bank":    string(old),
		"marks.csv":   "pupil,form,1,2,3\nP01,A,✓,x,✓\nP02,B,✓,?,✓\n",
	} {
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	var items []string
	for _, line := range []string{
		"init", "generate --skill add-two-digit --count 20", "generate --skill facts-within-20 --count 1 --draft",
		"import week.csv", "plans friday --save friday.toml", "assemble friday.toml --out friday --week 2026-W48",
		"mark friday marks.csv --pupils P01-P02", "backup other.bank", "revise ID0 --notes cubes --reason seen",
		"--bank other.bank revise ID0 --notes counters --reason seen", "revise ID1 --task 31+47 --reason seen",
		"--bank other.bank revise ID2 --task 31+47 --reason seen", "import more.csv", "--bank other.bank import more.csv",
	} {
		for i, id := range items {
			line = strings.ReplaceAll(line, fmt.Sprint("ID", i), id)
		}
		if code, _, said := evenhand(line); code != 0 && code != 3 {
			t.Fatalf("%s: %s", line, said)
		}
		if strings.HasPrefix(line, "generate") {
			var made []export.Item
			_, out, _ := evenhand("list --skill add-two-digit --format json")
			if err := json.Unmarshal([]byte(out), &made); err != nil || len(made) == 0 {
				t.Fatal(err, out)
			}
			items = nil
			for _, one := range made {
				items = append([]string{one.ID}, items...)
			}
		}
	}
	for line, heading := range map[string]string{
		"list --format json":           "list --format json, review --json",
		"review --json":                "list --format json, review --json",
		"import week.csv --json":       "import --json",
		"lists --json":                 "lists --json",
		"plans --json":                 "plans --json",
		"quizzes --json":               "quizzes --json",
		"quizzes friday --json":        "quizzes QUIZ --json, assemble --json",
		"mark friday marks.csv --json": "mark --json",
		"skills --json":                "skills --json",
		"standards --json":             "standards --json",
		"check --json":                 "check --json",

		"show " + items[0] + " --json":             "show --json",
		"lists week.csv --json":                    "lists NAME --json",
		"calibrate --dry-run --json":               "calibrate --json",
		"--bank old.bank refresh --dry-run --json": "refresh --json",
		"merge other.bank --marks --json":          "merge --json",
	} {
		code, out, said := evenhand(line)
		var value any
		if err := json.Unmarshal([]byte(out), &value); err != nil || code != 0 && code != 3 {
			t.Errorf("%s: %v, exit code %d: %s", line, err, code, said)
			continue
		}
		holdToDocument(t, fields[heading], line, value)
	}
}

var snake = regexp.MustCompile(`^[a-z0-9_]+$`)

// holdToDocument compares the names of what a line printed with those that JSON.md tells.
func holdToDocument(t *testing.T, told map[string]bool, line string, value any) {
	t.Helper()
	printed := map[string]bool{}
	paths(value, "", printed)
	for _, path := range slices.Sorted(maps.Keys(printed)) {
		inner := path[strings.LastIndexByte(path, '.')+1:]
		_, known := told[path]
		_, inTable := told[strings.TrimSuffix(path, inner)+"*"]
		for inside := range told { // an empty list of what is told
			known = known || strings.HasPrefix(inside, path+"[].")
		}
		if !known && !inTable {
			t.Errorf("%s prints %s, which JSON.md does not tell", line, path)
		}
		if !inTable && !snake.MatchString(strings.TrimSuffix(inner, "[]")) {
			t.Errorf("%s prints %s, which is no snake_case", line, path)
		}
	}
	for path, sometimes := range told {
		if !sometimes && !printed[path] && !strings.HasSuffix(path, "*") && path != "marks" {
			t.Errorf("JSON.md tells of %s, which %s does not print", path, line)
		}
	}
}
