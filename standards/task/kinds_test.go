package task_test

import (
	"strings"
	"testing"

	"evenhand/standards/task"
)

func TestClassifierOfFurtherKinds(t *testing.T) {
	// Common Core State Standards for Mathematics (2010), its limits; the codes in short.
	for text, want := range map[string]string{
		"count 13": "K.CC.5", "count 8 scattered": "K.CC.5", "more: 5 or 8 dots": "K.CC.6", "pairs of 7": "K.OA.3", "marked line 0 to 20 by 1: 7": "2.MD.6",
		"line plot cm 4: 2, 5: 3, 6: 1, 7: 1: how many 5": "2.MD.9", "blocks 6: how long": "1.MD.2",
		"blocks 6 gaps, even, overlaps: which is right":  "1.MD.2",
		"blocks 4 long, 2 short in each: how many short": "2.MD.2", "bars 5, 8: which is taller": "K.MD.2",
		"bars 5, 8, 3: order from shortest": "1.MD.1", "bars 9, 6, 4: which is longer of a and c by b": "1.MD.1",
		"estimate bed": "2.MD.3", "tool for hallway": "2.MD.1",
		"ruler cm 2 to 9: how long": "2.MD.1", "ruler inches 0 to 5 and 0 to 2: how much longer": "2.MD.4",
		"things circles 4, squares 7, stars 2: how many stars":           "K.MD.3",
		"tally chart cats 4, dogs 7, birds 2: how many dogs":             "1.MD.4",
		"table cats 4, dogs 7, birds 2: how many in all":                 "1.MD.4",
		"bar graph cats 4, dogs 7, birds 2: how many dogs":               "1.MD.4",
		"bar graph cats 4, dogs 7, birds 2, fish 5: draw":                "2.MD.10",
		"picture graph cats 4, dogs 7, birds 2, fish 5: how many in all": "2.MD.10",
		"name shape: square at 45":                                       "K.G.2", "flat or solid: cone": "K.G.3", "sides of: hexagon": "K.G.4",
		"corners of: pentagon": "2.G.1", "faces of: cube": "K.G.4",
		"find every triangle: triangle, square, open triangle":  "1.G.1",
		"find every quadrilateral: square, triangle, trapezoid": "2.G.1",
		"find every solid: cube, square, cone":                  "K.G.3",
		"draw shape: triangle":                                  "K.G.5", "draw shape: 5 corners": "2.G.1",
		"make shape: hexagon from triangle": "K.G.6", "make shape: circle from quarter circle": "1.G.2",
		"make shape: hexagon from trapezoid made of triangle": "1.G.2", "join 2 half squares: hexagon, square, circle": "K.G.6",
		"equal shares: circle pie 2": "1.G.3", "equal shares: circle pie 3": "2.G.3",
		"name share: square corners 4": "1.G.3", "shares in all: rectangle mixed 4": "2.G.3",
		"find fourths: square crossed 4, square uneven down 4, square across 4": "1.G.3",
		"larger share: circle pie 2 or circle pie 4":                            "1.G.3",
		"larger share: square down 4 or square crossed 4":                       "2.G.3",
		"cut: circle into 4": "1.G.3", "cut: circle into 3": "2.G.3", "squares 3 by 4": "2.G.2",
		"where: circle above square": "K.G.1", "count out 7 of 12": "K.CC.5", "number 7 dots": "K.CC.4", "7 dots moved": "K.CC.4",
		"picture of 5 + 3": "K.OA.1", "draw dots for 8 - 3": "K.OA.1", "count on 3 from 8": "1.OA.5", "why 47 + 30": "1.NBT.4",
		"why 47 - 10": "1.NBT.5", "why 80 - 30": "1.NBT.6", "why 347 + 200": "2.NBT.7", "count back 3 from 11": "1.OA.5",
		"story put-together three-addends: 4 + 6 + 3 = ?, shells, Mia": "1.OA.2", "count 12 in a circle": "K.CC.5",
		"odd or even: 14 dots": "2.OA.3", "equal addends of 14": "2.OA.3",
		"equal addends of array 3 by 4": "2.OA.4", "money $5, $1, 25, 10, 10": "2.MD.8", "mark 70 on line 0 to 100 by 10": "2.MD.6",
		"show 40 + 30 on line 0 to 100 by 10": "2.MD.6",
		"write thirteen":                      "K.CC.3", "write one hundred eleven": "1.NBT.1",
		"write three hundred forty-two": "2.NBT.3", "write 12 in words": "2.NBT.3",
		"8 + 3 = 3 + ?": "1.OA.3", "2 + 6 + 4 = 2 + ?": "1.OA.3", "? + 5 + 3 = 8 + 2": "1.OA.3",
		"4 + 6 = 5 + ?": "1.OA.7", "8 - 3 = 4 + ?": "1.OA.7", "40 + 30 = 50 + ?": "2.NBT.5",
		"8 + ? = 11, 11 - 8 = ?": "1.OA.4", "true or false: 7 = 8 - 1": "1.OA.7",
		"true or false: 40 + 30 = 80": "2.NBT.5", "true or false: 400 + 30 = 430": "2.NBT.7",
		"odd or even: 14": "2.OA.3", "array 3 by 4": "2.OA.4", "coins 25, 10, 10, 5, 1": "2.MD.8",
	} {
		codes := task.MustParse(text).Codes()
		if len(codes) == 0 || codes[0].Short() != want {
			t.Errorf("%s: %v, want %s first", text, codes, want)
		}
	}
	if codes := task.MustParse("odd or even: 34").Codes(); len(codes) > 0 {
		t.Errorf("odd and even past 20 is given %v", codes)
	}
}

