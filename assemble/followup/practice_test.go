package followup_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"html"
	"io"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"evenhand/assemble"
	"evenhand/assemble/followup"
	"evenhand/assemble/plan"
	"evenhand/assemble/sheet"
	"evenhand/bank"
	"evenhand/bank/evidence/report"
	"evenhand/bank/generate"
	"evenhand/bank/results"
	"evenhand/standards"
	"evenhand/standards/task"
)

var day = time.Date(2026, time.November, 27, 12, 0, 0, 0, time.UTC)

// school is a bank with a quiz that a class sat: P01 and P02 go wrong by one misstep, P03 gets all right, P04 misses every
// other item in no known way, P05 was absent.
func school(t *testing.T, skill standards.SkillID, where string, misstep string) (*bank.Bank, *report.Report) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "team.bank")
	b, err := bank.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	row := plan.Row{Skill: skill, Count: 6}
	if where != "" {
		if row.Where, err = standards.ParseWhere([]string{where}); err != nil {
			t.Fatal(err)
		}
	}
	make(t, b, skill, row.Where, 80)
	asked := plan.Plan{Title: "Friday check", Forms: 1, ShareRight: 75, Rows: []plan.Row{row}}
	quiz, err := assemble.Assemble(context.Background(), b, asked, assemble.Options{Seed: 1, Week: "2026-W48", Limit: 300 * time.Millisecond})
	if err != nil {
		t.Fatal(err)
	}
	given := quiz.Given("MK", day)
	if err := b.KeepQuiz(given); err != nil {
		t.Fatal(err)
	}
	sat := results.QuizOf(given)
	var papers []results.Paper
	for i, code := range []string{"P01", "P02", "P03", "P04", "P05"} {
		paper := results.Paper{Quiz: sat.ID, Class: "2A", Pupil: code, Form: "A"}
		for k, item := range sat.Forms[0].Items {
			written := item.Key
			posed, _ := item.Task()
			for _, m := range posed.Missteps() {
				if i < 2 && slices.ContainsFunc(m.Kinds, func(kind *task.MisstepKind) bool { return kind.Name == misstep }) {
					written = m.Answer
				}
			}
			answer := item.Answered(written)
			if i == 3 && k%2 == 0 {
				answer = results.Answer{State: results.Wrong}
			}
			if i == 4 {
				answer = results.Answer{State: results.NotReached}
			}
			paper.Answers = append(paper.Answers, answer)
		}
		papers = append(papers, paper)
	}
	return b, report.Of([]results.Quiz{sat}, papers)
}

func make(t *testing.T, b *bank.Bank, skill standards.SkillID, where standards.Where, count int) {
	t.Helper()
	if _, err := generate.Into(b, generate.Request{Skill: skill, Where: where, Count: count, Seed: 1}, bank.Ready, "MK", day); err != nil {
		t.Fatal(err)
	}
}

func shows(item bank.Item, misstep string) bool {
	return slices.ContainsFunc(task.MustParse(item.Task).Missteps(), func(m task.Misstep) bool {
		return slices.ContainsFunc(m.Kinds, func(kind *task.MisstepKind) bool { return kind.Name == misstep })
	})
}

func meanShare(items []bank.Item) (sum float64) {
	for _, item := range items {
		sum += item.Difficulty().ShareRight() / float64(len(items))
	}
	return sum
}

