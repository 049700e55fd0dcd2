package marks_test

import (
	"fmt"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"evenhand/bank/results"
	"evenhand/import/marks"
	"evenhand/standards/task"
)

// written are what children write to the ten items: the key, and wrong answers.
var writtenWrong = [][]string{
	{"52", "512", "7", "0", "1"}, {"2", "17", "0"}, {"6:45", "half past 10", "10:30"}, {"true", "yes"}, {">", "="},
	{"2 tens 6 ones", "6, 20"}, {"30", "32 cents", "$0.13"}, {"102", "90", "1"}, {"74", "714", "12", "0"}, {"12:20", "5:00", "4:30"},
}

// Law: whatever documented notations the rows of a grid are filled with, what is recorded
// is the truth, or the row is set aside.
func TestNeverAWrongRecord(t *testing.T) {
	quiz := long()
	var seats []marks.Seat
	for i := range 6 {
		seats = append(seats, marks.Seat{Pupil: fmt.Sprintf("P%02d", i+1), Form: "A"})
	}
	rapid.Check(t, func(t *rapid.T) {
		var grid strings.Builder
		if err := marks.Blank(&grid, quiz, seats); err != nil {
			t.Fatal(err)
		}
		lines := strings.Split(strings.TrimSpace(grid.String()), "\r\n")
		truths := map[string]string{}
		for i, seat := range seats {
			n := rapid.SampledFrom(notations).Draw(t, "notation")
			style := rapid.SampledFrom([]string{"marks", "right marked", "wrong marked", "written", "absent"}).Draw(t, "style")
			absent := rapid.SampledFrom([]string{"-", "absent", "abs", "—"}).Draw(t, "absent")
			last := rapid.IntRange(5, 10).Draw(t, "reached")
			row := strings.Split(lines[i+1], ",")
			words := strings.ContainsFunc(n.right, unicode.IsLetter)
			ones := 0
			truth := ""
			for k, item := range quiz.Forms[0].Items {
				isRight := rapid.IntRange(0, 3).Draw(t, "right") > 0
				state := map[bool]string{true: "r", false: "w"}[isRight]
				wrote := item.Key
				if !isRight {
					if wrote = rapid.SampledFrom(writtenWrong[k]).Draw(t, "wrote"); (wrote == "0" || wrote == "1") && ones > 0 {
						wrote = writtenWrong[k][0] // as documented: hardly half of a child's answers are 1 or 0
					} else if wrote == "0" || wrote == "1" {
						ones++
					}
				}
				digits := strings.ContainsAny(n.wrong, "0０") // for whom a child's own 1 or 0 is marked, not written
				if digits && !isRight && (wrote == "0" || wrote == "1") && style != "written" {
					wrote = writtenWrong[k][0]
				}
				sign := map[bool]string{true: n.right, false: n.wrong}[isRight]
				var cell string
				switch {
				case style == "absent":
					cell, state = absent, "a"
				case k >= last:
					cell, state = "", "n"
				case style == "marks", k == 3 && words && style == "right marked": // boxes are ticked under every item
					cell = sign
				case style == "right marked" && isRight, style == "wrong marked" && !isRight:
					cell = sign
				default:
					cell = wrote
				}
				judges := strings.EqualFold(n.wrong, "wrong") || strings.EqualFold(n.wrong, "incorrect")
				if k == 3 && words && !judges && style == "wrong marked" && !isRight && k < last {
					cell = "x" // "no" and "false" are answers there
				}
				truth += state
				row[k+2] = `"` + cell + `"`
			}
			truths[seat.Pupil] = truth
			lines[i+1] = strings.Join(row, ",")
		}
		r, err := marks.Read("marks.csv", []byte(strings.Join(lines, "\r\n")), quiz, marks.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if r.Rows() != len(seats) {
			t.Fatalf("%d rows ended", r.Rows())
		}
		for _, p := range r.Papers {
			if got := states(p); got != truths[p.Pupil] {
				t.Fatalf("%s is recorded %s, but it was %s:\n%s", p.Pupil, got, truths[p.Pupil], strings.Join(lines, "\n"))
			}
		}
	})
}

// Whatever stands in a cell beside ticks, a wrong answer is one that a child can have
// written, judged as the task does; anything else is a mark or set aside.
func FuzzCell(f *testing.F) {
	for i, cell := range []string{"62.00", "9.3", "FALSE", "<", "6/2", "$.31", "abs", "+", "½", "wrote x", "☐", "46175", "=1+1", "1e9", "#N/A"} {
		f.Add(cell, i%10)
	}
	f.Fuzz(func(t *testing.T, cell string, at int) {
		if at < 0 || at > 9 || strings.ContainsAny(cell, "\t\r\n\"") {
			return
		}
		cells := mark("rrrrrrrrrr", "✓", "x")
		cells[at] = cell
		grid := strings.ReplaceAll(longHeading, ",", "\t") + "P01\tA\t" + strings.Join(cells, "\t") + "\n"
		r, err := marks.Read("marks.csv", []byte(grid), long(), marks.Options{})
		if err != nil { // no text at all
			return
		}
		if r.Rows() != 1 {
			t.Fatalf("%q: %d rows", cell, r.Rows())
		}
		for _, p := range r.Papers {
			a, asked := p.Answers[at], task.MustParse(long().Forms[0].Items[at].Asks)
			small := strings.ToLower(cell)
			said := strings.HasPrefix(small, "wrote") || strings.HasPrefix(small, "escribi")
			if a.Written != "" && !said && !asked.Possible(a.Written) {
				t.Errorf("%q under %s is taken for the answer %q", cell, asked, a.Written)
			}
			if a.Written != "" && (a.State == results.Right) != asked.Judge(a.Written) {
				t.Errorf("%q under %s is %s", a.Written, asked, a.State)
			}
		}
	})
}
