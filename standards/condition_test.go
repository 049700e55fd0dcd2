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
	} {
		c, err := standards.ParseCondition(text)
		if err != nil {
			t.Errorf("%s: %v", text, err)
		} else if c.Holds(ts) != want {
			t.Errorf("%s: %v for 63 + 45", text, !want)
		}
	}
	for _, text := range []string{"regroups", "regrups = 1", "regroups = many", "crosses_100 >= true", "clock_step = noon", "situation = add-to", "= 1", ""} {
		if _, err := standards.ParseCondition(text); err == nil {
			t.Errorf("%q was accepted", text)
		}
	}
}
