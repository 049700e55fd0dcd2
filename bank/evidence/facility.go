package evidence

import "math"

// z95 leaves 2.5 % of a normal curve on either side.
const z95 = 1.959963984540054

// Share is a share of pupils with the range it could really be in, at 95 %.
type Share struct{ Value, Low, High float64 }

// ShareOf is count of all with Wilson's score interval (Wilson 1927, J. Am. Stat. Assoc. 22),
// which stays inside 0 to 1 and is honest for small counts. Of none, the share is NaN and
// could be anything.
func ShareOf(count, all int) Share {
	n := float64(all)
	p := float64(count) / n
	if all == 0 {
		return Share{p, 0, 1}
	}
	middle := p + z95*z95/(2*n)
	half := z95 * math.Sqrt(p*(1-p)/n+z95*z95/(4*n*n))
	under := 1 + z95*z95/n
	return Share{p, math.Max(0, (middle-half)/under), math.Min(1, (middle+half)/under)}
}
