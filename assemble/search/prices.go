package search

// breaches counts the rules that a chain breaks at present, by kind.
type breaches [kindsOfBreach]int

// The kinds: an item too many of a clash group, one too few or too many in a quota, a second beyond the limit, a
// thousandth of a point beyond what is free from the mark; and between the forms, an item by which they differ in
// a set of Same, and for each form a thousandth of a point beyond what is free.
const (
	byClash = iota
	byQuota
	bySecond
	byMark
	bySame
	byUneven
	kindsOfBreach
)

func (b *breaches) add(o *breaches) {
	for k := range b {
		b[k] += o[k]
	}
}

// keepRules says whether no rule is broken; points that are off or uneven break none.
func (b *breaches) keepRules() bool {
	return b[byClash] == 0 && b[byQuota] == 0 && b[bySecond] == 0 && b[bySame] == 0
}

// prices are what a breach of each kind costs, in uses.
//
// No price is known beforehand that lets a chain pass through broken rules and yet leads it back. So they change
// with what is seen: now and then each kind gets a little dearer if it is broken at that time, and a little cheaper
// if not. Then a chain walks along the edge of what the rules allow, where the best choices lie. (Strategic
// oscillation: Glover, Decision Sciences 8, 1977, from memory.)
type prices [kindsOfBreach]float64

// The rates of change let a kind be broken a third of the time. Points never cost more than in the objective.
const (
	dearer, cheaper       = 1.02, 0.99
	leastPrice, mostPrice = 0.01, 1e9
	thousandth            = float64(weight) / hundredth
)

func firstPrices() prices {
	return prices{byClash: 5, byQuota: 5, bySecond: 0.3, byMark: 0.1, bySame: 5, byUneven: 0.1}
}

func (p *prices) adapt(b *breaches) {
	for k, n := range b {
		change, most := cheaper, mostPrice
		if n > 0 {
			change = dearer
		}
		if k == byMark || k == byUneven {
			most = thousandth
		}
		p[k] = min(max(p[k]*change, leastPrice), most)
	}
}

// of is what breaches cost.
func (p *prices) of(b *breaches) float64 {
	sum := 0.0
	for k, n := range b {
		if n != 0 {
			sum += p[k] * float64(n)
		}
	}
	return sum
}
