package sheet

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"evenhand/standards/task"
)

// lineNumber reads a place on a number line by its first and last label.
func lineNumber(r *recorder, x float64) float64 {
	var labels []drawnText
	for _, text := range r.texts {
		if _, err := strconv.Atoi(text.s); err == nil && text.align == centre && text.at.y > r.circles[0].middle.y && text.size < r.texts[len(r.texts)-1].size {
			labels = append(labels, text)
		}
	}
	first, last := labels[0], labels[len(labels)-1]
	least, _ := strconv.ParseFloat(first.s, 64)
	most, _ := strconv.ParseFloat(last.s, 64)
	return least + (x-first.at.x)/(last.at.x-first.at.x)*(most-least)
}

func TestNumberLineIsTheSentence(t *testing.T) {
	for _, c := range []struct {
		task       string
		start, end float64
		bows       []string // worked by hand: tens first, then the ones
	}{
		{"47 + 36 = ?", 47, 83, []string{"+10", "+10", "+10", "+6"}},
		{"83 - 47 = ?", 83, 36, []string{"−10", "−10", "−10", "−10", "−7"}},
		{"8 + ? = 15", 8, 15, []string{"+7"}},
		{"7 + 8 = ?", 7, 15, []string{"+8"}},
		{"60 + 40 = ?", 60, 100, []string{"+10", "+10", "+10", "+10"}},
	} {
		r := recordText(t, true, c.task, task.LookNumberLine)
		line := r.lines[0].from.y
		var bows []string
		for _, text := range r.texts {
			if text.at.y < line && strings.ContainsAny(text.s, "+−") {
				bows = append(bows, text.s)
			}
		}
		var ends []float64 // where bows touch the line, in the order they are drawn
		for _, l := range r.lines {
			if l.from.y != l.to.y && l.from.x != l.to.x {
				for _, p := range []point{l.from, l.to} {
					if math.Abs(p.y-line) < 1e-6 {
						ends = append(ends, lineNumber(r, p.x))
					}
				}
			}
		}
		if !slices.Equal(bows, c.bows) || len(ends) != 2*len(bows) || math.Abs(ends[0]-c.start) > 1e-6 || math.Abs(ends[len(ends)-1]-c.end) > 1e-6 {
			t.Errorf("%s: bows %v touch the line at %.2f", c.task, bows, ends)
		}
		if dot := lineNumber(r, r.circles[0].middle.x); math.Abs(dot-c.start) > 1e-6 {
			t.Errorf("%s: the dot stands at %v", c.task, dot)
		}
	}
}

// Every number under the line stands at its place, with room to the next, in any type.
func TestNumbersUnderTheLine(t *testing.T) {
	for _, o := range []Options{{Font: BuiltInFont}, {Font: BuiltInFont, Large: true, PaperSize: "a4"}} {
		s, err := o.settle()
		if err != nil {
			t.Fatal(err)
		}
		s.kit.width -= s.label()
		for asked, want := range map[string]int{"7 + 8 = ?": map[bool]int{false: 21, true: 5}[o.Large], "47 + 36 = ?": 6, "5 + 90 = ?": 11} {
			r := record(t, s.kit, task.MustParse(asked), task.LookNumberLine)
			labels := r.texts[:want]
			for i, label := range labels {
				n, err := strconv.Atoi(label.s)
				if err != nil || math.Abs(lineNumber(r, label.at.x)-float64(n)) > 1e-6 {
					t.Errorf("%s: %q does not stand at its place", asked, label.s)
				}
				if i > 0 && label.at.x-label.w/2 < labels[i-1].at.x+labels[i-1].w/2+.5 {
					t.Errorf("%s: %q stands too close to %q", asked, label.s, labels[i-1].s)
				}
			}
		}
	}
}

