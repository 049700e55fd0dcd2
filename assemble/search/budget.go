package search

// How much each part of the search may do before the next has its turn. All
// are counts, not times, so that the same seed gives the same quiz; what they
// take was measured on one core of 2.8 GHz. A round's budgets double from round
// to round, so that no part can hold up the others for long, and none is
// starved.
const (
	quickTries  = 50_000        // swaps tried at first: 10 to 50 ms, enough for most plans
	poolWork    = 100_000_000   // of the tree over all forms together: some 50 ms
	treeWork    = 300_000_000   // of the tree over the forms apart in the first round: 0.2 to 0.3 s
	nearWork    = 1_500_000_000 // of the tree among the few groups near to the bound: 0.6 s
	annealSteps = 3_000_000     // of the chains beside it: 0.2 to 0.3 s
	dealSteps   = 250_000       // of a chain that deals one set of items: some 40 ms
	variedSets  = 16            // sets dealt in the first round on each core, half of them beside the tree near to the bound
	mostTimes   = 4             // doublings of these steps, by chance
	varyWork    = 20_000_000    // to find one of them
	mendings    = 4             // pairs of small trees in a round
	mendWork    = 150_000_000   // of each
	mendWidth   = 400           // groups that they may choose from
	trialRounds = 3             // on the most promising groups, before more are taken in
	annealWidth = 2000          // groups that a chain may choose from: far more than a tree, for what it costs
	narrowWidth = 3             // the same where it may choose from few, times the places of all forms
)

// How small trees are made: they keep this part of the best choice at first, less
// when that was soon done, more when it was not.
const (
	keptAtFirst = 0.6
	keepLess    = 0.85
	keepMore    = 0.2
)

// How far the tree over all forms leans toward sets with room, in uses a thousandth of a point: too little to outweigh
// a use at first; where sets are to differ, up to a use a thousandth or a second. By chance each item costs up to a use
// more then. The larger the last number, the more of these sets come near to the best choice.
const (
	barelyLeaning = 1e-7
	leastLean     = 1e-3
	mostLean      = 1.0
	leanByChance  = 1.0
	nearTheBest   = 3
)
