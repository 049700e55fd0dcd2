package sheet

import (
	"fmt"
	"strings"
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

// Spreading never uses more pages than filling them one after the other, keeps all blocks in order, and
// doesn't leave the last one alone on its page where the one before has room beside it.
func TestSpread(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		heights := rapid.SliceOfN(rapid.Float64Range(10, 70), 1, 20).Draw(t, "heights")
		var blocks []block
		for i, h := range heights {
			blocks = append(blocks, block{drawing: drawing{h: h}, gap: 8, mark: fmt.Sprint(i)})
		}
		const room = 227
		greedy, err := paginate(blocks, room)
		if err != nil {
			t.Fatal(err)
		}
		pages, err := spread(blocks, room, true)
		if err != nil || len(pages) > len(greedy) {
			t.Fatalf("%d pages, one after the other %d (%v)", len(pages), len(greedy), err)
		}
		next, fullest := 0, 0.0
		var uses []float64
		for _, page := range pages {
			used := -page[0].gap
			for _, b := range page {
				if b.mark != fmt.Sprint(next) {
					t.Fatalf("block %s stands where %d should", b.mark, next)
				}
				used += b.gap + b.h
				next++
			}
			fullest, uses = max(fullest, used), append(uses, used)
		}
		if next != len(blocks) || fullest > room {
			t.Fatalf("%d of %d blocks, %.0f mm of %d", next, len(blocks), fullest, room)
		}
		if last := len(pages) - 1; last > 0 && len(pages[last]) == 1 && len(pages[last-1]) > 1 && uses[last]+8+heights[len(heights)-2] < uses[last-1]-1e-9 {
			t.Fatalf("the last item stands alone: %v", heights)
		}
	})
}

// Ten usual items, as the demo's plan asks for them, stand on two pages; five stories, too, and three on
// one page; and the key of ten items on one page beside its sheet filled in.
func TestPaperIsSpared(t *testing.T) {
	pages := func(o Options, tasks ...string) int {
		o.Font = BuiltInFont
		s, err := o.settle()
		if err != nil {
			t.Fatal(err)
		}
		p := Paper{Title: "Friday check"}
		for i, text := range tasks {
			text, look, found := strings.Cut(text, "|")
			asked := task.MustParse(text)
			q := Question{Number: i + 1, Task: asked, Look: asked.Looks()[0], Missteps: asked.Missteps()}
			if found {
				q.Look = task.Look(look)
			}
			p.Questions = append(p.Questions, q)
		}
		leaves, err := s.leaves(p)
		if err != nil {
			t.Fatal(err)
		}
		return len(leaves)
	}
	ten := []string{
		"47 + 36 = ?|column", "63 + 45 = ?|column", "83 - 47 = ?|column", "52 - 38 = ?|column", "9 + 4 + 6 = ?",
		"142 = ? hundreds ? tens ? ones", "47 ? 74", "read 4:30", "read 7:25", "match 4:00, 7:00, 11:00",
	}
	story := "story add-to change-unknown: 5 + ? = 12, shells, Mia"
	for _, c := range []struct {
		tasks []string
		o     Options
		most  int
	}{
		{ten, Options{}, 2}, {ten, Options{PaperSize: "a4"}, 2}, {ten, Options{Key: true}, 3},
		{[]string{story, story, story}, Options{}, 1}, {[]string{story, story, story, story, story}, Options{}, 2},
		{[]string{"count 13", "count 8", "count 17", "count 5", "count 20"}, Options{}, 1},
	} {
		if got := pages(c.o, c.tasks...); got > c.most {
			t.Errorf("%d items take %d pages, want %d: %v", len(c.tasks), got, c.most, c.tasks)
		}
	}
}

// What a teacher asks on the way out fits on strips: two sums in columns, a clock and a comparison; a story and a
// clock, three sums or coins.
func TestStripsHoldAnExitTicket(t *testing.T) {
	s, err := Options{Layout: Strips, Font: BuiltInFont}.settle()
	if err != nil {
		t.Fatal(err)
	}
	for _, ticket := range [][]string{
		{"47 + 36 = ?|column", "83 - 47 = ?|column", "read 4:30|clock-face", "47 ? 74|compare"},
		{"story put-together three-addends: 4 + 8 + 5 = ?, shells, Mia|story", "read 4:30|clock-face"},
		{"story add-to change-unknown: 5 + ? = 12, shells, Mia|story", "20 + 11 = ?|sentence", "40 + 37 = ?|sentence", "26 + 50 = ?|sentence"},
		{"story add-to change-unknown: 25 + ? = 62, books, Lin|story", "coins 25, 10, 10, 5, 1|coins"},
	} {
		var papers []Paper
		for _, form := range []string{"A", "B", "C"} {
			p := Paper{Title: "Exit", Form: form}
			for i, text := range ticket {
				text, look, _ := strings.Cut(text, "|")
				p.Questions = append(p.Questions, Question{Number: i + 1, Task: task.MustParse(text), Look: task.Look(look)})
			}
			papers = append(papers, p)
		}
		for forms, want := range map[int]int{1: 1, 2: 1, 3: 3} {
			leaves, err := s.strips(papers[:forms])
			if err != nil || len(leaves) != want {
				t.Errorf("%q: %d forms on %d pages of two strips, want %d (%v)", ticket, forms, len(leaves), want, err)
			}
		}
	}
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
	group := []Question{
		{Number: 1, Task: asked, Look: task.LookSentence},
		{Number: 2, Task: asked, Look: task.LookSentence},
		{Number: 3, Task: asked, Look: task.LookSentence},
	}
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
		blocks, err := s.closer().blocks(p)
		if err != nil {
			t.Fatal(err)
		}
		for _, b := range append(blocks, s.answers(p)...) {
			r := &recorder{face: s.face}
			b.paint(r, point{})
			if r.low.x < 0 || r.low.y < 0 || r.high.x > s.width+.01 || r.high.y > b.h+.01 {
				t.Errorf("%+v: ink from %.1f to %.1f in %s%s, a block of %.1f by %.1f", o, r.low, r.high, b.what, b.mark, s.width, b.h)
			}
		}
	}
}
