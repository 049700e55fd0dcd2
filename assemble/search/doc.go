// Package search finds the provably best choice of items for one or more
// forms of a quiz, or proves that there is none. It knows nothing of banks and
// plans: a Model has items, rows to fill, quotas to keep, and an objective
//
//	1000 · (Σ_f off_f + F · Σ_θ uneven_θ) + Σ uses
//	off_f    = ceil(max(0, |score_f(typical) − 10·s·N| − 10·N) / 10)
//	uneven_θ = ceil(max(0, max_f score_f(θ) − min_f score_f(θ) − 5·N) / 10)
//
// where score_f(θ) is the sum of what a weaker, a typical or a stronger pupil can
// expect of the N items of form f, in thousandths of a point, s is the share of
// right answers aimed at, in 100, and an item counts its uses once. This is
// automated test assembly by 0-1 programming (van der Linden, Linear Models for
// Optimal Test Design, 2005, from memory); WriteLP writes the very model for any
// solver.
//
// # How
//
// Items that the model can't tell apart are counted, not listed: the search
// works on groups of equal points, uses, rows, seconds and quotas, so that
// it grows with the plan more than with the bank.
//
//  1. Bound. All forms together make one linear program (forms are alike, so
//     averaging any solution over them changes nothing and is perfectly even).
//     Only columns that could improve it are ever put in. Its optimum is below that
//     of any choice.
//  2. Start. From the program's solution, greed and swaps look for a choice.
//     Most often its objective equals the bound, rounded up: proved.
//  3. Together. Else branch and bound over the same one program for all forms
//     gives a better bound, and sets of items good for all forms together. Each
//     set is dealt to the forms by exchanges, a chain of simulated annealing at
//     mild prices. As many sets can't be dealt, further ones are drawn by chance among all whose
//     objective is less than the best choice's; those with the most room below the next whole
//     hundredth are the easiest to deal.
//  4. Tree. Else branch and bound, with a block of rows for each form, on the
//     groups whose reduced cost leaves room for improvement. Forms with the
//     same branches so far are interchangeable (orbital branching: Ostrowski
//     and others, Mathematical Programming 126, 2011, from memory). "No item
//     twice" and clashes are cut in when broken. A count per group may have no
//     members without a clash: then the clash groups in the way split the
//     groups, and the tree starts again. In the end all are split, so the
//     search is complete.
//     Where a choice near to the bound could hold few groups only, the tree is one among these: it finds
//     such a choice or raises the bound. What a choice costs is a rule then, and its programs look for
//     the one with most room in the time and at the mark. It begins anew now and then, with what it has learnt of
//     good branches.
//     Beside it choices are bettered: chains of annealing, begun by turns afresh and with
//     the best choice, which break rules on their way at prices that follow what is
//     broken, fewer uses than in their best choice being one of the rules; and small trees
//     that keep a part of the best choice, whole forms or single places. Where the tree's
//     bound stands still, it rests every other round, and chains run on both cores.
//  5. Even. Swaps that keep every rule and the objective make the forms more
//     alike in their traits, take items unused for longer, and let the few answers that
//     like items offer be right equally often. This part alone is not proved best.
//
// # Which file is which step
//
//	model.go verify.go writelp.go    the problem, what a choice must hold, the same for other solvers
//	solve.go climb.go                the order of the steps
//	group.go seconds.go              like items together, rules made tight (before 1)
//	root.go relax.go cuts.go         1, the program and its rows
//	kernel.go                        which groups are worth a closer look
//	objective.go                     what a choice costs
//	swap.go seats.go                 2, whole choices bettered item by item
//	pool.go deal.go                  3, all forms together
//	courses.go chain.go              chains of annealing, beside 3 and 4
//	anneal.go step.go ladder.go      their candidates, and what a step tries
//	weigh.go prices.go dice.go       what it changes and costs, and whether it is taken
//	mend.go                          small trees around the best choice, beside them
//	tree.go choose.go blame.go       4, the tree, what it branches on and learns
//	fix.go leaf.go                   what it fixes, its ends
//	near.go room.go                  the tree among the few groups near to the bound, what it looks for
//	even.go                          5
//	conflict.go loosen.go            why there is none, and what would help
//	lp                               linear programs in general
//
// # Why the bound can be trusted
//
// Programs are solved in floating point, but nothing rests on that: every
// bound and every verdict of impossibility is computed again in whole numbers
// from the rounded multipliers (see lp.Certificate), which gives a valid bound
// whatever the rounding did; every choice is checked in whole numbers too.
// As the objective is whole, a bound is rounded up. Points count in
// thousands: a bound of 2,700 with uses of 60 at most means 3,000 (see round).
//
// # How many items to pass
//
// The time to group is linear in the items. A caller with an index need not
// pass all members of a large group (equal points, uses, fits, quotas and sets of Same).
// With F forms of N items and at most k clash groups an item, Enough(F, N, k)
// members no two of which clash are enough: whatever else a choice holds, it
// takes at most F·N − 1 of them and blocks at most k·F·(N − 1) by clashes (if the
// item is a shared one, else k·(N − 1)), so one is left to stand in for any
// member not passed. Items that are fixed must be
// passed as well. A group with fewer such members must be passed whole.
package search
