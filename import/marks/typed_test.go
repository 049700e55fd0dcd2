package marks_test

import (
	"testing"

	"pgregory.net/rapid"

	"evenhand/bank/results"
	"evenhand/import/marks"
	"evenhand/standards"
	"evenhand/standards/task"
)

// onScreen is a quiz of two sums in two forms.
func onScreen() results.Quiz {
	item := func(text string) results.Item {
		asked := task.MustParse(text)
		return results.Item{ID: text, Skill: standards.SkillID("add-two-digit"), Asks: text, Key: asked.Key()}
	}
	return results.NewQuiz("Friday check", "2026-W48", []results.Form{
		{Name: "A", Items: []results.Item{item("47 + 36 = ?"), item("58 + 27 = ?")}},
		{Name: "B", Items: []results.Item{item("46 + 37 = ?"), item("57 + 28 = ?")}},
	})
}

// A row typed on a screen over a paper: what each text comes to. The sums were worked out by hand.
func TestTypedRow(t *testing.T) {
	state := func(s results.State, written ...string) results.Answer {
		return results.Answer{State: s, Written: append(written, "")[0]}
	}
	stands := results.Paper{Pupil: "P01", Form: "A", Answers: []results.Answer{state(results.Right, "83"), state(results.NotReached, "blue")}}
	for _, c := range []struct {
		name   string
		row    marks.TypedRow
		stands results.Paper
		want   [2]results.Answer
	}{
		{"a new row", marks.TypedRow{Cells: map[int]string{0: "83", 1: "75"}}, results.Paper{Form: "A"},
			[2]results.Answer{state(results.Right, "83"), state(results.Wrong, "75")}},
		{"of the other form", marks.TypedRow{Form: "b", Cells: map[int]string{0: "73", 1: "x"}}, stands,
			[2]results.Answer{state(results.Wrong, "73"), state(results.Wrong)}},
		{"one cell, the rest stays and is still a question", marks.TypedRow{Cells: map[int]string{0: "-"}}, stands,
			[2]results.Answer{state(results.Absent), state(results.NotReached, "blue")}},
		{"as it was shown", marks.TypedRow{Form: "A", Cells: map[int]string{0: "83", 1: "blue"}}, stands,
			[2]results.Answer{state(results.Right, "83"), state(results.NotReached, "blue")}},
		{"settled", marks.TypedRow{Cells: map[int]string{1: "wrote blue"}}, stands,
			[2]results.Answer{state(results.Right, "83"), state(results.Wrong, "blue")}},
		{"emptied", marks.TypedRow{Cells: map[int]string{0: ""}}, stands,
			[2]results.Answer{state(results.NotReached), state(results.NotReached, "blue")}},
		{"the rest right",
			marks.TypedRow{Cells: map[int]string{0: "", 1: "75"}, RestRight: true}, results.Paper{Form: "A"},
			[2]results.Answer{state(results.Right), state(results.Wrong, "75")}},
		{"nothing typed is no rest",
			marks.TypedRow{Cells: map[int]string{0: "", 1: " "}, RestRight: true}, results.Paper{Form: "A"},
			[2]results.Answer{state(results.NotReached), state(results.NotReached)}},
		{"absent", marks.TypedRow{Form: "absent", Cells: map[int]string{0: "83", 1: ""}}, results.Paper{Form: "A"},
			[2]results.Answer{state(results.Absent), state(results.Absent)}},
	} {
		paper, ok := c.row.Paper(onScreen(), c.stands)
		if !ok || len(paper.Answers) != 2 || [2]results.Answer(paper.Answers) != c.want {
			t.Errorf("%s: %+v, want %+v", c.name, paper.Answers, c.want)
		}
	}
	if _, ok := (marks.TypedRow{Form: "C"}).Paper(onScreen(), stands); ok {
		t.Error("a form that is none is taken")
	}
}

// Whatever is typed, what counts is a mark or an answer as --enter takes it, and sending again what is
// shown changes nothing.
func TestTypedRowStays(t *testing.T) {
	quiz := onScreen()
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{"83", "x", "-", ".", "+", "1", "0", "wrote +", "✓", "9.30", "#REF!"})).Draw(t, "text")
		paper, ok := marks.TypedRow{Cells: map[int]string{0: text}}.Paper(quiz, results.Paper{Pupil: "P01", Form: "A"})
		if !ok {
			t.Fatal("the form is there")
		}
		answer := paper.Answers[0]
		if counted, problem := marks.Typed(quiz.Forms[0].Items[0], text); answer.Counts() && (problem != nil || counted != answer) {
			t.Fatalf("%q counts as %+v: %s", text, answer, problem)
		}
		shown := answer.String()
		again, _ := marks.TypedRow{Form: "A", Cells: map[int]string{0: shown}}.Paper(quiz, paper)
		if again.Answers[0] != answer && !answer.Asked() {
			t.Fatalf("%q is shown as %q and then %+v, not %+v", text, shown, again.Answers[0], answer)
		}
	})
}
