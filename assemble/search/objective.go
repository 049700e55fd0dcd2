package search

// The objective counts in whole hundredths of a point and whole uses.
const (
	weight        = 1000 // a hundredth of a point against one use: no number of uses in a quiz outweighs it by chance
	hundredth     = 10   // thousandths of a point in a hundredth
	markTolerance = 10   // thousandths of a point an item by which a form may miss the mark: one in 100
	evenTolerance = 5    // the same by which forms may differ: half in 100
)

// Abilities is how many pupils the forms are compared for: a weaker, a typical
// and a stronger one.
const Abilities = 3

// typical is the place of the typical pupil among them.
const typical = 1

// Points is what each of these pupils can expect, in thousandths of a point.
type Points [Abilities]int

func (p *Points) add(o Points, n int) {
	for t := range p {
		p[t] += n * o[t]
	}
}

// mark is the score of a form that the typical pupil should reach, in
// thousandths of a point.
func (m *Model) mark() int { return 10 * m.ShareRight * m.Size() }

// off is by how many hundredths of a point a form of n items misses the mark.
func (p *problem) off(score int) int {
	if p.ShareRight == 0 {
		return 0
	}
	miss := max(score-p.markScore, p.markScore-score) - markTolerance*p.size
	return (max(0, miss) + hundredth - 1) / hundredth
}

// uneven is by how many hundredths of a point the lowest and the highest score
// of the forms for one pupil lie too far apart.
func (p *problem) uneven(low, high int) int {
	return (max(0, high-low-evenTolerance*p.size) + hundredth - 1) / hundredth
}

// figures are the parts of the objective of a choice.
type figures struct {
	off    []int // by form
	uneven Points
	uses   int
}

func (g *figures) objective() int {
	points := 0
	for _, n := range g.off {
		points += n
	}
	for _, n := range g.uneven {
		points += len(g.off) * n
	}
	return weight*points + g.uses
}

// measure gives the figures of a choice; an item counts its uses once.
func (p *problem) measure(forms [][]Place) figures {
	g, seen, scores := figures{}, map[int]bool{}, make([]Points, len(forms))
	for f, places := range forms {
		for _, x := range places {
			it := &p.Items[x.Item]
			scores[f].add(it.Points, 1)
			if !seen[x.Item] {
				seen[x.Item] = true
				g.uses += it.Uses
			}
		}
		g.off = append(g.off, p.off(scores[f][typical]))
	}
	for t := range Abilities {
		low, high := scores[0][t], scores[0][t]
		for _, s := range scores {
			low, high = min(low, s[t]), max(high, s[t])
		}
		g.uneven[t] = p.uneven(low, high)
	}
	return g
}
