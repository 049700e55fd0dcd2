package standards_test

import (
	"testing"

	"evenhand/standards"
	"evenhand/standards/task"
)

func TestConditions(t *testing.T) {
	ts := task.MustParse("63 + 45").Traits()
	for text, want := range map[string]bool{
		"regroups = 1": true, "regroups>=1": true, "regroups < 1": false, "crosses_100 = true": true, "crosses_100 != true": false,
		"clock_step = hour": false, "clock_step != hour": true, "unknown <= change": true, "regroup_places = tens": true, "largest > 107": true,
		"hundred = 2": true, "hundred != 1": true, "hundred > 2": false, "hundred <= 2": true,
	} {
		c, err := standards.ParseCondition(text)
		if err != nil {
			t.Errorf("%s: %v", text, err)
		} else if c.Holds(ts) != want {
			t.Errorf("%s: %v for 63 + 45", text, !want)
		}
	}
	// Counted by hand: the first hundred ends with 100, the second begins with 101.
	for text, want := range map[string]string{
		"0 + 0": "1", "5 + 4": "1", "60 + 40": "1", "60 + 41": "2", "150 + 50": "2", "201 - 1": "3", "250 + ? = 300": "3", "999 + 1": "10", "read 4:30": "",
	} {
		if got := task.MustParse(text).Traits().Get(task.Hundred); got != want {
			t.Errorf("%s stands in hundred %q, want %q", text, got, want)
		}
	}
	for _, text := range []string{
		"regroups", "regrups = 1", "regroups = many", "hundred = third", "crosses_100 >= true", "clock_step = noon",
		"situation = add-to", "= 1", "",
	} {
		if _, err := standards.ParseCondition(text); err == nil {
			t.Errorf("%q was accepted", text)
		}
	}
}
