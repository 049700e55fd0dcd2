package sheet

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"testing"

	"evenhand/standards/task"
)

var endsOf = regexp.MustCompile(`([0-9]+) to ([0-9]+)`)

// On paper, whatever the print, the marks of a ruler are 10 mm or 25.4 mm apart (1 inch: international yard and
// pound agreement, 1959), the bars end at their numbers, and the line to check by is 50 mm or 50.8 mm long.
func TestRulersAreTrueToSize(t *testing.T) {
	for _, made := range madeOf(t, 60, "measure-with-ruler", "how-much-longer") {
		asked := made.(task.Ruler)
		unit, check := 10.0, 50.0
		if asked.Inches {
			unit, check = 25.4, 50.8
		}
		for _, k := range kitsOfAll(t, false) {
			checkBounds(t, k, asked)
			r := record(t, k, asked, asked.Looks()[0])
			places := map[int]float64{} // of the numbers below the ruler, on paper
			for _, text := range r.texts {
				if n, err := strconv.Atoi(text.s); err == nil {
					places[n] = k.scale * text.at.x
				}
			}
			if len(places) != asked.Reach()+1 {
				t.Fatalf("%s has the numbers %v", asked, places)
			}
			ticks := map[float64]bool{}
			for _, line := range r.lines {
				if line.from.x == line.to.x {
					ticks[math.Round(k.scale*line.from.x*1000)] = true
				}
			}
			for n, x := range places {
				if math.Abs(x-places[0]-unit*float64(n)) > 1e-6 || !ticks[math.Round(x*1000)] {
					t.Errorf("%s: %d stands %.2f mm from 0, its mark there: %v", asked, n, x-places[0], ticks[math.Round(x*1000)])
				}
			}
			lengths := []int{}
			for i, ends := range endsOf.FindAllStringSubmatch(asked.String(), -1) {
				from, _ := strconv.Atoi(ends[1])
				to, _ := strconv.Atoi(ends[2])
				lengths = append(lengths, to-from)
				bar := r.polygons[i]
				if math.Abs(k.scale*bar[0].x-places[from]) > 1e-6 || math.Abs(k.scale*bar[2].x-places[to]) > 1e-6 {
					t.Errorf("%s: a bar lies from %.2f to %.2f mm", asked, k.scale*bar[0].x, k.scale*bar[2].x)
				}
			}
			longest := 0.0
			for _, line := range r.lines[len(r.lines)-3:] {
				longest = max(longest, k.scale*distance(line.from, line.to))
			}
			if math.Abs(longest-check) > 1e-6 {
				t.Errorf("%s: the line to check by is %.2f mm long", asked, longest)
			}
			want := lengths[0]
			if len(lengths) == 2 {
				want = max(lengths[0]-lengths[1], lengths[1]-lengths[0])
			}
			if asked.Key() != fmt.Sprint(want) {
				t.Errorf("%s has the key %s, worked out anew it is %d", asked, asked.Key(), want)
			}
		}
	}
}
