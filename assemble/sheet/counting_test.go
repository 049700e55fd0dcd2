package sheet

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"evenhand/standards/task"
)

// Read from the drawing: which shape lies above, below or beside, and which was laid on top of the other.
func TestShapesLieWhereTheyAreSaidTo(t *testing.T) {
	for _, asked := range made(t, "where-shapes-are", 200) {
		w := asked.(task.Where)
		r := record(t, testKit(t, false), asked, task.LookWhere)
		middle := func(outline []point) (m point) {
			for _, p := range outline {
				m.x += p.x / float64(len(outline))
				m.y += p.y / float64(len(outline))
			}
			return m
		}
		sides := len(task.Figure{Form: w.Shape}.Strokes()[0].Points)
		at := 0
		if len(r.polygons[1]) == sides && (len(r.polygons[0]) != sides || w.Place != "behind") {
			at = 1
		}
		shape, other := middle(r.polygons[at]), middle(r.polygons[1-at])
		near := distance(shape, other) < 2*whereRadius-2 // one covers a part of the other
		place := "beside"
		switch {
		case near && at == 1:
			place = "in front of"
		case near:
			place = "behind"
		case shape.y < other.y-whereRadius:
			place = "above"
		case shape.y > other.y+whereRadius:
			place = "below"
		}
		if place != asked.Key() {
			t.Errorf("%s: drawn %s", asked, place)
		}
	}
}

func TestDotsInACircleAreTheNumber(t *testing.T) {
	for n := 3; n <= 20; n++ {
		asked := fmt.Sprintf("count %d in a circle", n)
		r := recordText(t, false, asked, task.LookDots)
		if len(r.circles) != n {
			t.Errorf("%s: %d dots", asked, len(r.circles))
		}
		checkApart(t, asked, r)
	}
}

func TestGroupsForCountingOutAndPairing(t *testing.T) {
	for _, asked := range made(t, "count-out", 100) {
		sheet, key := record(t, testKit(t, false), asked, task.LookCountOut), record(t, testKit(t, true), asked, task.LookCountOut)
		if colored := len(key.polygons); len(sheet.circles) != asked.(task.CountOut).Of || len(sheet.polygons) != 0 || fmt.Sprint(colored) != asked.Key() {
			t.Errorf("%s: %d dots, %d colored on the key", asked, len(sheet.circles), colored)
		}
	}
	for _, asked := range made(t, "odd-or-even-groups", 100) {
		r := record(t, testKit(t, false), asked, task.LookParityDots)
		if odd := len(r.circles)%2 == 1; odd != (asked.Key() == "odd") {
			t.Errorf("%s: %d dots, the key says %s", asked, len(r.circles), asked.Key())
		}
	}
}

// The sum on the key, read anew: equal addends that make the dots, a row each where there are rows.
func TestEqualAddendsAreTrue(t *testing.T) {
	for _, asked := range append(made(t, "equal-addends", 100), made(t, "array-sums", 100)...) {
		r := record(t, testKit(t, true), asked, task.LookEqualAddends)
		e := asked.(task.EqualAddends)
		rows := map[float64]int{}
		for _, c := range r.circles {
			rows[math.Round(c.middle.y)]++
		}
		addends, sum := strings.Split(strings.Split(asked.Key(), " = ")[0], " + "), 0
		for _, a := range addends {
			n := 0
			fmt.Sscan(a, &n)
			sum += n
			if a != addends[0] {
				t.Errorf("%s: %s are not equal", asked, asked.Key())
			}
		}
		if sum != len(r.circles) || e.Number == 0 && len(addends) != len(rows) || e.Number > 0 && len(addends) != 2 {
			t.Errorf("%s: %d dots in %d rows, the key says %s", asked, len(r.circles), len(rows), asked.Key())
		}
	}
}

// What bills and coins are labelled with adds up to the key, "$6 and 45¢".
func TestBillsAreWorthTheKey(t *testing.T) {
	for _, asked := range made(t, "bills-and-coins", 200) {
		dollars, cents := 0, 0
		for _, text := range record(t, testKit(t, false), asked, task.LookBills).words() {
			n := 0
			if _, err := fmt.Sscanf(text, "$%d", &n); err == nil {
				dollars += n
			} else if _, err := fmt.Sscanf(text, "%d¢", &n); err == nil {
				cents += n
			}
		}
		if got := fmt.Sprintf("$%d and %d¢", dollars, cents); got != asked.Key() {
			t.Errorf("%s: drawn are %s, the key is %s", asked, got, asked.Key())
		}
	}
}

// The jump of the key begins and ends where the sum does.
func TestJumpsShowTheirSum(t *testing.T) {
	for _, asked := range made(t, "jump-number-line", 100) {
		var a, b, to, step int
		var sign string
		fmt.Sscanf(asked.String(), "show %d %s %d on line 0 to %d by %d", &a, &sign, &b, &to, &step)
		end := a + b
		if sign == "-" {
			end = a - b
		}
		r := record(t, testKit(t, true), asked, task.LookLineMark)
		whole, jump := r.lines[0], r.lines[len(r.lines)-2:]
		at := func(p point) float64 { return (p.x - whole.from.x) / (whole.to.x - whole.from.x) * float64(to) }
		if math.Abs(at(jump[0].from)-float64(a)) > 1e-6 || math.Abs(at(jump[1].to)-float64(end)) > 1e-6 || asked.Key() != fmt.Sprint(end) {
			t.Errorf("%s: a jump from %.2f to %.2f, the key is %s", asked, at(jump[0].from), at(jump[1].to), asked.Key())
		}
	}
}

// The arrow stands on the key alone, as far along the line as the number is of its end.
func TestNumbersAreMarkedWhereTheyAre(t *testing.T) {
	for _, asked := range made(t, "mark-number-line", 100) {
		line := asked.(task.LineMark).Line
		sheet, key := record(t, testKit(t, false), asked, task.LookLineMark), record(t, testKit(t, true), asked, task.LookLineMark)
		whole, tip := key.lines[0], key.lines[len(sheet.lines)].to
		share := (tip.x - whole.from.x) / (whole.to.x - whole.from.x)
		if math.Abs(share*float64(line.To)-float64(line.Number)) > 1e-6 || len(key.lines) != len(sheet.lines)+3 {
			t.Errorf("%s: the arrow stands at %.2f", asked, share*float64(line.To))
		}
	}
}
