// Package assemble makes quizzes from a bank by a teacher's plan.
//
// A Plan says what every form of a quiz must hold: rows of skills with counts
// and traits, bands of difficulty, quotas that cut across the rows, the minutes
// and the weeks that an item rests. ParsePlan reads one from a file and shows
// every mistake where it stands. Assemble finds the best quiz that the bank can
// give and proves that there is none better; when the rules can't be met it says
// in an ImpossibleError which of them can't hold together and what would help.
// BalanceOf shows how even the forms of a quiz are.
//
// The choosing itself is done in numbers by the package search.
package assemble
