package standards

import (
	"fmt"
	"math"
)

// Difficulty is how hard an item is for pupils of its own grade once it was taught, in
// thousandths of a logit: a pupil who is usual there gets it right with probability
// 1/(1 + e^d), d = Difficulty/1000. Zero means five in ten. OnScale makes difficulties of
// different grades comparable.
type Difficulty int

// Logits is the difficulty in logits.
func (d Difficulty) Logits() float64 { return float64(d) / 1000 }

// String is the difficulty in logits with three decimals, as in CSV files.
func (d Difficulty) String() string { return fmt.Sprintf("%.3f", d.Logits()) }

// ShareRight is the expected share of right answers, from 0 to 1.
func (d Difficulty) ShareRight() float64 { return 1 / (1 + math.Exp(d.Logits())) }

// Percent is ShareRight in whole hundredths.
func (d Difficulty) Percent() int { return int(math.Round(100 * d.ShareRight())) }

// Tenths is ShareRight in whole tenths.
func (d Difficulty) Tenths() int { return int(math.Round(10 * d.ShareRight())) }

// Words is the difficulty as a teacher reads it, "about 7 in 10 get this right".
func (d Difficulty) Words() string {
	return fmt.Sprintf("about %d in 10 get this right", d.Tenths())
}

// DifficultyFor is the difficulty at which the share s (between 0 and 1) of
// usual pupils is right: −ln(s/(1−s)), rounded to a thousandth.
func DifficultyFor(share float64) Difficulty {
	return Difficulty(math.Round(-1000 * math.Log(share/(1-share))))
}

// Band is one of three words for a difficulty.
type Band string

// The bands.
const (
	WarmUp  Band = "warm-up" // 85 in 100 or more are expected right
	Core    Band = "core"
	Stretch Band = "stretch" // fewer than 65 in 100 are expected right
)

// Bands lists the bands from easy to hard.
func Bands() []Band { return []Band{WarmUp, Core, Stretch} }

// warmUpTo and stretchFrom bound the core band: −ln(.85/.15) and −ln(.65/.35) in
// thousandths (common practice: easy enough to start with, hard enough to be
// missed by every third child).
const (
	warmUpTo    Difficulty = -1735
	stretchFrom Difficulty = -619
)

// Band is the band of the difficulty.
func (d Difficulty) Band() Band {
	switch {
	case d <= warmUpTo:
		return WarmUp
	case d > stretchFrom:
		return Stretch
	}
	return Core
}
