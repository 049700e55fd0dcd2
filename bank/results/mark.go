package results

import (
	"bytes"
	"cmp"
	"encoding/binary"
	"slices"
	"time"

	"go.etcd.io/bbolt"
)

// Tally counts what became of papers that were marked.
type Tally struct{ New, Changed, Same int }

// Mark keeps papers of a quiz, all or, on an error, none. A paper that was marked
// before is replaced and kept as an earlier marking; when nothing is different it
// stays as it was. by is who marked them. Quiz, Revision, By and At of the papers
// are filled in here, and their pupils enrolled in their class.
func (s *Store) Mark(quiz Quiz, papers []Paper, by string, at time.Time) (tally Tally, err error) {
	err = s.update(func(tx *bbolt.Tx) error {
		tally = Tally{}
		if err := put(tx, quizzesBucket, key(quiz.ID), quiz); err != nil {
			return err
		}
		for _, p := range papers {
			p.Quiz, p.By, p.At = quiz.ID, by, at.UTC().Truncate(time.Second)
			if err := tally.keep(tx, quiz, p); err != nil {
				return err
			}
		}
		return nil
	})
	return tally, err
}

// keep writes one paper.
func (t *Tally) keep(tx *bbolt.Tx, quiz Quiz, p Paper) error {
	if err := p.fits(quiz); err != nil {
		return err
	}
	if err := enrol(tx, p.Class, []string{p.Pupil}); err != nil {
		return err
	}
	at := key(p.Quiz, p.Class, p.Pupil)
	var before Paper
	marked, err := get(tx, papersBucket, at, &before)
	switch {
	case err != nil:
		return err
	case marked && before.same(p):
		t.Same++
		return nil
	case marked:
		t.Changed++
		revision := binary.BigEndian.AppendUint32(slices.Clone(at), uint32(before.Revision))
		if err := put(tx, earlierBucket, revision, before); err != nil {
			return err
		}
	default:
		t.New++
	}
	p.Revision = before.Revision + 1
	return put(tx, papersBucket, at, p)
}

// Quizzes lists the quizzes that have papers, by week and then by title.
func (s *Store) Quizzes() (quizzes []Quiz, err error) {
	err = s.each(quizzesBucket, nil, func(read func(any) error) error {
		var q Quiz
		err := read(&q)
		quizzes = append(quizzes, q)
		return err
	})
	slices.SortStableFunc(quizzes, func(a, b Quiz) int {
		return cmp.Or(cmp.Compare(a.Week, b.Week), cmp.Compare(a.Title, b.Title), cmp.Compare(a.ID, b.ID))
	})
	return quizzes, err
}

// Papers lists the papers of a quiz as they stand, by class and pupil.
func (s *Store) Papers(quiz string) ([]Paper, error) { return s.papers(papersBucket, key(quiz)) }

// History lists all markings of a pupil's paper, the first one first and the one
// that stands last.
func (s *Store) History(quiz, class, pupil string) ([]Paper, error) {
	earlier, err := s.papers(earlierBucket, key(quiz, class, pupil))
	if err != nil {
		return nil, err
	}
	now, err := s.papers(papersBucket, key(quiz, class, pupil))
	return append(earlier, now...), err
}

func (s *Store) papers(bucket, prefix []byte) (papers []Paper, err error) {
	err = s.each(bucket, prefix, func(read func(any) error) error {
		var p Paper
		err := read(&p)
		papers = append(papers, p)
		return err
	})
	return papers, err
}

// each goes through the records of a bucket whose keys begin with the prefix.
func (s *Store) each(bucket, prefix []byte, visit func(read func(value any) error) error) error {
	return s.view(func(tx *bbolt.Tx) error {
		c := tx.Bucket(bucket).Cursor()
		for k, v := c.Seek(prefix); k != nil && bytes.HasPrefix(k, prefix); k, v = c.Next() {
			read := func(value any) error { return decode(tx, bucket, k, v, value) }
			if err := visit(read); err != nil {
				return err
			}
		}
		return nil
	})
}
