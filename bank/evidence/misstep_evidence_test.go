package evidence_test

import (
	"maps"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"evenhand/bank/evidence"
)

// The wrong answers of five subtraction missteps for two-digit a - b; kinds from Brown &
// Burton (1978), Cognitive Science 2, and VanLehn (1990), Mind Bugs.
var subtractionMissteps = map[string]func(a, b int) int{
	"smaller from larger": func(a, b int) int {
		return max(a/10, b/10)*10 - min(a/10, b/10)*10 + max(a%10, b%10) - min(a%10, b%10)
	},
	"ten taken, not paid back": func(a, b int) int { return a - b + 10*regroups(a, b) },
	"zero written instead":     func(a, b int) int { return (a/10-b/10)*10 + max(0, a%10-b%10) },
	"added instead":            func(a, b int) int { return a + b },
	"ten paid, none taken":     func(a, b int) int { return a - b - 10*(1-regroups(a, b)) },
}

func regroups(a, b int) int {
	if a%10 < b%10 {
		return 1
	}
	return 0
}

// given marks an answer to a - b.
func given(a, b, answer int) evidence.Given {
	g := evidence.Given{Item: strconv.Itoa(a) + " - " + strconv.Itoa(b), Right: answer == a-b}
	for name, wrong := range subtractionMissteps {
		if wrong(a, b) != a-b {
			g.Chances = append(g.Chances, name)
			if wrong(a, b) == answer {
				g.Matches = append(g.Matches, name)
			}
		}
	}
	return g
}

func TestMisstepAnswersOfTheSources(t *testing.T) {
	// Answers by enumeration of the missteps' rules: 81-38, 70-34, and two where both first agree.
	for _, c := range []struct {
		a, b, answer int
		missteps     []string
	}{
		{81, 38, 57, []string{"smaller from larger"}}, {81, 38, 53, []string{"ten taken, not paid back"}},
		{81, 38, 50, []string{"zero written instead"}}, {81, 38, 119, []string{"added instead"}},
		{70, 34, 44, []string{"smaller from larger"}}, {70, 34, 104, []string{"added instead"}},
		{52, 27, 35, []string{"smaller from larger", "ten taken, not paid back"}},
		{43, 28, 25, []string{"smaller from larger", "ten taken, not paid back"}},
	} {
		got := given(c.a, c.b, c.answer).Matches
		slices.Sort(got)
		if !slices.Equal(got, c.missteps) {
			t.Errorf("%d - %d = %d: %q, want %q", c.a, c.b, c.answer, got, c.missteps)
		}
	}
}

func TestMisstepsStandOut(t *testing.T) {
	for _, c := range []struct {
		name     string
		paper    []evidence.Given
		missteps []string // of the only finding; none for none
		shown    int
		chances  int
	}{
		{"three of four chances",
			[]evidence.Given{given(81, 38, 57), given(70, 34, 44), given(62, 25, 43), given(93, 47, 46), given(88, 31, 57)},
			[]string{"smaller from larger"}, 3, 4},
		{"once is no evidence",
			[]evidence.Given{given(81, 38, 57), given(70, 34, 36), given(62, 25, 37), given(93, 47, 46)}, nil, 0, 0},
		{"all right", []evidence.Given{given(81, 38, 43), given(70, 34, 36)}, nil, 0, 0},
		{"wrong in no way we know",
			[]evidence.Given{given(81, 38, 1), given(70, 34, 2), given(62, 25, 3), given(93, 47, 4)}, nil, 0, 0},
		{"two that can't be told apart",
			[]evidence.Given{given(52, 27, 35), given(43, 28, 25), given(74, 39, 45)},
			[]string{"smaller from larger", "ten taken, not paid back"}, 3, 3},
		{"told apart by one more item",
			[]evidence.Given{given(52, 27, 35), given(43, 28, 25), given(74, 39, 45), given(81, 38, 53), given(90, 12, 88)},
			[]string{"ten taken, not paid back"}, 5, 5},
		{"no paper", nil, nil, 0, 0},
	} {
		found := evidence.Missteps(c.paper)
		if len(c.missteps) == 0 {
			if len(found) > 0 {
				t.Errorf("%s: %+v, want nothing", c.name, found)
			}
			continue
		}
		if len(found) != 1 {
			t.Errorf("%s: %+v, want one finding", c.name, found)
			continue
		}
		got := slices.Clone(found[0].Missteps)
		slices.Sort(got)
		if !slices.Equal(got, c.missteps) || len(found[0].Items) != c.shown || found[0].Chances != c.chances {
			t.Errorf("%s: %+v, want %q, %d of %d chances", c.name, found[0], c.missteps, c.shown, c.chances)
		}
	}
}

