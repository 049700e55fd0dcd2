package task_test

import (
	"fmt"
	"testing"

	"evenhand/standards/task"

	"pgregory.net/rapid"
)

func traitsOf(t *testing.T, text string) task.Traits {
	t.Helper()
	asked, err := task.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return asked.Traits()
}

func TestRegroups(t *testing.T) {
	// Legendre's and Kummer's digit-sum identity, worked by hand for these.
	for text, want := range map[string]string{
		"27 + 35": "1", "95 + 5": "2", "999 + 1": "3", "81 - 38": "1", "402 - 178": "2", "1000 - 1": "3", "38 + 47 + 25 + 19": "3",
	} {
		if got := traitsOf(t, text).Get(task.Regroups); got != want {
			t.Errorf("%s: %s regroupings, want %s", text, got, want)
		}
	}
}

func TestRegroupsAgreeWithColumns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		addends := rapid.SliceOfN(rapid.IntRange(0, 9999), 1, 6).Draw(t, "addends")
		carried, carry := 0, 0
		for place := 1; place < 10_000_000; place *= 10 {
			for _, a := range addends {
				carry += a / place % 10
			}
			carry /= 10
			carried += carry
		}
		if got := task.AdditionRegroups(addends...); got != carried {
			t.Fatalf("%v: %d by the identity, %d by columns", addends, got, carried)
		}
	})
}

func TestEnumerations(t *testing.T) {
	// Full enumeration of ordered pairs; anyone can recompute it. The first row
	// agrees with Holte (1997), Amer. Math. Monthly 104.
	regroups := map[string][]int{
		"sums": {1980, 3735, 2385}, "sums with ones": {405, 360, 45}, "differences": {2475, 1620, 0},
		"three digits": {136125, 180225, 89100},
	}
	got := map[string][]int{}
	over, exactly := 0, 0
	count := func(name string, n int) {
		if got[name] == nil {
			got[name] = make([]int, 3)
		}
		got[name][n]++
	}
	for a := 10; a <= 99; a++ {
		for b := 1; b <= 99; b++ {
			if b <= 9 {
				count("sums with ones", task.AdditionRegroups(a, b))
				continue
			}
			count("sums", task.AdditionRegroups(a, b))
			if a+b > 100 {
				over++
			} else if a+b == 100 {
				exactly++
			}
			if a >= b {
				count("differences", task.SubtractionRegroups(a, b))
			}
		}
	}
	for a := 100; a <= 999; a++ {
		for b := 100; b <= a; b++ {
			count("three digits", task.SubtractionRegroups(a, b))
		}
	}
	for name, want := range regroups {
		if fmt.Sprint(got[name]) != fmt.Sprint(want) {
			t.Errorf("%s by 0, 1, 2 regroupings: %v, want %v", name, got[name], want)
		}
	}
	if over != 4779 || exactly != 81 {
		t.Errorf("sums over 100: %d, exactly 100: %d; want 4779 and 81", over, exactly)
	}
}

func TestCarriesMatrix(t *testing.T) {
	// Holte (1997), Amer. Math. Monthly 104: carry in to carry out, base 10, of 100 digit pairs
	// and of 1000 digit triples.
	want2 := [][]int{{55, 45}, {45, 55}}
	want3 := [][]int{{220, 660, 120}, {165, 670, 165}, {120, 660, 220}}
	for in := range 3 {
		got2, got3 := make([]int, 2), make([]int, 3)
		for digits := range 1000 {
			a, b, c := digits/100, digits/10%10, digits%10
			// The carry out of the ones is the regroupings of the digits with the carry as one more addend.
			got3[task.AdditionRegroups(a, b, c, in)]++
			if c == 0 && in < 2 {
				got2[task.AdditionRegroups(a, b, in)]++
			}
		}
		if fmt.Sprint(got3) != fmt.Sprint(want3[in]) {
			t.Errorf("three addends, carry in %d: %v, want %v", in, got3, want3[in])
		}
		if in < 2 && fmt.Sprint(got2) != fmt.Sprint(want2[in]) {
			t.Errorf("two addends, carry in %d: %v, want %v", in, got2, want2[in])
		}
	}
}