// What holds of every set: the misstep can show in each item of its group, none stood in the quiz or stands twice, the first
// half is no harder than the second, all fits on two pages, and who needs what gets it. The same bank and seed
// give the same set.
func TestPractice(t *testing.T) {
	for _, c := range []struct{ skill, where, misstep string }{
		{"add-two-digit", "", "ten dropped"},
		{"subtract-regrouping", "", "smaller digit from larger"},
		{"facts-within-20", "", "start counted too"},
		{"clock-five-minutes", "", "hands swapped"},
	} {
		b, r := school(t, standards.SkillID(c.skill), c.where, c.misstep)
		options := followup.Options{Week: "2026-W49", Seed: 1}
		set, err := followup.Practice(context.Background(), b, r, "2A", options)
		if err != nil {
			t.Errorf("%s: %v", c.misstep, err)
			continue
		}
		seen := map[string]bool{}
		for _, item := range r.Items {
			seen[item.ID] = true
		}
		for _, id := range set.Items() {
			if seen[id] {
				t.Errorf("%s: item %s stood in the quiz or stands twice", c.misstep, id)
			}
			seen[id] = true
		}
		kinds := map[followup.Kind][]string{}
		for _, s := range set.Sheets {
			for _, p := range s.Pupils {
				kinds[s.Kind] = append(kinds[s.Kind], p.Code)
			}
			if s.Kind == followup.Extension {
				continue
			}
			if half := len(s.Items) / 2; len(s.Recheck) == 0 || len(s.Items) < 4 || half < 1 || meanShare(s.Items[:half]) < meanShare(s.Items[half:])-.02 {
				t.Errorf("%s, %s: %d items, %.2f and then %.2f expected right, %d to check", c.misstep, s.Name, len(s.Items),
					meanShare(s.Items[:half]), meanShare(s.Items[half:]), len(s.Recheck))
			}
			if s.Example == nil || !s.Example.Draws() {
				t.Errorf("%s: %s has no example", c.misstep, s.Name)
			}
			for _, item := range slices.Concat(s.Items, s.Recheck) {
				if s.Kind == followup.ForGroup && s.Title == c.misstep && !shows(item, c.misstep) {
					t.Errorf("%s can't show in %s", c.misstep, item.Task)
				}
			}
		}
		want := map[followup.Kind][]string{followup.ForGroup: {"P01", "P02"}, followup.Mixed: {"P04"}, followup.Extension: {"P03"}}
		if fmt.Sprint(kinds) != fmt.Sprint(want) || !slices.Equal(set.Absent, []string{"P05"}) {
			t.Errorf("%s: %v, and too few answers of %v; want %v", c.misstep, kinds, set.Absent, want)
		}
		if c.misstep != "ten dropped" {
			continue
		}
		again, err := followup.Practice(context.Background(), b, r, "2A", options)
		if err != nil || !slices.Equal(again.Items(), set.Items()) {
			t.Errorf("%s: another set the second time (%v)", c.misstep, err)
		}
	}
}

// A weak class begins with easier items than a strong one, by the papers that tell the class's level, though the quiz was the
// same: half of the wrong answers to the quiz's items are to be expected, and the weak class gives more of them.
func TestPracticeIsAimedAtTheClass(t *testing.T) {
	b, r := school(t, "facts-within-20", "", "start counted too")
	make(t, b, "facts-within-20", nil, 250) // nearly all there are, from 0 + 1 to 19 - 12
	kept, err := b.Quizzes()
	if err != nil {
		t.Fatal(err)
	}
	quiz := results.QuizOf(kept[0])
	var easy []float64
	for _, rightOfTwelve := range []int{5, 11} {
		var papers []results.Paper
		for i := range 24 {
			paper := results.Paper{Quiz: quiz.ID, Class: "2A", Pupil: fmt.Sprintf("P%02d", i+1), Form: "A"}
			for k := range quiz.Forms[0].Items {
				answer := results.Answer{State: results.Wrong}
				if (7*i+5*k)%12 < rightOfTwelve { // every residue as often as every other
					answer.State = results.Right
				}
				paper.Answers = append(paper.Answers, answer)
			}
			papers = append(papers, paper)
		}
		const seeds = 6 // equally good choices differ
		begins := 0.0
		for seed := range uint64(seeds) {
			options := followup.Options{Week: "2026-W49", Seed: seed + 1, Quizzes: []results.Quiz{quiz}, Papers: papers}
			set, err := followup.Practice(context.Background(), b, r, "2A", options)
			if err != nil {
				t.Fatal(err)
			}
			if set.Level == nil || (set.Level.Ability.Value > set.Level.Usual) != (rightOfTwelve == 11) {
				t.Errorf("%d of 12 right: the class stands %+v", rightOfTwelve, set.Level)
			}
			first := set.Sheets[0].Items
			begins += meanShare(first[:len(first)/2]) / seeds
		}
		easy = append(easy, begins)
	}
	if easy[0] < easy[1]+.01 {
		t.Errorf("it begins with %.3f right of all pupils for the weak class, with %.3f for the strong one", easy[0], easy[1])
	}
}