// A further item answered as the misstep would never makes it less likely, and the order of
// the items does not matter.
func TestMisstepLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var paper []evidence.Given
		for range rapid.IntRange(2, 8).Draw(t, "items") {
			a, b := subtraction(rapid.IntRange(0, 1<<20).Draw(t, "item"))
			answer := a - b
			if rapid.Bool().Draw(t, "misstep") {
				answer = subtractionMissteps["smaller from larger"](a, b)
			}
			paper = append(paper, given(a, b, answer))
		}
		before := evidence.Missteps(paper)
		slices.Reverse(paper)
		if after := evidence.Missteps(paper); len(before) != len(after) {
			t.Fatalf("%+v in one order, %+v in the other", before, after)
		}
		more := evidence.Missteps(append(paper, given(81, 38, 57)))
		if len(before) == 1 && len(before[0].Missteps) == 1 &&
			(len(more) == 0 || more[0].Probability < before[0].Probability-1e-9) {
			t.Fatalf("%+v, and with one more showing %+v", before, more)
		}
	})
}

// subtraction turns a number into a two-digit a - b, a > b.
func subtraction(n int) (a, b int) {
	b = 11 + n%78
	return b + 1 + n/78%(99-b), b
}

// pupil is an invented pupil: the missteps held, how often they show, and the care otherwise.
type pupil struct {
	held       []string
	hold, care float64
}

func newPupil(rng *rand.Rand, names []string) (p pupil) {
	p = pupil{hold: 0.6 + 0.4*rng.Float64(), care: 0.6 + 0.38*rng.Float64()}
	for _, name := range names {
		if rng.Float64() < 0.05 {
			p.held = append(p.held, name)
		}
	}
	return p
}

// answer is the misstep's, the right one, or a slip: a digit off, the digits turned round, or
// any number.
func (p pupil) answer(rng *rand.Rand, a, b int) int {
	var wrong []int
	for _, name := range p.held {
		if answer := subtractionMissteps[name](a, b); answer != a-b {
			wrong = append(wrong, answer)
		}
	}
	if len(wrong) > 0 && rng.Float64() < p.hold {
		return wrong[rng.IntN(len(wrong))]
	}
	if rng.Float64() < p.care {
		return a - b
	}
	slips := []int{a - b + 1, a - b - 1, a - b + 10, a - b - 10, (a-b)%10*10 + (a-b)/10, rng.IntN(100)}
	return slips[rng.IntN(len(slips))]
}

// score counts what findings are worth.
type score struct{ found, right, several, held, recalled int }

func (s *score) count(p pupil, paper []evidence.Given) {
	findings := evidence.Missteps(paper)
	for _, f := range findings {
		s.found++
		if slices.ContainsFunc(f.Missteps, func(m string) bool { return slices.Contains(p.held, m) }) {
			s.right++
		}
		if len(f.Missteps) > 1 {
			s.several++
		}
	}
	for _, name := range p.held {
		chances := 0
		for _, g := range paper {
			if slices.Contains(g.Chances, name) {
				chances++
			}
		}
		if chances < 3 {
			continue
		}
		s.held++
		if slices.ContainsFunc(findings, func(f evidence.Finding) bool { return slices.Contains(f.Missteps, name) }) {
			s.recalled++
		}
	}
}

// 1,000 classes of 24 sit a quiz of 12 subtractions each; one pupil in twenty has any one of
// five missteps. Precision: of the findings, how many name a misstep the pupil has. Recall:
// of the missteps pupils have that could show at least three times, how many are found.
func TestMisstepsInAThousandClasses(t *testing.T) {
	rng := rand.New(rand.NewPCG(20, 5))
	names := slices.Sorted(maps.Keys(subtractionMissteps))
	var s score
	for range 1000 {
		quiz := make([][2]int, 12)
		for k := range quiz {
			quiz[k][0], quiz[k][1] = subtraction(rng.IntN(1 << 20))
		}
		for range 24 {
			p := newPupil(rng, names)
			var paper []evidence.Given
			for _, q := range quiz {
				paper = append(paper, given(q[0], q[1], p.answer(rng, q[0], q[1])))
			}
			s.count(p, paper)
		}
	}
	precision, recall := float64(s.right)/float64(s.found), float64(s.recalled)/float64(s.held)
	t.Logf("precision %.3f of %d findings (%d name several), recall %.3f of %d missteps", precision, s.found, s.several, recall, s.held)
	if precision < 0.95 || recall < 0.85 {
		t.Errorf("precision %.3f, recall %.3f: want at least 0.95 and 0.85", precision, recall)
	}
}
