package search

// near is a tree among the few groups that a choice near to the bound could hold. As they are all of these, it finds
// the best such choice or proves that there is none; it is much smaller than a tree among all that could better the
// best choice.
type near struct {
	climb
	tree     *tree
	groups   []int
	patience int // the work after which the tree begins anew
	spent    int // of it
}

// How few groups are worth a tree of their own, as a part of those of the tree among all; and how much more than for
// the next objective above the bound may be taken in.
const (
	nearPart = 0.8
	nearMore = 1.2

	leastWork    = 1_000_000   // that making one counts for
	nearPatience = 300_000_000 // some 0.1 s, at first
)

// goNear goes on with such a tree, and then with the next ones, until the work is done. It takes
// what they find; what they prove holds among all groups. It reports false if there is none worth while.
func (c *climb) goNear(t *tree, work int) bool {
	for {
		if c.near != nil && c.best.objective < c.near.best.objective {
			c.near = nil
		}
		if c.near == nil {
			c.near = c.nearBound(t)
		}
		if c.near == nil {
			return false
		}
		if work <= 0 {
			return true
		}
		n := c.near
		before := n.tree.Work()
		bound := n.explore(n.tree, n.groups, min(work, n.patience-n.spent))
		took := max(leastWork, n.tree.Work()-before)
		work, n.spent = work-took, n.spent+took
		if n.best.forms != nil {
			c.best.take(n.best.forms, n.best.objective)
		}
		c.root.bound = max(c.root.bound, c.p.round(bound))
		c.bound = max(c.bound, c.root.bound)
		if c.bound >= c.best.objective || c.stop() {
			return true
		}
		switch {
		case bound >= n.best.objective:
			c.near, c.blind = nil, c.best.objective == none
		case n.spent >= n.patience:
			n.anew()
		}
	}
}

// anew begins the tree again, with what it has learnt, and with more patience. How long a tree takes hangs on its
// first branches, taken when nothing is known yet, by a hundred times. (Gomes, Selman and Kautz, Boosting Combinatorial
// Search through Randomization, AAAI 1998, from memory.)
func (n *near) anew() {
	t := n.apart(n.groups)
	t.blame = n.tree.blame
	n.tree, n.patience, n.spent = t, n.patience*3/2, 0
}

// nearBound makes such a tree, or gives nil if it would not be much smaller than the one given, where that asks for more.
func (c *climb) nearBound(t *tree) *near {
	if c.blind && c.best.objective == none { // there may be no choice at all
		return nil
	}
	aim := c.root.bound + 1
	groups := c.below(aim)
	most := nearMore * float64(len(groups))
	for further := 1; further < weight*weight && aim+further < c.best.objective; further *= 2 {
		wider := c.below(aim + further)
		if float64(len(wider)) > most {
			break
		}
		aim, groups = aim+further, wider
	}
	if aim < c.best.objective && float64(len(groups)) > nearPart*float64(len(t.groups)) {
		return nil
	}
	n := &near{climb: *c, groups: groups, patience: nearPatience}
	n.best = &incumbent{p: c.p, objective: min(aim, c.best.objective)}
	n.bound, n.floor = c.root.bound, c.root.floor() // the climb's own hold among its groups only
	n.roomy = true
	n.tree = n.apart(groups)
	return n
}

// below are the groups that a choice of a smaller objective could hold.
func (c *climb) below(aim int) []int {
	var groups []int
	for i := range c.root.groups {
		if c.root.hopeful(i, aim) {
			groups = append(groups, i)
		}
	}
	return groups
}