// The teacher's page is in the language of the sheets, and as a page for a browser says the same; pupils stand on it, and on
// no sheet.
func TestTeachersPage(t *testing.T) {
	b, r := school(t, "add-two-digit", "", "ten dropped")
	set, err := followup.Practice(context.Background(), b, r, "2A", followup.Options{Week: "2026-W49", Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	for lang, want := range map[string][]string{
		"en": {report.Caution, "Sheet 1: ten dropped", "P01 (in ", "To begin: put the new ten on top", "Extension: ", "Mixed: ", "No sheet", "P05: too few"},
		"es": {report.CautionIn("es"), "Hoja 1: forma una decena nueva", "P01 (se vio en ", "Para empezar: escribir la nueva decena",
			"Ampliación: ", "Mixta: ", "Sin hoja", "P05: muy pocas"},
	} {
		got := map[string]string{}
		err := set.Write(func(name string, write func(io.Writer) error) error {
			var out bytes.Buffer
			err := write(&out)
			got[name] = out.String()
			return err
		}, sheet.Options{Lang: lang}, followup.Also{HTML: true})
		if err != nil {
			t.Fatal(err)
		}
		page := html.UnescapeString(spoken.ReplaceAllString(got["teacher.html"], " "))
		for _, text := range want {
			if page := strings.Join(strings.Fields(page), " "); !strings.Contains(page, text) {
				t.Errorf("%s: the page lacks %q: %s", lang, text, page)
			}
		}
		for name, text := range got {
			if strings.HasSuffix(name, ".html") && followup.Private(name) != strings.Contains(text, "P01") {
				t.Errorf("%s: codes and private don't go together", name)
			}
		}
		if got["teacher.pdf"] == "" || !strings.Contains(got["teacher.html"], `<html lang="`+lang+`">`) {
			t.Errorf("%s: no page", lang)
		}
	}
}

// spoken is what stands between the words of a page.
var spoken = regexp.MustCompile(`<style>[^<]*</style>|<[^>]*>`)

// Items that lack are told as generate would make them, and with them there is practice.
func TestMissingPractice(t *testing.T) {
	b, r := school(t, "add-two-digit", "regroups = 1", "ten dropped")
	var used []string
	for item, err := range b.Find(bank.Query{}) {
		if err != nil {
			t.Fatal(err)
		}
		used = append(used, item.ID)
	}
	for _, id := range used[:len(used)-8] {
		if _, err := b.Retire(id, "MK", "for this test", day); err != nil {
			t.Fatal(err)
		}
	}
	options := followup.Options{Week: "2026-W49", Seed: 1}
	_, err := followup.Practice(context.Background(), b, r, "2A", options)
	var missing *followup.MissingError
	if !errors.As(err, &missing) || len(missing.Make) == 0 {
		t.Fatalf("of 8 items it made practice, or said only: %v", err)
	}
	for _, wish := range missing.Make {
		if wish.Skill != "add-two-digit" {
			t.Errorf("%s is to be made", wish.Command())
		}
	}
	err = assemble.Filling{Bank: b, By: "MK", At: day}.Try(5, func() error {
		_, err := followup.Practice(context.Background(), b, r, "2A", options)
		return err
	})
	if err != nil {
		t.Error(err)
	}
}

// Wherever a misstep can show, an example for it can be drawn, on Letter in usual and large print. Each misstep is
// tried in the first skills that have it, and each skill with one at least.
func TestEveryMisstepHasAnExample(t *testing.T) {
	drawn, tried := 0, map[*task.MisstepKind]int{}
	for _, skill := range standards.Catalogue() {
		made, err := generate.Make(generate.Request{Skill: skill.ID, Count: 25, Seed: 1})
		if err != nil {
			t.Fatal(err)
		}
		var kinds []*task.MisstepKind
		for _, asked := range made.Tasks {
			for _, m := range asked.Missteps() {
				for _, kind := range m.Kinds {
					if !slices.Contains(kinds, kind) {
						kinds = append(kinds, kind)
					}
				}
			}
		}
		for i, kind := range kinds {
			if tried[kind]++; tried[kind] > 2 && i > 0 {
				continue
			}
			e, ok := followup.DoneFor(skill, []*task.MisstepKind{kind}, 1)
			if !ok {
				t.Errorf("no example for %q in %s", kind.Name, skill.ID)
				continue
			}
			drawn++
			p := sheet.Paper{Title: "Practice", Example: &e, Questions: []sheet.Question{{Number: 1, Task: e.Task, Look: e.Task.Looks()[0]}}}
			for _, o := range []sheet.Options{{}, {Large: true, Lang: "es"}} {
				if pages, err := sheet.PageCount(p, o); err != nil || pages > 3 {
					t.Errorf("example %s as %s: %d pages, %v", e.Task, e.Look, pages, err)
				}
			}
		}
	}
	if drawn < 80 {
		t.Errorf("only %d examples were tried", drawn)
	}
}
