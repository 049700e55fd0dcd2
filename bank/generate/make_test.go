package generate_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"
)

func TestEverySkillIsGenerated(t *testing.T) {
	for _, skill := range standards.Catalogue() {
		r, err := generate.Make(generate.Request{Skill: skill.ID, Count: 2000, Seed: 48})
		if err != nil {
			t.Errorf("%s: %v", skill.ID, err)
			continue
		}
		seen := make(map[string]bool)
		for _, asked := range r.Tasks {
			if got := standards.SkillOf(asked); got != skill.ID {
				t.Errorf("%s was made for %s but is %s", asked, skill.ID, got)
			}
			if back, err := task.Parse(asked.String()); err != nil || back != asked {
				t.Errorf("%s: %q reads back as %v, %v", skill.ID, asked, back, err)
			}
			if !asked.Judge(asked.Key()) {
				t.Errorf("%s: %q does not accept its own key %q", skill.ID, asked, asked.Key())
			}
			if seen[asked.Fingerprint()] {
				t.Errorf("%s: %q was made twice", skill.ID, asked)
			}
			seen[asked.Fingerprint()] = true
		}
	}
}

// small are skills with few possible items, so that the end of them is reached.
var small = []standards.SkillID{"make-ten", "subtract-tens", "facts-within-20", "three-addends", "missing-number", "add-ones", "add-tens",
	"tens-and-ones", "compare-within-10", "ten-more-less", "clock-hour", "clock-half-hour", "clock-quarter-hour", "clock-five-minutes"}

func TestMakeLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		request := generate.Request{
			Skill: rapid.SampledFrom(small).Draw(t, "skill"),
			Count: rapid.IntRange(1, 1000).Draw(t, "count"),
			Seed:  rapid.Uint64().Draw(t, "seed"),
		}
		// Some wish that at least one item fulfils, taken from an item.
		some := must(t, request)
		if traits := some.Tasks[0].Traits().List(); rapid.Bool().Draw(t, "wish") {
			where, err := standards.ParseWhere([]string{rapid.SampledFrom(traits).Draw(t, "trait")})
			if err != nil {
				t.Fatal(err)
			}
			request.Where = where
		}
		// A bank that has some of the items already.
		here := make(map[string]bool)
		for _, asked := range some.Tasks[:rapid.IntRange(0, len(some.Tasks)).Draw(t, "here")] {
			here[asked.Fingerprint()] = true
		}
		request.Taken = func(fingerprint string) bool { return here[fingerprint] }

		r := must(t, request)
		made := make(map[string]bool)
		for _, asked := range r.Tasks {
			if !request.Where.Holds(asked.Traits()) || standards.SkillOf(asked) != request.Skill {
				t.Fatalf("%s is not what was asked for", asked)
			}
			if here[asked.Fingerprint()] || made[asked.Fingerprint()] {
				t.Fatalf("%s is there already", asked)
			}
			made[asked.Fingerprint()] = true
		}
		possible, err := generate.Count(request.Skill, request.Where)
		if err != nil {
			t.Fatal(err)
		}
		if r.Less != (len(r.Tasks) < request.Count) {
			t.Fatalf("made %d of %d, and Less is %v", len(r.Tasks), request.Count, r.Less)
		}
		if r.Less && (r.Possible != possible.Distinct || r.Possible != len(r.Tasks)+r.Taken) {
			t.Fatalf("%+v items are possible, but the result says %s", possible, r)
		}

		if again := must(t, request); !slices.Equal(again.Tasks, r.Tasks) {
			t.Fatalf("the same seed gave %v and %v", r.Tasks, again.Tasks)
		}
		request.Count = rapid.IntRange(1, request.Count).Draw(t, "fewer")
		fewer := must(t, request)
		if n := len(fewer.Tasks); n > len(r.Tasks) || !slices.Equal(fewer.Tasks, r.Tasks[:n]) {
			t.Fatalf("%v is not the beginning of %v", fewer.Tasks, r.Tasks)
		}
	})
}

