package results

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"fmt"
	"slices"
	"time"

	"evenhand/bank/lineage"
	"evenhand/bank/store"
)

// Merged says what a merge of marks brought in.
type Merged struct {
	From    string   `json:"from"`
	Quizzes int      `json:"quizzes"` // that had no papers here
	Papers  int      `json:"papers"`  // of pupils who had none of that quiz here
	Changed int      `json:"changed"` // papers that were marked again there
	Apart   []string `json:"apart"`   // papers that were marked differently in both, in words
	Pupils  []string `json:"pupils"`  // codes that were in no class list here, with their class

	Forgotten      []string `json:"forgotten"`       // pupils who were forgotten here: their results stayed out
	ForgottenThere []string `json:"forgotten_there"` // pupils who were forgotten there: their results stay here
}

// NothingMerged is a merge of marks that aren't there.
func NothingMerged(from string) Merged {
	return Merged{From: from, Apart: []string{}, Pupils: []string{}, Forgotten: []string{}, ForgottenThere: []string{}}
}

// MergeOptions say how to merge marks.
type MergeOptions struct {
	Forgotten bool // bring in what the other has of pupils who were forgotten here, too
}

// marksMerger merges the marks from into the marks into.
type marksMerger struct {
	into, from *Store
	out        forgotten       // whose results stay out
	came       map[string]bool // pupils of whom papers came
	options    MergeOptions
	told       *Merged
}

// Merge brings in all papers that other marks hold, with their earlier markings. The same
// laws hold as for banks: no order and no repetition makes a difference. Of a paper that was
// marked in both, the later marking stands and all others are earlier ones. Pupils who were
// forgotten here stay forgotten, unless the options say otherwise; who was forgotten only there stays here,
// as nothing is removed unasked. It is done quiz by quiz; interrupted, it is finished by doing it again.
func (s *Store) Merge(other *Store, o MergeOptions) (m Merged, err error) {
	m = NothingMerged(other.Path())
	out, err := s.forgottenIn()
	if err != nil {
		return m, err
	}
	there, err := other.forgottenIn()
	if err != nil {
		return m, err
	}
	held, err := s.held(there)
	if err != nil {
		return m, err
	}
	m.ForgottenThere = append(m.ForgottenThere, held...)
	g := &marksMerger{into: s, from: other, out: out, came: map[string]bool{}, options: o, told: &m}
	quizzes, err := other.Quizzes()
	if err != nil {
		return m, err
	}
	for _, quiz := range quizzes {
		if err := g.quiz(quiz); err != nil {
			return m, err
		}
	}
	if err := g.classes(); err != nil {
		return m, err
	}
	slices.Sort(m.Forgotten)
	m.Forgotten = slices.Compact(m.Forgotten)
	return m, nil
}

// classes merges the class lists. A pupil who was forgotten comes in with papers only.
func (g *marksMerger) classes() error {
	classes := map[string][]string{}
	err := g.from.view(func(r store.Reader) error {
		clear(classes)
		for e, err := range r.Scan(classesBucket, store.Range{}) {
			if err != nil {
				return err
			}
			var codes []string
			if err := decode(r, classesBucket, e.Key, e.Value, &codes); err != nil {
				return err
			}
			classes[string(bytes.TrimSuffix(e.Key, []byte{0}))] = codes
		}
		return nil
	})
	if err != nil {
		return err
	}
	m := g.told
	stayed := slices.Clone(m.Forgotten)
	return g.into.update(func(w store.Writer) error {
		m.Pupils, m.Forgotten = []string{}, slices.Clone(stayed)
		for class, codes := range classes {
			var here []string
			if _, err := get(w, classesBucket, key(class), &here); err != nil {
				return err
			}
			var come []string
			for _, code := range codes {
				switch {
				case slices.Contains(here, code):
				case !g.options.Forgotten && g.out.has(code) && !g.came[code]:
					m.Forgotten = append(m.Forgotten, code)
				default:
					come = append(come, code)
					m.Pupils = append(m.Pupils, nameIn(code, class))
				}
			}
			if err := enrol(w, class, come); err != nil {
				return err
			}
			if len(here) == 0 || slices.Equal(here, codes) {
				continue
			}
			if err := sortEnrolled(w, class); err != nil { // neither's order is the other's
				return err
			}
		}
		slices.Sort(m.Pupils)
		return nil
	})
}

