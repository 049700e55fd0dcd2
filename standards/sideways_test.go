package standards_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenhand/standards/task"
)

// A task with its numbers made larger by a ten is no easier, whatever it asks: the problem-size
// effect (Groen & Parkman 1972, order only). Doubles, tens and sums past 100 are apart from
// it, as they are learnt apart.
func TestATenMoreIsNoEasier(t *testing.T) {
	asks := []string{
		"%[1]d + %[2]d = ?", "%[1]d + ? = %[3]d", "? + %[2]d = %[3]d", "%[3]d - %[1]d = ?", "%[3]d - %[2]d = ?", "%[3]d - ? = %[2]d",
		"? - %[1]d = %[2]d", "%[1]d + %[2]d = %[2]d + ?", "true or false: %[3]d - %[1]d = %[2]d",
		"story add-to result-unknown: %[1]d + %[2]d = ?, books, Lin", "story take-from result-unknown: %[3]d - %[2]d = ?, books, Lin",
		"story add-to start-unknown: ? + %[2]d = %[3]d, books, Lin", "story compare difference-unknown: %[3]d - %[2]d = ?, books, Lin, Kofi",
		"story compare bigger-unknown fewer: %[1]d + %[2]d = ?, books, Lin, Kofi", "story take-from result-unknown: %[3]d - %[2]d = ?, rope, Lin",
		"story put-together addend-unknown: %[1]d + ? = %[3]d, cents, Lin", "story two-step: %[1]d + %[2]d + 2 = ?, books, Lin",
		"story two-step: %[1]d + %[2]d - 2 = ?, books, Lin",
	}
	rapid.Check(t, func(t *rapid.T) {
		ask := rapid.SampledFrom(asks).Draw(t, "ask")
		a, b := rapid.IntRange(2, 85).Draw(t, "a"), rapid.IntRange(2, 85).Draw(t, "b")
		for _, special := range []bool{a+b > 85, a%10 == 0, b%10 == 0, (a+b)%10 == 0, a == b, a+10 == b, a-b == 1, b-a == 1, a+10-b == 1, b-a-10 == 1} {
			if special {
				t.Skip("a double, a ten, or past 100")
			}
		}
		say := func(a int) string { return fmt.Sprintf(ask, a, b, a+b) }
		if few, more := onScale(upTo(say(a))), onScale(upTo(say(a+10))); more < few {
			t.Errorf("%s (%v) is easier than %s (%v)", upTo(say(a+10)), more, upTo(say(a)), few)
		}
	})
}

// upTo cuts what fmt says of numbers that a pattern has no place for.
func upTo(text string) string {
	text, _, _ = strings.Cut(text, "%!")
	return text
}

// Between an answer that is seen by counting and one that is worked in columns lies no cliff:
// with one more step to count a task is harder by less than a logit, and never easier (common
// practice).
func TestNoCliffBetweenCountingAndColumns(t *testing.T) {
	for _, from := range []int{17, 20, 52, 61, 100, 305, 503, 1000} {
		for taken := 1; taken < 9; taken++ {
			one, more := from-taken, from-taken-1
			if one%10 == 0 || more%10 == 0 || task.SubtractionRegroups(from, taken) != task.SubtractionRegroups(from, taken+1) {
				continue // a ten left is seen without counting
			}
			a, b := fmt.Sprintf("%d - %d = ?", from, taken), fmt.Sprintf("%d - %d = ?", from, taken+1)
			double := 2*(taken+1) == from || 2*taken == from
			if gap := onScale(b) - onScale(a); !double && (gap < 0 || gap > 1000) {
				t.Errorf("%s (%v) is harder than %s (%v) by %v", b, onScale(b), a, onScale(a), gap)
			}
		}
	}
}

