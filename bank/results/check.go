package results

import (
	"slices"

	"go.etcd.io/bbolt"
)

// Checked is what Check counted.
type Checked struct {
	Quizzes  int `json:"quizzes"`
	Papers   int `json:"papers"`
	Earlier  int `json:"earlier"` // markings that were replaced
	Unsealed int `json:"unsealed"`
}

// Check proves the results undamaged: the structure of the file, every record as it was
// written and none lost, every paper of a quiz that is there. The error is the first damage.
func (s *Store) Check() (found Checked, err error) {
	err = s.named(s.file.Undisturbed(func(tx *bbolt.Tx) error {
		for _, problem := range s.file.Structure(tx) {
			return damage(problem)
		}
		if err := prove(tx); err != nil {
			return err
		}
		quizzes := map[string]Quiz{}
		return records(tx, func(bucket, key, record []byte) error {
			if !isSealed(tx) {
				found.Unsealed++
			}
			return found.count(tx, quizzes, bucket, key, record)
		})
	}))
	return found, err
}

// count reads one record; the quizzes come before their papers.
func (f *Checked) count(tx *bbolt.Tx, quizzes map[string]Quiz, bucket, key, record []byte) error {
	switch {
	case slices.Equal(bucket, quizzesBucket):
		var q Quiz
		if err := decode(tx, bucket, key, record, &q); err != nil {
			return err
		}
		quizzes[q.ID] = q
		f.Quizzes++
	case slices.Equal(bucket, classesBucket):
		var codes []string
		return decode(tx, bucket, key, record, &codes)
	default:
		var p Paper
		if err := decode(tx, bucket, key, record, &p); err != nil {
			return err
		}
		if quiz, known := quizzes[p.Quiz]; !known || p.fits(quiz) != nil {
			return unreadable(bucket, key)
		}
		if slices.Equal(bucket, papersBucket) {
			f.Papers++
		} else {
			f.Earlier++
		}
	}
	return nil
}
