package evidence_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenhand/bank/evidence"
)

func marks(t testing.TB, cells []string) (row []evidence.Mark) {
	for _, cell := range cells {
		row = append(row, evidence.Wrong+evidence.Mark(number(t, cell)))
	}
	return row
}

func kr20Rows(t testing.TB) (rows []evidence.Row) {
	for _, cells := range published(t, "kr20.csv") {
		rows = append(rows, evidence.Row{Marks: marks(t, cells[1:]), Pupils: 1})
	}
	return rows
}

func lsatRows(t testing.TB) (rows []evidence.Row) {
	for _, cells := range published(t, "lsat6.csv") {
		rows = append(rows, evidence.Row{Marks: marks(t, cells[:5]), Pupils: number(t, cells[5])})
	}
	return rows
}

func TestKR20(t *testing.T) {
	r := evidence.ReliabilityOf(kr20Rows(t))
	// K. Wuensch, KR20 help page, East Carolina University: population variance of totals
	// 5.84; KR-20 by full computation from its data. The n-1 variance would give .737823.
	near(t, "KR-20", r.Alpha, 0.696347, 5e-7)
	near(t, "standard error of measurement", r.SEM, math.Sqrt(5.84*(1-0.696347)), 1e-5)
	// The same data, full computation.
	want := []float64{.7059, .7059, .0000, .4736, .5839, .2861, -.0274, .7059, -.1236, .4759}
	for i, s := range evidence.Stats(kr20Rows(t)) {
		near(t, "item-rest correlation", s.ItemRest, want[i], 5e-5)
	}
}

func TestLSAT6Classical(t *testing.T) {
	// From the pattern counts of Bock & Lieberman (1970), full computation.
	near(t, "alpha", evidence.ReliabilityOf(lsatRows(t)).Alpha, .294997, 5e-7)
	rest := []float64{.112833, .153178, .172779, .144428, .121596}
	facility := []float64{.924, .709, .553, .763, .870}
	for i, s := range evidence.Stats(lsatRows(t)) {
		near(t, "item-rest correlation", s.ItemRest, rest[i], 5e-7)
		near(t, "facility", s.Facility.Value, facility[i], 1e-9)
		if s.Answers != 1000 {
			t.Errorf("item %d: %d answers, want 1000", i, s.Answers)
		}
	}
}

func TestWilsonInterval(t *testing.T) {
	// Newcombe (1998), Statistics in Medicine 17, table I, method 3.
	for _, c := range []struct {
		count, all int
		low, high  float64
	}{{81, 263, .2553, .3662}, {15, 148, .0624, .1605}, {0, 20, 0, .1611}, {1, 29, .0061, .1718}} {
		s := evidence.ShareOf(c.count, c.all)
		near(t, "low", s.Low, c.low, 5e-5)
		near(t, "high", s.High, c.high, 5e-5)
	}
	if s := evidence.ShareOf(0, 0); !math.IsNaN(s.Value) || s.Low != 0 || s.High != 1 {
		t.Errorf("0 of 0: %+v, want no share, from 0 to 1", s)
	}
}

func TestLengthened(t *testing.T) {
	// Spearman-Brown: .70 tripled, .60 doubled (identity).
	near(t, ".70 tripled", evidence.Lengthened(.70, 3), .875, 1e-12)
	near(t, ".60 doubled", evidence.Lengthened(.60, 2), .75, 1e-12)
}

// Two forms with shared items, one much harder: an item of both still goes with doing well
// on the rest, since nobody is blamed for the harder form.
func TestFormsTogether(t *testing.T) {
	const o, w, r = evidence.Missing, evidence.Wrong, evidence.Right
	rows := []evidence.Row{
		{Marks: []evidence.Mark{r, r, r, o, o}, Pupils: 6}, // the easy form
		{Marks: []evidence.Mark{w, r, w, o, o}, Pupils: 4},
		{Marks: []evidence.Mark{r, o, o, r, w}, Pupils: 6}, // the hard form
		{Marks: []evidence.Mark{w, o, o, w, w}, Pupils: 4},
	}
	s := evidence.Stats(rows)
	// Every pupil right on the first item stands above the form's others, none of the rest does.
	near(t, "item-rest correlation", s[0].ItemRest, 1, 0.02)
	if s[0].Answers != 20 || s[1].Answers != 10 || s[1].Facility.Value != 1 {
		t.Errorf("counts %+v", s[:2])
	}
	if r := evidence.ReliabilityOf(rows); !math.IsNaN(r.Alpha) {
		t.Errorf("alpha %v of items that nobody answered both, want none", r.Alpha)
	}
}

