// Package calibration lets marked papers teach the bank: it takes papers from package results
// to the difficulty model of package evidence, and what that shows to the bank.
//
// Learn fits the model to all papers. Its table of levels and weights and the difficulties of
// items that have been answered often enough go to the bank (Apply), which predicts every
// other item from the table; Forget takes all of it back. LevelOf says where a class stands.
// That is worked out from its papers each time and kept nowhere, so a bank holds nothing about
// a class.
//
// A class is one number a term, and a pupil is one number a term: the papers of a term hang
// together. What it says about a class is a hint for teaching, not a judgement.
package calibration
