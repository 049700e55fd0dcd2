package marks_test

import (
	"fmt"
	"path/filepath"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/import/marks"
)

// Law: the form proposed to a pupil stays when others come to the class, however and in
// whatever order; along the list by which a class was first seated the forms take turns.
func TestProposalsStay(t *testing.T) {
	folder, runs := t.TempDir(), 0
	rapid.Check(t, func(t *rapid.T) {
		runs++
		s, err := results.Open(filepath.Join(folder, fmt.Sprint(runs)), bank.Options{})
		if err != nil {
			t.Fatal(err)
		}
		defer s.Close()
		code := rapid.Custom(func(t *rapid.T) string { return fmt.Sprintf("P%02d", rapid.IntRange(1, 30).Draw(t, "number")) })
		proposed := map[string]string{}
		for round := range rapid.IntRange(1, 4).Draw(t, "rounds") {
			some := rapid.SliceOfNDistinct(code, 1, 8, rapid.ID[string]).Draw(t, "pupils")
			var seats []marks.Seat
			if rapid.Bool().Draw(t, "class set") {
				seats, err = marks.SeatsIn(s, onScreen(), "2A", some)
			} else if err = s.Enrol("2A", some...); err == nil {
				seats, err = marks.SeatsToMark(s, onScreen(), "2A", nil)
			}
			if err != nil {
				t.Fatal(err)
			}
			for i, seat := range seats {
				if before, known := proposed[seat.Pupil]; known && before != seat.Form {
					t.Fatalf("%s had form %s, and %s after others came", seat.Pupil, before, seat.Form)
				}
				proposed[seat.Pupil] = seat.Form
				if want := string("AB"[i%2]); round == 0 && seat.Form != want {
					t.Fatalf("seat %d has form %s, not %s", i, seat.Form, want)
				}
			}
			if codes, _ := s.Pupils("2A"); !slices.IsSorted(codes) || len(codes) != len(proposed) {
				t.Fatalf("the class is %v, the proposals %v", codes, proposed)
			}
		}
	})
}
