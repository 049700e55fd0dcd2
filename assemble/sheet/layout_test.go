package sheet

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"evenhand/standards/task"
)

// Every block comes out once and in order, no page is fuller than it has room, and
// a direction never stands alone at the foot of a page.
func TestPaginate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		blocks := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) block {
			keep := rapid.Bool().Draw(t, "keep")
			return block{drawing: drawing{h: rapid.Float64Range(1, 40).Draw(t, "height")}, gap: rapid.Float64Range(0, 12).Draw(t, "gap"), keep: keep}
		}), 1, 30).Draw(t, "blocks")
		for i := range blocks {
			blocks[i].mark = fmt.Sprint(i)
		}
		const room = 120
		pages, err := paginate(blocks, room)
		if err != nil {
			return // a run that must stay together is taller than a page
		}
		next := 0
		for _, page := range pages {
			used := -page[0].gap
			for i, b := range page {
				if b.mark != fmt.Sprint(next) {
					t.Fatalf("block %s stands where %d should", b.mark, next)
				}
				if last := i == len(page)-1; last && b.keep && next < len(blocks)-1 {
					t.Fatalf("block %d is cut off from the next", next)
				}
				used += b.gap + b.h
				next++
			}
			if used > room+1e-9 || used+float64(len(page)-1)*stretch(page, room) > room+1e-9 {
				t.Fatalf("a page of %v has blocks of %.1f", room, used)
			}
		}
		if next != len(blocks) {
			t.Fatalf("%d of %d blocks are printed", next, len(blocks))
		}
	})
}

func TestItemsOfOneDirectionStandTogether(t *testing.T) {
	var questions []Question
	for i, text := range []string{"47 + 36 = ?", "83 - 47 = ?", "read 4:30", "read 5:00", "say 5:00", "47 ? 74"} {
		asked := task.MustParse(text)
		questions = append(questions, Question{Number: i + 1, Task: asked, Look: asked.Looks()[0]})
	}
	var got []string
	for _, group := range groups(questions) {
		got = append(got, numbers(group))
	}
	if want := "[1-2 3-4 5 6]"; fmt.Sprint(got) != want {
		t.Errorf("groups %v, want %s", got, want)
	}
}

func TestColumns(t *testing.T) {
	asked := task.MustParse("47 + 36 = ?")
	group := []Question{{Number: 1, Task: asked, Look: task.LookSentence}, {Number: 2, Task: asked, Look: task.LookSentence}, {Number: 3, Task: asked, Look: task.LookSentence}}
	for columns, want := range map[int]int{0: 2, 1: 3, 2: 2} {
		s, err := Options{Columns: columns, Font: BuiltInFont}.settle()
		if err != nil {
			t.Fatal(err)
		}
		rows, err := s.rows(group)
		if err != nil || len(rows) != want {
			t.Errorf("%d columns: %d rows, want %d (%v)", columns, len(rows), want, err)
		}
	}
}

// Whatever the type, the language and the look, a block is no wider than the page.
func TestBlocksFitThePage(t *testing.T) {
	for _, o := range []Options{{Font: BuiltInFont}, {Font: BuiltInFont, Large: true, Lang: "es", PaperSize: "a4"}, {Font: BuiltInFont, Key: true}} {
		s, err := o.settle()
		if err != nil {
			t.Fatal(err)
		}
		p := Paper{Title: "Friday check", Form: "A"}
		eachExample(t, func(asked task.Task, l task.Look) {
			p.Questions = append(p.Questions, Question{Number: len(p.Questions) + 1, Task: asked, Look: l, Missteps: asked.Missteps()})
		})
		blocks, err := s.blocks(p)
		if err != nil {
			t.Fatal(err)
		}
		for _, b := range append(blocks, s.wrongAnswers(p)...) {
			r := &recorder{face: s.face}
			b.paint(r, point{})
			if r.low.x < 0 || r.low.y < 0 || r.high.x > s.width+.01 || r.high.y > b.h+.01 {
				t.Errorf("%+v: ink from %.1f to %.1f in %s%s, a block of %.1f by %.1f", o, r.low, r.high, b.what, b.mark, s.width, b.h)
			}
		}
	}
}
