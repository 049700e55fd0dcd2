package plan_test

import (
	"testing"
	"time"

	"evenhand/assemble/plan"

	"pgregory.net/rapid"
)

// ISO 8601 itself gives the rule (a week belongs to the year of its Thursday);
// Go's time.ISOWeek and package time's calendar are the reference here.
func TestWeeks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		day := time.Date(1990, 1, 1, 0, 0, 0, 0, time.UTC).AddDate(0, 0, rapid.IntRange(0, 40000).Draw(t, "day"))
		n := rapid.IntRange(-300, 300).Draw(t, "weeks")
		w := plan.WeekOf(day)
		if back, err := plan.ParseWeek(w.String()); err != nil || back != w {
			t.Fatalf("%v reads back as %v, %v", w, back, err)
		}
		if m := w.Monday(); m.Weekday() != time.Monday || plan.WeekOf(m) != w || day.Sub(m) < 0 || day.Sub(m) >= 7*24*time.Hour {
			t.Fatalf("%v begins on %v; %v lies in it", w, m, day)
		}
		year, number := day.AddDate(0, 0, 7*n).ISOWeek()
		if later := w.Add(n); later.Year != year || later.Number != number {
			t.Fatalf("%v + %d weeks is %v, not %d-W%02d", w, n, later, year, number)
		}
		if (w.Compare(w.Add(n)) < 0) != (n > 0) {
			t.Fatalf("%v before %v", w, w.Add(n))
		}
	})
}

func TestLongYears(t *testing.T) {
	// A year has 53 weeks when its 1 January, or in a leap year 31 December, is a
	// Thursday (follows from ISO 8601); 1 January 2026 and 2015 are Thursdays, and 2020
	// is a leap year that ends on one.
	for _, year := range []string{"2015", "2020", "2026"} {
		if _, err := plan.ParseWeek(year + "-W53"); err != nil {
			t.Error(err)
		}
	}
	_, err := plan.ParseWeek("2025-W53")
	if want := "there is no week 53 in 2025; its weeks are 1 to 52"; err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
	if w, _ := plan.ParseWeek("2026-W52"); w.Add(2).String() != "2027-W01" {
		t.Errorf("two weeks after 2026-W52 is %v", w.Add(2))
	}
}

func TestNoWeeks(t *testing.T) {
	for _, text := range []string{"", "48", "2026-48", "2026-W", "2026-W0", "2026-W00", "2026-W5x", "26-W10", "2026-W100", "2026-W-1"} {
		if w, err := plan.ParseWeek(text); err == nil {
			t.Errorf("%q reads as %v", text, w)
		}
	}
}
