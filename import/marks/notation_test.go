package marks_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"evenhand/bank/results"
	"evenhand/import/marks"
	"evenhand/standards/task"
)

// long is a quiz of ten items of many kinds.
func long() results.Quiz {
	return quizOf([]string{
		"27 + 35 = ?", "9 - 8 = ?", "read 9:30", "true or false: 7 = 8 - 2", "47 ? 74",
		"62 = ? tens ? ones", "coins 25, 5, 1", "98, 99, ?, 101", "48 + 36 = ?", "read 4:00",
	})
}

const longHeading = "pupil,form,1,2,3,4,5,6,7,8,9,10\n"

// readLong reads rows of ten cells, each of which may hold commas.
func readLong(t testing.TB, o marks.Options, rows ...[]string) *marks.Reading {
	t.Helper()
	grid := strings.ReplaceAll(longHeading, ",", "\t")
	for i, cells := range rows {
		grid += fmt.Sprintf("P%02d\tA\t%s\n", i+1, strings.Join(cells, "\t"))
	}
	r, err := marks.Read("marks.csv", []byte(grid), long(), o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// mark writes a pupil's truth, r and w, with a sign for each.
func mark(truth, right, wrong string) (cells []string) {
	for _, c := range truth {
		cells = append(cells, map[rune]string{'r': right, 'w': wrong, 'a': "-", 'n': "."}[c])
	}
	return cells
}

// states are the states of a paper, one letter each.
func states(p results.Paper) (text string) {
	for _, a := range p.Answers {
		text += map[results.State]string{results.Right: "r", results.Wrong: "w", results.Absent: "a", results.NotReached: "n"}[a.State]
	}
	return text
}

// The notations are those of schools, spreadsheets and phones: common practice, put
// together here.
var notations = []struct{ right, wrong string }{
	{"1", "0"}, {"1.0", "0.0"}, {"1,00", "0,00"}, {"1.", "0."}, {"１", "０"}, {"1 pt", "0 pts"}, {"1/1", "0/1"}, {"100%", "0%"}, {"100.00 %", "0.00 %"},
	{"✓", "x"}, {"✓", "✗"}, {"✔️", "❌"}, {"✅", "❌"}, {"☑️", "✖️"}, {"√", "×"}, {"👍🏽", "👎🏽"}, {"🟢", "🔴"},
	{"☑", "☐"}, {"🗹", "☐"}, {"ü", "û"}, {"þ", "ý"}, {"\uf0fc", "\uf0fb"}, {"[x]", "[ ]"},
	{"+", "x"}, {"+", "0"}, {"＋", "0"}, {"R", "W"}, {"r", "w"}, {"c", "x"}, {"C", "I"}, {"C", "W"}, {"v", "x"},
	{"/", "x"}, {"✓", "/"}, {"○", "×"}, {"y", "n"}, {"S", "N"}, {"b", "m"}, {"T", "F"}, {"J", "N"},
	{"right", "wrong"}, {"Correct", "Incorrect"}, {"yes", "no"}, {"ok", "x"}, {"bien", "mal"}, {"Sí", "No"}, {"correcto", "incorrecto"}, {"good", "bad"},
	{"TRUE", "FALSE"}, {"VERDADERO", "FALSO"}, {"WAHR", "FALSCH"}, {"VRAI", "FAUX"}, {"VERO", "FALSO"},
	{"WAAR", "ONWAAR"}, {"PRAWDA", "FAŁSZ"}, {"ИСТИНА", "ЛОЖЬ"}, {"TOSI", "EPÄTOSI"}, {"SANT", "FALSKT"},
}

func TestNotations(t *testing.T) {
	truths := []string{"rrrrwrrwrr", "rwrwrrwrrw", "wrrrrrwrrr", "rrrrrrrrrr", "rrwrrrrwnn", "aaaaaaaaaa"}
	for _, n := range notations {
		var rows [][]string
		for _, truth := range truths {
			rows = append(rows, mark(truth, n.right, n.wrong))
		}
		r := readLong(t, marks.Options{}, rows...)
		var got []string
		for _, p := range r.Papers {
			got = append(got, states(p))
		}
		if !slices.Equal(got, truths) {
			t.Errorf("%s and %s: read %q with %v, want %q", n.right, n.wrong, got, r.Problems, truths)
		}
	}
}

// + and - are right and wrong where - stands before what the child went on to; a row of
// nothing but - can be an absent child, and is asked about.
func TestPlusAndMinus(t *testing.T) {
	rows := [][]string{mark("rrrwrrrrwr", "+", "-"), mark("rrrrrrrrww", "+", "-"), mark("wwwwwwwwww", "+", "-")}
	r := readLong(t, marks.Options{}, rows...)
	if len(r.Papers) != 2 || states(r.Papers[0]) != "rrrwrrrrwr" || states(r.Papers[1]) != "rrrrrrrrww" || len(r.Problems) != 1 {
		t.Errorf("%v, %v", r.Papers, r.Problems)
	}
	said, err := marks.ParseSigns([]string{"-=absent"})
	if err != nil {
		t.Fatal(err)
	}
	if r = readLong(t, marks.Options{Signs: said}, rows[2], rows[0]); len(r.Papers) != 2 || states(r.Papers[0]) != "aaaaaaaaaa" {
		t.Errorf("%v, %v", r.Papers, r.Problems)
	}
}

// What can't be one thing only is asked about, and can be answered.
func TestAsked(t *testing.T) {
	for _, row := range []struct{ cells, told, want string }{
		{"x o x x o x x x o x", "x=right o=wrong", "rwrrwrrrwr"},
		{"☐ ☐ ☐ ☐ ☐ ☐ ☐ ☐ ☐ ☐", "☐=wrong", "wwwwwwwwww"},
		{"FALSE FALSE FALSE FALSE FALSE FALSE FALSE FALSE FALSE FALSE", "false=wrong", "wwwwwwwwww"},
		{"☒ ☐ ☒ ☒ ☐ ☒ ☒ ☒ ☐ ☒", "☒=right ☐=wrong", "rwrrwrrrwr"},
		{"100 0 100 100 0 100 100 100 0 100", "100=right 0=wrong", "rwrrwrrrwr"},
		{"a e a a e a a a e a", "a=right e=wrong", "rwrrwrrrwr"},
		{"✓ skipped ✓ ✓ ✓ ✓ ✓ ✓ x ✓", "skipped=not-reached", "rnrrrrrrwr"},
		{"✓ ? ✓ ✓ ✓ ✓ ✓ ✓ x ✓", "?=wrong", "rwrrrrrrwr"},
		{"✓ half ✓ ✓ ✓ ✓ ✓ ✓ x ✓", "half=wrong", "rwrrrrrrwr"},
		{"✓ 50% ✓ ✓ ✓ ✓ ✓ ✓ x ✓", "50%=wrong", "rwrrrrrrwr"},
		{"✓ banana ✓ ✓ ✓ ✓ ✓ ✓ x ✓", "banana=wrong", "rwrrrrrrwr"},
		{"f f f f f f f f f f", "f=absent", "aaaaaaaaaa"},
		{"x x x x x x x x x x", "x=right", "rrrrrrrrrr"},
		{"✓ ✓ . ✓ ✓ . ✓ ✓ ✓ ✓", ".=wrong", "rrwrrwrrrr"}, // a dot, as some schools mark what is wrong
		{"✓ ✓ . ✓ ✓ . ✓ ✓ ✓ ✓", ".=not-reached", "rrnrrnrrrr"},
		{"1 n/a 1 1 1 1 1 1 1 1", "n/a=wrong", "rwrrrrrrrr"},
		{". . x . . x . . . x", ".=right", "rrwrrwrrrw"},
		{"○ ● ○ ○ ● ○ ○ ○ ● ○", "○=right ●=wrong", "rwrrwrrrwr"}, // a white and a black mark
		{"● ○ ● ● ○ ● ● ● ○ ●", "●=right ○=wrong", "rwrrwrrrwr"}, // boxes filled in
		{"a a f a a a f a a a", "a=right f=wrong", "rrwrrrwrrr"},
		{"✓ ✓ ✓ ✓ ✓ 62 ✓ ✓ ✓ ✓", "62=right", "rrrrrrrrrr"},   // 6 tens 2 ones without a gap, or the number itself
		{"✓ ✓ 9.5 ✓ ✓ ✓ ✓ ✓ ✓ x", "9.5=right", "rrrrrrrrrw"}, // half past 9, or 9:50
		{"✓ ✓ ✓ ✓ ✓ ✓ ✓ ✓ ✓ 4?", "4?=right", "rrrrrrrrrr"},
		{"✓ 62/52 ✓ ✓ ✓ ✓ ✓ ✓ ✓ x", "62/52=wrong", "rwrrrrrrrw"},
		{"✓ 26→62 ✓ ✓ ✓ ✓ ✓ ✓ ✓ x", "26→62=right", "rrrrrrrrrw"},
	} {
		cells := strings.Fields(row.cells)
		if r := readLong(t, marks.Options{}, cells); len(r.Papers) != 0 || len(r.Problems) != 1 || !strings.Contains(r.Problems[0].Reason.String(), "P01") {
			t.Errorf("%s: read as %v, %v; want a question", row.cells, r.Papers, r.Problems)
		}
		said, err := marks.ParseSigns(strings.Fields(row.told))
		if err != nil {
			t.Fatal(err)
		}
		if r := readLong(t, marks.Options{Signs: said, AllWrong: true}, cells); len(r.Papers) != 1 || states(r.Papers[0]) != row.want {
			t.Errorf("%s with %s: %v, %v, want %s", row.cells, row.told, r.Papers, r.Problems, row.want)
		}
	}
	// Who marks only what is right, or only what is wrong, leaves cells empty.
	for _, row := range []struct{ right, wrong, told string }{{"✓", "", "empty=wrong"}, {"", "x", "empty=right"}, {"1", "", "empty=wrong"}} {
		truths := []string{"rrwrrrwrrr", "rwrrrrrrrw"}
		cells := [][]string{mark(truths[0], row.right, row.wrong), mark(truths[1], row.right, row.wrong)}
		if r := readLong(t, marks.Options{}, cells...); len(r.Papers) != 0 {
			t.Errorf("%q and %q: read as %v; want questions", row.right, row.wrong, r.Papers)
		}
		said, err := marks.ParseSigns([]string{row.told})
		if err != nil {
			t.Fatal(err)
		}
		if r := readLong(t, marks.Options{Signs: said}, cells...); len(r.Papers) != 2 || states(r.Papers[0]) != truths[0] || states(r.Papers[1]) != truths[1] {
			t.Errorf("%q and %q with %s: %v, %v", row.right, row.wrong, row.told, r.Papers, r.Problems)
		}
	}
	// Absent for some of the items, and nothing else: a dash that marks what is wrong, or right.
	for _, row := range []string{"- - - . . . . . . .", ". . - . . - . . . .", ". . . . abs . . . . .", "a a a a . a a . a a"} {
		if r := readLong(t, marks.Options{}, strings.Fields(row)); len(r.Papers) != 0 || len(r.Problems) != 1 {
			t.Errorf("%s: read as %v; want a question", row, r.Papers)
		}
	}
	// A row of nothing but a that is absent where nobody marks with it.
	if r := readLong(t, marks.Options{}, strings.Fields("a a a a a a a a a a"), strings.Fields("a a x a a a a a a a")); len(r.Papers) != 0 {
		t.Errorf("a, beside x: read as %v; want questions", r.Papers)
	}
	// Points out of ten, two of them for a pupil: no child writes 10 under half of the items.
	if r := readLong(t, marks.Options{}, strings.Fields("10 0 x x x x x x x x"), strings.Fields("0 10 10 x x x 10 10 10 x")); len(r.Papers) != 0 {
		t.Errorf("points out of ten are read as %v", r.Papers)
	}
	for _, bad := range []string{"x", "=right", "x=maybe"} {
		if _, err := marks.ParseSigns([]string{bad}); err == nil {
			t.Errorf("%q is taken", bad)
		}
	}
}

// Absent and not reached as schools write them (common practice).
func TestAbsentAndNotReached(t *testing.T) {
	for word, want := range map[string]string{
		"abs": "a", "ABS.": "a", "Absent": "a", "a": "a", "ill": "a", "away": "a", "--": "a", "—": "a",
		"ausente": "a", "faltó": "a", "no vino": "a", "not here": "a", "sick": "a", "excused": "a", "NP": "a",
		"nr": "n", "N.R.": "n", "not reached": "n", "NA": "n", "n/a": "n", "NaN": "n", "…": "n", "...": "n",
		".": "n", "not done": "n", "no terminó": "n", "dnf": "n", "null": "n",
	} {
		truth := "rrwrrrrrr" + want
		row := append(mark(truth[:9], "✓", "x"), word)
		if r := readLong(t, marks.Options{}, row); len(r.Papers) != 1 || states(r.Papers[0]) != truth {
			t.Errorf("%s: %v, %v, want %s", word, r.Papers, r.Problems, truth)
		}
	}
	all := strings.Fields("abs abs abs abs abs abs abs abs abs abs")
	if r := readLong(t, marks.Options{}, all); len(r.Papers) != 1 || states(r.Papers[0]) != "aaaaaaaaaa" {
		t.Errorf("%v, %v", r.Papers, r.Problems)
	}
}

// What spreadsheets make of answers (found with a spreadsheet of the usual make and with
// workbooks made by hand): the first cell is what stands there, the second what was typed.
func TestSpreadsheetsHand(t *testing.T) {
	for _, row := range []struct {
		at          int
		cell, typed string
		state       results.State
	}{
		{1, "62.00", "62", results.Right}, {1, "62,0", "62", results.Right}, {1, "+62", "62", results.Right},
		{1, "'62", "62", results.Right}, {1, "6.2E+01", "62", results.Right}, {1, "52.0", "52", results.Wrong},
		{3, "9.3", "9:30", results.Right}, {3, "9,3", "9:30", results.Right},
		{3, "9.30", "9:30", results.Right}, {3, "9.1", "9:10", results.Wrong},
		{3, "9.300000000000001", "9:30", results.Right},
		{3, "0.3958333333333333", "9:30", results.Right}, {3, "09:30:00", "9:30", results.Right},
		{4, "FALSE", "FALSE", results.Right}, {4, "TRUE", "TRUE", results.Wrong}, {4, "FALSO", "FALSO", results.Right},
		{7, "0.31", "$0.31", results.Right}, {7, ".31", "$0.31", results.Right},
		{7, "$.31", "$0.31", results.Right}, {7, "0,31", "$0.31", results.Right}, {7, "31.00", "31", ""},
		{7, "0.3", "$0.30", results.Wrong},
		{6, "2026-06-02", "", ""}, {6, "2026-06-02T00:00:00Z", "", ""}, {6, "46175", "", ""}, {1, "02-Jun", "", ""},
	} {
		cells := mark("rrrrrrrrrr", "✓", "x")
		cells[row.at-1] = row.cell
		r := readLong(t, marks.Options{}, cells)
		if row.state == "" {
			if len(r.Problems) != 1 {
				t.Errorf("%s under item %d is taken as %v, want a question", row.cell, row.at, r.Papers[0].Answers[row.at-1])
			}
			continue
		}
		if len(r.Papers) != 1 {
			t.Errorf("%s under item %d: %v", row.cell, row.at, r.Problems)
		} else if got := r.Papers[0].Answers[row.at-1]; got != (results.Answer{State: row.state, Written: row.typed}) {
			t.Errorf("%s under item %d is %+v, want %s %s", row.cell, row.at, got, row.state, row.typed)
		}
	}
	// 6/6 can only have been 6 and 6.
	quiz := quizOf([]string{"66 = ? tens ? ones"})
	r, err := marks.Read("m.csv", []byte("pupil,form,1\nP01,A,2026-06-06\n"), quiz, marks.Options{})
	if err != nil || len(r.Papers) != 1 || states(r.Papers[0]) != "r" {
		t.Errorf("%+v, %v", r, err)
	}
}

// An answer that looks like a mark, and a key that does.
func TestAnswersThatLookLikeMarks(t *testing.T) {
	hand := func(key string) results.Quiz {
		quiz := quizOf([]string{"27 + 35 = ?", "48 + 36 = ?", "9 - 8 = ?"})
		quiz.Forms[0].Items = append(quiz.Forms[0].Items, results.Item{ID: "h", Asks: "Which sign?", Key: key})
		return results.NewQuiz("By hand", "2026-W48", quiz.Forms)
	}
	for _, row := range []struct{ key, cells, want string }{
		{"-", "✓,x,✓,-", ""}, {"-", "62,84,1,-", ""}, {"-", "62,84,1,wrote -", "rrrr"},
		{"-", "-,-,-,-", "aaaa"}, {"-", "✓,x,✓,✓", "rwrr"}, {"-", "✓,x,✓,✗", "rwrw"}, {"x", "✓,x,✓,✗", "rwrw"},
		{"x", "✓,x,✓,x", ""}, {"x", "✓,x,✓,wrote x", "rwrr"}, {"x", "62,84,1,x", "rrrr"}, {"c", "✓,x,✓,c", "rwrr"}, {"c", "✓,x,✓,wrote d", "rwrw"},
		{"no", "yes,no,yes,no", ""}, {"no", "62,74,1,no", "rwrr"}, {"no", "1,0,1,no", "rwrr"},
	} {
		r, err := marks.Read("m.csv", []byte("pupil,form,1,2,3,4\nP01,A,"+row.cells+"\n"), hand(row.key), marks.Options{})
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		for _, p := range r.Papers {
			got += states(p)
		}
		if got != row.want {
			t.Errorf("key %s, %s: %q with %v, want %q", row.key, row.cells, got, r.Problems, row.want)
		}
	}
}

// Check boxes in a quiz with a true-or-false item are marks there too; answers beside
// other marks are answers.
func TestBoxesBesideTrueOrFalse(t *testing.T) {
	boxes := mark("rrrrwrrrrr", "TRUE", "FALSE")
	if r := readLong(t, marks.Options{}, boxes); len(r.Papers) != 1 || states(r.Papers[0]) != "rrrrwrrrrr" {
		t.Errorf("%v, %v", r.Papers, r.Problems)
	}
	marked := mark("rrrrwrrrrr", "1", "0")
	marked[3] = "FALSE" // the key
	if r := readLong(t, marks.Options{}, marked); len(r.Papers) != 1 || states(r.Papers[0]) != "rrrrwrrrrr" || r.Papers[0].Answers[3].Written != "FALSE" {
		t.Errorf("%v, %v", r.Papers, r.Problems)
	}
}

// A word under a true-or-false item, whose key is false, that judges the answer or is it: never taken for
// the opposite. An empty want is a question. What teachers write is common practice, put together here.
func TestWordsUnderTrueOrFalse(t *testing.T) {
	for _, row := range []struct{ cells, want string }{
		{"52 0 6:45 right > . . . . .", ""},             // the 0 is wrong as a mark and as an answer, and tells of no ones
		{"52 1 6:45 right > . . . . .", ""},             // nor does a 1 that is right as both
		{"52 0 6:45 correct > . . . . .", ""},           //
		{"FALSO FALSO FALSO false FALSO . . . . .", ""}, // no box is ticked, or only what is wrong is marked
		{"0 0 0 right 0 . . . . .", ""},                 // noughts mark, but nothing shows what marks right
		{"1 0 1 right 1 1 1 1 1 1", ""},                 // judged in words, or the child's "right" for true
		{"✓ x ✓ Right ✓ ✓ ✓ ✓ ✓ ✓", ""},                 //
		{"✓ x ✓ wrong ✓ ✓ ✓ ✓ ✓ ✓", ""},                 //
		{"1 0 1 incorrect 1 1 1 1 1 1", "rwrwrrrrrr"},   // no answer to it
		{"62 1 9:30 wrong < . . . . .", ""},             // only what is wrong is marked, or all is written out
		{"62 1 9:30 right < . . . . .", "rrrwrnnnnn"},   // all written out: who marks only what is wrong marks nothing right
		{"62 1 9:30 no < . . . . .", "rrrrrnnnnn"},      // an answer
		{"62 1 9:30 F < . . . . .", "rrrrrnnnnn"},
		{"62 1 9:30 sí < . . . . .", "rrrwrnnnnn"},
		{"62 1 9:30 ✓ < . . . . .", ""},
		{"1 0 1 bien 1 1 1 1 1 1", ""}, // ones beside another mark for right
		{"1 0 1 mal 1 1 1 1 1 1", "rwrwrrrrrr"},
		{"1 0 1 0 1 1 1 1 1 1", "rwrwrrrrrr"},
		{"right right wrong right wrong . . . . .", "rrwrwnnnnn"}, // marks under every item
	} {
		r := readLong(t, marks.Options{}, strings.Fields(row.cells))
		got := ""
		for _, p := range r.Papers {
			got += states(p)
		}
		if got != row.want || len(r.Papers)+len(r.Problems) != 1 {
			t.Errorf("%s: %q with %v, want %q", row.cells, got, r.Problems, row.want)
		}
	}
}

// The keys of the quiz are what the law above takes for right.
func TestKeysAreRight(t *testing.T) {
	for k, item := range long().Forms[0].Items {
		if !task.MustParse(item.Asks).Judge(item.Key) {
			t.Errorf("%s: %s is not right", item.Asks, item.Key)
		}
		for _, wrong := range writtenWrong[k] {
			if task.MustParse(item.Asks).Judge(wrong) {
				t.Errorf("%s: %s is right", item.Asks, wrong)
			}
		}
	}
}

// What signs mean is said in Spanish, too, with or without accents.
func TestSignsInSpanish(t *testing.T) {
	for es, en := range map[string]string{
		"x=bien": "x=right", "-=faltó": "-=absent", ".=no llego": ".=not reached", "o=Mal": "o=wrong", "vacío=mal": "empty=wrong", "7=respuesta": "7=answer",
	} {
		said, err := marks.ParseSigns([]string{es})
		want, wrong := marks.ParseSigns([]string{en})
		if err != nil || wrong != nil || !maps.Equal(said, want) {
			t.Errorf("%s means %v, %v; want %v", es, said, err, want)
		}
	}
}
