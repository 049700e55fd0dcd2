package plan_test

import (
	"strings"
	"testing"

	"evenhand/assemble/plan"
)

// What a teacher types that is no TOML is told in a teacher's words, at its line, and hides no
// other mistake. The lines that break are those of the TOML specification (v1.0.0, toml.io):
// strings stand in " or ', a key has one value, a table's brackets close.
func TestBrokenLinesAreToldAndHideNothing(t *testing.T) {
	const rest = "\n[[row]]\nskil = \"add-two-digit\"\ncount = 101\n"
	cases := []struct{ line, want string }{
		{`title = “Friday check”`, "p.toml:1:9: “ is a quote of a word processor; type straight ones"},
		{`title = "Friday check”`, "p.toml:1:22: ” is a quote of a word processor"},
		{`title = «Viernes»`, "p.toml:1:9: « is a quote of a word processor"},
		{`title = ‘Friday’`, "p.toml:1:9: ‘ is no quote for a text"},
		{"title = `Friday`", "p.toml:1:9: ` is no quote for a text"},
		{`title = Friday check`, `p.toml:1:9: a text stands in straight quotes, title = "Friday check"`},
		{`title = "Friday check`, "p.toml:1:9: a quote is missing"},
		{`title = Friday"`, "p.toml:1:9: a quote is missing"},
		{`items = ten`, "p.toml:1:9: items is written in digits alone, such as items = 10, not ten"},
		{`items = 10 items`, "p.toml:1:9: items is written in digits alone"},
		{`share_right = 75%`, "p.toml:1:15: share_right is written in digits alone"},
		{`share_right = 7,5`, "p.toml:1:15: share_right is written in digits alone"},
		{`minutes: 15`, "p.toml:1:1: write minutes = and then its value"},
		{`minutes 15`, "p.toml:1:1: write minutes = and then its value"},
		{`minutes =`, "p.toml:1:1: minutes has no value"},
		{"minutes =\u00a015", "p.toml:1:10: there is a space here that is no plain one"},
		{"minutes = 15\nminutes = 20", "p.toml:2:1: minutes stands here a second time"},
		{`same = [regroups]`, "p.toml:1:8: each text in a list stands in quotes"},
		{`same = ["regroups >= 1"`, "p.toml:1:8: the list has no end"},
		{"[[quota]\nwhere = [\"regroups = 2\"]\ncount = 1", "p.toml:1:1: a heading has as many brackets"},
		{"title = \x93Friday\x94", "p.toml:1:1: a letter here can't be read; save the file again as plain text in UTF-8"},
		{"title = \"A\xf1o\"", "p.toml:1:1: a letter here can't be read"},
	}
	for _, c := range cases {
		_, err := plan.Parse([]byte(c.line+rest), "p.toml")
		if err == nil {
			t.Errorf("%s: taken", c.line)
			continue
		}
		said := err.Error()
		if !strings.Contains(said, c.want) {
			t.Errorf("%s: %s", c.line, said)
		}
		for _, other := range []string{`no key "skil"`, "count is a whole number from 1 to 100, not 101"} {
			if !strings.Contains(said, other) {
				t.Errorf("%s hides %s:\n%s", c.line, other, said)
			}
		}
		if n := strings.Count(said, "p.toml:"); n > 4 {
			t.Errorf("%s: %d mistakes told:\n%s", c.line, n, said)
		}
	}
}

// A key spelt wrongly is one mistake: what it stands for isn't also told to be missing.
func TestAMisspeltKeyIsToldOnce(t *testing.T) {
	for text, want := range map[string]string{
		"[[row]]\nskil = \"add-two-digit\"\ncount = 2\n":                                      `no key "skil" in row; did you mean "skill"?`,
		"[[row]]\nskill = \"add-two-digit\"\ncuont = 2\n":                                     `no key "cuont" in row; did you mean "count"?`,
		"[row]\nSkils = \"add-two-digit\"\ncount = 2\n":                                       `did you mean "skill"?`,
		"[[row]]\nskill = \"add-ones\"\ncount = 1\n[[row]]\nskil = \"add-ones\"\ncount = 2\n": `no key "skil" in row; did you mean "skill"?`,
	} {
		_, err := plan.Parse([]byte(text), "p.toml")
		if err == nil || !strings.Contains(err.Error(), want) || strings.Count(err.Error(), "p.toml:") != 1 {
			t.Errorf("%s: %v", text, err)
		}
	}
}

// Quotes of a word processor within a text are letters like others.
func TestQuotesWithinATextStay(t *testing.T) {
	const text = "title = \"Mia’s “Friday” check\"\n[[row]]\nskill = \"add-two-digit\"\ncount = 2\n"
	got, err := plan.Parse([]byte(text), "p.toml")
	if err != nil || got.Title != "Mia’s “Friday” check" {
		t.Errorf("%q, %v", got.Title, err)
	}
}
