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

// ItemStats are an item's classical statistics.
type ItemStats struct {
	Answers, Right int
	Facility       Share // of the answers that were right
	// ItemRest is the corrected item-rest correlation: of being right on this item with how
	// the pupil did on the others. NaN when all did the same on either side.
	ItemRest float64
}

// Stats works out each item's statistics from the rows, which all have one mark for each item.
func Stats(rows []Row) []ItemStats {
	stats := counts(rows)
	for i := range stats {
		s := &stats[i]
		s.Facility = ShareOf(s.Right, s.Answers)
	}
	for i := range stats {
		stats[i].ItemRest = itemRest(rows, stats, i)
	}
	return stats
}

func counts(rows []Row) (stats []ItemStats) {
	for _, row := range rows {
		for i, mark := range row.Marks {
			if i == len(stats) {
				stats = append(stats, ItemStats{})
			}
			if mark != Missing {
				stats[i].Answers += row.Pupils
			}
			if mark == Right {
				stats[i].Right += row.Pupils
			}
		}
	}
	return stats
}

// itemRest correlates item i with the standing on the rest, over pupils who answered both.
func itemRest(rows []Row, stats []ItemStats, i int) float64 {
	var c moments
	for _, row := range rows {
		if rest, ok := standing(row.Marks, stats, i); ok && row.Marks[i] != Missing {
			c.add(row.Marks[i].point(), rest, float64(row.Pupils))
		}
	}
	return c.correlation()
}

// standing is by how much, per item answered, a pupil did better than those who answered the
// same items; item but is left out. With nothing missing it orders pupils as their number
// right does, and with some missing it does not hold harder items against a pupil.
func standing(marks []Mark, stats []ItemStats, but int) (mean float64, ok bool) {
	n := 0
	for i, mark := range marks {
		if i != but && mark != Missing {
			mean += mark.point() - stats[i].Facility.Value
			n++
		}
	}
	return mean / float64(n), n > 0
}

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
