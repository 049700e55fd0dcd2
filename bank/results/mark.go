package results

import (
	"cmp"
	"encoding/binary"
	"slices"
	"time"

	"evenhand/bank/store"
)

// Tally counts what became of papers that were marked.
type Tally struct{ New, Changed, Same int }

// Mark keeps papers of a quiz, all or, on an error, none. A paper that was marked
// before is replaced and kept as an earlier marking; when nothing is different it
// stays as it was. by is who marked them. Quiz, Revision, By and At of the papers
// are filled in here, and their pupils enrolled in their class.
func (s *Store) Mark(quiz Quiz, papers []Paper, by string, at time.Time) (tally Tally, err error) {
	err = s.update(func(w store.Writer) error {
		tally = Tally{}
		var before Quiz
		if _, err := get(w, quizzesBucket, key(quiz.ID), &before); err != nil {
			return err
		}
		quiz := quiz.With(before.Forms)
		if err := put(w, quizzesBucket, key(quiz.ID), quiz); err != nil {
			return err
		}
		for _, p := range papers {
			p.Quiz, p.By, p.At = quiz.ID, by, at.UTC().Truncate(time.Second)
			if err := tally.keep(w, quiz, p); err != nil {
				return err
			}
		}
		return nil
	})
	return tally, err
}

// keep writes one paper.
func (t *Tally) keep(w store.Writer, quiz Quiz, p Paper) error {
	if err := p.fits(quiz); err != nil {
		return err
	}
	if err := enrol(w, p.Class, []string{p.Pupil}); err != nil {
		return err
	}
	at := key(p.Quiz, p.Class, p.Pupil)
	var before Paper
	marked, err := get(w, papersBucket, at, &before)
	switch {
	case err != nil:
		return err
	case marked && before.same(p):
		t.Same++
		return nil
	case marked:
		t.Changed++
		if err := put(w, earlierBucket, earlierKey(at, before.Revision), before); err != nil {
			return err
		}
	default:
		t.New++
	}
	p.Revision = before.Revision + 1
	return put(w, papersBucket, at, p)
}

// earlierKey is where an earlier marking of a paper is kept.
func earlierKey(paper []byte, revision int) []byte {
	return binary.BigEndian.AppendUint32(slices.Clone(paper), uint32(revision))
}

// Quizzes lists the quizzes that have papers, by week and then by title.
func (s *Store) Quizzes() (quizzes []Quiz, err error) {
	quizzes, err = list[Quiz](s, quizzesBucket, nil)
	slices.SortStableFunc(quizzes, func(a, b Quiz) int {
		return cmp.Or(cmp.Compare(a.Week, b.Week), cmp.Compare(a.Title, b.Title), cmp.Compare(a.ID, b.ID))
	})
	return quizzes, err
}

// All reads all quizzes with all their papers.
func (s *Store) All() (quizzes []Quiz, papers []Paper, err error) {
	if quizzes, err = s.Quizzes(); err != nil {
		return nil, nil, err
	}
	for _, quiz := range quizzes {
		some, err := s.Papers(quiz.ID)
		if err != nil {
			return nil, nil, err
		}
		papers = append(papers, some...)
	}
	return quizzes, papers, nil
}

// Papers lists the papers of a quiz as they stand, by class and pupil.
func (s *Store) Papers(quiz string) ([]Paper, error) { return list[Paper](s, papersBucket, key(quiz)) }

// History lists all markings of a pupil's paper, the first one first and the one
// that stands last.
func (s *Store) History(quiz, class, pupil string) ([]Paper, error) {
	earlier, err := list[Paper](s, earlierBucket, key(quiz, class, pupil))
	if err != nil {
		return nil, err
	}
	now, err := list[Paper](s, papersBucket, key(quiz, class, pupil))
	return append(earlier, now...), err
}

// list reads the records of a bucket whose keys begin with the prefix.
func list[T any](s *Store, bucket string, prefix []byte) (values []T, err error) {
	err = s.view(func(r store.Reader) error {
		values = nil
		for e, err := range r.Scan(bucket, store.Prefix(prefix)) {
			if err != nil {
				return err
			}
			var value T
			if err := decode(r, bucket, e.Key, e.Value, &value); err != nil {
				return err
			}
			values = append(values, value)
		}
		return nil
	})
	return values, err
}