func TestMisstepsOfFurtherKinds(t *testing.T) {
	for _, row := range []struct{ task, answer, want string }{
		// Behr, Erlwanger & Nichols (1980), from memory: the equal sign read as "makes".
		{"true or false: 7 = 8 - 1", "false", "equal sign read as makes"},
		{"true or false: 4 + 1 = 5 + 2", "true", "number after the equal sign as result"},
		{"8 + 4 = ? + 5", "12", "number after the equal sign as result"},
		{"8 + 4 = ? + 5", "17", "worked with the numbers seen"},
		// The slips of the sentence that make a false one look true: Ashlock, worked through.
		{"true or false: 27 + 35 = 52", "true", "ten dropped"},
		{"true or false: 52 = 27 + 35", "true", "ten dropped"},
		// Gelman & Gallistel (1978) and Piaget (1952), from memory.
		{"count 13", "12", "one thing missed"}, {"count 13", "14", "one thing counted twice"}, {"count 13", "31", "teen turned around"},
		{"more: 6 or 6 dots", "right", "room compared"}, {"fewer: 6 or 6 dots", "left", "room compared"},
		// Byrge, Smith & Mix (2014): 642 written 600402 or 610042.
		{"write six hundred forty-two", "600402", "each part written out"}, {"write six hundred forty-two", "610042", "hundred written out"},
		// Common practice, no source.
		{"write thirteen", "31", "teen turned around"}, {"write thirteen", "30", "teen and ty mixed up"},
		{"write forty", "14", "teen and ty mixed up"}, {"write three hundred five", "35", "zero left out"},
		{"write 342 in words", "three four two", "digits named"},
		{"more: 5 or 8 dots", "left", "more and fewer mixed up"}, {"pairs of 7", "1 + 6, 6 + 1", "one pair turned around"},
		{"odd or even: 14", "odd", "first digit judged"}, {"odd or even: 7", "even", "odd and even mixed up"},
		{"array 3 by 4", "7", "rows and columns added"}, {"array 3 by 4", "8", "a row left out"},
		{"marked line 0 to 100 by 10: 70", "7", "ticks counted as ones"},
		{"marked line 0 to 100 by 10: 70", "80", "start counted"},
		{"marked line 0 to 100 by 10: 70", "60", "one tick missed"},
		// Lehrer (2003) and Carpenter & Lewis (1976), from memory; the rest worked by hand.
		{"line plot cm 4: 2, 5: 3, 6: 1, 7: 1: how many 5", "5", "number of marks for the length"},
		{"line plot cm 4: 2, 5: 3, 6: 1, 7: 1: how many 5", "1", "next sort read"},
		{"line plot cm 4: 2, 5: 3, 6: 1, 7: 1: how many longer than 4", "7", "the length itself counted too"},
		{"line plot cm 4: 2, 5: 3, 6: 1, 7: 1: how many longer than 4", "3", "only the next length"},
		{"line plot cm 4: 2, 5: 3, 6: 1, 7: 1: how many in all", "4", "lengths of the scale counted"},
		{"line plot cm 4: 2, 5: 3, 6: 1, 7: 1: how much longer", "7", "larger number given"},
		{"blocks 6 gaps, even, overlaps: which is right", "A", "gaps not seen"}, {"blocks 6 gaps, even, overlaps: which is right", "C", "overlaps not seen"},
		{"blocks 4 long, 2 short in each: how many short", "2", "longer unit taken for more"},
		{"blocks 4 long, 2 short in each: how many short", "4", "units taken for alike"},
		{"blocks 6: how long", "5", "one thing missed"},
		{"bars 5, 8: which is longer", "A", "longer and shorter mixed up"}, {"bars 9, 6, 4: which is longer of a and c by b", "C", "longer and shorter mixed up"},
		{"bars 5, 8, 3: order from shortest", "2, 1, 3", "longest first"}, {"bars 5, 8, 3: order from shortest", "1, 3, 2", "middle one exchanged"},
		{"estimate bed", "6 inches", "unit of another size"}, {"estimate bed", "60 feet", "number of another size"},
		{"tool for hallway", "ruler", "tool for another length"}, {"tool for key", "scale", "tool for weight"},
		// Lehrer (2003), from memory: the number at the end, and marks in place of spaces.
		{"ruler cm 2 to 9: how long", "9", "end of the bar read"},
		{"ruler cm 2 to 9: how long", "8", "marks counted, not spaces"},
		{"ruler inches 0 to 5 and 0 to 2: how much longer", "5", "larger number given"},
		// Worked by hand; Hudson (1983), from memory, for the larger number given.
		{"bar graph cats 4, dogs 7, birds 2: how many more dogs than cats", "7", "larger number given"},
		{"bar graph cats 4, dogs 7, birds 2: how many more dogs than cats", "11", "both put together"},
		{"bar graph cats 4, dogs 7, birds 2: how many cats", "7", "next sort read"},
		{"bar graph cats 4, dogs 7, birds 2: how many cats", "5", "one line off"},
		{"table cats 4, dogs 7, birds 2: how many in all", "11", "a sort left out"},
		{"tally chart cats 4, dogs 8, birds 2: how many dogs", "7", "bundle counted as four"},
		{"tally chart cats 4, dogs 8, birds 2: how many dogs", "4", "bundle counted as one"},
		{"table cats 4, dogs 7, birds 2: which has the most", "birds", "more and fewer mixed up"},
		{"things circles 4, squares 7, stars 2: order from fewest", "2, 1, 3", "ordered from the other end"},
		{"bar graph cats 4, dogs 7, birds 2: draw", "7, 4, 2", "two sorts exchanged"},
		{"things circles 4, squares 7, stars 2: how many stars", "1", "one thing missed"},
		// Clements & Sarama (2000), Teaching Children Mathematics 6: turned and thin shapes are left out, close ones and those with gaps or bent sides
		// taken, and squares not seen as rectangles.
		{"name shape: rectangle", "square", "square for a rectangle"},
		{"find every triangle: triangle, thin triangle at 45, square", "A", "usual picture only"},
		{"find every triangle: triangle, open triangle, square", "A, B", "close look taken for the shape"},
		{"find every rectangle: rectangle, square, trapezoid", "A", "square not taken for a rectangle"},
		// Common practice, no source.
		{"find every triangle: triangle, open triangle, square", "B, C", "others marked"},
		{"name shape: cube", "square", "face named"}, {"name shape: cone", "cylinder", "round solids mixed up"},
		{"sides of: hexagon", "5", "one side missed"}, {"sides of: hexagon", "7", "first side counted twice"}, {"faces of: cube", "3", "seen faces counted"},
		{"flat or solid: sphere", "flat", "flat and solid mixed up"},
		{"draw shape: square", "rectangle", "sides of other lengths"},
		{"draw shape: rectangle", "quadrilateral", "corners not square"},
		{"draw shape: pentagon", "4", "one corner too many or too few"},
		{"make shape: hexagon from triangle", "5", "one piece too few"}, {"make shape: hexagon from triangle", "7", "one piece too many"},
		{"make shape: hexagon from trapezoid made of triangle", "6", "pieces of the piece counted"},
		{"join 2 half squares: hexagon, square, circle", "A", "pieces not fitted in"},
		{"equal shares: circle strips 3", "yes", "any shares taken for equal"}, {"equal shares: square mixed 4", "no", "equal shares of one form only"},
		{"name share: circle pie 3", "fourth", "share named by another number"}, {"shares in all: circle pie 3", "2", "cuts counted"},
		{"find fourths: square crossed 4, square uneven down 4, square mixed 4", "A", "equal shares of one form only"},
		{"find fourths: square crossed 4, square uneven down 4, square mixed 4", "A, B, C", "any shares taken for equal"},
		{"larger share: circle pie 2 or circle pie 4", "right", "more shares taken for larger"},
		{"larger share: square down 4 or square crossed 4", "left", "equal shares of one form only"},
		{"cut: circle into 3", "4 equal", "as many cuts as shares"}, {"cut: circle into 3", "3 unequal", "any shares taken for equal"},
		// Battista et al. (1998), from memory: only the squares along the edge are counted.
		{"squares 3 by 4", "10", "squares at the edge counted"}, {"squares 3 by 4", "8", "a row left out"},
		{"where: circle above square", "below", "opposite place"}, {"where: circle behind square", "in front of", "opposite place"},
		{"count out 7 of 12", "12", "all of them counted out"}, {"count out 7 of 12", "8", "one thing missed"}, {"count out 7 of 12", "6", "one thing counted twice"},
		{"number 7 dots", "6", "one thing missed"}, {"7 dots moved", "8", "room compared"}, {"7 dots and one more", "7", "one more not counted"},
		{"picture of 5 + 3", "5 - 3 = 2", "put together but taken away"}, {"picture of 5 + 3", "5 + 3 = 3", "group written as the result"},
		{"picture of 8 - 3", "8 + 3 = 11", "crossed out but added"}, {"picture of 8 - 3", "5 - 3 = 2", "crossed out taken from what is left"},
		{"draw dots for 5 + 3", "2", "subtracted instead"}, {"draw dots for 8 - 3", "11", "added instead"},
		{"why 47 + 30", "7, 7, 50", "tens or hundreds worked as ones"},
		{"why 80 - 30", "11, 110", "added instead"}, {"why 47 + 30", "1, 7, 17", "subtracted instead"},
		{"count on 3 from 8", "8, 9, 10, 10", "start counted too"}, {"count back 3 from 11", "11, 10, 9, 9", "start counted too"},
		{"count on 3 from 8", "7, 6, 5, 5", "subtracted instead"}, {"count back 3 from 11", "12, 13, 14, 14", "added instead"},
		{"story put-together three-addends: 4 + 6 + 3 = ?, shells, Mia", "10", "a number left out"},
		{"equal addends of 14", "14 + 14", "whole written twice"}, {"equal addends of 14", "6 + 8", "addends not equal"},
		{"equal addends of array 3 by 4", "3 + 3 + 3 = 9", "rows written as addends"},
		{"money $5, $1, 25, 10, 10", "$45 and 6¢", "dollars and cents mixed up"},
		{"money $5, $1, 25, 10, 10", "$2 and 3¢", "coins counted"},
		{"money $5, $1, 25, 10, 10", "$6 and 35¢", "larger coin taken for more"},
		{"show 40 + 30 on line 0 to 100 by 10", "60", "start counted"}, {"show 40 + 30 on line 0 to 100 by 10", "10", "jumped the other way"},
		{"mark 70 on line 0 to 100 by 10", "60", "start counted"}, {"mark 70 on line 0 to 100 by 10", "80", "one tick missed"},
		{"coins 25, 10, 5, 1", "4", "coins counted"},
		{"coins 25, 10, 10, 5, 1", "46", "larger coin taken for more"},
		{"coins 25, 10, 5, 1", "100", "went on in one step"},
		{"8 + ? = 11, 11 - 8 = ?", "19", "worked with the numbers seen"},
	} {
		if got := why(row.task, row.answer); !strings.Contains(got, row.want) {
			t.Errorf("%s: the answer %s tells %q, want %q", row.task, row.answer, got, row.want)
		}
	}
	// A nickel and a dime swapped are worth the same together: it can't show that misstep.
	for _, m := range task.MustParse("coins 25, 10, 5, 1").Missteps() {
		if strings.Contains(m.Why(), "larger coin") {
			t.Errorf("coins 25, 10, 5, 1 lists %s=%s", m.Answer, m.Why())
		}
	}
}

