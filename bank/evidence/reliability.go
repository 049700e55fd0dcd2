package evidence

import "math"

// Reliability says how far the number right can be trusted.
type Reliability struct {
	// Alpha is the share of the variance of totals that would come again with other items of
	// the kind: Cronbach's alpha, which is KR-20 for right and wrong. Below 0 or NaN means
	// that the items don't measure one thing, or that too few answered them.
	Alpha float64
	// SEM is the standard error of measurement: about two pupils in three have a total within
	// this many items of what they would get on average.
	SEM float64
}

// ReliabilityOf works from rows that all have one mark for each item. Variances and
// covariances are those of the population (divided by the count) and each pair of items uses
// the pupils who answered both; with nothing missing that is KR-20 exactly (Kuder &
// Richardson 1937, Psychometrika 2). With fewer than two items, or two items that nobody
// answered both, there is no answer: NaN.
func ReliabilityOf(rows []Row) Reliability {
	if len(rows) == 0 || len(rows[0].Marks) < 2 {
		return Reliability{math.NaN(), math.NaN()}
	}
	own, all := 0.0, 0.0
	items := len(rows[0].Marks)
	for i := range items {
		for j := range items {
			c := pairCovariance(rows, i, j)
			all += c
			if i == j {
				own += c
			}
		}
	}
	if !(all > 1e-12) {
		return Reliability{math.NaN(), math.NaN()}
	}
	n := float64(items)
	alpha := n / (n - 1) * (1 - own/all)
	return Reliability{alpha, math.Sqrt(all * (1 - alpha))}
}

func pairCovariance(rows []Row, i, j int) float64 {
	var m moments
	for _, row := range rows {
		if row.Marks[i] != Missing && row.Marks[j] != Missing {
			m.add(row.Marks[i].point(), row.Marks[j].point(), float64(row.Pupils))
		}
	}
	return m.covariance()
}
