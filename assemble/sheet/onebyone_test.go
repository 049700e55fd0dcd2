package sheet

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"evenhand/standards/task"
)

// Read from the drawing: how many dots there are to number, before and after they are moved, and with one more; the key
// numbers each dot once.
func TestDotsOneByOne(t *testing.T) {
	for _, asked := range made(t, "count-one-by-one", 100) {
		var n, dots int
		text := asked.String()
		sheet, key := record(t, testKit(t, false), asked, task.LookOneByOne), record(t, testKit(t, true), asked, task.LookOneByOne)
		switch {
		case strings.HasPrefix(text, "number "):
			fmt.Sscanf(text, "number %d dots", &n)
			dots = n
			var want []string
			for i := range n {
				want = append(want, fmt.Sprint(i+1))
			}
			if got := strings.Join(key.words(), " "); got != strings.Join(append(want, fmt.Sprint(n)), " ") {
				t.Errorf("%s: the key reads %s", asked, got)
			}
		case strings.HasSuffix(text, "moved"):
			fmt.Sscanf(text, "%d dots", &n)
			dots = 2 * n
		default:
			fmt.Sscanf(text, "%d dots", &n)
			n++
			dots = n
		}
		if len(sheet.circles) != dots || asked.Key() != fmt.Sprint(n) {
			t.Errorf("%s: %d dots, the key is %s", asked, len(sheet.circles), asked.Key())
		}
		checkApart(t, text, sheet)
	}
}

// Read from the drawing: the sum is the two groups, which lie apart, the difference all the dots and the crossed ones.
func TestPicturesOfSums(t *testing.T) {
	for _, asked := range made(t, "pictures-of-sums", 200) {
		if strings.HasPrefix(asked.String(), "draw") {
			r := record(t, testKit(t, true), asked, task.LookDrawSum)
			if want := strings.TrimPrefix(asked.String(), "draw dots for ") + " = " + asked.Key(); strings.Join(r.words(), " ") != printed(want) {
				t.Errorf("%s: the key reads %s", asked, r.words())
			}
			continue
		}
		r := record(t, testKit(t, false), asked, task.LookPictureSum)
		var places []float64
		for _, c := range r.circles {
			if c.radius == ringRadius { // the other is the sign's
				places = append(places, c.middle.x)
			}
		}
		rings, groups := len(places), 1
		slices.Sort(places)
		for i := 1; i < rings; i++ {
			if places[i]-places[i-1] > 1.5*ringPitch {
				groups++
			}
		}
		crossed := len(r.lines) / 2
		var a, b, c int
		if strings.Contains(asked.String(), "-") {
			fmt.Sscanf(asked.Key(), "%d - %d = %d", &a, &b, &c)
			if a != rings || b != crossed || c != rings-crossed {
				t.Errorf("%s: %d dots, %d crossed, the key says %s", asked, rings, crossed, asked.Key())
			}
			continue
		}
		fmt.Sscanf(asked.Key(), "%d + %d = %d", &a, &b, &c)
		if c != rings || a+b != rings || crossed > 0 || groups != 2 {
			t.Errorf("%s: %d dots in %d groups, %d crossed, the key says %s", asked, rings, groups, crossed, asked.Key())
		}
	}
}

// Read from the key: each number is the next one, and the sum is the last that is said.
func TestCountingOnLeadsToTheSum(t *testing.T) {
	for _, asked := range made(t, "count-to-add", 100) {
		var way, sign string
		var steps, start int
		fmt.Sscanf(asked.String(), "count %s %d from %d", &way, &steps, &start)
		r := record(t, testKit(t, true), asked, task.LookCountOn)
		step := map[string]int{"on": 1, "back": -1}[way]
		sign = map[string]string{"on": "+", "back": minus}[way]
		want := fmt.Sprint(start)
		for i := range steps {
			want += fmt.Sprint(" ", start+step*(i+1))
		}
		want += fmt.Sprintf(" %d %s %d = %d", start, sign, steps, start+step*steps)
		if got := strings.Join(r.words(), " "); got != want {
			t.Errorf("%s: the key reads %s, want %s", asked, got, want)
		}
	}
}
