package evidence

import "math"

// moments gathers weighted pairs. Variances divide by the count, not by one less.
type moments struct{ n, x, y, xx, yy, xy float64 }

func (m *moments) add(x, y, weight float64) {
	m.n += weight
	m.x += weight * x
	m.y += weight * y
	m.xx += weight * x * x
	m.yy += weight * y * y
	m.xy += weight * x * y
}

func (m *moments) covariance() float64 { return m.xy/m.n - m.x/m.n*m.y/m.n }

func (m *moments) correlation() float64 {
	vx, vy := m.xx/m.n-m.x/m.n*m.x/m.n, m.yy/m.n-m.y/m.n*m.y/m.n
	// Equal values leave a variance of rounding errors.
	if !(vx > 1e-12 && vy > 1e-12) {
		return math.NaN()
	}
	return m.covariance() / math.Sqrt(vx*vy)
}
