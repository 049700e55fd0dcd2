package marks_test

import (
	"bytes"
	"context"
	"encoding/csv"
	"fmt"
	"slices"
	"strings"
	"testing"
	"unicode/utf16"

	"pgregory.net/rapid"

	"evenhand/bank/results"
	"evenhand/import/marks"
	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// quizOf is a quiz of one form for each list of tasks.
func quizOf(forms ...[]string) results.Quiz {
	var list []results.Form
	for i, tasks := range forms {
		form := results.Form{Name: string(rune('A' + i))}
		for k, text := range tasks {
			posed := task.MustParse(text)
			form.Items = append(form.Items, results.Item{ID: fmt.Sprintf("%d-%d", i, k), Skill: standards.SkillOf(posed), Asks: posed.String(), Key: posed.Key()})
		}
		list = append(list, form)
	}
	return results.NewQuiz("Friday check", "2026-W48", list)
}

// friday has an item with the key 1 or 2, one with a longer key and a clock on each form.
func friday() results.Quiz {
	return quizOf([]string{"9 - 8 = ?", "27 + 35 = ?", "read 3:30"}, []string{"8 - 6 = ?", "48 + 36 = ?", "read 4:30"})
}

func read(t *testing.T, grid string, o marks.Options) *marks.Reading {
	t.Helper()
	r, err := marks.Read("marks.csv", []byte(grid), friday(), o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// paper is the states of a paper's answers, one letter each, and what was written.
func paper(p results.Paper) string {
	text := p.Pupil + p.Form
	for _, a := range p.Answers {
		text += " " + map[results.State]string{results.Right: "r", results.Wrong: "w", results.Absent: "a", results.NotReached: "n"}[a.State]
		if a.Written != "" {
			text += "(" + a.Written + ")"
		}
	}
	return text
}

func TestWhatCellsSay(t *testing.T) {
	for _, row := range []struct{ name, grid, want string }{
		{"marks", "P01,A,1,0,1", "P01A r w r"},
		{"ticks", "p1,a,✓,x,✘", "P01A r w w"},
		{"boxes", "P01,Form A,TRUE,FALSE,true", "P01A r w r"},
		{"absent and not reached", "P01,A,-,.,", "P01A a n n"},
		{"written wrong answers among marks", "P01,A,1,512,3:06", "P01A r w(512) w(3:06)"},
		{"written answers", "P02,B,1,84,half past 4", "P02B w(1) r(84) r(half past 4)"},
		// What spreadsheets do to times: 4:30 becomes 4:30:00, 04:30:00 AM or 0.1875.
		{"changed times", "P02,B,2,84,4:30:00", "P02B r(2) r(84) r(4:30)"},
		{"changed times", "P02,B,2,84,04:30:00 AM", "P02B r(2) r(84) r(4:30)"},
		{"changed times", "P02,B,2,84,0.1875", "P02B r(2) r(84) r(4:30)"},
		{"two digits of the hour", "P02,B,2,84,04:30", "P02B r(2) r(84) r(04:30)"},
		{"guarded", "P02,B,2,'=84,4:30", "P02B r(2) r(=84) r(4:30)"},
	} {
		r := read(t, "pupil,form,1,2,3\n"+row.grid+"\n", marks.Options{})
		if len(r.Papers) != 1 || paper(r.Papers[0]) != row.want {
			t.Errorf("%s: %s is %v with %v, want %s", row.name, row.grid, r.Papers, r.Problems, row.want)
		}
	}
}

// 1 and 0 are marks or what the child wrote, row by row; where both can be, the row is asked
// about.
func TestDigits(t *testing.T) {
	const ask = "aside"
	for _, row := range []struct {
		name, grid string
		o          marks.Digits
		digits     marks.Digits
		want       []string
	}{
		{"only marks", "P01,A,0,1,1\nP02,B,1,0,1", "", marks.AreMarks, []string{"P01A w r r", "P02B r w r"}},
		{"ticks beside", "P01,A,✓,1,✓\nP02,B,✓,0,✓", "", marks.EachRow, []string{"P01A r w(1) r", "P02B r w r"}},
		{"wrong answers beside", "P01,A,0,1,3:06", "", "", []string{ask}},
		{"wrong answers beside, said", "P01,A,0,1,3:06", marks.AreMarks, marks.AreMarks, []string{"P01A w r w(3:06)"}},
		{"all written", "P01,A,0,62,3:30\nP02,B,1,74,4:30", "", marks.AreAnswers, []string{"P01A w(0) r(62) r(3:30)", "P02B w(1) w(74) r(4:30)"}},
		{"two markers", "P01,A,1,1,1\nP02,B,1,84,4:30", "", marks.EachRow, []string{"P01A r r r", "P02B w(1) r(84) r(4:30)"}},
		{"either way the same", "P01,A,1,x,x", "", marks.AreMarks, []string{"P01A r w w"}},
	} {
		r := read(t, "pupil,form,1,2,3\n"+row.grid+"\n", marks.Options{Digits: row.o})
		var got []string
		for _, p := range r.Papers {
			got = append(got, paper(p))
		}
		for range r.Problems {
			got = append(got, ask)
		}
		if r.Digits != row.digits || !slices.Equal(got, row.want) {
			t.Errorf("%s: %s read as %q, %v, want %s as %q", row.name, got, r.Digits, r.Problems, row.want, row.digits)
		}
	}
}

func TestSetAside(t *testing.T) {
	grid := "Name,Pupil,Form,1,2,3,4\n" +
		"Ada,P01,A,1,1,1,\n" + // line 2: good
		"Bo,P02,C,1,1,1,\n" +
		"Cy,Cy,A,1,1,1,\n" +
		"Di,P04,B,1,1,1,\n" +
		"Ed,P04,B,1,0,1,\n" +
		"Flo,P42,A,1,1,1,\n" +
		"Gil,P05,A,1,#NAME?,1,\n" +
		"Hal,P06,A,1,1,1,1\n" +
		"Ida,P07,,1,1,1,\n" +
		"Jo,P08,B,,,,\n" // line 11: nothing filled in
	quiz := quizOf([]string{"9 - 8 = ?", "27 + 35 = ?", "read 3:30"}, []string{"8 - 6 = ?", "48 + 36 = ?", "read 4:30", "7 + 5 = ?"})
	r, err := marks.Read("marks.csv", []byte(grid), quiz, marks.Options{Pupils: strings.Fields("P01 P02 P04 P05 P06 P07 P08 P24")})
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		`line 3, form: "C" is no form of this quiz; it has A, B`,
		`line 4, pupil: "Cy" is no pupil's code; a code is letters and a number, such as P07, and names belong in your own roster`,
		`line 5, pupil: P04 stands in lines 5 and 6; keep the right row`,
		`line 6, pupil: P04 stands in lines 5 and 6; keep the right row`,
		`line 7, pupil: P42 is not in the class; did you mean P24? If it is new there, add --pupils P42`,
		`line 10, form: "" is no form of this quiz; it has A, B`,
		`line 8, item 2: P05: "#NAME?": this is what a spreadsheet writes when it can't work out a formula; ` +
			`write the pupil's answer, with an apostrophe before it if it begins with =`,
		`line 9, item 4: P06: "1": form A has only 3 items`,
	}
	var got []string
	for _, p := range r.Problems {
		got = append(got, p.String())
	}
	if !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if len(r.Papers) != 1 || !slices.Equal(r.Unmarked, []string{"P08"}) || r.Rows() != 10 {
		t.Errorf("%d papers, unmarked %v, %d rows", len(r.Papers), r.Unmarked, r.Rows())
	}
	notes := `column "name" was not used; the grid doesn't say which quiz it is of; it was taken for Friday check (2026-W48)`
	if words.Joined(r.Notes, "%s; %s").String() != notes {
		t.Errorf("notes %q", r.Notes)
	}
}

func TestGridsThatCannotBeRead(t *testing.T) {
	for _, row := range []struct{ grid, want string }{
		{"", "marks.csv is empty"},
		{"P01,A,1,1,1\n", `the first line is "P01,A,1,1,1", and it should be pupil,form,1,2,3`},
		{"P01,A,1,2,3\n", "it should be pupil,form,1,2,3"},
		{"pupil,form,1,2,3\n", "has a heading but no rows"},
		{"pupil,form,1,2\nP01,A,1,1\n", "there is no column 3, but the quiz has 3 items"},
		{"pupil,form,1,2,3,4\nP01,A,1,1,1,1\n", "there is a column 4, but the quiz has 3 items"},
		{"pupil,form,1,2,2,3\nP01,A,1,1,1,1\n", "there are two columns 2"},
		{"%PDF-1.7", "a PDF"},
	} {
		if r, err := marks.Read("marks.csv", []byte(row.grid), friday(), marks.Options{}); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%q: %+v, %v, want %q", row.grid, r, err, row.want)
		}
	}
}

// Headings as teachers and other programs write them (common practice): in other words and
// languages, over several lines as merged cells leave them, and known by the codes below.
func TestHeadings(t *testing.T) {
	for _, heading := range []string{
		"Student ID,Form,1,2,3", "PUPIL CODE,Test form,Q1,Q2,Q3", "Pupil's code,Version,Item 1,Item 2,Item 3", "code,form,1.,2.,3.", "child,form,1),2),3)",
		"Schüler,Form,Aufgabe 1,Aufgabe 2,Aufgabe 3", "Alumna,Forma,Pregunta 1,Pregunta 2,Pregunta 3",
		"Élève,Feuille,n° 1,n° 2,n° 3", "id,form,1.0,2.0,3.0", "Pupil,Form,01,02,03",
		"Alder Hill,,,,\npupil,form,1,2,3", "pupil,form,Number facts,,Time\n,,1,2,3", "Kód žáka,form,1,2,3", "pupil,form,#1,#2,#3",
	} {
		r, err := marks.Read("marks.csv", []byte(heading+"\nP01,A,1,52,3:30\nP02,B,1,0,1\n"), friday(), marks.Options{})
		if err != nil || len(r.Papers) != 2 {
			t.Errorf("%s: %+v, %v", heading, r, err)
			continue
		}
		if got := paper(r.Papers[0]) + ", " + paper(r.Papers[1]); got != "P01A r(1) w(52) r(3:30), P02B r w r" {
			t.Errorf("%s: %s", heading, got)
		}
	}
}

// Teachers' files come in these encodings and with these marks between cells.
func TestEncodings(t *testing.T) {
	grid := "pupil,form,1,2,3\nÑ1,A,✓,512,x\n"
	utf16le := []byte{0xff, 0xfe}
	for _, unit := range utf16.Encode([]rune(grid)) {
		utf16le = append(utf16le, byte(unit), byte(unit>>8))
	}
	windows := strings.NewReplacer("Ñ", "\xd1", "✓", "1").Replace(grid) // Windows-1252 has no tick
	for name, data := range map[string][]byte{
		"UTF-8":             []byte(grid),
		"with mark":         []byte("\ufeff" + grid),
		"semicolons":        []byte(strings.ReplaceAll(grid, ",", ";")),
		"tabs":              []byte(strings.ReplaceAll(grid, ",", "\t")),
		"carriage returns":  []byte(strings.ReplaceAll(grid, "\n", "\r\n")),
		"UTF-16":            utf16le,
		"Windows-1252":      []byte(windows),
		"title line before": []byte("Friday check\n" + grid),
	} {
		r, err := marks.Read("marks.csv", data, friday(), marks.Options{})
		if err != nil || len(r.Papers) != 1 || paper(r.Papers[0]) != "Ñ01A r w(512) w" {
			t.Errorf("%s: %+v, %v", name, r, err)
		}
	}
}

func TestBlank(t *testing.T) {
	var file bytes.Buffer
	if err := marks.Blank(&file, friday(), marks.Seats(friday(), "", nil, nil, []string{"P01", "P02", "P03"})); err != nil {
		t.Fatal(err)
	}
	id := "q" + friday().ID
	if want := "\ufeffpupil,form,1,2,3,quiz\r\nP01,A,,,," + id + "\r\nP02,B,,,," + id + "\r\nP03,A,,,," + id + "\r\n"; file.String() != want {
		t.Errorf("got %q, want %q", file.String(), want)
	}
	r := read(t, file.String(), marks.Options{})
	if len(r.Unmarked) != 3 || r.Rows() != 3 {
		t.Errorf("read back: %+v", r)
	}
}

// Whatever a grid holds, every row has one end, and every written answer is judged as
// its task does.
func TestEveryRowHasOneEnd(t *testing.T) {
	quiz := friday()
	cell := rapid.SampledFrom([]string{"", "1", "0", "✓", "x", "-", ".", "2", "62", "512", "3:30", "3:06", "half past 4", "#NAME?", "TRUE", "so many"})
	rapid.Check(t, func(t *rapid.T) {
		var grid bytes.Buffer
		out := csv.NewWriter(&grid)
		_ = out.Write([]string{"pupil", "form", "1", "2", "3"})
		n := rapid.IntRange(1, 9).Draw(t, "rows")
		for range n {
			_ = out.Write([]string{
				rapid.SampledFrom([]string{"P01", "P02", "p03", "P99", "Ada"}).Draw(t, "pupil"),
				rapid.SampledFrom([]string{"A", "b", "C", ""}).Draw(t, "form"),
				cell.Draw(t, "1"), cell.Draw(t, "2"), cell.Draw(t, "3"),
			})
		}
		out.Flush()
		r, err := marks.Read("marks.csv", grid.Bytes(), quiz, marks.Options{Pupils: []string{"P01", "P02", "P03"}})
		if err != nil {
			t.Fatal(err)
		}
		if r.Rows() != n {
			t.Fatalf("%d rows ended, want %d:\n%s", r.Rows(), n, grid.String())
		}
		seen := map[string]bool{}
		for _, p := range r.Papers {
			form, _ := quiz.Form(p.Form)
			if seen[p.Pupil] || len(p.Answers) != len(form.Items) {
				t.Fatalf("%+v", p)
			}
			seen[p.Pupil] = true
			for i, a := range p.Answers {
				posed := task.MustParse(form.Items[i].Asks)
				if a.Written != "" && (a.State == results.Right) != posed.Judge(a.Written) {
					t.Fatalf("%s: %q is %s", posed, a.Written, a.State)
				}
			}
		}
	})
}

func FuzzRead(f *testing.F) {
	f.Add([]byte("pupil,form,1,2,3\nP01,A,1,0,x\n"))
	f.Add([]byte("\xff\xfep\x00u\x00p\x00i\x00l\x00"))
	f.Add([]byte("pupil;form;1;2;3\n\"P01;A;1"))
	f.Add([]byte("pupil\n\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		r, err := marks.Read("marks.csv", data, friday(), marks.Options{})
		if err != nil {
			return
		}
		for _, p := range r.Papers {
			if code, err := results.ParseCode(p.Pupil); err != nil || code != p.Pupil || len(p.Answers) != 3 {
				t.Errorf("%+v, %v", p, err)
			}
		}
	})
}

// enter types lines and gives the papers saved, how it ended and what was asked.
func enter(t *testing.T, quiz results.Quiz, seats []marks.Seat, lines ...string) (saved []string, unfinished, asked string) {
	t.Helper()
	var out bytes.Buffer
	e := marks.Entry{In: strings.NewReader(strings.Join(lines, "\n") + "\n"), Out: &out, Quiz: quiz, Seats: seats, Save: func(p results.Paper) error {
		saved = append(saved, paper(p))
		return nil
	}}
	n, unfinished, err := e.Run(context.Background())
	if err != nil || n != len(saved) {
		t.Fatalf("%d saved, %v", n, err)
	}
	return saved, unfinished, out.String()
}

func TestEnter(t *testing.T) {
	seats := []marks.Seat{{"P01", "A"}, {"P02", "B"}}
	for _, row := range []struct {
		name       string
		lines      []string
		saved      []string
		unfinished string
	}{
		{"all right", []string{"", "", "", "", "", "", "", ""}, []string{"P01A r r r", "P02B r r r"}, ""},
		{"answers", []string{"b", "1", "74", "half past 4", "-"}, []string{"P01B w(1) w(74) r(half past 4)", "P02B a a a"}, ""},
		{"signs", []string{"", "x", ".", "-", "", "✓", "0", "4:30"}, []string{"P01A w n a", "P02B r w(0) r(4:30)"}, ""},
		{"one back", []string{"", "7", "<", "1", "", "", "", "", "", ""}, []string{"P01A r(1) r r", "P02B r r r"}, ""},
		{"back to the form", []string{"", "<", "B", "", "", "", "", "", "", ""}, []string{"P01B r r r", "P02B r r r"}, ""},
		{"back to the pupil", []string{"", "", "", "", "<", "", "x", "", "", "", "", "", ""}, []string{"P01A r r r", "P01A w r r", "P02B r r r"}, ""},
		{"no such form", []string{"C", "A", "", "", ""}, []string{"P01A r r r"}, ""},
		{"other marks", []string{"", "+", "R", "абв", "0 pts", "", "abs", "n.r.", "❌"}, []string{"P01A r r w", "P02B a n w"}, ""},
		{"asked again", []string{"", "banana", "1.5.7", "wrote 3", "", "", "", "", "", ""}, []string{"P01A w(3) r r", "P02B r r r"}, ""},
		{"breaks off", []string{"", "", "", "", "", "7"}, []string{"P01A r r r"}, "P02"},
	} {
		saved, unfinished, asked := enter(t, friday(), seats, row.lines...)
		if !slices.Equal(saved, row.saved) || unfinished != row.unfinished {
			t.Errorf("%s: saved %q, unfinished %q; want %q, %q\n%s", row.name, saved, unfinished, row.saved, row.unfinished, asked)
		}
	}
	_, _, asked := enter(t, friday(), seats, "C", "A", "", "74", "abs")
	for _, want := range []string{
		"      right\n", "      wrong: 74\n", "      absent\n", "P01 (1 of 2), form A: ",
		`"C" is no form of this quiz; it has A, B`, "1  9 - 8 = ?  [1] ",
	} {
		if !strings.Contains(asked, want) {
			t.Errorf("%q is not in\n%s", want, asked)
		}
	}
}

// Where numbers are compared < is what a child may write, and << goes back.
func TestEnterComparisons(t *testing.T) {
	quiz := quizOf([]string{"47 ? 74", "74 ? 47"})
	saved, _, _ := enter(t, quiz, []marks.Seat{{"P01", "A"}}, "", ">", "<<", "<", "<")
	if want := []string{"P01A r(<) w(<)"}; !slices.Equal(saved, want) {
		t.Errorf("saved %q, want %q", saved, want)
	}
}

func TestRoster(t *testing.T) {
	r, err := marks.ReadRoster("roster.csv", []byte("code,name\nP1,Ada\np2,\"Bo, the tall\"\n"))
	if err != nil || !slices.Equal(r.Codes, []string{"P01", "P02"}) || r.Names["P02"] != "Bo, the tall" {
		t.Errorf("%+v, %v", r, err)
	}
	r, err = marks.ReadRoster("roster.csv", []byte("P1, \"O'Brien, Sean\"\nP2, Ada\n"))
	if err != nil || r.Names["P01"] != "O'Brien, Sean" {
		t.Errorf("%+v, %v", r, err)
	}
	if r, err = marks.ReadRoster("roster.csv", []byte("code,name,class\nP1,Ada,2A\n")); err != nil || r.Names["P01"] != "Ada" {
		t.Errorf("%+v, %v", r, err)
	}
	for text, want := range map[string]string{
		"code,name\nP1,Ada\nBo,P2\n": `roster.csv, line 3: "Bo" is no pupil's code`,
		"P1,Ada\nP01,Bo\n":           "P01 is there twice",
		"code,name\n":                "has no rows",
		"P1,Ada\nP2,O'Brien, Sean\n": `line 2: behind the name stands "Sean"`,
		"code,name\nP1,Bo,2A\n":      `line 2: behind the name stands "2A"`,
	} {
		if _, err := marks.ReadRoster("roster.csv", []byte(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}

func FuzzReadRoster(f *testing.F) {
	f.Add([]byte("code,name\nP01,Ada\n"))
	f.Add([]byte("P1;Bo\n\"P2;"))
	f.Fuzz(func(t *testing.T, data []byte) {
		r, err := marks.ReadRoster("roster.csv", data)
		if err == nil && (len(r.Codes) == 0 || len(r.Codes) != len(r.Names)) {
			t.Errorf("%+v", r)
		}
	})
}