func TestNumbersThatAddWithoutACarry(t *testing.T) {
	// OEIS A298372: how many numbers of no more digits add to n without a carry.
	terms := []int{1, 9, 8, 7, 6, 5, 4, 3, 2, 1, 90, 81, 72, 63}
	count := func(n int) int {
		size := 1
		for size <= n {
			size *= 10
		}
		free := 0
		for k := range size {
			if task.AdditionRegroups(n, k) == 0 {
				free++
			}
		}
		return free
	}
	for n, want := range terms {
		if got := count(n); got != want {
			t.Errorf("a(%d) = %d, want %d", n, got, want)
		}
	}
	if got := count(42); got != 48 {
		t.Errorf("a(42) = %d, want 48", got)
	}
	for n := 10; n <= 400; n++ { // the published recurrence a(10k + d) = a(k)(10 - d)
		if got, want := count(n), count(n/10)*(10-n%10); got != want {
			t.Errorf("a(%d) = %d, want %d", n, got, want)
		}
	}
}

func TestHundred(t *testing.T) {
	for _, row := range []struct{ text, crosses, reaches string }{
		{"63 + 45", "true", "false"}, {"47 + 36", "false", "false"}, {"47 + 53", "false", "true"}, {"95 + 5", "false", "true"},
		{"117 - 45", "true", "false"}, {"100 - 37", "false", "true"}, {"137 - 37", "false", "true"}, {"402 - 178", "false", "false"},
	} {
		ts := traitsOf(t, row.text)
		if ts.Get(task.Crosses100) != row.crosses || ts.Get(task.Reaches100) != row.reaches {
			t.Errorf("%s: crosses %s, reaches %s; want %s, %s", row.text, ts.Get(task.Crosses100), ts.Get(task.Reaches100), row.crosses, row.reaches)
		}
	}
}

func TestOtherTraits(t *testing.T) {
	for _, row := range []struct {
		text  string
		trait task.Trait
		want  string
	}{
		{"507 - 49", task.ZeroCrossed, "true"}, {"3642 - 753", task.ZeroCrossed, "false"}, {"400 - 250", task.ZeroCrossed, "false"},
		{"27 + 35", task.RegroupPlaces, "ones"}, {"63 + 45", task.RegroupPlaces, "tens"},
		{"95 + 6", task.RegroupPlaces, "ones+tens"}, {"2245 - 418", task.RegroupPlaces, "ones+hundreds"},
		{"20 + 30", task.RegroupPlaces, "none"},
		{"8 + 8", task.Doubles, "true"}, {"8 + 9", task.NearDoubles, "true"}, {"4 + 9 + 6", task.MakesTen, "true"}, {"8 + 9", task.MakesTen, "false"},
		{"47 + ? = 83", task.Unknown, "change"}, {"? - 8 = 5", task.Unknown, "start"}, {"83 - 47", task.Unknown, "result"},
		{"38 + 47 + 25 + 19", task.Addends, "4"}, {"83 - 47", task.Addends, ""}, {"83 - 47", task.Largest, "83"}, {"47 + 36", task.Largest, "83"},
		{"story compare smaller-unknown more: 62 - 25 = ?, books, Lin, Kofi",
			task.Situation, "compare smaller-unknown more"},
		{"story add-to change-unknown: 25 + ? = 62, books, Lin", task.Unknown, "change"},
		{"story take-from result-unknown: 62 - 25, books, Lin", task.Regroups, "1"},
		{"coins 25, 10, 10, 5, 1", task.Addends, "5"}, {"array 3 by 4", task.Addends, "3"},
		{"true or false: 27 + 35 = 81 - 38", task.Regroups, "2"}, {"coins 50, 50", task.Reaches100, "true"},
		{"read 4:30", task.Regroups, ""}, {"read 4:30 pm", task.PastNoon, "true"}, {"read 9:00 am", task.PastNoon, "false"}, {"read 9:00", task.PastNoon, ""},
	} {
		if got := traitsOf(t, row.text).Get(row.trait); got != row.want {
			t.Errorf("%s: %s is %q, want %q", row.text, row.trait, got, row.want)
		}
	}
}

