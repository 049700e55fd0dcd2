package sheet

import (
	"regexp"
	"strings"
	"testing"

	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"
)

// Worked by hand: what is said in place of a picture.
func TestPicturesInWords(t *testing.T) {
	for _, c := range []struct {
		task string
		look task.Look
		want string
	}{
		{"47 + 36 = ?", task.LookColumn, "47 plus 36 equals blank."},
		{"47 ? 74", task.LookCompare, "Compare 47 and 74."},
		{"98, 99, ?, 101", task.LookSequence, "98, 99, blank, 101."},
		{"234 = ? hundreds ? tens ? ones", task.LookTensAndOnes,
			"square of a hundred, square of a hundred, stick of ten, stick of ten, stick of ten, dot, dot, dot, dot. " +
				"234 equals blank hundreds blank tens blank ones."},
		{"coins 25, 10, 1", task.LookCoins, "Count the money. Write how many cents. 25-cent coin, 10-cent coin, 1-cent coin."},
		{"read 7:25 pm", task.LookClockFace,
			"A clock face. The short hand is between the 7 and the 8. The long hand points to the 5. " +
				"What time is it? It is evening."},
		{"read 4:37", task.LookClockFace, "A clock face. The short hand is between the 4 and the 5. The long hand is 2 small marks past the 7. What time is it?"},
		{"83 - 47 = ?", task.LookHundredsChart, "83 minus 47 equals blank. A chart of the numbers from 1 to 120, with 83 in a frame."},
		{"marked line 0 to 50 by 10: 30", task.LookMarkedLine, "A number line. Its ticks: 0, 10, tick, the mark, tick, 50. What number is at the mark?"},
		{"bar graph cats 2, dogs 6, birds 1: how many more dogs than cats", task.LookBarGraph,
			"bar graph. cats: square, square. dogs: square, square, square, square, square; square. birds: square. " +
				"How many more dogs than cats are there?"},
		{"tally chart cats 4, dogs 7: how many dogs", task.LookTallyChart,
			"tally chart. cats: mark, mark, mark, mark. dogs: bundle of five, mark, mark. How many dogs are there?"},
		{"table cats 4, dogs 7: how many in all", task.LookTable, "A table: cats 4, dogs 7. How many pets are there in all?"},
		{"bar graph cats 4, dogs 7: draw", task.LookBarGraph, "A table: cats 4, dogs 7. Draw a bar for each number in the table."},
		{"things circles 2, stars 1: order from fewest", task.LookThings,
			"circle, circle, star. Number them from the fewest, 1, to the most: circles, stars."},
		{"bars 2, 3, 1: order from shortest", task.LookThreeBars,
			"Bars from one line. A: step, step. B: step, step, step. C: step. " +
				"Number the bars from the shortest, 1, to the longest, 3: A, B, C."},
		{"name shape: square at 45", task.LookShape,
			"What is this shape called? Closed, 4 straight sides of the same length, 4 square corners. " +
				"Answers to choose from: circle; triangle; square; hexagon."},
		{"sides of: triangle", task.LookShapeParts, "Going round the shape: side, side, side. How many sides does this shape have?"},
		{"join 2 half squares: hexagon, square, circle", task.LookJoinShapes,
			"The pieces are joined along full sides. Which shape can they make? " +
				"The pieces: half square, half square. A: hexagon; B: square; C: circle."},
		{"larger share: circle pie 2 or circle pie 4", task.LookLargerShare,
			"Both shapes are the same. Which gray share is larger, or are they the same size? " +
				"Left: a circle cut into 2 pieces from the middle, all as wide at the edge. " +
				"Right: a circle cut into 4 pieces from the middle, all as wide at the edge."},
		{"squares 2 by 3 to draw", task.LookSquares,
			"A rectangle with marks for its rows and columns. " +
				"Its rows, from the top: square, square, square; square, square, square. " +
				"Join the marks with lines to make equal squares. How many squares are there?"},
		{"where: circle behind square", task.LookWhere,
			"All of one shape is seen, square. It covers a part of the other, circle. " +
				"Where is the circle, seen from the square? " +
				"Answers to choose from: above; below; beside; in front of; behind."},
		{"money $5, 25, 10", task.LookBills, "Count the money. Write how many dollars and how many cents. 5-dollar bill, 25-cent coin, 10-cent coin."},
		{"equal addends of array 2 by 3", task.LookEqualAddends,
			"dot, dot, dot; dot, dot, dot. Add the rows. Write the number of each row, and how many in all. " +
				"blank plus blank equals blank."},
		{"array 2 by 3", task.LookArray, "Add the rows. Write how many dots in all. dot, dot, dot; dot, dot, dot."},
	} {
		k := testKit(t, false)
		if got := k.aloud(Question{Number: 1, Task: task.MustParse(c.task), Look: c.look}); got != c.want {
			t.Errorf("%s as %s is said as\n%q, want\n%q", c.task, c.look, got, c.want)
		}
	}
}

// Who only hears an item can tell it from every other: no two tasks with different keys sound alike. And
// what is heard is never the whole sentence with its answer, nor a time in digits where a clock is
// to be read.
func TestWordsInPlaceOfPicturesAreEnough(t *testing.T) {
	for _, skill := range standards.Catalogue() {
		made, err := generate.Make(generate.Request{Skill: skill.ID, Count: 30, Seed: 5})
		if err != nil {
			t.Fatal(err)
		}
		for _, lang := range []string{"en", "es"} {
			k := testKit(t, false)
			k.lang = lang
			heard := map[string]task.Task{}
			for _, asked := range made.Tasks {
				for _, l := range asked.Looks() {
					said := k.aloud(Question{Number: 1, Task: asked, Look: l})
					if other, ok := heard[string(l)+said]; ok && other.Key() != asked.Key() {
						t.Errorf("%s and %s as %s both sound like %q", other, asked, l, said)
					}
					heard[string(l)+said] = asked
					c, isClock := asked.(task.Clock)
					if isClock && c.Verb != task.Draw && l == task.LookClockFace && regexp.MustCompile(`[0-9]:[0-9]`).MatchString(said) {
						t.Errorf("%s as %s gives the time: %q", asked, l, said)
					}
					whole := strings.Replace(k.sentenceAloud(asked.String()), k.say(blankSaid), asked.Key(), 1)
					if strings.Contains(asked.String(), "?") && strings.Contains(said, whole) {
						t.Errorf("%s as %s gives the answer: %q", asked, l, said)
					}
				}
			}
		}
	}
}
