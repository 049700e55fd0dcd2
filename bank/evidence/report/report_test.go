package report_test

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenhand/bank/evidence/report"
	"evenhand/bank/results"
	"evenhand/standards"
	"evenhand/standards/task"
)

// quizOf is a quiz of one form for each list of tasks.
func quizOf(week string, forms ...[]string) results.Quiz {
	var list []results.Form
	for i, tasks := range forms {
		form := results.Form{Name: string(rune('A' + i))}
		for k, text := range tasks {
			asked := task.MustParse(text)
			skill := standards.SkillOf(asked)
			form.Items = append(form.Items, results.Item{
				ID: fmt.Sprintf("%s-%d-%d", week, i, k), Skill: skill, Codes: asked.Codes(), Asks: asked.String(), Key: asked.Key(),
				Difficulty: standards.Predict(skill, asked.Traits()),
			})
		}
		list = append(list, form)
	}
	return results.NewQuiz("Friday check", week, list)
}

// paperOf is a paper on form A with what was written; "-" is absent, "." not reached, "x" wrong.
func paperOf(q results.Quiz, pupil string, written ...string) results.Paper {
	p := results.Paper{Quiz: q.ID, Pupil: pupil, Form: "A"}
	for i, text := range written {
		state, sign := map[string]results.State{"-": results.Absent, ".": results.NotReached, "x": results.Wrong}[text]
		if sign {
			p.Answers = append(p.Answers, results.Answer{State: state})
		} else {
			p.Answers = append(p.Answers, q.Forms[0].Items[i].Answered(text))
		}
	}
	return p
}

func TestWords(t *testing.T) {
	for _, row := range []struct {
		part report.Part
		want string
	}{
		// Newcombe (1998), Statistics in Medicine 17, Wilson's interval: 81/263 is .2553 to .3662,
		// 15/148 .0624 to .1605, 0/20 0 to .1611, 1/29 .0061 to .1718; here times the answers, outward.
		{report.Part{Right: 81, Of: 263}, "81 of 263, could be 67 to 97"},
		{report.Part{Right: 15, Of: 148}, "15 of 148, could be 9 to 24"},
		{report.Part{Right: 0, Of: 20}, "0 of 20, could be 0 to 4"},
		{report.Part{Right: 1, Of: 29}, "1 of 29, could be 0 to 5"},
		{report.Part{}, "no answers"},
	} {
		if got := row.part.String(); got != row.want {
			t.Errorf("%d of %d: got %q, want %q", row.part.Right, row.part.Of, got, row.want)
		}
	}
	if got := (report.Part{Right: 2, Of: 3}).Marked(); !strings.HasSuffix(got, " (few)") {
		t.Errorf("got %q", got)
	}
}

// What is said of a class rests on its own last weeks with a quiz, whatever others sat since.
func TestEachClassHasItsOwnLastWeeks(t *testing.T) {
	quiz := quizOf("2026-W30", eight)
	quizzes := []results.Quiz{quiz}
	late := paperOf(quiz, "P01", "35", "57", "44", "55", "62", "84", "3:30", "6:00")
	late.Class = "2A"
	papers := []results.Paper{late}
	for _, week := range []string{"2026-W34", "2026-W38", "2026-W42"} {
		other := quizOf(week, eight)
		p := paperOf(other, "P01", "25", "43", "36", "45", "62", "84", "3:30", "6:00")
		p.Class = "2B"
		quizzes, papers = append(quizzes, other), append(papers, p)
	}
	for _, r := range []*report.Report{report.Of(quizzes, papers), report.Of(quizzes, papers[:1])} {
		if p := r.Pupils[0]; p.Class != "2A" || len(p.Standouts) != 1 {
			t.Errorf("%+v", p)
		}
	}
	if r := report.Of(quizzes, papers[:1]); len(r.Quizzes) != 1 || r.LastWeek() != "2026-W30" {
		t.Errorf("quizzes that only others sat are reported: %v", r.Quizzes)
	}
}

