package task

// mostSteps is from where a number of steps, or a gap, is as good as any larger one: nobody
// gets there by counting.
const mostSteps = 10

// countSteps are the fewest steps that count to the answer about a whole and its two parts:
// on from the larger part by the smaller (Groen & Parkman 1972, Psychological Review 79), back
// or up by the smaller one (Woods, Resnick & Groen 1975, Journal of Educational Psychology 67,
// from memory). Tens are counted by tens and hundreds by hundreds. A ten and ones, 40 + 5 or
// 45 - 5, are read off the number's name: no step.
func countSteps(part, other int) int {
	small, large := min(part, other), max(part, other)
	if large >= 10 && large%10 == 0 && small < 10 {
		return 0
	}
	return min(stepsOf(small), stepsOf(large), mostSteps)
}

func stepsOf(n int) int {
	switch {
	case n >= 100 && n%100 == 0:
		return n / 100
	case n >= 10 && n%10 == 0:
		return n / 10
	}
	return n
}

// gap is how far two numbers are apart, as far as it matters.
func gap(a, b int) int { return min(max(a, b)-min(a, b), mostSteps) }

// decidingPlaces are the places that decide between two numbers, from easy to hard to see.
var decidingPlaces = []string{"more digits", "first digit", "tens", "ones", "none"}

// deciding is the place that decides between two numbers, and whether a smaller place says
// otherwise (the tens of 47 and 74 and their ones disagree: Nuerk, Weger & Willmes 2001,
// Cognition 82).
func deciding(a, b int) (place string, misleads bool) {
	small, large := min(a, b), max(a, b)
	unit := 1
	for n := large; n >= 10; n /= 10 {
		unit *= 10
	}
	switch {
	case small == large:
		return "none", false
	case small < unit && large >= 10:
		return "more digits", false
	case small/unit != large/unit:
		place = "first digit"
	case unit == 100 && small/10 != large/10:
		place, unit = "tens", 10
	default:
		return "ones", false
	}
	for unit /= 10; unit > 0; unit /= 10 {
		misleads = misleads || small/unit%10 > large/unit%10
	}
	return place, misleads
}