func must(t *rapid.T, request generate.Request) generate.Result {
	r, err := generate.Make(request)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestAnotherSeedGivesOthers(t *testing.T) {
	made := func(seed uint64) []task.Task {
		r, err := generate.Make(generate.Request{Skill: "add-several", Count: 20, Seed: seed})
		if err != nil {
			t.Fatal(err)
		}
		return r.Tasks
	}
	if one, two := made(1), made(2); slices.Equal(one, two) {
		t.Errorf("seeds 1 and 2 both give %v", one)
	}
}

func TestEveryItemIsAsLikely(t *testing.T) {
	first := make(map[string]int)
	for seed := range uint64(36_000) {
		r, err := generate.Make(generate.Request{Skill: "clock-hour", Count: 1, Seed: seed})
		if err != nil {
			t.Fatal(err)
		}
		first[r.Tasks[0].String()]++
	}
	chi := 0.0
	for _, n := range first {
		chi += float64((n-1000)*(n-1000)) / 1000
	}
	// NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4, upper critical values of
	// the chi-square distribution: 35 degrees of freedom, probability .999.
	if len(first) != 36 || chi > 66.619 {
		t.Errorf("%d different first items, chi-square %.1f, want 36 and at most 66.619", len(first), chi)
	}
}

func TestBothOrdersAreAsLikely(t *testing.T) {
	where := wishes(t, "largest = 196", "doubles = false") // 99 + 97 alone; 98 + 98 is a double
	shown := make(map[string]int)
	for seed := range uint64(400) {
		r, err := generate.Make(generate.Request{Skill: "add-past-100", Where: where, Count: 2, Seed: seed})
		if err != nil {
			t.Fatal(err)
		}
		if got := r.String(); got != "only 1 exists, 1 made" {
			t.Fatalf("got %q", got)
		}
		shown[r.Tasks[0].String()]++
	}
	// Binomial with 400 trials and probability 1/2: five standard deviations are 50.
	if a, b := shown["99 + 97 = ?"], shown["97 + 99 = ?"]; a+b != 400 || a < 150 || b < 150 {
		t.Errorf("shown %v", shown)
	}
}

func TestResultSaysHowManyExist(t *testing.T) {
	request := generate.Request{Skill: "clock-hour", Count: 50, Seed: 1}
	all, err := generate.Make(request)
	// Twelve hours, each to read, to draw and to say.
	if want := "only 36 exist, 36 made"; err != nil || all.String() != want {
		t.Errorf("got %q, %v, want %q", all, err, want)
	}
	request.Taken = func(fingerprint string) bool { return strings.HasPrefix(fingerprint, "draw") }
	some, err := generate.Make(request)
	if want := "only 36 exist, 12 in the bank already, 24 made"; err != nil || some.String() != want {
		t.Errorf("got %q, %v, want %q", some, err, want)
	}
	request.Taken = func(string) bool { return true }
	none, err := generate.Make(request)
	if want := "only 36 exist, 36 in the bank already, 0 made"; err != nil || none.String() != want {
		t.Errorf("got %q, %v, want %q", none, err, want)
	}
	request.Count = 5
	request.Taken = nil
	five, err := generate.Make(request)
	if want := "5 made"; err != nil || five.String() != want {
		t.Errorf("got %q, %v, want %q", five, err, want)
	}
}

func TestWhyNothingCanBeMade(t *testing.T) {
	for _, row := range []struct {
		skill standards.SkillID
		count int
		where []string
		want  string
	}{
		{"add-ones", 4, []string{"digits = 2", "regroups >= 3"}, "no add-ones item has regroups >= 3; there it goes from 0 to 2"},
		{"subtract-two-digit", 4, []string{"regroups = 1"}, "no subtract-two-digit item has regroups = 1; there it is always 0"},
		{"clock-hour", 4, []string{"regroups = 1"}, "no clock-hour item has regroups = 1; regroups does not apply to them"},
		{"match-clocks", 4, []string{"clock_step = minute"}, "no match-clocks item has clock_step = minute; there it goes from hour to five-minute"},
		{"add-ones", 4, []string{"regroup_places = tens"}, "no add-ones item has regroup_places = tens; there it is none, ones or ones+tens"},
		{"add-two-digit", 4, []string{"regroups = 0", "makes_ten = true"},
			"no add-two-digit item has regroups = 0 and makes_ten = true; each of these exists, but not all in one item: leave one out"},
		{"add-twodigit", 4, nil, `no skill "add-twodigit"; did you mean "add-two-digit"?`},
		{"add-two-digit", 0, nil, "0 items can't be made; ask for 1 or more"},
	} {
		_, err := generate.Make(generate.Request{Skill: row.skill, Count: row.count, Where: wishes(t, row.where...)})
		if err == nil || err.Error() != row.want {
			t.Errorf("%s %v:\n got %v\nwant %s", row.skill, row.where, err, row.want)
		}
	}
	if _, err := generate.Count("clock-hours", nil); err == nil {
		t.Error("counting an unknown skill gave no error")
	}
}

func BenchmarkMake100000(b *testing.B) {
	for _, skill := range []standards.SkillID{"add-several", "add-within-1000", "match-clocks"} {
		b.Run(string(skill), func(b *testing.B) {
			for b.Loop() {
				r, err := generate.Make(generate.Request{Skill: skill, Count: 100_000, Seed: 1})
				if err != nil || r.Less {
					b.Fatal(r, err)
				}
			}
		})
	}
}

// BenchmarkCount goes through the largest space with a wish.
func BenchmarkCount(b *testing.B) {
	where, err := standards.ParseWhere([]string{"regroups >= 5"})
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := generate.Count("add-several", where); err != nil {
			b.Fatal(err)
		}
	}
}
