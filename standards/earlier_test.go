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
const computedBy = "5 b8fd34b787958fdc2cb8dc1ed90c0fcfaeb5ac6d297cd9f24f26e6cc46cfef0c"

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
