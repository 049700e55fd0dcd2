package sheet

import (
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"
)

// madeOf are items of skills.
func madeOf(t *testing.T, count int, skills ...standards.SkillID) (list []task.Task) {
	t.Helper()
	for _, skill := range skills {
		made, err := generate.Make(generate.Request{Skill: skill, Count: count, Seed: 12, Spread: true})
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, made.Tasks...)
	}
	return list
}

// kitsOfAll are kits of every paper, usual and large, in both languages.
func kitsOfAll(t *testing.T, key bool) (list []kit) {
	t.Helper()
	for _, o := range []Options{{}, {PaperSize: "a4", Lang: "es"}, {Large: true}, {Large: true, PaperSize: "a4", Lang: "es"}} {
		o.Font, o.Key = BuiltInFont, key
		s, err := o.settle()
		if err != nil {
			t.Fatal(err)
		}
		k := s.kit
		k.width -= s.label()
		list = append(list, k)
	}
	return list
}

// checkBounds fails when ink stands outside a drawing, or the drawing is wider than its room.
func checkBounds(t *testing.T, k kit, asked task.Task) {
	t.Helper()
	d, err := k.draw(Question{Number: 1, Task: asked, Look: asked.Looks()[0]})
	if err != nil {
		t.Fatal(err)
	}
	r := record(t, k, asked, asked.Looks()[0])
	if r.low.x < -.01 || r.low.y < -.01 || r.high.x > d.w+.01 || r.high.y > d.h+.01 || d.w > k.width+.01 || d.h > k.height {
		t.Errorf("%s: ink from %.1f to %.1f in a drawing of %.1f by %.1f, the page has %.1f", asked, r.low, r.high, d.w, d.h, k.width)
	}
}

var sortAndCount = regexp.MustCompile(`([a-z]+) ([0-9]+)`)

// countsIn are the sorts and numbers of a task's text.
func countsIn(text string) (names []string, counts map[string]int) {
	list, _, _ := strings.Cut(text, ":")
	counts = map[string]int{}
	for _, m := range sortAndCount.FindAllStringSubmatch(list, -1) {
		n, _ := strconv.Atoi(m[2])
		names, counts[m[1]] = append(names, m[1]), n
	}
	return names, counts
}

// answerTo works a question out anew from its text and the numbers given.
func answerTo(text string, names []string, counts map[string]int) string {
	_, question, _ := strings.Cut(text, ": ")
	ordered := slices.SortedFunc(slices.Values(names), func(a, b string) int { return cmp.Compare(counts[a], counts[b]) })
	words := strings.Fields(question)
	switch {
	case question == "how many in all":
		total := 0
		for _, n := range counts {
			total += n
		}
		return fmt.Sprint(total)
	case strings.HasPrefix(question, "how many more"), strings.HasPrefix(question, "how many fewer"):
		return fmt.Sprint(math.Abs(float64(counts[words[3]] - counts[words[5]])))
	case question == "which has the most":
		return ordered[len(ordered)-1]
	case question == "which has the fewest":
		return ordered[0]
	case question == "order from fewest":
		var places []string
		for _, name := range names {
			places = append(places, fmt.Sprint(slices.Index(ordered, name)+1))
		}
		return strings.Join(places, ", ")
	case question == "draw":
		var list []string
		for _, name := range names {
			list = append(list, fmt.Sprint(counts[name]))
		}
		return strings.Join(list, ", ")
	}
	return fmt.Sprint(counts[words[2]])
}

// drawnCounts are how many there are of each sort as the picture shows it.
func drawnCounts(t *testing.T, r *recorder, asked task.Data, names []string) map[string]int {
	counts := map[string]int{}
	at := func(name string) point { // where the name of a sort stands, the first time
		i := slices.IndexFunc(r.texts, func(d drawnText) bool { return d.s == name })
		if i < 0 {
			t.Fatalf("%s: no name %s among %v", asked, name, r.words())
		}
		return r.texts[i].at
	}
	nearest := func(y float64) string { // in whose row something stands
		return slices.MinFunc(names, func(a, b string) int { return cmp.Compare(math.Abs(at(a).y-y), math.Abs(at(b).y-y)) })
	}
	switch asked.Form {
	case task.BarGraph:
		for _, bar := range r.polygons {
			middle, tall := (bar[0].x+bar[2].x)/2, bar[0].y-bar[1].y
			for _, name := range names {
				if math.Abs(at(name).x-middle) < .01 {
					counts[name] = int(math.Round(tall / barUnit))
				}
			}
			if math.Abs(tall/barUnit-math.Round(tall/barUnit)) > 1e-9 {
				t.Errorf("%s: a bar ends between the lines", asked)
			}
		}
	case task.PictureGraph:
		for _, ring := range r.circles[:len(r.circles)-1] { // the last is the legend's
			counts[nearest(ring.middle.y)]++
		}
	case task.TallyChart:
		for _, mark := range r.lines {
			if long := distance(mark.from, mark.to); long >= tallyTall-.01 && long < 15 && mark.from.x != mark.to.x || math.Abs(long-tallyTall) < .01 {
				counts[nearest((mark.from.y+mark.to.y)/2)]++
			}
		}
	case task.Table:
		for _, text := range r.texts[:2*len(names)] {
			if n, err := strconv.Atoi(text.s); err == nil {
				counts[nearest(text.at.y)] = n
			}
		}
	case task.Things:
		corners := map[int]string{3: "triangles", 4: "squares", 10: "stars"}
		for _, shape := range r.polygons {
			counts[corners[len(shape)]]++
		}
		if len(r.circles) > 0 {
			counts["circles"] = len(r.circles)
		}
	}
	return counts
}

