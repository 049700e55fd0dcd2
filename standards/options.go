package standards

import (
	"cmp"
	"slices"
	"strconv"
)

// Options are three answers to choose from: the key and two wrong ones, each the answer of a
// known misstep, all different, in order of size (numbers, times) or of the alphabet.
// place, 0 to 2, is where the key should stand so that its place can vary over a
// form; keyAt is where it stands, another place only where no missteps allow it. ok is
// false for a task with fewer than two missteps: it can't be asked this way.
//
// The rules are those of Haladyna, Downing & Rodriguez (2002), Applied Measurement in
// Education 15(3): three options are enough, wrong ones are typical errors, numbers stand
// in order, and options are of like length, so that none stands out.
func Options(task Task, place int) (options [3]string, keyAt int, ok bool) {
	key, missteps := task.Key(), task.Missteps()
	best := -1
	for i := range missteps {
		for j := range i {
			three := []string{key, missteps[i].Answer, missteps[j].Answer}
			slices.SortFunc(three, compareAnswers)
			at := slices.Index(three, key)
			// A place that is not the wished one weighs more than any difference in length.
			cost := unlike(key, missteps[i].Answer) + unlike(key, missteps[j].Answer)
			if at != place {
				cost += 1000
			}
			if best < 0 || cost < best {
				best, options, keyAt = cost, [3]string(three), at
			}
		}
	}
	return options, keyAt, best >= 0
}

// unlike is how much longer or shorter one answer is than another.
func unlike(a, b string) int { return max(len(a)-len(b), len(b)-len(a)) }

// compareAnswers orders two answers: numbers by size, times around the dial, and others
// by the alphabet.
func compareAnswers(a, b string) int {
	if x, errX := strconv.Atoi(a); errX == nil {
		if y, errY := strconv.Atoi(b); errY == nil {
			return cmp.Compare(x, y)
		}
	}
	if x, errX := ParseTime(a); errX == nil {
		if y, errY := ParseTime(b); errY == nil {
			return cmp.Compare(x.Hour%12*60+x.Minute, y.Hour%12*60+y.Minute)
		}
	}
	return cmp.Compare(a, b)
}
