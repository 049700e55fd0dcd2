// Package export writes quizzes and banks in formats that other programs read.
//
//   - quiz.csv: one row an item, in the order of the forms (WriteQuiz, ReadQuiz)
//   - quiz.json: the same quiz with how good it is proved to be (WriteQuizJSON)
//   - a bank as CSV: one row an item (WriteBank)
//   - tasks with all that is computed from them as CSV (Tag, WriteTags)
//
// All CSV files follow RFC 4180: UTF-8 without byte-order mark, commas, a heading line,
// each record ended by CR LF. The traits stand in columns under their names, in the
// order of standards.AllTraits; a cell is empty where a trait does not apply.
//
// A cell that a spreadsheet would run as a formula, such as a key of "-5", is
// written with one apostrophe before it (cells.Guard); readers here take it
// off again. The columns of logits (difficulty, predicted, measured, measured_error)
// stay plain numbers like -1.099: we write nothing but numbers there, a
// spreadsheet does not run a plain number, and a program wants to read it.
package export
