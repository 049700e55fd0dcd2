package generate_test

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"
)

// draws is how many items of a skill the laws of answers are tried on; most skills have fewer.
const draws = 10_000

// everySkill makes items of each skill in turn.
func everySkill(t *testing.T, check func(asked task.Task)) {
	t.Helper()
	count := draws
	if testing.Short() {
		count = 500
	}
	for _, skill := range standards.Catalogue() {
		r, err := generate.Make(generate.Request{Skill: skill.ID, Count: count, Seed: 83})
		if err != nil {
			t.Fatalf("%s: %v", skill.ID, err)
		}
		for _, asked := range r.Tasks {
			check(asked)
			if t.Failed() {
				break
			}
		}
	}
}

func TestNoEmptyAnswerIsRight(t *testing.T) {
	everySkill(t, func(asked task.Task) {
		for _, text := range []string{"", " ", ".", "..", ",", "-", "?", "+", "≈", "absent", "x"} {
			if asked.Judge(text) || asked.Possible(text) {
				t.Errorf("%s: %q is judged %v, possible %v", asked, text, asked.Judge(text), asked.Possible(text))
			}
		}
	})
}

var digits = regexp.MustCompile(`[0-9]+`)

// with is a text with its numbers changed.
func with(text string, numbers []string) string {
	i := -1
	return digits.ReplaceAllStringFunc(text, func(string) string { i++; return numbers[i] })
}

// In these any order is right, or many answers are.
var orderFree = regexp.MustCompile(`^(pairs of|picture of [0-9]+ \+|story put-together both)|= \?( \+ \?)+$`)

func TestOtherNumbersAreWrong(t *testing.T) {
	everySkill(t, func(asked task.Task) {
		key := asked.Key()
		if !asked.Judge(key) || !asked.Possible(key) {
			t.Errorf("%s: its own key %q is judged %v, possible %v", asked, key, asked.Judge(key), asked.Possible(key))
		}
		for _, m := range asked.Missteps() {
			if asked.Judge(m.Answer) || !asked.Possible(m.Answer) {
				t.Errorf("%s: %q (%s) is judged %v, possible %v", asked, m.Answer, m.Why(), asked.Judge(m.Answer), asked.Possible(m.Answer))
			}
		}
		numbers := digits.FindAllString(key, -1)
		for i, old := range numbers {
			n, _ := strconv.Atoi(old)
			for _, other := range []int{n + 1, n + 10, 10*n + 1, n + 1000} {
				changed := slices.Clone(numbers)
				changed[i] = strconv.Itoa(other)
				if text := with(key, changed); asked.Judge(text) {
					t.Errorf("%s: %q is right, as %q is", asked, text, key)
				}
			}
			for j := range i {
				turned := slices.Clone(numbers)
				turned[i], turned[j] = turned[j], turned[i]
				if text := with(key, turned); text != key && asked.Judge(text) && !orderFree.MatchString(asked.String()) {
					t.Errorf("%s: %q is right, as %q is", asked, text, key)
				}
			}
			if len(old) > 1 && len(numbers) == 1 { // a mark where no thousands are
				if text := old[:1] + "," + old[1:]; len(old) != 4 && asked.Judge(text) {
					t.Errorf("%s: %q is right, as %q is", asked, text, key)
				}
			}
		}
	})
}

// The item with its answer filled in is right, and with a wrong one is wrong.
func TestFilledInItemsAreJudged(t *testing.T) {
	everySkill(t, func(asked task.Task) {
		question := asked.String()
		if strings.Count(question, "?") != 1 || digits.FindString(asked.Key()) == "" || strings.HasPrefix(question, "story") {
			return
		}
		if text := strings.Replace(question, "?", asked.Key(), 1); !asked.Judge(text) {
			t.Errorf("%s: %q is wrong", asked, text)
		}
		for _, m := range asked.Missteps() {
			if text := strings.Replace(question, "?", m.Answer, 1); asked.Judge(text) {
				t.Errorf("%s: %q is right", asked, text)
			}
		}
	})
}

// A key lists items by their short form, so two items that ask for different things differ in it.
func TestShortFormsTellItemsApart(t *testing.T) {
	for _, skill := range standards.Catalogue() {
		r, err := generate.Make(generate.Request{Skill: skill.ID, Count: 2000, Seed: 11})
		if err != nil {
			t.Fatal(err)
		}
		for _, lang := range []string{"en", "es"} {
			seen := make(map[string]task.Task)
			for _, asked := range r.Tasks {
				short := task.Short(asked, lang)
				if other, twice := seen[short]; twice && other.Key() != asked.Key() {
					t.Errorf("%s and %s are both %q", other, asked, short)
				}
				seen[short] = asked
			}
		}
	}
}

// Each kind of task is made, so that the laws here hold for every kind.
func TestEveryKindIsMade(t *testing.T) {
	made := make(map[string]bool)
	for _, skill := range standards.Catalogue() {
		r, err := generate.Make(generate.Request{Skill: skill.ID, Count: 20, Seed: 1})
		if err != nil {
			t.Fatal(err)
		}
		for _, asked := range r.Tasks {
			made[task.KindOf(asked)] = true
		}
	}
	for _, kind := range task.Kinds() {
		if !made[kind.Name] {
			t.Errorf("no skill makes %s", kind.Name)
		}
	}
	if delete(made, ""); len(made) != len(task.Kinds()) {
		t.Errorf("made are %v, the kinds are %v", made, task.Kinds())
	}
}

// Every look that an item or a skill takes stands in the table of looks.
func TestEveryLookIsListed(t *testing.T) {
	listed := task.AllLooks()
	for _, skill := range standards.Catalogue() {
		for _, look := range skill.Looks {
			if !slices.Contains(listed, look) {
				t.Errorf("%s takes the look %s, which the table of looks doesn't list", skill.ID, look)
			}
		}
	}
}
