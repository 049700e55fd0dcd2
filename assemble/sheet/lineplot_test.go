package sheet

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"evenhand/standards/task"
)

var lengthAndCount = regexp.MustCompile(`([0-9]+): ([0-9]+)`)

// plotAnswer works a question about lengths out anew: from each single length.
func plotAnswer(question string, lengths []int, scale []int) string {
	words := strings.Fields(question)
	asked, _ := strconv.Atoi(words[len(words)-1])
	counts, longer, low, high := map[int]int{}, 0, lengths[0], lengths[0]
	for _, n := range lengths {
		counts[n]++
		low, high = min(low, n), max(high, n)
		if n > asked {
			longer++
		}
	}
	switch {
	case strings.HasPrefix(question, "how many longer than"):
		return fmt.Sprint(longer)
	case question == "how many in all":
		return fmt.Sprint(len(lengths))
	case question == "how much longer":
		return fmt.Sprint(high - low)
	case question == "which length is most often":
		best := low
		for n, count := range counts {
			if count > counts[best] {
				best = n
			}
		}
		return fmt.Sprint(best)
	case question == "draw":
		var list []string
		for _, n := range scale {
			list = append(list, fmt.Sprint(counts[n]))
		}
		return strings.Join(list, ", ")
	}
	return fmt.Sprint(counts[asked])
}

// Each thing has one x over its length, and the answer that follows from the marks in the drawing is the key; the
// list beside a plot to be drawn holds the same lengths.
func TestLinePlotsShowTheLengths(t *testing.T) {
	for _, made := range madeOf(t, 90, "line-plots") {
		asked := made.(task.LinePlot)
		for _, k := range append(kitsOfAll(t, false), kitsOfAll(t, true)...) {
			checkBounds(t, k, asked)
		}
		r := record(t, testKit(t, asked.Ask == task.PlotDraw), asked, task.LookLinePlot)
		places, scale, want := map[int]float64{}, []int{}, map[int]int{}
		for _, m := range lengthAndCount.FindAllStringSubmatch(asked.String(), -1) {
			n, _ := strconv.Atoi(m[1])
			scale = append(scale, n)
			if want[n], _ = strconv.Atoi(m[2]); want[n] == 0 {
				delete(want, n)
			}
			for _, text := range r.texts {
				if text.s == m[1] {
					places[n] = text.at.x
				}
			}
		}
		var lengths []int
		got := map[int]int{}
		for _, line := range r.lines {
			if line.from.x == line.to.x || line.from.y >= line.to.y { // one of the two strokes of an x
				continue
			}
			for n, x := range places {
				if math.Abs((line.from.x+line.to.x)/2-x) < .01 {
					lengths, got[n] = append(lengths, n), got[n]+1
				}
			}
		}
		if fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("%s shows %v", asked, got)
			continue
		}
		_, question, _ := strings.Cut(strings.TrimPrefix(asked.String(), "line plot "), string(asked.Ask))
		if answer := plotAnswer(strings.TrimSpace(string(asked.Ask)+question), lengths, scale); answer != asked.Key() {
			t.Errorf("%s has the key %s, worked out anew it is %s", asked, asked.Key(), answer)
		}
		list := map[int]int{}
		for _, n := range asked.Lengths() {
			list[n]++
		}
		if fmt.Sprint(list) != fmt.Sprint(want) {
			t.Errorf("%s lists %v", asked, asked.Lengths())
		}
	}
}
