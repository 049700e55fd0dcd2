package standards_test

import (
	"crypto/sha256"
	"fmt"
	"strings"
	"testing"

	"evenhand/standards"
	"evenhand/standards/task"
)

// computedBy is a digest of what the catalogue of the present number computes. When this
// test fails, tasks are computed otherwise than before: banks must be told, so raise
// CatalogueNumber (unless no bank was ever made by the number) and write the new digest here.
const computedBy = "5 0fe9bda2aebdad906655aae14cffc9e4d98640e88b441170e2b596f032aaf0e0"

func TestTheCatalogueHasANumber(t *testing.T) {
	var all strings.Builder
	tell := func(text string) {
		asked, err := task.Parse(text)
		if err != nil {
			t.Fatalf("%s: %v", text, err)
		}
		skill := standards.SkillOf(asked)
		fmt.Fprintln(&all, asked, asked.Key(), skill, asked.Codes(), asked.Traits().List(), asked.Fingerprint(), standards.Predict(skill, asked.Traits()))
		for _, look := range asked.Looks() {
			fmt.Fprintln(&all, look, standards.Seconds(skill, look))
		}
	}
	for _, skill := range standards.Catalogue() {
		tell(skill.Example)
	}
	for _, n := range []int{1, 2, 7, 9, 10, 12, 18, 25, 47, 90, 99, 100, 178, 402, 990} {
		for _, m := range []int{1, 3, 8, 10, 15, 36, 50, 99} {
			if n > m {
				tell(fmt.Sprintf("%d - %d = ?", n, m))
			}
			if n+m <= 1000 {
				tell(fmt.Sprintf("%d + %d = ?", n, m))
				tell(fmt.Sprintf("%d + ? = %d", n, n+m))
			}
			tell(fmt.Sprintf("%d ? %d", n, m))
		}
	}
	for minute := 0; minute < 60; minute += 5 {
		tell(fmt.Sprintf("read 4:%02d", minute))
		tell(fmt.Sprintf("draw 11:%02d", minute))
	}
	if got := fmt.Sprintf("%d %x", standards.CatalogueNumber, sha256.Sum256([]byte(all.String()))); got != computedBy {
		t.Errorf("got  %s\nwant %s", got, computedBy)
	}
}

// The levels of earlier catalogues are typed off the programs that had them.
func TestItemsByHandInEarlierCatalogues(t *testing.T) {
	for skill, want := range map[standards.SkillID][4]standards.Difficulty{
		"add-several": {-1200, -2200, -2200, -2400}, "add-and-subtract": {-1300, -1900, -1900, -1900},
		"stories-within-100": {-1300, -2000, -2000, -3300}, "clock-hour": {-2000, -2300, -2300, -2300},
	} {
		for i, level := range want {
			if got := standards.ByHandIn(i+1, skill); got != level {
				t.Errorf("catalogue %d predicted items by hand of %s at %v, got %v", i+1, skill, level, got)
			}
		}
		if got, now := standards.ByHandIn(standards.CatalogueNumber, skill), standards.Predict(skill, standards.Usual(skill)); got != now {
			t.Errorf("items by hand of %s are at %v, got %v", skill, now, got)
		}
	}
}
