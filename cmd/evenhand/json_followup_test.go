package main

import (
	"encoding/json"
	"maps"
	"os"
	"slices"
	"testing"
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
		printed := map[string]bool{}
		paths(value, "", printed)
		for _, path := range slices.Sorted(maps.Keys(printed)) {
			if _, known := fields[heading][path]; !known {
				t.Errorf("%s prints %s, which JSON.md does not tell", line, path)
			}
		}
		for path, sometimes := range fields[heading] {
			if !sometimes && !printed[path] {
				t.Errorf("JSON.md tells of %s, which %s does not print", path, line)
			}
		}
	}
}
