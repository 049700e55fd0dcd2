// Package assemble makes quizzes from a bank by a teacher's plan.
//
// A plan (package plan) says what every form of a quiz must hold: rows of skills
// with counts and traits, bands of difficulty, quotas that cut across the rows, the
// minutes and the weeks that an item rests. Assemble finds the best quiz that the bank can
// give and proves that there is none better; when the rules can't be met it says
// in an ImpossibleError which of them can't hold together and what would help.
// BalanceOf shows how even the forms of a quiz are.
//
// An earlier quiz can be kept but for some items (Earlier). A pacing list says which
// skills are new in which week; AssembleTerm makes a quiz for every week of a
// term from it, so that none is left with what the others didn't want.
//
// Inside, the bank's items are sorted into pools that the plan can't tell apart
// (candidates.go), a few of each are read and put into a model in numbers
// (problem.go), the package search solves it, and stand-ins for the unread items
// prove that reading more would not help (assemble.go).
package assemble
