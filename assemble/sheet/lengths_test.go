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

	"evenhand/standards/task"
)

// widthOf is how wide a drawn outline is, and heightOf how high.
func widthOf(corners []point) float64  { return corners[1].x - corners[0].x }
func heightOf(corners []point) float64 { return corners[2].y - corners[1].y }

// Blocks end to end are equal, touch, and are together as long as the bar; short blocks share a long one.
func TestBlocksLieEndToEnd(t *testing.T) {
	for _, made := range madeOf(t, 20, "measure-with-blocks", "two-units") {
		asked := made.(task.Blocks)
		for _, k := range kitsOfAll(t, false) {
			checkBounds(t, k, asked)
		}
		r := record(t, testKit(t, false), asked, asked.Looks()[0])
		bar, blocks := r.polygons[0], r.polygons[1:asked.Count+1]
		for i, block := range blocks {
			if math.Abs(widthOf(block)-widthOf(bar)/float64(asked.Count)) > 1e-9 || math.Abs(block[0].x-bar[0].x-float64(i)*widthOf(block)) > 1e-9 {
				t.Errorf("%s: block %d lies from %.2f to %.2f", asked, i+1, block[0].x, block[1].x)
			}
		}
		short := r.polygons[asked.Count+1:]
		if len(short) != asked.Parts {
			t.Fatalf("%s: %d short blocks", asked, len(short))
		}
		want := asked.Count
		if len(short) > 0 {
			want = int(math.Round(widthOf(bar) / widthOf(short[0])))
		}
		if asked.Key() != fmt.Sprint(want) {
			t.Errorf("%s has the key %s, the drawing has room for %d", asked, asked.Key(), want)
		}
	}
}

// Of three pictures one has blocks that touch and don't overlap, and it is the key; all bars are alike, and the
// blocks are of one size and end with the bar, so that only gaps and overlaps tell.
func TestBlocksOfThreeWays(t *testing.T) {
	for _, made := range madeOf(t, 60, "measured-right") {
		asked := made.(task.Blocks)
		for _, k := range kitsOfAll(t, false) {
			checkBounds(t, k, asked)
		}
		r := record(t, testKit(t, false), asked, asked.Looks()[0])
		var right []string
		list := r.polygons
		for _, letter := range []string{"A", "B", "C"} {
			bar := list[0]
			end := 1
			for end < len(list) && widthOf(list[end]) < widthOf(bar)-1 {
				end++
			}
			blocks := slices.SortedFunc(slices.Values(list[1:end]), func(a, b []point) int { return cmp.Compare(a[0].x, b[0].x) })
			list = list[end:]
			even := true
			for i, block := range blocks {
				if math.Abs(widthOf(block)-widthOf(bar)/float64(asked.Count)) > 1e-9 {
					t.Errorf("%s: a block of %.2f mm in picture %s", asked, widthOf(block), letter)
				}
				if i > 0 {
					apart := block[0].x - blocks[i-1][1].x
					even = even && math.Abs(apart) < 1e-9
					if math.Abs(apart) > 1e-9 && math.Abs(apart) < 1 {
						t.Errorf("%s: in picture %s two blocks are %.2f mm apart, which nobody sees", asked, letter, apart)
					}
				}
			}
			if last := blocks[len(blocks)-1]; math.Abs(blocks[0][0].x-bar[0].x) > 1e-9 || math.Abs(last[1].x-bar[1].x) > 1e-9 {
				t.Errorf("%s: the blocks of picture %s don't end with the bar", asked, letter)
			}
			if even {
				right = append(right, letter)
			}
		}
		if strings.Join(right, "") != asked.Key() {
			t.Errorf("%s has the key %s; right are %v", asked, asked.Key(), right)
		}
	}
}

var lengthsIn = regexp.MustCompile(`[0-9]+`)

// Bars are as long as they are said to be, from one line; the key is what measuring them anew gives.
func TestBarsAreAsLongAsSaid(t *testing.T) {
	for _, made := range madeOf(t, 40, "compare-lengths", "order-lengths", "compare-by-third") {
		asked := made.(task.Lengths)
		for _, k := range kitsOfAll(t, false) {
			checkBounds(t, k, asked)
		}
		r := record(t, testKit(t, false), asked, asked.Looks()[0])
		var said, drawn []float64
		for _, text := range lengthsIn.FindAllString(asked.String(), -1) {
			n, _ := strconv.ParseFloat(text, 64)
			said = append(said, n)
		}
		bars := r.polygons
		pairs := len(bars) == 4 // A and B, then B and C
		if pairs {
			if math.Abs(widthOf(bars[1])-widthOf(bars[2])) > 1e-9 || bars[0][0].x != bars[1][0].x || bars[2][0].x != bars[3][0].x || bars[0][0].x == bars[3][0].x {
				t.Errorf("%s: B is %.2f and %.2f mm long", asked, widthOf(bars[1]), widthOf(bars[2]))
			}
			bars = [][]point{bars[0], bars[1], bars[3]}
		}
		for i, bar := range bars {
			long := widthOf(bar)
			if asked.Ask == task.WhichTaller {
				long = heightOf(bar)
			}
			drawn = append(drawn, long)
			if math.Abs(long/drawn[0]-said[i]/said[0]) > 1e-9 {
				t.Errorf("%s: bar %d is %.2f mm long, the first %.2f", asked, i+1, long, drawn[0])
			}
			if asked.Ask == task.WhichTaller && bar[2].y != bars[0][2].y || asked.Ask != task.WhichTaller && !pairs && bar[0].x != bars[0][0].x {
				t.Errorf("%s: the bars don't begin at one line", asked)
			}
		}
		places := make([]string, len(drawn))
		for i := range drawn {
			places[i] = fmt.Sprint(slices.Index(slices.Sorted(slices.Values(drawn)), drawn[i]) + 1)
		}
		want := strings.Join(places, ", ")
		if asked.Ask != task.LengthOrder {
			best := slices.Max(drawn)
			if strings.Contains(string(asked.Ask), "shorter") {
				best = slices.Min(drawn)
			}
			at := slices.Index(drawn, best)
			want = "ABC"[at : at+1]
		}
		if asked.Key() != want {
			t.Errorf("%s has the key %s, measured anew it is %s", asked, asked.Key(), want)
		}
	}
}

// Only one of the lengths offered is near the thing's: the others are more than five times as long or as short (1 inch
// 2.54 cm, 1 foot 30.48 cm: international yard and pound agreement, 1959).
func TestEstimatesDifferWidely(t *testing.T) {
	inCentimeters := map[string]float64{"inches": 2.54, "feet": 30.48, "centimeters": 1, "meters": 100}
	for _, made := range madeOf(t, 40, "estimate-lengths", "measuring-tools") {
		asked := made.(task.Estimate)
		for _, k := range kitsOfAll(t, false) {
			checkBounds(t, k, asked)
		}
		if asked.Tool {
			continue
		}
		right, wrong := 0.0, []float64{}
		for _, offer := range asked.Offers() {
			number, unit, _ := strings.Cut(offer, " ")
			n, err := strconv.ParseFloat(number, 64)
			if err != nil || inCentimeters[unit] == 0 {
				t.Fatalf("%s offers %q", asked, offer)
			}
			if wrong = append(wrong, n*inCentimeters[unit]); offer == asked.Key() {
				right, wrong = n*inCentimeters[unit], wrong[:len(wrong)-1]
			}
		}
		for _, other := range wrong {
			if len(wrong) != 2 || max(right/other, other/right) < 5 {
				t.Errorf("%s offers %v: %.0f beside %.0f cm", asked, asked.Offers(), other, right)
			}
		}
	}
}