// What is right here is common practice, as a teacher of kindergarten to grade 2 would order
// tasks of different skills; where a standard says that one comes a year before the other, it
// is the Common Core State Standards for Mathematics (2010).
func TestOrderBetweenSkills(t *testing.T) {
	easier(t, "K.OA.A.2 before 1.OA.C.6, facts within 10 before those past it", [][2]string{
		{"4 + 3 = ?", "7 + 5 = ?"}, {"9 - 4 = ?", "19 - 4 = ?"}, {"10 - 4 = ?", "11 - 4 = ?"}, {"6 + 4 = ?", "6 + ? = 10"},
		{"9 + 1 = ?", "9 + ? = 10"}, {"6 + ? = 10", "6 + ? = 12"}, {"count on 3 from 8", "8 + 6 = ?"}, {"picture of 5 + 3", "5 + 3 = ?"},
	})
	easier(t, "Woods, Resnick & Groen (1975), from memory: doubles taken apart are known", [][2]string{
		{"10 - 5 = ?", "10 - 4 = ?"}, {"14 - 7 = ?", "14 - 6 = ?"}, {"18 - 9 = ?", "17 - 9 = ?"}, {"8 + ? = 16", "9 + ? = 16"},
	})
	easier(t, "the same numbers bare are no harder than in a story, and small ones easier than large ones", [][2]string{
		{"5 + 3 = ?", "story add-to result-unknown: 5 + 3 = ?, shells, Mia"}, {"12 - 5 = ?", "story take-from result-unknown: 12 - 5 = ?, shells, Mia"},
		{"60 - 25 = ?", "story take-from result-unknown: 60 - 25 = ?, cents, Mia"},
		{"story take-from result-unknown: 17 - 8 = ?, rope, Leo", "story take-from result-unknown: 62 - 25 = ?, rope, Leo"},
		{"story two-step: 3 + 2 + 3 = ?, books, Lin", "story two-step: 51 + 22 + 13 = ?, books, Lin"},
		{"story put-together both-unknown: 9 = ? + ?, books, Lin", "story put-together both-unknown: 52 = ? + ?, books, Lin"},
	})
	easier(t, "Fuson (1992), from memory: taking away is harder than adding", [][2]string{
		{"54 + 15 = ?", "87 - 34 = ?"}, {"47 + 36 = ?", "83 - 47 = ?"}, {"347 + 128 = ?", "475 - 128 = ?"}, {"54 + 10 = ?", "54 - 10 = ?"},
	})
	easier(t, "K.CC.A.1 before 2.NBT.A.2, 1.NBT before 2.NBT", [][2]string{
		{"10, 20, ?, 40", "48, 58, ?, 78"}, {"10, 20, ?, 40", "47 + 36 = ?"}, {"207, 208, ?, 210", "83 - 47 = ?"}, {"2 + 2 = ?", "98, 99, ?, 101"},
		{"20 - 10 = ?", "80 - 30 = ?"}, {"why 20 - 10", "why 80 - 30"}, {"47 = ? tens ? ones", "47 + 5 = ?"},
		{"47 = ? tens ? ones", "142 = ? hundreds ? tens ? ones"},
		{"18 = ? + ?", "142 = ? + ? + ?"}, {"47 ? 74", "347 ? 374"}, {"47 + 30 = ?", "why 47 + 30"}, {"why 47 + 30", "why 347 + 200"},
		{"10 more than 47 = ?", "100 more than 347 = ?"}, {"3 + 2 + 1 = ?", "25 + 17 + 36 = ?"}, {"write seven", "write 7 in words"},
		{"more: 5 or 8 dots", "5 ? 8"}, {"5 + 3 = ?", "5 + 3 - 2 = ?"}, {"5 + 4 - 2 = ?", "45 + 5 - 17 = ?"},
	})
	easier(t, "one number more to add or take away", [][2]string{
		{"12 + 23 = ?", "12 + 23 + 34 = ?"}, {"42 + 13 = ?", "11 + 12 + 13 = ?"}, {"27 + 36 = ?", "27 + 36 + 19 = ?"},
		{"58 - 23 = ?", "58 - 23 - 14 = ?"}, {"58 - 23 = ?", "58 - 23 + 41 = ?"}, {"12 + 23 + 34 = ?", "12 + 23 + 34 + 11 = ?"},
	})
	easier(t, "Lehrer (2003), from memory: a ruler not begun at 0 is harder", [][2]string{
		{"ruler cm 0 to 9 and 0 to 4: how much longer", "ruler cm 2 to 9 and 1 to 4: how much longer"},
		{"ruler cm 0 to 9 and 0 to 4: how much longer", "ruler cm 0 to 9 and 1 to 4: how much longer"},
	})
	easier(t, "the equal sign of larger numbers is no other one", [][2]string{
		{"8 + 3 = 3 + ?", "8 + 4 = 5 + ?"}, {"300 + 200 = 200 + ?", "40 + 30 = 50 + ?"}, {"45 - 35 = ?", "true or false: 45 - 35 = 10"},
		{"true or false: 5 + 3 = 8", "true or false: 45 - 35 = 10"}, {"300 + 200 = 200 + ?", "8 + 4 = 5 + ?"},
	})
	easier(t, "a clock alone and clocks to match, by the same steps", [][2]string{
		{"read 4:30", "match 4:05, 7:20, 11:40"}, {"match 4:00, 7:00, 11:00", "read 4:30"}, {"match 4:05, 7:20, 11:40", "draw 4:05"}, {"read 4:00", "draw 4:00"},
	})
	easier(t, "shapes, shares, lines, money and data", [][2]string{
		{"name shape: square", "sides of: hexagon at 15"}, {"name shape: triangle", "draw shape: hexagon"}, {"cut: circle into 2", "cut: circle into 4"},
		{"equal shares: circle pie 2", "larger share: circle pie 2 or circle pie 4"}, {"40 + 30 = ?", "show 40 + 30 on line 0 to 100 by 10"},
		{"mark 7 on line 0 to 10 by 1", "mark 70 on line 0 to 100 by 10"}, {"blocks 6: how long", "ruler cm 0 to 6: how long"},
		{"ruler cm 0 to 7: how long", "ruler cm 2 to 9: how long"},
		{"bars 5, 8: which is longer", "bars 5, 8, 3: order from shortest"}, {"coins 10, 1, 1", "money $5, $1, 25, 10, 10"},
		{"squares 3 by 4", "squares 3 by 4 to draw"},
		{"tally chart cats 4, dogs 7, birds 2: how many dogs", "bar graph cats 4, dogs 7, birds 2, fish 5: how many more dogs than cats"},
		{"line plot cm 4: 2, 5: 3, 6: 1, 7: 1: how many 5", "line plot cm 4: 2, 5: 3, 6: 1, 7: 1: how much longer"}, {"where: circle above square", "read 4:00"},
	})
}
