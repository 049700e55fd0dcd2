package search

// breaches counts the rules that a chain breaks at present, by kind.
type breaches [kindsOfBreach]int

// The kinds: an item too many of a clash group, one too few or too many in a quota, a second beyond the limit, a
// thousandth of a point beyond what is free from the mark; between the forms, an item by which they differ in
// a set of Same, and for each form a thousandth of a point beyond what is free; and a use, which breaks a rule
// of the chain's own: that there be fewer than in the best choice it has found.
const (
	byClash = iota
	byQuota
	bySecond
	byMark
	bySame
	byUneven
	byUse
	kindsOfBreach
)

// prices are what a breach of each kind costs, and each use, too.
//
// No price is known beforehand that lets a chain pass through broken rules and yet leads it back. So they change
// with what is seen: now and then each kind gets a little dearer if it is broken at that time, and a little cheaper
// if not. Then a chain walks along the edge of what the rules allow, where the best choices lie. (Strategic
// oscillation: Glover, Decision Sciences 8, 1977, from memory.)
type prices [kindsOfBreach]float64

// The rates of change let a kind be broken a third of the time. Points never cost more than in the objective; where no
// choice reaches the mark, a chain at that price would stand still, so that some chains go on at a mild one.
const (
	dearer, cheaper       = 1.02, 0.99
	leastPrice, mostPrice = 0.01, 1e9
	dearestUse            = 100.0 // or a chain would stand still once it has the fewest
	thousandth            = float64(weight) / hundredth
	mildThousandth        = 1.0
	leastDealt, mostDealt = 0.001, 0.01 // while a set of items is dealt, as all forms must come close at once
)

func firstPrices() prices {
	return prices{byClash: 5, byQuota: 5, bySecond: 0.3, byMark: 0.1, bySame: 5, byUneven: 0.1, byUse: 1}
}

// mostPrices are the dearest prices; point is that of a thousandth of a point.
func mostPrices(point float64) prices {
	return prices{byClash: mostPrice, byQuota: mostPrice, bySecond: mostPrice, byMark: point, bySame: mostPrice,
		byUneven: point, byUse: dearestUse}
}

func (p *prices) adapt(b *breaches, most *prices) {
	for k, n := range b {
		change := cheaper
		if n > 0 {
			change = dearer
		}
		p[k] = min(max(p[k]*change, leastPrice), most[k])
	}
}

// weigh works out what a form costs by what it breaks for itself.
func (p *prices) weigh(s *sums, l *limits) {
	price := 0.0
	if s.clashes|s.quotas != 0 {
		price = p[byClash]*float64(s.clashes) + p[byQuota]*float64(s.quotas)
	}
	if s.seconds > l.seconds {
		price += p[bySecond] * float64(s.seconds-l.seconds)
	}
	switch score := s.score[typical]; {
	case score > l.high:
		price += p[byMark] * float64(score-l.high)
	case score < l.low:
		price += p[byMark] * float64(l.low-score)
	}
	s.price = price
}

// among is what forms cost by their differences.
func (p *prices) among(unlike, uneven int32) float64 {
	if unlike|uneven == 0 {
		return 0
	}
	return p[bySame]*float64(unlike) + p[byUneven]*float64(uneven)
}
