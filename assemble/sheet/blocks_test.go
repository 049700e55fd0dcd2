package sheet

import (
	"fmt"
	"math"
	"testing"

	"evenhand/standards/task"
)

// blocksOf counts the squares of a hundred, the sticks and the dots.
func blocksOf(r *recorder) (hundreds, tens, ones int) {
	for _, rect := range r.rects {
		switch {
		case math.Abs(rect.h-stick) > 1e-6: // a box to write in
		case math.Abs(rect.w-10*unit) < 1e-6:
			hundreds++
		case math.Abs(rect.w-unit) < 1e-6:
			tens++
		}
	}
	return hundreds, tens, len(r.circles)
}

func TestSticksAndDotsAreTheNumber(t *testing.T) {
	for n := 10; n <= 999; n++ {
		asked := fmt.Sprintf("%d = ? tens ? ones", n)
		if n >= 100 {
			asked = fmt.Sprintf("%d = ? hundreds ? tens ? ones", n)
		}
		r := recordText(t, false, asked, task.LookTensAndOnes)
		hundreds, tens, ones := blocksOf(r)
		if tens > 9 || ones > 9 || 100*hundreds+10*tens+ones != n {
			t.Errorf("%d is drawn as %d hundreds, %d tens and %d ones", n, hundreds, tens, ones)
		}
	}
}

// A stick has nine lines across, which makes ten parts; a square of a hundred nine each way.
func TestSticksHaveTenParts(t *testing.T) {
	for asked, want := range map[string]int{"30 = ? tens ? ones": 27, "200 = ? hundreds ? tens ? ones": 36} {
		if got := len(recordText(t, false, asked, task.LookTensAndOnes).lines); got != want {
			t.Errorf("%s: %d lines across the blocks, want %d", asked, got, want)
		}
	}
}

func TestDotsDoNotTouch(t *testing.T) {
	r := recordText(t, false, "19 = ? tens ? ones", task.LookTensAndOnes)
	for i, a := range r.circles {
		for _, b := range r.circles[:i] {
			if distance(a.middle, b.middle) < 2*dotRadius+1 {
				t.Errorf("two dots are %.1f mm apart", distance(a.middle, b.middle))
			}
		}
	}
}

// texts in columns of the frame, from the left, with their headings.
func TestFrameHasEachDigitUnderItsPlace(t *testing.T) {
	for _, asked := range []string{"142 = ? hundreds ? tens ? ones", "1 hundreds 4 tens 2 ones = ?", "305 = ? hundreds ? tens ? ones"} {
		p := task.MustParse(asked).(task.PlaceValue)
		r := record(t, testKit(t, true), p, task.LookFrame)
		digits := fmt.Sprintf("%03d", p.Number)
		for i, name := range []string{"hundreds", "tens", "ones"} {
			if got := under(r, name); got != digits[i:i+1] {
				t.Errorf("%s: %q stands under %s, want %s", asked, got, name, digits[i:i+1])
			}
		}
	}
}

// under is the text below a heading.
func under(r *recorder, heading string) string {
	for _, head := range r.texts {
		for _, text := range r.texts {
			if head.s == heading && text.at.y > head.at.y && math.Abs(text.at.x-head.at.x) < 1e-6 {
				return text.s
			}
		}
	}
	return ""
}
