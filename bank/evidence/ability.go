package evidence

import (
	"math"

	"gonum.org/v1/gonum/floats"
)

// Ability is where a pupil stands who got so many right on items of these difficulties, in
// logits: the mean and standard deviation of what ability may be after the paper, when
// before it it was that of the class, a normal curve with this mean and standard deviation.
// So a short paper moves a pupil little, and forms of unlike difficulty can be compared. The
// number right of items is between 0 and all; sd is above 0.
//
// It is the expected a posteriori estimate (Bock & Mislevy 1982, Applied Psychological
// Measurement 6).
func Ability(difficulties []float64, right int, mean, sd float64) Estimate {
	grid := abilityGrid([]float64{mean}, sd, max(1, len(difficulties)))
	share := make([]float64, len(grid))
	logNormalOn(grid, mean, sd, share)
	floats.AddScaled(share, float64(right), grid)
	for q, ability := range grid {
		for _, b := range difficulties {
			share[q] -= math.Log1p(math.Exp(ability - b))
		}
	}
	softmax(share)
	value, variance := momentsOn(grid, share)
	return Estimate{value, math.Sqrt(variance)}
}