func TestCountingTraits(t *testing.T) {
	for _, row := range []struct {
		text  string
		trait task.Trait
		want  string
	}{
		// Groen & Parkman (1972), Psychological Review 79: a child counts on from the larger addend
		// by the smaller. Taking away, it goes the shorter way (Woods, Resnick & Groen 1975, from
		// memory).
		{"5 + 1 = ?", task.CountSteps, "1"}, {"2 + 7 = ?", task.CountSteps, "2"}, {"9 + 8 = ?", task.CountSteps, "8"},
		{"17 - 9 = ?", task.CountSteps, "8"}, {"300 - 299 = ?", task.CountSteps, "1"}, {"100 - 1 = ?", task.CountSteps, "1"},
		{"8 + ? = 11", task.CountSteps, "3"}, {"7 + 0 = ?", task.CountSteps, "0"}, {"47 + 36 = ?", task.CountSteps, "10"},
		// Tens and hundreds are units of their own (common practice).
		{"47 + 30 = ?", task.CountSteps, "3"}, {"80 - 30 = ?", task.CountSteps, "3"}, {"304 + 10 = ?", task.CountSteps, "1"},
		{"400 + 300 = ?", task.CountSteps, "3"}, {"40 + 5 = ?", task.CountSteps, "0"}, {"15 - 5 = ?", task.CountSteps, "0"},
		{"9 + 4 + 6 = ?", task.CountSteps, ""},
		{"4 ? 7", task.Apart, "3"}, {"20 ? 90", task.Apart, "10"}, {"more: 5 or 8 dots", task.Apart, "3"},
		// Nuerk, Weger & Willmes (2001), Cognition 82: in 47 and 62 the ones disagree with the tens,
		// in 42 and 57 they agree.
		{"47 ? 62", task.Misleads, "true"}, {"42 ? 57", task.Misleads, "false"}, {"47 ? 47", task.Misleads, "false"},
		{"47 ? 62", task.Decides, "first digit"}, {"47 ? 42", task.Decides, "ones"}, {"47 ? 47", task.Decides, "none"},
		{"347 ? 374", task.Decides, "tens"}, {"347 ? 374", task.Misleads, "true"}, {"98 ? 102", task.Decides, "more digits"},
		{"347 ? 349", task.Decides, "ones"}, {"190 ? 203", task.Decides, "first digit"}, {"190 ? 203", task.Misleads, "true"},
		{"35, 40, ?, 50", task.Step, "5"}, {"50, 45, ?, 35", task.Step, "5"}, {"50, 45, ?, 35", task.Asks, "down"},
		{"100 less than 340 = ?", task.Step, "100"}, {"100 less than 340 = ?", task.Asks, "less"},
		{"read 4:45", task.PastHalf, "true"}, {"read 4:30", task.PastHalf, "false"}, {"draw 4:15", task.PastHalf, "false"},
		{"draw 4:15", task.Asks, "draw"}, {"match 4:00, 7:00, 11:00", task.Asks, "match"},
		{"true or false: 7 = 8 - 1", task.Asks, "result first"}, {"true or false: 8 - 1 = 7", task.Asks, "result last"},
	} {
		if got := task.MustParse(row.text).Traits().Get(row.trait); got != row.want {
			t.Errorf("%s: %s is %q, want %q", row.text, row.trait, got, row.want)
		}
	}
}

// The definitions: a sum crosses a hundred when every addend is below it and the sum above; a
// difference when what is taken from is above and what is left below; the completed sentence
// decides. A hundred is reached as a sum, as what is taken from or left, or within a sequence.
func TestCrossingAndReachingAHundred(t *testing.T) {
	for text, want := range map[string]string{
		"811 - 7": "false false", "347 - 58": "false false", "200 - 50 = ?": "false false", "? - 2 = 720": "false false", "1000 - 7": "false false",
		"304 - 10": "false false", "10 less than 304 = ?": "false false", "304 + 10": "false false", "100 + 1": "false false", "400 + 50 + 5": "false false",
		"63 + 45": "true false", "63 + ? = 108": "true false", "? + 45 = 108": "true false",
		"108 - 45": "true false", "108 - ? = 63": "true false", "10 less than 104 = ?": "true false",
		"10 more than 97 = ?": "true false", "60 + 40": "false true", "100 - 7": "false true",
		"107 - 7": "false true", "99 + 1": "false true", "300 - 200": "false true",
		"98, 99, ?, 101": "true true", "95, 105, ?, 125": "true false", "100, 110, ?": "false true",
		"120, 110, ?": "false true", "110, 120, ?": "false false", "40 + 30 + 45": "true false",
		"60 + 50 - 30": "true false", "90 + 10 - 5": "false true", "story add-to result-unknown: 60 + 40 = ?, shells, Mia": "false true", "47 + 36": "false false",
	} {
		ts := task.MustParse(text).Traits()
		if got := ts.Get(task.Crosses100) + " " + ts.Get(task.Reaches100); got != want {
			t.Errorf("%s crosses and reaches 100: %s, want %s", text, got, want)
		}
	}
}
