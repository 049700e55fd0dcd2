package results

import "evenhand/bank/store"

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
	problems, err := s.store.Inspect(s.ctx)
	if err != nil {
		return found, err
	}
	for _, problem := range problems {
		return found, s.named(damage{problem})
	}
	err = s.view(func(r store.Reader) error {
		found = Checked{}
		if err := prove(r); err != nil {
			return err
		}
		sealed, err := isSealed(r)
		if err != nil {
			return err
		}
		quizzes := map[string]Quiz{}
		return records(r, func(bucket string, key, record []byte) error {
			if !sealed {
				found.Unsealed++
			}
			return found.count(r, quizzes, bucket, key, record)
		})
	})
	return found, err
}

// count reads one record; the quizzes come before their papers.
func (f *Checked) count(r store.Reader, quizzes map[string]Quiz, bucket string, key, record []byte) error {
	switch {
	case bucket == quizzesBucket:
		var q Quiz
		if err := decode(r, bucket, key, record, &q); err != nil {
			return err
		}
		quizzes[q.ID] = q
		f.Quizzes++
	case bucket == classesBucket:
		var codes []string
		return decode(r, bucket, key, record, &codes)
	default:
		var p Paper
		if err := decode(r, bucket, key, record, &p); err != nil {
			return err
		}
		if quiz, known := quizzes[p.Quiz]; !known || p.fits(quiz) != nil {
			return unreadable(bucket, key)
		}
		if bucket == papersBucket {
			f.Papers++
		} else {
			f.Earlier++
		}
	}
	return nil
}
