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

// On the key a sentence, read from left to right, is the task with its answers.
func TestSentencesReadAsTheTask(t *testing.T) {
	for asked, want := range map[string]string{
		"47 + 36 = ?":                    "47 + 36 = 83",
		"47 + ? = 83":                    "47 + 36 = 83",
		"83 = ? + 36":                    "83 = 47 + 36",
		"83 - 47 = ?":                    "83 − 47 = 36",
		"9 + 4 + 6 = ?":                  "9 + 4 + 6 = 19",
		"12 + 5 - 3 = ?":                 "12 + 5 − 3 = 14",
		"100 + 40 + 2 = ?":               "100 + 40 + 2 = 142",
		"142 = ? hundreds ? tens ? ones": "142 = 1 hundreds 4 tens 2 ones",
		"1 hundreds 4 tens 2 ones = ?":   "1 hundred 4 tens 2 ones = 142",
	} {
		if got := strings.Join(recordText(t, true, asked, task.LookSentence).words(), " "); got != want {
			t.Errorf("%s: the key reads %q, want %q", asked, got, want)
		}
	}
	if got := strings.Join(recordText(t, true, "405 = ? + ?", task.LookExpanded).words(), " "); got != "405 = 400 + 5" {
		t.Errorf("expanded form reads %q", got)
	}
}

// The whole of a number bond stands on top and is the sum of its parts.
func TestBondsAreTrue(t *testing.T) {
	for _, asked := range []string{"47 + 36 = ?", "47 + ? = 83", "? + 36 = 83", "83 - 47 = ?", "83 - ? = 36", "? - 47 = 36", "57 = ? + ?"} {
		r := recordText(t, true, asked, task.LookBond)
		top := slices.MinFunc(r.texts, func(a, b drawnText) int { return int(math.Copysign(1, a.at.y-b.at.y)) })
		sum := 0
		for _, text := range r.texts {
			n, _ := strconv.Atoi(text.s)
			sum += n
		}
		if whole, _ := strconv.Atoi(top.s); sum != 2*whole || len(r.texts) != 3 || len(r.lines) != 2 {
			t.Errorf("%s: the bond has %v, %s on top", asked, r.words(), top.s)
		}
		blanks := strings.Count(asked, "?")
		if got := len(recordText(t, false, asked, task.LookBond).texts); got != 3-blanks {
			t.Errorf("%s: %d numbers on the sheet, want %d", asked, got, 3-blanks)
		}
	}
}

func TestCompareHasARingBetween(t *testing.T) {
	for asked, want := range map[string]string{"47 ? 74": "47 < 74", "74 ? 47": "74 > 47", "47 ? 47": "47 = 47"} {
		r := recordText(t, true, asked, task.LookCompare)
		slices.SortFunc(r.texts, func(a, b drawnText) int { return int(math.Copysign(1, a.at.x-b.at.x)) })
		if got := strings.Join(r.words(), " "); got != want {
			t.Errorf("%s: the key reads %q, want %q", asked, got, want)
		}
		if distance(r.circles[0].middle, point{r.texts[1].at.x, r.circles[0].middle.y}) > 1e-6 {
			t.Errorf("%s: the sign does not stand in the ring", asked)
		}
	}
}

func TestSequencesCountOn(t *testing.T) {
	for asked, want := range map[string]string{
		"98, 99, ?, 101":        "98 99 100 101",
		"5, 10, ?, 20, 25, ?":   "5 10 15 20 25 30",
		"340, 330, ?, ?, 300":   "340 330 320 310 300",
		"1,2,?,4,5,6,7,8,9,?,?": "1 2 3 4 5 6 7 8 9 10 11",
	} {
		if got := strings.Join(recordText(t, true, asked, task.LookSequence).words(), " "); got != want {
			t.Errorf("%s: the key reads %q, want %q", asked, got, want)
		}
		if sheet := recordText(t, false, asked, task.LookSequence); len(sheet.texts) != len(sheet.rects)-strings.Count(asked, "?") {
			t.Errorf("%s: %d numbers in %d boxes on the sheet", asked, len(sheet.texts), len(sheet.rects))
		}
	}
}

func TestWordsAskThePrompt(t *testing.T) {
	r := recordText(t, true, "10 more than 47 = ?", task.LookWords)
	if got := strings.Join(r.words(), " "); got != "What number is 10 more than 47? 57" {
		t.Errorf("the key reads %q", got)
	}
}

// Worked by hand.
func TestLooksOfSeveralLines(t *testing.T) {
	for _, c := range []struct {
		task string
		look task.Look
		want string
	}{
		{"pairs of 7", task.LookPairs, "7 = 1 + 6 7 = 2 + 5"},
		{"8 + ? = 11, 11 - 8 = ?", task.LookTwin, "8 + 3 = 11 11 − 8 = 3"},
		{"8 + 3 = 3 + ?", task.LookSentence, "8 + 3 = 3 + 8"},
		{"write 342 in words", task.LookWords, "Write in words: 342 three hundred forty-two"},
		{"8 + 5 = ?", task.LookMakeTen, "8 + 5 2 3 10 + 3 = 13"},
		{"4 + 9 = ?", task.LookMakeTen, "4 1 3 + 9 10 + 3 = 13"},
		{"47 + 5 = ?", task.LookMakeTen, "47 + 5 3 2 50 + 2 = 52"},
		{"47 + 36 = ?", task.LookBreakApart, "47 40 7 + 36 30 6 70 + 13 = 83"},
		{"63 + 45 = ?", task.LookBreakApart, "63 60 3 + 45 40 5 100 + 8 = 108"},
	} {
		if got := strings.Join(recordText(t, true, c.task, c.look).words(), " "); got != c.want {
			t.Errorf("%s: the key reads %q, want %q", c.task, got, c.want)
		}
	}
}

