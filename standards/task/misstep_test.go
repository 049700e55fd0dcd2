package task_test

import (
	"fmt"
	"strings"
	"testing"

	"evenhand/standards/task"
)

// why is the name of the missteps that give the answer, empty when none does.
func why(asked, answer string) string {
	for _, m := range task.MustParse(asked).Missteps() {
		if m.Answer == answer {
			return m.Why()
		}
	}
	return ""
}

func TestMissteps(t *testing.T) {
	for _, row := range []struct{ tasks, misstep, answers string }{
		// Brown & Burton (1978), VanLehn (1990): the kinds; the answers by working them through.
		{"81-38 402-178 305-9 70-34", "smaller digit from larger", "57 376 304 44"},
		{"81-38 402-178 305-9 70-34", "ten taken but not paid back", "53 334 306 46"},
		{"402-178 305-9", "nine from zero unpaid", "324 396"},
		{"402-178 305-9", "borrow jumps the zero", "134 206"},
		{"81-38 402-178 305-9 70-34", "zero when too small", "50 300 300 40"},
		{"81-38 402-178 305-9 70-34", "added instead", "119 580 314 104"},
		// Ashlock: the kinds; the answers by working them through.
		{"27+35 48+36", "ten dropped", "52 74"},
		{"27+35 48+36", "both digits written", "512 714"},
		{"27+35 48+36", "ten written, ones carried", "71 111"},
		{"27+35 48+36", "all digits added", "17 21"},
		{"27+35 48+36", "subtracted instead", "8 12"},
		// Clock: common practice, no source.
		{"3:00 6:00", "hands swapped", "12:15 12:30"},
		{"3:30", "next hour", "4:30"},
		{"3:30 4:50", "numeral as minutes", "3:06 4:10"},
		{"3:30", "long hand ignored", "3:00"},
		{"3:30", "hour from the long hand", "6:30"},
	} {
		answers := strings.Fields(row.answers)
		for i, asked := range strings.Fields(row.tasks) {
			if got := why(asked, answers[i]); !strings.Contains(got, row.misstep) {
				t.Errorf("%s: the answer %s tells %q, want %q", asked, answers[i], got, row.misstep)
			}
		}
	}
	// Byrge, Smith & Mix (2014): 642 written 600402 or 610042.
	if got := why("6 hundreds 4 tens 2 ones = ?", "600402"); got != "each part written out" {
		t.Errorf("600402 for 642 tells %q", got)
	}
	if got := why("6 hundreds 4 tens 2 ones = ?", "610042"); got != "hundred written out" {
		t.Errorf("610042 for 642 tells %q", got)
	}
}

func TestMisstepsThatCannotBeToldApart(t *testing.T) {
	// For two digits with a regrouping "smaller from larger" and "not paid back" agree exactly when
	// the ones differ by five (full enumeration).
	for a := 10; a <= 99; a++ {
		for b := 10; b <= a; b++ {
			if task.SubtractionRegroups(a, b) == 0 {
				continue
			}
			s, err := task.NewSubtraction(2, a, b)
			if err != nil {
				t.Fatal(err)
			}
			together := false
			for _, m := range s.Missteps() {
				together = together || strings.Contains(m.Why(), "smaller digit from larger or ten taken but not paid back")
			}
			if differ := b%10 - a%10; together != (differ == 5) {
				t.Errorf("%v: told apart %v, ones differ by %d", s, !together, differ)
			}
		}
	}
	// 83 + 45 written side by side is 128, which is right: it can't show that misstep.
	for _, m := range task.MustParse("83 + 45").Missteps() {
		if m.Answer == "128" || strings.Contains(m.Why(), "both digits") {
			t.Errorf("83 + 45 lists %s=%s", m.Answer, m.Why())
		}
	}
}

// Nobody works in columns within ten, so no misstep of columns is listed there (common practice).
func TestNoColumnsWithinTen(t *testing.T) {
	for whole := 1; whole <= 10; whole++ {
		for seen := 0; seen <= whole; seen++ {
			for _, asked := range []string{"%d + ? = %d", "? + %d = %d"} {
				asked := fmt.Sprintf(asked, seen, whole)
				for _, m := range task.MustParse(asked).Missteps() {
					if strings.Contains(m.Why(), "smaller digit") {
						t.Errorf("%s lists %s=%s", asked, m.Answer, m.Why())
					}
				}
			}
		}
	}
}

func TestFingerprints(t *testing.T) {
	same := [][2]string{{"47 + 36", "36 + 47 = __"}, {"83 = 47 + ?", "47 + ? = 83"}, {"half past 4", "read 4:30"}, {"match 4:00, 7:00", "match 7:00, 4:00"}}
	other := [][2]string{{"47 + ? = 83", "? + 47 = 83"}, {"83 - 47", "83 - 36"}, {"47 ? 74", "74 ? 47"}, {"read 4:30", "draw 4:30"}}
	for _, pair := range same {
		if a, b := task.MustParse(pair[0]), task.MustParse(pair[1]); a.Fingerprint() != b.Fingerprint() {
			t.Errorf("%s and %s are the same item", a, b)
		}
	}
	for _, pair := range other {
		if a, b := task.MustParse(pair[0]), task.MustParse(pair[1]); a.Fingerprint() == b.Fingerprint() {
			t.Errorf("%s and %s are different items", a, b)
		}
	}
}

func TestClashes(t *testing.T) {
	family := task.MustParse("47 + 36").Clashes()[0]
	for _, text := range []string{"36 + 47", "83 - 36", "83 - 47", "47 + ? = 83", "? - 47 = 36"} {
		if got := task.MustParse(text).Clashes()[0]; got != family {
			t.Errorf("%s is of family %s, want %s", text, got, family)
		}
	}
	at := task.MustParse("read 4:00").Clashes()[0]
	if got := task.MustParse("match 7:00, 4:00").Clashes(); len(got) != 2 || got[1] != at {
		t.Errorf("match 7:00, 4:00 clashes %v, want one %s", got, at)
	}
}
