package sheet

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"evenhand/standards/task"
)

// columnTask draws a sum of two to four numbers or a difference.
func columnTask(t *rapid.T) task.Sentence {
	number := rapid.IntRange(1, 999)
	var s task.Sentence
	var err error
	if rapid.Bool().Draw(t, "subtract") {
		a, b := number.Draw(t, "a"), number.Draw(t, "b")
		s, err = task.NewSubtraction(2, max(a, b), min(a, b))
	} else {
		addends := rapid.SliceOfN(number, 2, 4).Draw(t, "addends")
		s, err = task.NewAddition(len(addends), addends...)
	}
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// readRows reads the digits back by height and by place: the middle of each
// answer box is a place.
func readRows(t *rapid.T, r *recorder) (rows, notes []int) {
	var places []float64
	for _, box := range r.rects {
		if box.h == boxHeight {
			places = append(places, box.at.x+box.w/2)
		}
	}
	slices.Sort(places)
	slices.Reverse(places)
	values := map[float64]int{}
	noted := make([]int, len(places))
	var heights []float64
	for _, text := range r.texts {
		place := slices.IndexFunc(places, func(x float64) bool { return math.Abs(x-text.at.x) < 1e-6 })
		digit, err := strconv.Atoi(text.s)
		if err != nil {
			continue // the sign
		}
		if place < 0 {
			t.Fatalf("%q stands in no place", text.s)
		}
		if text.size < 5 {
			noted[place] = digit
			continue
		}
		if !slices.Contains(heights, text.at.y) {
			heights = append(heights, text.at.y)
		}
		values[text.at.y] += digit * int(math.Pow10(place))
	}
	slices.Sort(heights)
	for _, y := range heights {
		rows = append(rows, values[y])
	}
	return rows, noted
}

func TestEveryDigitStandsInItsPlace(t *testing.T) {
	for _, l := range []task.Look{task.LookColumn, task.LookFrame} {
		rapid.Check(t, func(t *rapid.T) {
			s := columnTask(t)
			for _, key := range []bool{false, true} {
				k := testKit(t, key)
				d, ok := looks[l].draw(k, s)
				if !ok {
					t.Fatalf("%s has no %s", s, l)
				}
				r := &recorder{face: k.face}
				d.paint(r, point{})
				want := slices.Clone(s.Operands())
				if key {
					want = append(want, s.Result())
				}
				// A result of 0 still has its digit in the box, so no row is ever empty.
				if got, _ := readRows(t, r); !slices.Equal(got, want) {
					t.Fatalf("%s is drawn as %v, want %v", s, got, want)
				}
			}
		})
	}
}

// Legendre and Kummer: what is carried in all is (sum of the addends' digits less the
// digits of the sum) / 9. For a difference, the rewritten top number is worth as
// much as the number itself, and no column is too small.
func TestRegroupedDigitsOnTheKey(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := columnTask(t)
		k := testKit(t, true)
		d, _ := column(k, s)
		r := &recorder{face: k.face}
		d.paint(r, point{})
		_, notes := readRows(t, r)
		if s.IsAddition() {
			carried := 0
			for _, n := range notes {
				carried += n
			}
			digits := -digitSum(s.Result())
			for _, n := range s.Operands() {
				digits += digitSum(n)
			}
			if carried != digits/9 {
				t.Fatalf("%s carries %d, want %d", s, carried, digits/9)
			}
			return
		}
		checkTakenApart(t, s, r)
	})
}

func checkTakenApart(t *rapid.T, s task.Sentence, r *recorder) {
	notes := takenApart(s.Terms[0], s.Terms[1], len(strconv.Itoa(s.Terms[0])))
	worth, place := 0, 1
	for i, a, b := 0, s.Terms[0], s.Terms[1]; i < len(notes); i, a, b = i+1, a/10, b/10 {
		top := a % 10
		if notes[i] != "" {
			top, _ = strconv.Atoi(notes[i])
			if !slices.Contains(r.words(), notes[i]) {
				t.Fatalf("%s: the key lacks the rewritten %s", s, notes[i])
			}
		}
		if top < b%10 || top > 19 {
			t.Fatalf("%s: place %d has %d to take %d from", s, i, top, b%10)
		}
		worth += top * place
		place *= 10
	}
	if worth != s.Terms[0] {
		t.Fatalf("%s: the rewritten top number is worth %d", s, worth)
	}
}

func digitSum(n int) int {
	sum := 0
	for ; n > 0; n /= 10 {
		sum += n % 10
	}
	return sum
}

// The boxes for regrouping stand in every sum, so that they never tell whether it regroups.
func TestBoxesTellNothing(t *testing.T) {
	boxes := func(asked string) int { return len(recordText(t, false, asked, task.LookColumn).rects) }
	if with, without := boxes("27 + 35 = ?"), boxes("21 + 35 = ?"); with != without {
		t.Errorf("%d boxes with regrouping, %d without", with, without)
	}
	if with, without := boxes("81 - 38 = ?"), boxes("88 - 31 = ?"); with != without {
		t.Errorf("%d boxes with regrouping, %d without", with, without)
	}
}