func TestStoriesHaveTheirAnswerAndUnit(t *testing.T) {
	for _, situation := range task.Situations() {
		asked := situation.Example().(task.Story)
		got := strings.Join(record(t, testKit(t, true), asked, task.LookStory).words(), " ")
		answer := strings.ReplaceAll(asked.Key(), " + ", " and ")
		if want := asked.Prompt("en") + " " + answer + " " + asked.Unit("en"); got != want {
			t.Errorf("%s: the key reads %q, want %q", situation, got, want)
		}
	}
}

// A key differs from its sheet only by what is filled in: every line and letter of
// the sheet stands at the same place on the key.
func TestKeyIsTheSheetFilledIn(t *testing.T) {
	eachExample(t, func(asked task.Task, l task.Look) {
		sheet, key := record(t, testKit(t, false), asked, l), record(t, testKit(t, true), asked, l)
		for _, text := range sheet.texts {
			if !slices.Contains(key.texts, text) {
				t.Errorf("%s as %s: %q is not at its place on the key", asked, l, text.s)
			}
		}
		for _, line := range sheet.lines {
			if !slices.Contains(key.lines, line) {
				t.Errorf("%s as %s: a line is not at its place on the key", asked, l)
			}
		}
		if len(sheet.rects) > len(key.rects) || len(sheet.circles) != len(key.circles) {
			t.Errorf("%s as %s: the key has other boxes", asked, l)
		}
		if len(key.texts)+len(key.lines)+len(key.polygons) == len(sheet.texts)+len(sheet.lines)+len(sheet.polygons) {
			t.Errorf("%s as %s: the key has no answer", asked, l)
		}
	})
}

// Nothing is drawn outside the size a drawing claims, in any type, so that nothing
// overlaps its neighbour or leaves the page.
func TestDrawingsStayInTheirBounds(t *testing.T) {
	for _, o := range []Options{{}, {Font: BuiltInFont}, {Large: true, Font: BuiltInFont, Lang: "es", PaperSize: "a4"}, {Large: true, Key: true}} {
		s, err := o.settle()
		if err != nil {
			t.Fatal(err)
		}
		k := s.kit
		k.width -= s.label()
		eachExample(t, func(asked task.Task, l task.Look) {
			d, err := k.draw(Question{Number: 1, Task: asked, Look: l})
			if err != nil {
				t.Fatal(err)
			}
			r := record(t, k, asked, l)
			if r.low.x < -.01 || r.low.y < -.01 || r.high.x > d.w+.01 || r.high.y > d.h+.01 {
				t.Errorf("%s as %s: ink from %.1f to %.1f in a drawing of %.1f by %.1f", asked, l, r.low, r.high, d.w, d.h)
			}
			if d.w > k.width {
				t.Errorf("%s as %s is %.0f mm wide, the page has %.0f", asked, l, d.w, k.width)
			}
		})
	}
}

// Room for the hand (common practice, no source): at least 12 by 14 mm in a box, 12 mm over
// a line.
func TestThereIsRoomToWrite(t *testing.T) {
	eachExample(t, func(asked task.Task, l task.Look) {
		r := record(t, testKit(t, false), asked, l)
		for _, box := range r.rects {
			if box.line == plain && box.fill == white && (box.w < 12 || box.h < 14) {
				t.Errorf("%s as %s: a box of %.0f by %.0f mm", asked, l, box.w, box.h)
			}
		}
		for _, ring := range r.circles {
			if ring.line == plain && ring.fill == white && ring.radius < 7 {
				t.Errorf("%s as %s: a ring of %.0f mm", asked, l, 2*ring.radius)
			}
		}
	})
	if lineHeight < 12 {
		t.Errorf("%.0f mm over a line", lineHeight)
	}
}

func TestALookThatDoesNotFitIsNamed(t *testing.T) {
	for _, l := range task.AllLooks() {
		asked := task.MustParse("47 ? 74")
		if _, drawn := looks[l]; !drawn {
			t.Errorf("no drawing for the look %s", l)
			continue
		}
		if slices.Contains(asked.Looks(), l) || l == task.LookSentence || l == task.LookExpanded || l == task.LookWords {
			continue // a sentence or words can show any task
		}
		_, err := testKit(t, false).draw(Question{Number: 3, Task: asked, Look: l})
		want := fmt.Sprintf(`item 3: "47 ? 74" can't be shown as %s; it can be shown as compare`, l)
		if err == nil || err.Error() != want {
			t.Errorf("%s: %v, want %s", l, err, want)
		}
	}
}
