package bank_test

import (
	"encoding/binary"
	"fmt"
	"slices"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/bank/store"
	"evenhand/testdata/formats"
)

// The places of revisions after merges, as they are kept: under ID and revision the place in nanoseconds since 1970
// as a varint, then a byte each for: before all changes, by a person, made while another was made elsewhere.
func TestPlacesAsTheyAreKept(t *testing.T) {
	team, laptop, id := twoBanks(t)
	hour := func(n int) time.Time { return monday.Add(time.Duration(n) * time.Hour) }
	revise := func(b *bank.Bank, by string, at time.Time, change func(*bank.Item) error) {
		t.Helper()
		_, err := b.Revise(id, by, "seen", at, change)
		must(t, err)
	}
	revise(team, "MK", hour(1), noted("with cubes"))
	revise(laptop, "SV", hour(2), noted("with counters"))
	mustEqual(t, len(mustMergeOpen(t, team, laptop).Apart), 1)
	mustMergeOpen(t, laptop, team)
	revise(team, "MK", hour(3), noted("with both"))
	revise(laptop, "SV", hour(4), measured)
	mustEqual(t, len(mustMergeOpen(t, team, laptop).Apart), 0)

	at := func(hours int) int64 { return hour(hours).UnixNano() }
	want := []string{
		fmt.Sprint("1: ", at(0), " [1 1 0]"),
		fmt.Sprint("2: ", at(1), " [0 1 1]"),
		fmt.Sprint("3: ", at(2), " [0 1 1]"),
		fmt.Sprint("4: ", at(2)+1, " [0 0 0]"), // worked out from the third
		fmt.Sprint("5: ", at(3), " [0 1 0]"),   // settled it
	}
	var got []string
	must(t, team.Store().View(t.Context(), func(r store.Reader) error {
		got = nil
		for e, err := range r.Scan("places", store.Range{}) {
			must(t, err)
			place, n := binary.Varint(e.Value)
			got = append(got, fmt.Sprint(binary.BigEndian.Uint32(e.Key[16:]), ": ", place, " ", e.Value[n:len(e.Value)-4]))
		}
		return nil
	}))
	if !slices.Equal(got, want) {
		t.Errorf("kept\n%v\nwant\n%v", got, want)
	}
	apart, _, err := team.Conflicts()
	must(t, err)
	if len(apart) > 0 {
		t.Errorf("settled, yet told of: %v", apart)
	}
}

// Each field that is kept as JSON has a name of its own there.
func TestWhatIsKeptIsNamed(t *testing.T) {
	unnamed := formats.Unnamed(bank.Plan{}, bank.Quiz{}, bank.QuizItem{}, bank.List{}, bank.ListRow{}, bank.Table{}, bank.Review{})
	if len(unnamed) > 0 {
		t.Errorf("kept under the names of the program: %v", unnamed)
	}
}