// What a picture shows, measured in the drawing, is what the task says, and the answer worked out from it
// anew is the key.
func TestGraphsShowTheirNumbers(t *testing.T) {
	for _, made := range madeOf(t, 60, "sort-things", "read-data", "read-graphs") {
		asked := made.(task.Data)
		names, want := countsIn(asked.String())
		if asked.Ask != task.DrawIt {
			r := record(t, testKit(t, false), asked, asked.Looks()[0])
			if got := drawnCounts(t, r, asked, names); fmt.Sprint(got) != fmt.Sprint(want) {
				t.Errorf("%s shows %v", asked, got)
			}
		}
		if got := answerTo(asked.String(), names, want); got != asked.Key() {
			t.Errorf("%s has the key %s, worked out anew it is %s", asked, asked.Key(), got)
		}
		for _, k := range append(kitsOfAll(t, false), kitsOfAll(t, true)...) {
			checkBounds(t, k, asked)
		}
	}
}

// The scale of a bar graph has a line for each number, equally far apart, from 0 at the foot of the bars.
func TestScaleOfABarGraph(t *testing.T) {
	r := recordText(t, false, "bar graph cats 4, dogs 10, birds 1: how many cats", task.LookBarGraph)
	for n := range topOfScale + 1 {
		i := slices.IndexFunc(r.texts, func(d drawnText) bool { return d.s == fmt.Sprint(n) })
		line := slices.IndexFunc(r.lines, func(l drawnLine) bool {
			return l.from.y == l.to.y && math.Abs(l.from.y-(r.polygons[0][0].y-barUnit*float64(n))) < 1e-9
		})
		if i < 0 || line < 0 || math.Abs(r.texts[i].at.y-r.face.digit*r.texts[i].size/2-r.lines[line].from.y) > .01 {
			t.Errorf("%d does not stand at its line", n)
		}
	}
}

// A graph to be drawn is empty on the sheet and right on the key.
func TestGraphsToDraw(t *testing.T) {
	for text, marks := range map[string]func(r *recorder) int{
		"bar graph cats 4, dogs 7, birds 2: draw":              func(r *recorder) int { return len(r.polygons) },
		"picture graph cats 4, dogs 7, birds 2: draw":          func(r *recorder) int { return len(r.polygons) },
		"tally chart circles 4, squares 7, stars 2: draw":      func(r *recorder) int { return len(r.lines) - 7 },
		"tally chart circles 4, squares 6, triangles 10: draw": func(r *recorder) int { return len(r.lines) - 7 },
	} {
		asked := task.MustParse(text).(task.Data)
		sheet, key := record(t, testKit(t, false), asked, asked.Looks()[0]), record(t, testKit(t, true), asked, asked.Looks()[0])
		want := asked.Counts[0] + asked.Counts[1] + asked.Counts[2]
		if asked.Form == task.BarGraph {
			want = asked.N
		}
		if got := marks(key) - marks(sheet); got != want || asked.Form == task.TallyChart && marks(sheet) != 0 {
			t.Errorf("%s: the key adds %d marks, want %d", asked, got, want)
		}
	}
}

// The things lie apart, and all in their frame.
func TestThingsToSortLieApart(t *testing.T) {
	for _, made := range madeOf(t, 40, "sort-things") {
		list := lying(made.(task.Data))
		for i, a := range list {
			for _, b := range list[:i] {
				if distance(a.middle, b.middle) < 2*thingRadius+.5 {
					t.Errorf("%s: two things are %.1f mm apart", made, distance(a.middle, b.middle))
				}
			}
		}
	}
}
