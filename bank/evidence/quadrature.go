package evidence

import "math"

// The chance of a paper is an integral over the pupil's ability. It is taken by the
// trapezoid rule on one evenly spaced grid shared by all classes. For a smooth bell-shaped
// curve that rule errs by about 2 exp(-2 (pi s/h)^2), with s the curve's standard deviation
// and h the spacing (Trefethen & Weideman 2014, SIAM Review 56), so a spacing near s is
// exact for our purposes. Gauss-Hermite points, the usual choice, sit at fixed places of
// the class's curve and miss the narrow peak of a pupil with hundreds of answers; and they
// differ from class to class, where the shared grid lets a form be worked out once for all.
const (
	gridReach   = 6.5  // standard deviations either side of the class means
	widestStep  = 0.5  // logits; keeps the logistic curve itself exact to 1e-16
	smallestSD  = 0.02 // logits; an ability spread below this is taken as this
	stepsPerLen = 2.2  // a pupil with n answers is known to no better than 2/sqrt(n) logits
)

// abilityGrid returns evenly spaced abilities that cover normal curves of the given means
// and standard deviation, fine enough for pupils with up to longest answers.
func abilityGrid(means []float64, sd float64, longest int) []float64 {
	low, high := 0.0, 0.0
	for _, mean := range means {
		low, high = math.Min(low, mean), math.Max(high, mean)
	}
	step := min(widestStep, stepsPerLen/math.Sqrt(float64(longest)), sd)
	first := math.Floor((low - gridReach*sd) / step)
	last := math.Ceil((high + gridReach*sd) / step)
	grid := make([]float64, 0, int(last-first)+1)
	for k := first; k <= last; k++ {
		grid = append(grid, k*step)
	}
	return grid
}

// logNormalOn writes the logs of the shares that a normal curve gives the grid's points.
func logNormalOn(grid []float64, mean, sd float64, out []float64) {
	scale := math.Log((grid[1] - grid[0]) / (sd * math.Sqrt(2*math.Pi)))
	for q, ability := range grid {
		z := (ability - mean) / sd
		out[q] = scale - z*z/2
	}
}

// softmax turns logs into shares that sum to 1, in place, and returns the log of what they
// summed to before.
func softmax(logs []float64) float64 {
	top := logs[0]
	for _, v := range logs {
		top = max(top, v)
	}
	sum := 0.0
	for q, v := range logs {
		// Below exp(-40) a point can't change a sum in double precision.
		if v < top-40 {
			logs[q] = 0
			continue
		}
		logs[q] = math.Exp(v - top)
		sum += logs[q]
	}
	for q := range logs {
		logs[q] /= sum
	}
	return top + math.Log(sum)
}
