package standards_test

import (
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
	for _, c := range list {
		switch c.Cover {
		case standards.Served:
			if len(c.Skills) == 0 || c.Reason != "" {
				t.Errorf("%s is served by skills %v, reason %q", c.Code, c.Skills, c.Reason)
			}
		default:
			if c.Cover == standards.ByWatching && len(c.Skills) > 0 || c.Reason == "" {
				t.Errorf("%s is %s, but skills %v serve it, reason %q", c.Code, c.Cover, c.Skills, c.Reason)
			}
		}
	}
}

func TestSkillsServeTheCodesOfTheirTasks(t *testing.T) {
	for _, skill := range standards.Catalogue() {
		asked := task.MustParse(skill.Example)
		for _, code := range asked.Codes() {
			at := slices.IndexFunc(standards.AllCoverage(), func(c standards.Coverage) bool { return c.Code == code })
			if standards.AllCoverage()[at].Cover == standards.ByWatching {
				t.Errorf("%s meets %s, which is listed as not served", asked, code)
			}
		}
		if len(asked.Codes()) > 0 && !slices.ContainsFunc(asked.Codes(), func(c task.Code) bool { return slices.Contains(skill.Codes, c) }) {
			t.Errorf("%s meets %v, but its skill %s serves %v", asked, asked.Codes(), skill.ID, skill.Codes)
		}
	}
}
