// Package results keeps marked papers: which quiz a class sat, what each pupil
// answered, and what was marked before it was marked again.
//
// The file stands beside the bank (Path), readable by its owner only, and is no
// part of it: a bank, its copies and its exports hold nothing about pupils. A pupil
// is a code such as P07; no name is ever written here. Removing the file forgets all, Forget
// one pupil.
//
//	s, err := results.Open(results.Path("team.bank"), bank.Options{})
//	err = s.Enrol("2A", "P01", "P02")
//	tally, err := s.Mark(quiz, papers, "MK", time.Now())
//
// # What is in the file
//
// All values are JSON under a seal (bank.Seal) that covers bucket, key and value. A name in a
// key ends with a zero byte. Files of format 1, without seals, are brought along.
//
//	about     what the file is, the number of its format, an account of all records
//	classes   class: the codes of its pupils
//	quizzes   quiz ID: the quiz as it was given, with every item's text and key
//	papers    quiz ID, class, pupil: the paper as it stands
//	earlier   quiz ID, class, pupil, revision (4 bytes): every earlier marking
//
// A quiz is kept as it was given, so that what a paper says never changes when the
// bank does. Package calibration learns from the papers.
package results