func TestJudgeOfFurtherKinds(t *testing.T) {
	for _, row := range []struct {
		task, answer string
		want         bool
	}{
		{"true or false: 7 = 8 - 1", "True.", true}, {"true or false: 7 = 8 - 1", "verdadero", true},
		{"true or false: 7 = 8 - 1", "no", false}, {"true or false: 7 = 8 - 2", "F", true},
		{"true or false: 7 = 8 - 1", "", false},
		{"8 + 3 = 3 + ?", "8", true}, {"8 + 3 = 3 + ?", "8+3=3+8", true}, {"8 + 3 = 3 + ?", "11", false},
		{"8 + ? = 11, 11 - 8 = ?", "3, 3", true}, {"8 + ? = 11, 11 - 8 = ?", "3 3", true}, {"8 + ? = 11, 11 - 8 = ?", "33", false},
		{"odd or even: 14", "14 is even", true}, {"odd or even: 14", "par", true}, {"odd or even: 14", "odd", false},
		{"array 3 by 4", "4 + 4 + 4 = 12", true}, {"array 3 by 4", "12", true}, {"array 3 by 4", "7", false},
		{"coins 25, 10, 5, 1", "41¢", true}, {"coins 25, 10, 5, 1", "41 cents", true},
		{"coins 25, 10, 5, 1", "$0.41", true}, {"coins 25, 10, 5, 1", "$41", false}, {"coins 50, 50", "$1", true},
		{"coins 50, 50", "1 dollar", true}, {"coins 25, 25", "one dollar", false},
		{"count 13", "thirteen", true}, {"count 13", "trece", true}, {"count 13", "12", false},
		{"more: 5 or 8 dots", "the second", true}, {"more: 5 or 8 dots", "8", true},
		{"more: 5 or 8 dots", "5", false}, {"more: 6 or 6 dots", "equal", true}, {"more: 6 or 6 dots", "6", false},
		{"pairs of 7", "3+4, 5+2", true}, {"pairs of 7", "7 = 3 + 4; 7 = 0 + 7", true},
		{"pairs of 7", "3 and 4, 2 and 5", true}, {"pairs of 7", "3 + 4, 4 + 3", false},
		{"pairs of 7", "3 + 4", false}, {"pairs of 7", "3 + 4, 3 + 3", false},
		{"pairs of 7", "3 + 4, 9 + -2", false},
		{"write thirteen", "13", true}, {"write thirteen", "30", false},
		{"write 342 in words", "three hundred and forty two", true}, {"write 342 in words", "342", false},
	} {
		if got := task.MustParse(row.task).Judge(row.answer); got != row.want {
			t.Errorf("%s: Judge(%q) = %v, want %v", row.task, row.answer, got, row.want)
		}
	}
}

func TestPromptsDoNotTell(t *testing.T) {
	// What a picture shows is not said: how many dots there are.
	for _, text := range []string{"count 13", "count 8 scattered", "more: 5 or 8 dots", "fewer: 3 or 9 dots"} {
		for _, lang := range []string{"en", "es"} {
			if asked := task.MustParse(text).Prompt(lang); strings.ContainsAny(asked, "0123456789") || !strings.Contains(asked, "?") {
				t.Errorf("%s asks %q", text, asked)
			}
		}
	}
}

func TestEveryKindOfMisstepHasItsOwnName(t *testing.T) {
	named := make(map[string]*task.MisstepKind)
	for _, row := range typed {
		for _, m := range task.MustParse(row.text).Missteps() {
			for _, kind := range m.Kinds {
				if other, ok := named[kind.Name]; ok && other != kind {
					t.Errorf("%q names two kinds of misstep", kind.Name)
				}
				named[kind.Name] = kind
				if kind.Tells == "" || kind.Reteach == "" || kind.Source == "" || strings.Contains(kind.Name, "=") {
					t.Errorf("%+v is not whole", *kind)
				}
			}
		}
	}
	if len(named) < 40 {
		t.Errorf("%d kinds of misstep seen, want most of them", len(named))
	}
}
