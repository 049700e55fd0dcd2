package standards_test

import (
	"maps"
	"slices"
	"testing"

	"evenhand/standards"
	"evenhand/standards/task"
)

func TestCoverage(t *testing.T) {
	list := standards.AllCoverage()
	// Common Core State Standards for Mathematics (2010): 69 standards up to grade 2.
	if len(list) != 69 {
		t.Fatalf("%d standards, want 69", len(list))
	}
	served := map[string]int{}
	for _, c := range list {
		switch c.Cover {
		case standards.Served:
			served[string(c.Code)[:1]]++
			if len(c.Skills) == 0 || c.Reason != "" {
				t.Errorf("%s is served by skills %v, reason %q", c.Code, c.Skills, c.Reason)
			}
		default:
			if len(c.Skills) > 0 || c.Reason == "" {
				t.Errorf("%s is %s, but skills %v serve it, reason %q", c.Code, c.Cover, c.Skills, c.Reason)
			}
		}
	}
	// The same document, counted by hand: of its 22, 21 and 26 standards, 9, 6 and 9 are about
	// shapes, measuring by hand, data or explaining, and 2, 1 and 2 are seen in part on paper.
	if want := map[string]int{"K": 11, "1": 14, "2": 15}; !maps.Equal(served, want) {
		t.Errorf("standards served by grade: %v, want %v", served, want)
	}
}

func TestSkillsServeTheCodesOfTheirTasks(t *testing.T) {
	for _, skill := range standards.Catalogue() {
		asked := task.MustParse(skill.Example)
		for _, code := range asked.Codes() {
			at := slices.IndexFunc(standards.AllCoverage(), func(c standards.Coverage) bool { return c.Code == code })
			if standards.AllCoverage()[at].Cover != standards.Served {
				t.Errorf("%s meets %s, which is not listed as served", asked, code)
			}
		}
		if len(asked.Codes()) > 0 && !slices.ContainsFunc(asked.Codes(), func(c task.Code) bool { return slices.Contains(skill.Codes, c) }) {
			t.Errorf("%s meets %v, but its skill %s serves %v", asked, asked.Codes(), skill.ID, skill.Codes)
		}
	}
}
