package results

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"slices"
	"time"

	"evenhand/bank"
	"evenhand/bank/store"
)

// That a pupil was forgotten is noted, so that marks of a colleague, who still has the papers, don't
// bring them back unseen. The note holds no code but a sum of it: only who has the code
// can ask whether it is there.

var forgottenKey = []byte("forgotten")

// forgotten tells when pupils were forgotten, by noteOf their codes.
type forgotten map[string]time.Time

func noteOf(pupil string) string {
	sum := sha256.Sum256([]byte("forgotten pupil " + pupil))
	return hex.EncodeToString(sum[:16])
}

// papersOut says whether a paper, by its first marking, is one of those that were forgotten. One that
// was marked later is of another pupil, who has the code now.
func (f forgotten) papersOut(first Paper) bool {
	at, ok := f[noteOf(first.Pupil)]
	return ok && !first.At.After(at)
}

func (f forgotten) has(pupil string) bool {
	_, ok := f[noteOf(pupil)]
	return ok
}

func readForgotten(r store.Reader) (forgotten, error) {
	f := forgotten{}
	sealed, err := r.Get(aboutBucket, forgottenKey)
	if sealed == nil || err != nil {
		return f, err
	}
	text, ok := bank.Unseal(sealKey(aboutBucket, forgottenKey), sealed)
	if !ok || json.Unmarshal(text, &f) != nil {
		return f, damaged("the note of pupils who were forgotten can't be read")
	}
	return f, nil
}

func (f forgotten) put(w store.Writer) error {
	text, err := json.Marshal(f)
	if err != nil {
		return err
	}
	return w.Put(aboutBucket, forgottenKey, bank.Seal(sealKey(aboutBucket, forgottenKey), text))
}

// forgottenIn is the note of a file.
func (s *Store) forgottenIn() (f forgotten, err error) {
	err = s.view(func(r store.Reader) error {
		f, err = readForgotten(r)
		return err
	})
	return f, err
}

// comeBack takes a pupil, whom a person brings back knowingly, out of the note.
func comeBack(w store.Writer, pupil string) error {
	f, err := readForgotten(w)
	if err != nil || !f.has(pupil) {
		return err
	}
	delete(f, noteOf(pupil))
	return f.put(w)
}

// held lists the pupils whose results are kept although another file says that they were forgotten before.
func (s *Store) held(there forgotten) (pupils []string, err error) {
	if len(there) == 0 {
		return nil, nil
	}
	_, papers, err := s.All()
	for _, p := range papers {
		if there.papersOut(p) && !slices.Contains(pupils, p.Pupil) {
			pupils = append(pupils, p.Pupil)
		}
	}
	slices.Sort(pupils)
	return pupils, err
}