func TestChoices(t *testing.T) {
	const o, w, r = evidence.Missing, evidence.Wrong, evidence.Right
	rows := []evidence.Row{
		{Marks: []evidence.Mark{w, r, r}, Pupils: 3},
		{Marks: []evidence.Mark{r, w, w}, Pupils: 2},
		{Marks: []evidence.Mark{w, w, r}, Pupils: 2},
		{Marks: []evidence.Mark{o, r, r}, Pupils: 1},
	}
	got := evidence.Choices(rows, evidence.Stats(rows), 0, []string{"512", "62", "52", ""})
	var order []string
	for _, c := range got {
		order = append(order, c.Answer)
	}
	if !slices.Equal(order, []string{"512", "52", "62"}) || got[0].Pupils != 3 {
		t.Errorf("choices %+v", got)
	}
	// Facilities of the other two items are 4/8 and 6/8: those who wrote 512 had both right.
	near(t, "standing", got[0].Standing, (0.5+0.25)/2, 1e-12)
	near(t, "standing", got[2].Standing, (-0.5-0.75)/2, 1e-12)
}

func TestFlags(t *testing.T) {
	stats := func(right, answers int, rest float64) evidence.ItemStats {
		return evidence.ItemStats{Answers: answers, Right: right, Facility: evidence.ShareOf(right, answers), ItemRest: rest}
	}
	for _, c := range []struct {
		stats evidence.ItemStats
		want  string // parts in order; none for none
	}{
		{stats(15, 24, 0.4), ""},
		{stats(15, 24, math.NaN()), ""},
		{stats(15, 24, -0.2), ""}, // as luck may have it in a class
		{stats(15, 24, -0.5), "check the key"},
		{stats(1500, 2400, 0.05), "did alike"},
		{stats(24, 24, math.NaN()), "nearly everyone"},
		{stats(2, 24, 0.3), "hardly anyone"},
		{stats(5, 8, -0.7), "check the key; only 8 answers"},
		{stats(0, 8, math.NaN()), "hardly anyone; only 8 answers"},
		{stats(0, 1, math.NaN()), ""}, // says nothing yet
		{stats(0, 0, math.NaN()), "nobody"},
	} {
		flags := c.stats.Flags()
		parts := strings.Split(c.want, "; ")
		if c.want == "" {
			parts = nil
		}
		if len(flags) != len(parts) {
			t.Errorf("%+v: flags %q, want %q", c.stats, flags, parts)
			continue
		}
		for k, part := range parts {
			if !strings.Contains(flags[k], part) {
				t.Errorf("%+v: flag %q, want %q in it", c.stats, flags[k], part)
			}
		}
	}
}

// Counting equal rows together changes nothing.
func TestCountingRowsTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mark := rapid.SampledFrom([]evidence.Mark{evidence.Missing, evidence.Wrong, evidence.Right})
		row := rapid.SliceOfN(mark, 4, 4)
		var apart, together []evidence.Row
		for _, marks := range rapid.SliceOfN(row, 1, 6).Draw(t, "rows") {
			n := rapid.IntRange(1, 3).Draw(t, "pupils")
			together = append(together, evidence.Row{Marks: marks, Pupils: n})
			for range n {
				apart = append(apart, evidence.Row{Marks: marks, Pupils: 1})
			}
		}
		a, b := evidence.Stats(apart), evidence.Stats(together)
		for i := range a {
			if !same(a[i].ItemRest, b[i].ItemRest) || a[i].Answers != b[i].Answers || a[i].Right != b[i].Right {
				t.Fatalf("item %d: %+v apart, %+v together", i, a[i], b[i])
			}
		}
		if r, q := evidence.ReliabilityOf(apart), evidence.ReliabilityOf(together); !same(r.Alpha, q.Alpha) || !same(r.SEM, q.SEM) {
			t.Fatalf("%+v apart, %+v together", r, q)
		}
	})
}

func same(a, b float64) bool {
	return math.IsNaN(a) && math.IsNaN(b) || math.Abs(a-b) < 1e-6
}

// Wilson's interval holds the share and narrows with more pupils.
func TestShareLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all := rapid.IntRange(1, 500).Draw(t, "all")
		count := rapid.IntRange(0, all).Draw(t, "count")
		s, more := evidence.ShareOf(count, all), evidence.ShareOf(4*count, 4*all)
		if s.Low < 0 || s.Low > s.Value+1e-12 || s.High < s.Value-1e-12 || s.High > 1 {
			t.Fatalf("%d of %d: %+v", count, all, s)
		}
		if more.High-more.Low >= s.High-s.Low {
			t.Fatalf("four times the pupils: %+v is no narrower than %+v", more, s)
		}
	})
}