// A skill that is hard for everybody is nobody's own weakness: of 22 pupils by the Rasch
// model without any weakness of their own few are put in a group.
func TestHardSkillsDrawNobody(t *testing.T) {
	quiz := quizOf("2026-W48", append(slices.Clone(eight), "402 - 178 = ?", "507 - 49 = ?", "305 - 9 = ?", "600 - 278 = ?"))
	grouped, pupils := 0, 0
	for seed := range 20 {
		draw := rand.New(rand.NewPCG(7, uint64(seed)))
		var papers []results.Paper
		for i := range 22 {
			p := results.Paper{Quiz: quiz.ID, Pupil: fmt.Sprintf("P%02d", i+1), Form: "A"}
			ability := draw.NormFloat64() - 1.2 // a weaker class than the labels suppose
			for _, item := range quiz.Forms[0].Items {
				state := results.Wrong
				if draw.Float64() < 1/(1+math.Exp(item.Difficulty.Logits()-ability)) {
					state = results.Right
				}
				p.Answers = append(p.Answers, results.Answer{State: state})
			}
			papers = append(papers, p)
		}
		for _, g := range report.Of([]results.Quiz{quiz}, papers).Groups {
			grouped += len(g.Members)
		}
		pupils += 22
	}
	if share := float64(grouped) / float64(pupils); share > 0.3 {
		t.Errorf("%.0f in 100 pupils without a weakness are put in a group", 100*share)
	}
}

