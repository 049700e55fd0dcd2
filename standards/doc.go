// Package standards knows what is taught in the first three years of school
// mathematics and what makes it hard.
//
// The mathematics of an item is a Task: a number sentence, a place-value
// question, a comparison, a counting sequence, a clock, some coins, a short story.
// Parse reads a task from what people type, String prints it in one plain form, and
// the two are each other's inverse. From a task everything else is computed, never
// typed:
//
//   - its key and whether a written answer is right (Key, Judge),
//   - its skill in the catalogue (SkillOf) and the published standards it meets (Codes),
//   - the traits that make it hard (Traits), and from them a predicted Difficulty,
//   - the wrong answers that known missteps give (Missteps),
//   - which other tasks it must not stand beside in one quiz form (Clashes),
//   - three answers to choose from, each wrong one a misstep (Options).
//
// AllCoverage says of every published standard how far tasks serve it, and why not
// where they don't.
//
// The package is pure: no files, no clock, no randomness, and nothing imported
// but the standard library. A new kind of task is one file here that fills the
// Task interface, one row in the table of kinds and one or more rows in the
// catalogue of skills.
package standards
