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

// checkApart fails when two dots are closer than a finger can tell.
func checkApart(t *testing.T, asked string, r *recorder) {
	t.Helper()
	for i, a := range r.circles {
		for _, b := range r.circles[:i] {
			if distance(a.middle, b.middle) < 2*ringRadius+.9 {
				t.Errorf("%s: two dots are %.1f mm apart", asked, distance(a.middle, b.middle))
			}
		}
	}
}

func TestDotsToCountAreTheNumber(t *testing.T) {
	for n := 1; n <= 20; n++ {
		tasks := []string{fmt.Sprintf("count %d", n)}
		if n <= 10 {
			tasks = append(tasks, tasks[0]+" scattered")
		}
		for _, asked := range tasks {
			r := recordText(t, false, asked, task.LookDots)
			if len(r.circles) != n {
				t.Errorf("%s: %d dots", asked, len(r.circles))
			}
			checkApart(t, asked, r)
		}
	}
}

func TestGroupsAreTheNumbers(t *testing.T) {
	for left := 1; left <= 10; left++ {
		for right := 1; right <= 10; right++ {
			asked := fmt.Sprintf("more: %d or %d dots", left, right)
			r := recordText(t, false, asked, task.LookGroups)
			gotLeft, gotRight := 0, 0
			for _, c := range r.circles {
				if c.middle.x < r.high.x/2 {
					gotLeft++
				} else {
					gotRight++
				}
			}
			if gotLeft != left || gotRight != right {
				t.Errorf("%s: %d dots on the left and %d on the right", asked, gotLeft, gotRight)
			}
			checkApart(t, asked, r)
		}
	}
}

// marked is the place of the box with a mark in it.
func marked(t *testing.T, r *recorder) point {
	t.Helper()
	for _, box := range r.rects {
		if box.fill == pale {
			inside := func(p point) bool {
				return p.x > box.at.x && p.x < box.at.x+box.w && p.y > box.at.y && p.y < box.at.y+box.h
			}
			if len(r.lines) != 2 || !inside(r.lines[0].from) || !inside(r.lines[1].to) {
				t.Fatal("the mark does not stand in its box")
			}
			return point{box.at.x + box.w/2, box.at.y + box.h/2}
		}
	}
	t.Fatal("no box is marked")
	return point{}
}

func TestTheRightGroupIsMarked(t *testing.T) {
	for asked, want := range map[string]float64{"more: 8 or 5 dots": 0, "more: 5 or 8 dots": 2, "fewer: 5 or 8 dots": 0, "more: 6 or 6 dots": 1} {
		r := recordText(t, true, asked, task.LookGroups)
		if got := math.Floor(3 * marked(t, r).x / r.high.x); got != want {
			t.Errorf("%s: box %v is marked, want box %v", asked, got, want)
		}
	}
}

func TestArraysHaveEqualRows(t *testing.T) {
	for rows := 1; rows <= 5; rows++ {
		for columns := 1; columns <= 5; columns++ {
			asked := fmt.Sprintf("array %d by %d", rows, columns)
			r := recordText(t, false, asked, task.LookArray)
			inRow, inColumn := map[float64]int{}, map[float64]int{}
			for _, c := range r.circles {
				inRow[math.Round(c.middle.y)]++
				inColumn[math.Round(c.middle.x)]++
			}
			if len(r.circles) != rows*columns || len(inRow) != rows || len(inColumn) != columns {
				t.Errorf("%s: %d dots in %d rows and %d columns", asked, len(r.circles), len(inRow), len(inColumn))
			}
		}
	}
}

func TestCoinsAreWorthTheKey(t *testing.T) {
	for _, text := range []string{"coins 25, 10, 10, 5, 1", "coins 50, 10, 10, 10, 5, 5, 1, 1, 1, 1", "coins 50, 50"} {
		asked := task.MustParse(text)
		r := record(t, testKit(t, false), asked, task.LookCoins)
		sum := 0
		for i, c := range r.circles {
			label, ok := strings.CutSuffix(r.texts[i].s, "¢")
			worth, err := strconv.Atoi(label)
			if !ok || err != nil || math.Abs(r.texts[i].at.x-c.middle.x) > 1e-6 || 2*c.radius != coinDiameters[worth] {
				t.Errorf("%s: coin %d is labelled %q", text, i+1, r.texts[i].s)
			}
			sum += worth
		}
		if strconv.Itoa(sum) != asked.Key() {
			t.Errorf("%s: the coins are worth %d, want %s", text, sum, asked.Key())
		}
	}
	// The order of the real coins by size: dime, cent, nickel, quarter, half dollar.
	if order := []float64{coinDiameters[10], coinDiameters[1], coinDiameters[5], coinDiameters[25], coinDiameters[50]}; !slices.IsSorted(order) {
		t.Errorf("the coins by size are %v", order)
	}
}

func TestTheRightWordIsMarked(t *testing.T) {
	for asked, want := range map[string]string{
		"true or false: 7 = 8 - 1": "true", "true or false: 7 = 8 - 2": "false",
		"odd or even: 14": "even", "odd or even: 15": "odd",
	} {
		r := recordText(t, true, asked, task.LookTick)
		box := marked(t, r)
		nearest := slices.MinFunc(r.texts[1:], func(a, b drawnText) int {
			return int(math.Copysign(1, math.Abs(a.at.x-box.x)-math.Abs(b.at.x-box.x)))
		})
		if nearest.s != want || nearest.at.x < box.x {
			t.Errorf("%s: the mark stands at %q, want %q", asked, nearest.s, want)
		}
	}
}