// table is a table of the report's CSV as rows by heading.
func table(t *testing.T, r *report.Report, name string) (rows []map[string]string) {
	t.Helper()
	var file bytes.Buffer
	if err := r.WriteCSV(&file, name); err != nil {
		t.Fatal(err)
	}
	records, err := csv.NewReader(&file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, record := range records[1:] {
		row := map[string]string{}
		for i, cell := range record {
			row[records[0][i]] = cell
		}
		rows = append(rows, row)
	}
	return rows
}

// K. Wuensch's ten pupils by ten items (KR20 help page, East Carolina University): the
// corrected item-rest correlations, by full calculation.
func TestItemsAsPublished(t *testing.T) {
	pupils := []string{"1111110110", "1011011101", "1111011001", "0010001000", "0000010010", "1110111111", "1101110111", "1111111101", "0101111101", "1101101110"}
	want := []string{"0.706", "0.706", "0.000", "0.474", "0.584", "0.286", "-0.027", "0.706", "-0.124", "0.476"}
	form := results.Form{Name: "A"}
	for k := range 10 {
		form.Items = append(form.Items, results.Item{ID: fmt.Sprint(k), Skill: "add-ones", Asks: fmt.Sprintf("question by hand %d", k), Key: "yes"})
	}
	quiz := results.NewQuiz("KR20", "2026-W48", []results.Form{form})
	var papers []results.Paper
	for i, row := range pupils {
		p := results.Paper{Quiz: quiz.ID, Pupil: fmt.Sprintf("P%02d", i+1), Form: "A"}
		for _, c := range row {
			p.Answers = append(p.Answers, results.Answer{State: map[rune]results.State{'1': results.Right, '0': results.Wrong}[c]})
		}
		papers = append(papers, p)
	}
	r := report.Of([]results.Quiz{quiz}, papers)
	rows := table(t, r, "items")
	if len(rows) != 10 {
		t.Fatalf("%d items", len(rows))
	}
	before := 1.0
	for _, row := range rows {
		var k int
		var share float64
		fmt.Sscan(row["id"], &k)
		fmt.Sscan(row["share"], &share)
		if row["item_rest"] != want[k] {
			t.Errorf("item %d: item-rest %s, want %s", k+1, row["item_rest"], want[k])
		}
		if share > before {
			t.Errorf("item %d with %v right comes after %v: easiest first", k+1, share, before)
		}
		before = share
	}
}

// subtractions and additions with a regrouping each.
var eight = []string{"52 - 27 = ?", "81 - 38 = ?", "70 - 34 = ?", "63 - 18 = ?", "27 + 35 = ?", "48 + 36 = ?", "read 3:30", "read 6:00"}

// The wrong answers of one misstep stand out with their places; one answer does not; an
// answer that is only marked wrong says nothing.
func TestWhatStandsOut(t *testing.T) {
	quiz := quizOf("2026-W48", eight)
	papers := []results.Paper{
		// Brown & Burton (1978): smaller from larger gives 35, 57, 44 and 55 here.
		paperOf(quiz, "P01", "35", "57", "44", "55", "62", "84", "3:30", "6:00"),
		paperOf(quiz, "P02", "25", "57", "36", "45", "62", "84", "3:30", "6:00"),
		paperOf(quiz, "P03", "x", "x", "x", "x", "62", "84", "3:30", "6:00"),
		// Ashlock: the carried ten dropped gives 52 and 74.
		paperOf(quiz, "P04", "25", "43", "36", "45", "52", "74", "3:30", "6:00"),
		paperOf(quiz, "P05", "-", "-", "-", "-", "-", "-", "-", "-"),
	}
	r := report.Of([]results.Quiz{quiz}, papers)
	var got []string
	for _, p := range r.Pupils {
		for _, s := range p.Standouts {
			got = append(got, p.Code+" "+s.String())
		}
	}
	want := []string{
		"P01 likely takes the smaller digit from the larger in each column, whichever is on top: in 4 of the 4 items where it could show (A1, A2, A3, A4)",
		"P04 likely makes a new ten and forgets to add it: in 2 of the 2 items where it could show (A5, A6)",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	var groups []string
	for _, g := range r.Groups {
		for _, m := range g.Members {
			groups = append(groups, g.Work+": "+m.Code+" "+m.Count)
		}
	}
	want = []string{
		"smaller digit from larger: P01 in 4 of the 4 items where it could show",
		"subtract-regrouping: P03 0 of 4 right", "ten dropped: P04 in 2 of the 2 items where it could show",
	}
	slices.Sort(groups)
	if !slices.Equal(groups, want) {
		t.Errorf("groups %q, want %q", groups, want)
	}
	if !slices.Equal(r.Others, []report.Who{{Code: "P02"}, {Code: "P05"}}) {
		t.Errorf("others %v", r.Others)
	}
}

// For two-digit a − b with a regrouping, smaller from larger and ten not paid back agree
// exactly when the ones differ by five (full enumeration): these can't be told apart.
func TestMisstepsThatCannotBeToldApart(t *testing.T) {
	quiz := quizOf("2026-W48", []string{"52 - 27 = ?", "43 - 28 = ?", "61 - 16 = ?", "27 + 30 = ?"})
	r := report.Of([]results.Quiz{quiz}, []results.Paper{paperOf(quiz, "P01", "35", "25", "55", "57")})
	if len(r.Pupils[0].Standouts) != 1 {
		t.Fatalf("stands out: %v", r.Pupils[0].Standouts)
	}
	got := r.Pupils[0].Standouts[0].String()
	for _, want := range []string{
		"takes the smaller digit from the larger", ", or ", "takes a ten for the ones but leaves the tens",
		"in 3 of the 3 items where it could show (A1, A2, A3)", "can't tell which",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not in %q", want, got)
		}
	}
}

func TestStandards(t *testing.T) {
	quiz := quizOf("2026-W48", []string{"27 + 35 = ?", "48 + 36 = ?", "19 + 26 = ?", "38 + 57 = ?", "read 3:00"})
	r := report.Of([]results.Quiz{quiz}, []results.Paper{
		paperOf(quiz, "P01", "62", "84", "45", "x", "3:00"), // three of four
		paperOf(quiz, "P02", "62", "84", "x", "x", "3:00"),
		paperOf(quiz, "P03", "62", "84", "45", ".", "."),
	})
	got := map[task.Code]report.Standard{}
	for _, s := range r.Standards {
		got[s.Code] = s
	}
	s := got["2.NBT.B.5"]
	if s.MostlyRight != 1 || len(s.NotYet) != 1 || s.NotYet[0].Code != "P02" || s.TooEarly != 1 || s.Right != 8 || s.Of != 11 {
		t.Errorf("2.NBT.B.5: %+v", s)
	}
	if s := got["1.MD.B.3"]; s.TooEarly != 2 || s.MostlyRight != 0 {
		t.Errorf("1.MD.B.3 rests on one answer each: %+v", s)
	}
}

// draw makes papers of two weeks by lot.
func draw(t *rapid.T) ([]results.Quiz, []results.Paper) {
	quizzes := []results.Quiz{quizOf("2026-W47", eight, eight[:4]), quizOf("2026-W48", eight[2:])}
	written := rapid.SampledFrom([]string{"35", "57", "62", "52", "3:30", "=1+1", "<b>"})
	var papers []results.Paper
	for _, quiz := range quizzes {
		for i := range rapid.IntRange(0, 5).Draw(t, "pupils") {
			form := rapid.SampledFrom(quiz.Forms).Draw(t, "form")
			p := results.Paper{Quiz: quiz.ID, Class: rapid.SampledFrom([]string{"2A", "2B"}).Draw(t, "class"), Pupil: fmt.Sprintf("P%02d", i+1), Form: form.Name}
			for _, item := range form.Items {
				state := rapid.SampledFrom([]results.State{results.Right, results.Wrong, results.Absent, results.NotReached, ""}).Draw(t, "state")
				answer := results.Answer{State: state}
				if state == "" {
					answer = item.Answered(written.Draw(t, "written"))
				}
				p.Answers = append(p.Answers, answer)
			}
			papers = append(papers, p)
		}
	}
	return quizzes, papers
}

// Every pupil is in one group or in none, every answer that counts is counted once by
// skill, by pupil and by item, and the page can be made of anything.
func TestEverythingIsCountedOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		quizzes, papers := draw(t)
		r := report.Of(quizzes, papers)
		all := 0
		for _, p := range papers {
			_, of := p.Score()
			all += of
		}
		skills, pupils, items := 0, 0, 0
		for _, s := range r.Skills {
			skills += s.Of
		}
		for _, p := range r.Pupils {
			for _, week := range p.Weeks {
				pupils += week.Of
			}
		}
		for _, it := range r.Items {
			items += it.Of
		}
		if skills != all || pupils != all || items != all {
			t.Fatalf("%d answers, but %d by skill, %d by pupil, %d by item", all, skills, pupils, items)
		}
		grouped := slices.Clone(r.Others)
		for _, g := range r.Groups {
			for _, m := range g.Members {
				if m.Class != g.Class {
					t.Fatalf("%v is in a group of class %s", m.Who, g.Class)
				}
				grouped = append(grouped, m.Who)
			}
		}
		seen := map[report.Who]int{}
		for _, who := range grouped {
			seen[who]++
		}
		if len(grouped) != len(r.Pupils) || len(seen) != len(r.Pupils) {
			t.Fatalf("%d pupils, but %d places in groups of %d pupils", len(r.Pupils), len(grouped), len(seen))
		}
		var html bytes.Buffer
		if err := r.WriteHTML(&html); err != nil {
			t.Fatal(err)
		}
		if strings.Contains(html.String(), "<b>") {
			t.Fatal("an answer became markup")
		}
		for _, name := range report.Tables() {
			var file bytes.Buffer
			if err := r.WriteCSV(&file, name); err != nil {
				t.Fatal(err)
			}
			// OWASP on formula injection: no cell may begin with =.
			if strings.Contains(file.String(), "\n=") || strings.Contains(file.String(), ",=") {
				t.Fatalf("%s holds a formula:\n%s", name, file.String())
			}
		}
	})
}
