package standards_test

import (
	"math"
	"testing"

	"evenhand/standards"
	"evenhand/standards/task"
)

func difficulty(text string) standards.Difficulty {
	asked := task.MustParse(text)
	return standards.Predict(standards.SkillOf(asked), asked.Traits())
}

// onScale is the difficulty beside that of tasks of other grades.
func onScale(text string) standards.Difficulty {
	return standards.OnScale(standards.SkillOf(task.MustParse(text)), difficulty(text))
}

func TestDifficultyOrdersPublishedSubtractions(t *testing.T) {
	// de Chiusole & Stefanutti (2013): right answers of 294 pupils, mostly 8-9 years old.
	right := map[string]int{
		"73 - 58": 265, "317 - 94": 244, "784 - 693": 242, "156 - 68": 242, "2245 - 418": 234, "253 - 178": 223,
		"3642 - 753": 225, "507 - 49": 167,
	}
	// Counts that differ by two of 294 are one and the same within their sampling
	// error (about ten), and no trait tells 253 - 178 from 156 - 68.
	const noise = 2
	for easier, more := range right {
		for harder, fewer := range right {
			if more <= fewer+noise || onScale(easier) <= onScale(harder) {
				continue
			}
			t.Errorf("%s (%d right, predicted %v) should not be harder than %s (%d right, predicted %v)", easier, more, onScale(easier), harder, fewer, onScale(harder))
		}
	}
	for item := range right {
		if item != "507 - 49" && onScale(item) >= onScale("507 - 49") {
			t.Errorf("%s is predicted as hard as 507 - 49, the only one that borrows across a zero", item)
		}
	}
}

func TestWeightsOfTheSubtractionStudy(t *testing.T) {
	// de Chiusole & Stefanutti (2013), least squares on Rasch difficulty: .444 a regrouping, 1.489 a zero crossed.
	want := map[string]float64{"regroups": .444, "zero_crossed": 1.489}
	for _, w := range standards.Weights() {
		if w.Source == "" {
			t.Errorf("%s has no source", w.Name)
		}
		if v, ok := want[w.Name]; ok && v != w.Logits {
			t.Errorf("%s weighs %v, want %v", w.Name, w.Logits, v)
		}
	}
}

func TestClockOrder(t *testing.T) {
	// Order only: Boulton-Lewis, Wilss & Mutch (1997).
	order := []string{"read 4:00", "read 4:30", "read 4:15", "read 4:35", "read 4:37"}
	for i := 1; i < len(order); i++ {
		if difficulty(order[i-1]) >= difficulty(order[i]) {
			t.Errorf("%s (%v) should be easier than %s (%v)", order[i-1], difficulty(order[i-1]), order[i], difficulty(order[i]))
		}
	}
}

func TestShareRight(t *testing.T) {
	for percent := 5; percent <= 95; percent += 5 {
		d := standards.DifficultyFor(float64(percent) / 100)
		if got := d.ShareRight(); math.Abs(got-float64(percent)/100) > .001 || d.Percent() != percent {
			t.Errorf("DifficultyFor(%d/100) = %v, which is %v right", percent, d, got)
		}
	}
	// -ln(.75/.25) = -1.0986 by hand.
	if d := standards.DifficultyFor(.75); d != -1099 {
		t.Errorf("75 in 100 is %d thousandths, want -1099", d)
	}
	for d, want := range map[standards.Difficulty]standards.Band{
		-2000: standards.WarmUp, -1735: standards.WarmUp, -1100: standards.Core, -619: standards.Core,
		-618: standards.Stretch, 500: standards.Stretch,
	} {
		if d.Band() != want {
			t.Errorf("%v is %s, want %s", d, d.Band(), want)
		}
	}
}

// The weight of a fourth addend is what it is named after (its size is common practice): none
// on three numbers, once on four. Four two-digit numbers are the most of 2.NBT.B.6.
func TestFourthAddendIsTheFourth(t *testing.T) {
	amounts := map[string]float64{"12 + 34 = ?": 0, "12 + 34 + 21 = ?": 0, "12 + 34 + 21 + 15 = ?": 1}
	for _, w := range standards.Weights() {
		if w.Name != "fourth addend" {
			continue
		}
		for text, want := range amounts {
			if got := w.Amount(task.MustParse(text).Traits()); got != want {
				t.Errorf("%s has %v fourth addends, want %v", text, got, want)
			}
		}
		return
	}
	t.Error("nothing is named fourth addend")
}