// A child can jump from one tick to the next: they stand at least 4 mm apart on paper (common practice,
// no source), and the start and a given end lie on the line.
func TestTicksCanBeJumpedOn(t *testing.T) {
	for _, o := range []Options{{Font: BuiltInFont}, {Font: BuiltInFont, Large: true}} {
		s, err := o.settle()
		if err != nil {
			t.Fatal(err)
		}
		s.kit.width -= s.label()
		for a := 1; a < 100; a += 7 {
			for b := 1; a+b <= 100; b += 6 {
				r := record(t, s.kit, task.MustParse(fmt.Sprintf("%d + %d = ?", a, b)), task.LookNumberLine)
				var ticks []float64
				for _, line := range r.lines {
					if line.from.x == line.to.x {
						ticks = append(ticks, line.from.x)
					}
				}
				slices.Sort(ticks)
				for i := 1; i < len(ticks); i++ {
					if gap := s.scale * (ticks[i] - ticks[i-1]); gap < 4-1e-6 {
						t.Fatalf("%d + %d: ticks %.2f mm apart", a, b, gap)
					}
				}
				if from, to := s.kit.stretchOf(way{start: a, by: b}); from > a || to < a+b {
					t.Errorf("%d + %d: the line goes from %d to %d", a, b, from, to)
				}
			}
		}
	}
}

// cells are the numbers of a chart in the cells they stand in.
func cells(t *testing.T, r *recorder) map[int]drawnRect {
	t.Helper()
	found := map[int]drawnRect{}
	for i := range task.HundredsChartEnd {
		text, cell := r.texts[i], r.rects[i]
		n, err := strconv.Atoi(text.s)
		middle := point{text.at.x, text.at.y - r.face.digit*text.size/2}
		if err != nil || distance(middle, point{cell.at.x + chartWidth/2, cell.at.y + chartHeight/2}) > 1e-6 {
			t.Fatalf("%q does not stand in the middle of its cell", text.s)
		}
		found[n] = cell
	}
	return found
}

func TestChartHasEveryNumberInItsPlace(t *testing.T) {
	chart := cells(t, recordText(t, false, "47 + 36 = ?", task.LookHundredsChart))
	for n := 1; n <= 120; n++ {
		want := point{chart[1].at.x + float64((n-1)%10)*chartWidth, chart[1].at.y + float64((n-1)/10)*chartHeight}
		if distance(chart[n].at, want) > 1e-6 {
			t.Errorf("%d stands at %v, want %v", n, chart[n].at, want)
		}
	}
}

func TestChartShowsTheWay(t *testing.T) {
	for _, c := range []struct {
		task       string
		start, end int
		landed     []int // worked by hand: down or up by tens, then along by ones
	}{
		{"47 + 36 = ?", 47, 83, []int{57, 67, 77, 78, 79, 80, 81, 82, 83}},
		{"47 + ? = 60", 47, 60, []int{57, 58, 59, 60}},
		{"35 - 12 = ?", 35, 23, []int{23, 24, 25}},
		{"10 less than 120 = ?", 120, 110, []int{110}},
		{"98 + 5 = ?", 98, 103, []int{99, 100, 101, 102, 103}},
	} {
		r := recordText(t, true, c.task, task.LookHundredsChart)
		chart := cells(t, r)
		var landed []int
		for n, cell := range chart {
			if cell.fill == pale {
				landed = append(landed, n)
			}
		}
		slices.Sort(landed)
		frame, ring := r.rects[task.HundredsChartEnd:], r.polygons
		if !slices.Equal(landed, c.landed) || len(frame) < 1 || frame[0].at != chart[c.start].at {
			t.Errorf("%s: the way goes over %v, want %v", c.task, landed, c.landed)
		}
		// One frame for the start; a ring only where the end is given.
		given := strings.Contains(c.task, "+ ?")
		if given != (len(ring) == 1) || given && !inRect(ring[0][ovalCorners/4], widened(chart[c.end])) {
			t.Errorf("%s: %d rings, the end is given: %v", c.task, len(ring), given)
		}
		for _, cell := range cells(t, recordText(t, false, c.task, task.LookHundredsChart)) {
			if cell.fill != hollow {
				t.Errorf("%s: the sheet shows the way", c.task)
			}
		}
	}
}

func TestBranchesEndAtTheirBoxes(t *testing.T) {
	r := recordText(t, false, "8 + 5 = ?", task.LookMakeTen)
	for i, branch := range r.lines {
		box := r.rects[i]
		if math.Abs(branch.to.x-box.at.x-box.w/2) > 1e-6 || math.Abs(branch.to.y-box.at.y) > 1e-6 {
			t.Errorf("branch %d does not end at its box", i)
		}
	}
}

// widened is a rectangle with its edge.
func widened(r drawnRect) drawnRect {
	r.at, r.w, r.h = point{r.at.x - .01, r.at.y - .01}, r.w+.02, r.h+.02
	return r
}
