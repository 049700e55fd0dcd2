// Package task is the mathematics of an item: what is asked, and all that follows from
// it alone.
//
// A Task is a number sentence, a place-value question, a comparison, a counting
// sequence, a clock, some coins, a short story. Parse reads one from what people
// type, String prints it in one plain form, and the two are each other's inverse.
// From a task everything else is computed, never typed:
//
//   - its key and whether a written answer is right (Key, Judge),
//   - the published standards it meets (Codes) and the traits that make it hard (Traits),
//   - the wrong answers that known missteps give (Missteps),
//   - which other tasks it must not stand beside in one quiz form (Clashes),
//   - three answers to choose from, each wrong one a misstep (Options).
//
// A kind of task is one file named after what it asks, or a few that begin with its
// name, and one row in the table of kinds. All that is known of the kind stands there.
package task
