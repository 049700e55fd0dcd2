package evidence

import "math"

// What only the checks against published values ask for.

// Predict says how difficult an item with these traits will be, used or not; the standard
// error counts both the doubt about the weights and the spread of items about their traits.
func (f *Fit) Predict(traits []float64) Estimate {
	value := 0.0
	for k, x := range traits {
		value += f.Weights[k].Value * x
	}
	return Estimate{value, math.Sqrt(quadratic(f.spread, traits) + f.DeviationSD*f.DeviationSD)}
}

// PaperOf is the paper with these marks on the items of these numbers, for Papers.
func PaperOf(items []int, marks []Mark) (p Paper) {
	for k, mark := range marks {
		if mark != Missing {
			p.Items, p.Right = append(p.Items, items[k]), append(p.Right, mark == Right)
		}
	}
	return p
}

// Lengthened is the reliability of a quiz so many times as long, with items of the same kind
// (Spearman 1910 and Brown 1910, British J. of Psychology 3).
func Lengthened(alpha, times float64) float64 {
	return times * alpha / (1 + (times-1)*alpha)
}
