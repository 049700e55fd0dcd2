package calibration

import (
	"errors"

	"evenhand/bank"
	"evenhand/bank/results"
)

// AimAt is the ability at which a quiz for the class is aimed, so that so many in 100 answers are right
// (Level.Aim), with the level that it comes from; nil where the class has no papers yet, and the quiz is for
// the usual of the grade.
func AimAt(class string, share int, quizzes []results.Quiz, papers []results.Paper, b *bank.Bank) (*int, Level, error) {
	level, err := LevelOf(class, quizzes, papers, b)
	if errors.As(err, new(NoPapersError)) {
		return nil, level, nil
	}
	if err != nil {
		return nil, level, err
	}
	ability := level.Aim(share)
	return &ability, level, nil
}
