// Package intake reads colleagues' lists of items as they are and brings them into
// a bank. (The folder is called import, which a Go package may not be.)
//
// A list is a CSV file in any of the usual encodings, with commas, semicolons or
// tabs, or a sheet of an .xlsx workbook. It goes this way:
//
//	bytes ─decode→ text ─records→ lines of cells ─OpenBook→ List ─Import→ bank, Report
//
// OpenBook finds the heading line and what each column means, by its heading in several
// languages and, where that tells nothing, by its cells; List.Columns says how each
// was understood and a teacher can say better (Options.Columns).
//
// # Every line has one place
//
// Nothing is lost and nothing counted twice. Each line of the file is exactly one of
// blank, title (above the heading), heading, total, or part of a row; List.Lines
// holds all but the blank ones. Each row ends in exactly one of added, already here, or
// set aside with a line, a column and a reason in plain words:
//
//	lines = blank + title + heading + total + lines of rows
//	rows  = added + already here + set aside
//
// A row may take several lines, where a quoted cell holds line ends. Rows set aside
// are written to a CSV (Report.WriteSetAside) that can be mended and imported again.
//
// # What is judged
//
// An item whose mathematics is understood gets its key, skill and standards computed;
// a wrong answer sets it aside, another skill or standard than the computed one is a
// note. An item that isn't understood is kept by hand when it has a question and an
// answer. What a spreadsheet has changed is put right only where there is one way to
// read it: 0.1458333 beside a clock is 3:30, but a date is never guessed back into
// the sum it may have been.
package intake
