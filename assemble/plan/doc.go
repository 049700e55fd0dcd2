// Package plan reads what a teacher asks of a quiz, or of the quizzes of a term.
//
// A Plan says what every form of a quiz must hold, and the mark to aim at; Parse
// reads one from TOML. A Pacing says which skills are new in which week, and Plans
// makes a plan for each week of it; ParsePacing reads one. Everything that is wrong
// in a file is told together, each Mistake where it stands. Weeks are those of ISO
// 8601. The package knows nothing of items.
//
//	plan.go                  what is asked of a quiz
//	plan_text.go pacing.go   how it is read, and what is asked of a term
//	document.go values.go    a TOML file with the place of each of its values
//	mistake.go               what is wrong, and where
//	week.go                  weeks of ISO 8601
//	example.go               examples with a note on everything
package plan
