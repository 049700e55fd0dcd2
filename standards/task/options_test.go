package task_test

import (
	"fmt"
	"slices"
	"strconv"
	"testing"

	"evenhand/standards/task"

	"pgregory.net/rapid"
)

func TestOptions(t *testing.T) {
	for _, row := range []struct {
		task  string
		place int
		want  string
	}{
		// The answers are those of the known missteps, worked through in misstep_test.go.
		{"27 + 35", 0, "[62 71 512] 0"}, {"27 + 35", 1, "[52 62 71] 1"}, {"27 + 35", 2, "[17 52 62] 2"},
		{"read 3:30", 1, "[3:06 3:30 6:15] 1"},
		{"47 ? 74", 0, "[< = >] 0"},
	} {
		options, at, ok := task.OptionsAt(task.MustParse(row.task), row.place)
		if got := fmt.Sprint(options, at); !ok || got != row.want {
			t.Errorf("%s at %d: %s %v, want %s", row.task, row.place, got, ok, row.want)
		}
	}
	// Two answers are all there are: no third is a typical error.
	if _, _, ok := task.Options(task.MustParse("odd or even: 14")); ok {
		t.Error("odd or even has three options")
	}
}

func TestOptionsFollowTheRules(t *testing.T) {
	// Haladyna, Downing & Rodriguez (2002), Applied Measurement in Education 15(3) 309-334: exactly
	// one right, numbers in order, options distinct, every distractor a typical error.
	rapid.Check(t, func(t *rapid.T) {
		asked, place := drawTask(t), rapid.IntRange(0, 2).Draw(t, "place")
		options, at, ok := task.OptionsAt(asked, place)
		if !ok {
			if len(asked.Missteps()) > 1 {
				t.Fatalf("%s has missteps %v and no options", asked, asked.Missteps())
			}
			return
		}
		if options[at] != asked.Key() {
			t.Fatalf("%s: the key %s is not option %d of %v", asked, asked.Key(), at, options)
		}
		var numbers []int
		for i, option := range options {
			if i != at && (asked.Judge(option) || why(asked.String(), option) == "") {
				t.Fatalf("%s: %s is right or no typical error", asked, option)
			}
			if n, err := strconv.Atoi(option); err == nil {
				numbers = append(numbers, n)
			}
		}
		if len(numbers) == 3 && !slices.IsSorted(numbers) {
			t.Fatalf("%s: %v are not in order", asked, options)
		}
		if options[0] == options[1] || options[1] == options[2] || options[0] == options[2] {
			t.Fatalf("%s: %v are not all different", asked, options)
		}
	})
}

func TestTheKeyStandsInEveryPlace(t *testing.T) {
	// The same source: the key's place varies. Of the sums within 100 whose missteps allow every
	// place, each place has a third, give or take a twentieth.
	places, all := [3]int{}, 0
	for a := 10; a <= 99; a++ {
		for b := 10; a+b <= 100; b++ {
			s, err := task.NewAddition(2, a, b)
			if err != nil {
				t.Fatal(err)
			}
			everywhere := true
			for place := range 3 {
				_, at, ok := task.OptionsAt(s, place)
				everywhere = everywhere && ok && at == place
			}
			if _, at, _ := task.Options(s); everywhere {
				places[at]++
				all++
			}
		}
	}
	for place, n := range places {
		if share := float64(n) / float64(all); share < .283 || share > .383 {
			t.Errorf("the key stands in place %d in %d of %d sums", place+1, n, all)
		}
	}
}
