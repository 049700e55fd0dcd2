// Package evidence turns marked papers into what they show: how good each item is, how
// difficult, where pupils stand, and which missteps are likely. It only computes: no files,
// no clock, no randomness, and the same papers give the same numbers to the last bit on any
// machine. What it says of pupils after a short quiz is a hint for teaching, not a diagnosis.
//
// # Items
//
// Stats, ReliabilityOf and Choices look at rows of marks, as on a marking grid: facility
// (the share who got an item right) with its range, whether those right on an item did better
// on the others, KR-20, the standard error of measurement, and which answers were given.
// ItemStats.Flags says in plain words what deserves a look. Pupils who were absent or did not
// reach an item count neither for nor against.
//
// # Difficulty
//
// Difficulty fits one model to all papers of all classes and weeks:
//
//	P(right) = logistic(ability - difficulty)
//	difficulty of item i = weights · traits of i + uᵢ        uᵢ ~ normal(0, deviation sd)
//	ability of a pupil   ~ normal(mean of the class, ability sd)
//	weight of a trait    ~ normal(value believed, its standard error)
//	mean of a class      ~ normal(usual for its grade + level, class sd)
//	level of the school  ~ normal(0, a wide one)
//
// Everything is in logits, and logistic(x) is 1/(1 + exp(-x)). Papers only show how far
// pupils are above items: whether a school is stronger or its items are easier, they can't
// tell. What is believed decides: that the level may lie anywhere, but a weight hardly far from
// the table. So a stronger school is a stronger school, and regrouping stays as hard as it is.
//
// An item's difficulty thus rests on what its traits predict and on its own papers, each as
// far as it can be trusted: with no papers it is the prediction, with many the papers decide.
// Classes that sat different forms are comparable through the items they share and through
// the traits. Papers holds counts by class, forms and number right, which is all this model
// can learn from, and never single answers.
//
// How it is found. A pupil's ability is integrated over (marginal maximum likelihood: Bock &
// Aitkin 1981, Psychometrika 46), on an even grid of abilities shared by all classes. For
// given spreads, weights, deviations and class means climb together to the greatest
// likelihood times belief. Between climbs the deviation sd moves to its own most likely value,
// the deviations being integrated over by Laplace's approximation, and so on until nothing
// moves. A weight without belief is taken at its best (maximum likelihood, as lme4 does); one
// with a belief is integrated over when the deviation sd is found. Standard errors come from
// the observed information (Louis 1982) and count the doubt about weights, deviations, class
// means and ability sd together; beyond some 900 items, or very many papers, links between
// items are left out.
//
// How well it does (the tests and benchmarks print these; two cores, other work going on):
//
//   - LSAT-6 and VerbAgg as published and as R's lme4 and survival compute them live. On
//     VerbAgg with free items, difficulties and their standard errors agree with lme4's
//     21-point integration within 0.01. With random items weights and spreads agree within
//     0.01 and items within 0.08: lme4 puts each person at one likeliest ability there, which
//     draws its items together by some hundredths.
//   - Invented schools with 90 items, 100 pupils and 4,000 answers each, whose level is the usual
//     one or up to 1.5 logits off it: at each level the 95 % intervals hold the truth for about
//     95 % of weights, of items and of items never used.
//   - VerbAgg takes about 1 ms with traits and 2 ms with random items. glmer took over 1,000
//     times as long in the same run for either, also by its quicker default.
//   - 100,000 pupils by 36 quizzes of 10 from 20,000 items, 36 million answers: 17 s by
//     the clock on two quiet cores and 0.6 GB; 41 s on two busy with much other work.
//
// # Missteps
//
// Missteps weighs a pupil's answers against the wrong answers that known missteps would give
// and reports only what stands out: "3 of 4 chances", with the items, and with both names
// when two missteps give the same answers on this paper.
//
// In 1,000 invented classes of 24, each with a quiz of 12 subtractions and one pupil in
// twenty with any one of five missteps, showing at 60 to 100 % of chances, 99 % of 5,245
// findings were true (precision) and 88 % of the missteps with three chances or more were
// found (recall).
package evidence