func nameIn(pupil, class string) string {
	if class == "" {
		return pupil
	}
	return pupil + " of " + class
}

// quiz merges all papers of a quiz.
func (g *marksMerger) quiz(quiz Quiz) error {
	standing, err := g.from.Papers(quiz.ID)
	if err != nil {
		return err
	}
	m := g.told
	var histories [][]Paper
	for _, p := range standing {
		history, err := g.from.History(quiz.ID, p.Class, p.Pupil)
		if err != nil {
			return err
		}
		if !g.options.Forgotten && g.out.papersOut(history[0]) {
			m.Forgotten = append(m.Forgotten, p.Pupil)
			continue
		}
		g.came[p.Pupil] = true
		histories = append(histories, history)
	}
	before := *m
	return g.into.update(func(w store.Writer) error {
		*m = before // the update may be tried again
		var here Quiz
		known, err := get(w, quizzesBucket, key(quiz.ID), &here)
		if err != nil {
			return err
		}
		if !known {
			m.Quizzes++
		}
		if !known || quiz.Title < here.Title { // all else of it follows from its ID
			if err := put(w, quizzesBucket, key(quiz.ID), quiz); err != nil {
				return err
			}
		}
		for _, theirs := range histories {
			if g.options.Forgotten {
				if err := comeBack(w, theirs[0].Pupil); err != nil {
					return err
				}
			}
			if err := m.paper(w, quiz, theirs); err != nil {
				return err
			}
		}
		return nil
	})
}

// paper merges the markings of one paper.
func (m *Merged) paper(w store.Writer, quiz Quiz, theirs []Paper) error {
	now := theirs[len(theirs)-1]
	at := key(quiz.ID, now.Class, now.Pupil)
	ours, err := historyOf(w, at)
	if err != nil {
		return err
	}
	next := theirs
	switch {
	case len(ours) == 0:
		m.Papers++
	case slices.EqualFunc(ours, theirs, equalPapers):
		return nil
	default:
		joined, both := lineage.Join(paperLine(ours), paperLine(theirs))
		next = make([]Paper, len(joined))
		for i, e := range joined {
			next[i] = e.Value
			next[i].Revision, next[i].At = i+1, time.Unix(0, e.Place).UTC()
		}
		if slices.EqualFunc(ours, next, equalPapers) {
			return nil
		}
		if stands := next[len(next)-1]; both && !(ours[len(ours)-1].same(stands) && now.same(stands)) {
			m.Apart = append(m.Apart, fmt.Sprintf("%s, %s: marked by %s on %s, which stands",
				quiz.Name(), nameIn(now.Pupil, now.Class), stands.By, stands.At.Format(time.DateOnly)))
		} else if len(next) > len(ours) {
			m.Changed++
		}
	}
	for _, p := range next[:len(next)-1] {
		revision := binary.BigEndian.AppendUint32(slices.Clone(at), uint32(p.Revision))
		if err := put(w, earlierBucket, revision, p); err != nil {
			return err
		}
	}
	return put(w, papersBucket, at, next[len(next)-1])
}

// historyOf reads the markings of the paper under a key, the one that stands last.
func historyOf(r store.Reader, at []byte) (list []Paper, err error) {
	for _, bucket := range []string{earlierBucket, papersBucket} {
		for e, err := range r.Scan(bucket, store.Prefix(at)) {
			if err != nil {
				return nil, err
			}
			var p Paper
			if err := decode(r, bucket, e.Key, e.Value, &p); err != nil {
				return nil, err
			}
			list = append(list, p)
		}
	}
	return list, nil
}

func equalPapers(a, b Paper) bool {
	return a.same(b) && a.Revision == b.Revision && a.By == b.By && a.At.Equal(b.At)
}

// paperLine is the markings as package lineage joins them.
func paperLine(papers []Paper) lineage.Line[Paper] {
	l := make(lineage.Line[Paper], len(papers))
	for i, p := range papers {
		said := p
		said.Revision, said.At = 0, time.Time{}
		body, _ := json.Marshal(said) // it was read from JSON
		l[i] = lineage.Entry[Paper]{Value: p, Body: string(body), At: p.At.UnixNano(), Human: true}
	}
	l.Places()
	return l
}
