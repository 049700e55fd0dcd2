package task

import (
	"cmp"
	"hash/fnv"
	"slices"
	"strconv"

	"evenhand/standards/words"
)

// Options are three answers to choose from: the key and two wrong ones, each the answer of a
// known misstep, all different, in order of size (numbers, times) or of the alphabet.
// at is the key's place, 0 to 2; it is the same for the same task and varies from task to
// task as far as the missteps allow. ok is false for a task with fewer than two missteps,
// which can't be asked this way.
//
// The rules are those of Haladyna, Downing & Rodriguez (2002), Applied Measurement in
// Education 15(3): three options are enough, wrong ones are typical errors, numbers stand
// in order, the key's place varies, and options are of like length, so that none stands
// out.
func Options(task Task) (options [3]string, at int, ok bool) {
	hash := fnv.New32a()
	hash.Write([]byte(task.String()))
	return OptionsAt(task, int(hash.Sum32()%3))
}

// OptionsAt is Options with the key at the wished place, or at another only where no
// missteps allow it.
func OptionsAt(task Task, place int) (options [3]string, at int, ok bool) {
	key, missteps := task.Key(), task.Missteps()
	best := -1
	for i := range missteps {
		for j := range i {
			three := []string{key, missteps[i].Answer, missteps[j].Answer}
			slices.SortFunc(three, compareAnswers)
			keyAt := slices.Index(three, key)
			// A place that is not the wished one weighs more than any difference in length.
			cost := unlike(key, missteps[i].Answer) + unlike(key, missteps[j].Answer)
			if keyAt != place {
				cost += 1000
			}
			if best < 0 || cost < best {
				best, options, at = cost, [3]string(three), keyAt
			}
		}
	}
	return options, at, best >= 0
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
	if x, errX := words.ParseTime(a); errX == nil {
		if y, errY := words.ParseTime(b); errY == nil {
			return cmp.Compare(x.Hour%12*60+x.Minute, y.Hour%12*60+y.Minute)
		}
	}
	return cmp.Compare(a, b)
}

// withChoice adds the look of three options where there are two missteps to choose from.
func withChoice(task Task, looks ...Look) []Look {
	if len(task.Missteps()) >= 2 {
		return append(looks, LookChoice)
	}
	return looks
}
