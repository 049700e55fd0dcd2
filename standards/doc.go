// Package standards knows what is taught in the first three years of school
// mathematics and what makes it hard.
//
// The mathematics of an item is a task.Task. This package says of a task
//
//   - which skill of the catalogue it is (SkillOf),
//   - what the published standards are that it meets (AllCodes, Topic),
//   - how hard it is, predicted from its skill and its traits (Predict),
//   - how long a child works at it (Seconds),
//   - whether a wish about its traits holds (Condition).
//
// AllCoverage says of every published standard how far tasks serve it, and why not
// where they don't.
//
// The package is pure: no files, no clock, no randomness. It imports
// standards/task, which imports standards/words; neither knows of skills.
package standards
