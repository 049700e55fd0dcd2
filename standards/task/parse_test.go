package task_test

import (
	"slices"
	"strings"
	"sync"
	"testing"

	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"

	"pgregory.net/rapid"
)

// What people type, and the one plain form. Common practice, no source; hours
// 00-23 and two-digit minutes are RFC 3339.
var typed = []struct{ text, want string }{
	{"marked line 0 to 100 by 10: 70", "marked line 0 to 100 by 10: 70"}, {"number line from 0 to 20 by 1: mark at 7", "marked line 0 to 20 by 1: 7"},
	{"Number line 0-50 by 5s: 35", "marked line 0 to 50 by 5: 35"},
	{"line plot cm 4: 2, 5: 3, 6: 0, 7: 1: how many 5?", "line plot cm 4: 2, 5: 3, 6: 0, 7: 1: how many 5"}, {"Line plot inches: 2:1, 3:4, 4:2 and 5:1: how many are longer than 3 inches?", "line plot inches 2: 1, 3: 4, 4: 2, 5: 1: how many longer than 3"},
	{"line plot cm 4: 2, 5: 3, 6: 1, 7: 1: draw", "line plot cm 4: 2, 5: 3, 6: 1, 7: 1: draw"}, {"line plot cm 4: 2, 5: 3, 6: 1, 7: 1: which length is most often", "line plot cm 4: 2, 5: 3, 6: 1, 7: 1: which length is most often"},
	{"diagrama de puntos en pulgadas 4: 2, 5: 3, 6: 1, 7: 1: ¿cuántas en total?", "line plot inches 4: 2, 5: 3, 6: 1, 7: 1: how many in all"}, {"line plot cm 4: 2, 5: 3, 6: 1, 7: 1: how much longer?", "line plot cm 4: 2, 5: 3, 6: 1, 7: 1: how much longer"},
	{"blocks 6: how long?", "blocks 6: how long"}, {"bloques 6: ¿cuánto mide?", "blocks 6: how long"}, {"Blocks 6 gaps, even, overlaps: which is right?", "blocks 6 gaps, even, overlaps: which is right"},
	{"blocks 4 long, 2 short in each: how many short?", "blocks 4 long, 2 short in each: how many short"}, {"bloques 4 largos, 2 cortos en cada uno: ¿cuántos cortos?", "blocks 4 long, 2 short in each: how many short"},
	{"bars 5, 8: which is longer?", "bars 5, 8: which is longer"}, {"Bars 5, 8: which is taller", "bars 5, 8: which is taller"}, {"barras 5, 8: ¿cuál es más corta?", "bars 5, 8: which is shorter"},
	{"bars 5, 8, 3: order from shortest", "bars 5, 8, 3: order from shortest"}, {"barras 5, 8, 3: orden desde la más corta", "bars 5, 8, 3: order from shortest"},
	{"Bars 9, 6, 4: which is longer of A and C by B?", "bars 9, 6, 4: which is longer of a and c by b"}, {"bars 4, 6, 9: which is shorter of a and c by b", "bars 4, 6, 9: which is shorter of a and c by b"},
	{"estimate bed", "estimate bed: 6 feet"}, {"Estimate the length of a key", "estimate key: 2 inches"}, {"estimate bed: 6 feet", "estimate bed: 6 feet"}, {"estima la puerta", "estimate door: 2 meters"},
	{"tool for hallway", "tool for hallway: measuring tape"}, {"Tool for a crayon", "tool for crayon: ruler"},
	{"ruler cm 2 to 9: how long?", "ruler cm 2 to 9: how long"}, {"Ruler in inches: from 0 to 5: how long", "ruler inches 0 to 5: how long"}, {"ruler centimeters 0 to 14: how long", "ruler cm 0 to 14: how long"},
	{"ruler inches 0 to 5 and 0 to 2: how much longer?", "ruler inches 0 to 5 and 0 to 2: how much longer"}, {"regla en centímetros de 2 a 9: ¿cuánto mide?", "ruler cm 2 to 9: how long"},
	{"regla pulgadas 1 a 4 y 0 a 5: cuánto más mide", "ruler inches 1 to 4 and 0 to 5: how much longer"},
	{"bar graph cats 4, dogs 7, birds 2: how many more dogs than cats?", "bar graph cats 4, dogs 7, birds 2: how many more dogs than cats"},
	{"Picture graph: apples 5, pears 3 and bananas 8: How many fewer pears than apples are there?", "picture graph apples 5, pears 3, bananas 8: how many fewer pears than apples"},
	{"tally chart cows 6, ducks 9, hens 4: how many ducks", "tally chart cows 6, ducks 9, hens 4: how many ducks"},
	{"Table: books 3, pens 8: how many in all?", "table books 3, pens 8: how many in all"}, {"things circles 4, squares 7, stars 2: order", "things circles 4, squares 7, stars 2: order from fewest"},
	{"things circles 4, squares 7, stars 2: which has the most?", "things circles 4, squares 7, stars 2: which has the most"}, {"bar graph cats 4, dogs 7: draw the graph", "bar graph cats 4, dogs 7: draw"},
	{"tally chart circles 4, squares 7, stars 2: draw", "tally chart circles 4, squares 7, stars 2: draw"}, {"table cats 4, dogs 7, birds 2: which fewest", "table cats 4, dogs 7, birds 2: which has the fewest"},
	{"Gráfica de barras gatos 4, perros 7 y pájaros 2: ¿cuántos perros más que gatos hay?", "bar graph cats 4, dogs 7, birds 2: how many more dogs than cats"},
	{"tabla de conteo gatos 4, perros 7: ¿cuántos gatos hay?", "tally chart cats 4, dogs 7: how many cats"}, {"tabla gatos 4, perros 7: ¿cuántas mascotas hay en total?", "table cats 4, dogs 7: how many in all"},
	{"name shape: thin triangle at 45", "name shape: thin triangle at 45"}, {"Name this shape: small square turned 30", "name shape: small square at 30"},
	{"Name the shape: cone", "name shape: cone"}, {"sides of: hexagon at 15", "sides of: hexagon at 15"}, {"Angles of a pentagon", "corners of: pentagon"},
	{"faces of a cube", "faces of: cube"}, {"flat or solid: cone", "flat or solid: cone"}, {"Solid or flat? circle", "flat or solid: circle"},
	{"find all triangles: thin triangle at 45, open triangle, square", "find every triangle: thin triangle at 45, open triangle, square"},
	{"find every 5 corners: pentagon, square, uneven pentagon", "find every 5 corners: pentagon, square, uneven pentagon"},
	{"draw shape: pentagon", "draw shape: pentagon"}, {"draw a shape with 5 sides", "draw shape: 5 corners"},
	{"make shape: hexagon from triangles", "make shape: hexagon from triangle"},
	{"make shape: hexagon from trapezoids made of triangles", "make shape: hexagon from trapezoid made of triangle"},
	{"join 2 half squares: hexagon, square, circle", "join 2 half squares: hexagon, square, circle"},
	{"join 3 rhombuses: hexagon, square, circle", "join 3 rhombuses: hexagon, square, circle"}, {"make shape: hexagon from rhombuses made of triangles", "make shape: hexagon from rhombus made of triangle"},
	{"equal shares: circle pie 3", "equal shares: circle pie 3"}, {"Equal shares? rectangle uneven down 4", "equal shares: rectangle uneven down 4"},
	{"name share: square corners 4", "name share: square corners 4"}, {"shares in all: rectangle down 3", "shares in all: rectangle down 3"},
	{"find fourths: square crossed 4, square uneven down 4, square mixed 4", "find fourths: square crossed 4, square uneven down 4, square mixed 4"},
	{"find all quarters: circle pie 4, circle strips 4, circle pie 2", "find fourths: circle pie 4, circle strips 4, circle pie 2"},
	{"larger share: circle pie 2 or circle pie 4", "larger share: circle pie 2 or circle pie 4"},
	{"cut: circle into 4", "cut: circle into 4"}, {"cut the rectangle into thirds", "cut: rectangle into 3"}, {"Cut a square into 2 equal shares.", "cut: square into 2"},
	{"squares 3 by 4", "squares 3 by 4"}, {"rows of squares: 2 × 5 to draw", "squares 2 by 5 to draw"},
	{"where: circle above square", "where: circle above square"}, {"Where? triangle in front of circle", "where: triangle in front of circle"},
	{"count out 7 of 12", "count out 7 of 12"}, {"Color 7 of the 12 dots.", "count out 7 of 12"}, {"count 12 in a circle", "count 12 in a circle"},
	{"odd or even: 14 dots", "odd or even: 14 dots"}, {"equal addends of 14", "equal addends of 14"}, {"equal addends of array 3 by 4", "equal addends of array 3 by 4"},
	{"money $5, $1, 25, 10, 10", "money $5, $1, 25, 10, 10"}, {"Money: 10¢, $20, 25¢", "money $20, 25, 10"},
	{"mark 70 on line 0 to 100 by 10", "mark 70 on line 0 to 100 by 10"}, {"Mark 15 on a number line from 0 to 50 by 5s", "mark 15 on line 0 to 50 by 5"},
	{"47+36", "47 + 36 = ?"},
	{"47 + 36 =", "47 + 36 = ?"},
	{"  47  + 36 = ____ ", "47 + 36 = ?"},
	{"What is 47 + 36?", "47 + 36 = ?"},
	{"3) 47 + 36", "47 + 36 = ?"},
	{"47 plus 36 equals ?", "47 + 36 = ?"},
	{"47 + __ = 83", "47 + ? = 83"},
	{"□ + 36 = 83", "? + 36 = 83"},
	{"47 + [ ] = 83", "47 + ? = 83"},
	{"83 = 47 + ☐", "83 = 47 + ?"},
	{"83 − 47", "83 - 47 = ?"},
	{"83 – 47 = …", "83 - 47 = ?"},
	{"４７＋３６＝？", "47 + 36 = ?"},
	{"1,000 - 1", "1000 - 1 = ?"},
	{"12 + 5 - 3", "12 + 5 - 3 = ?"},
	{"142 = __ hundreds __ tens __ ones", "142 = ? hundreds ? tens ? ones"},
	{"47 = ? tens and ? ones", "47 = ? tens ? ones"},
	{"4 tens 7 ones", "4 tens 7 ones = ?"},
	{"4 tens + 7 ones =", "4 tens 7 ones = ?"},
	{"142 = __ + __ + __", "142 = ? + ? + ?"},
	{"47 __ 74", "47 ? 74"},
	{"47 ○ 74", "47 ? 74"},
	{"compare 47 and 74", "47 ? 74"},
	{"98, 99, __, 101", "98, 99, ?, 101"},
	{"5 10 15 __", "5, 10, 15, ?"},
	{"ten more than 47", "10 more than 47 = ?"},
	{"100 less than 340 is", "100 less than 340 = ?"},
	{"half past 4", "read 4:30"},
	{"Half past four", "read 4:30"},
	{"4 o'clock", "read 4:00"},
	{"4 o’clock", "read 4:00"},
	{"quarter to five", "read 4:45"},
	{"twenty-five past 3", "read 3:25"},
	{"4:30 pm", "read 4:30 pm"},
	{"4:30 p.m.", "read 4:30 pm"},
	{"16:30", "read 4:30 pm"},
	{"24:00", "read 12:00 am"},
	{"00:05", "read 12:05 am"},
	{"draw 16:30", "draw 4:30 pm"},
	{"Draw the hands for half past 4", "draw 4:30"},
	{"say 4:30", "say 4:30"},
	{"las 4 y media", "read 4:30"},
	{"true or false: 7 = 8 - 1", "true or false: 7 = 8 - 1"},
	{"True or false? 4+1 = 5+2", "true or false: 4 + 1 = 5 + 2"},
	{"true or false: 6 = 6", "true or false: 6 = 6"},
	{"8 + 3 = 3 + __", "8 + 3 = 3 + ?"},
	{"? + 6 = 4 + 6", "? + 6 = 4 + 6"},
	{"2 + 6 + 4 = 2 + ?", "2 + 6 + 4 = 2 + ?"},
	{"12 - ? = 3 + 4", "12 - ? = 3 + 4"},
	{"8 + __ = 11, so 11 - 8 = __", "8 + ? = 11, 11 - 8 = ?"},
	{"Odd or even? 14", "odd or even: 14"},
	{"Is 15 odd or even?", "odd or even: 15"},
	{"array 3 by 4", "array 3 by 4"},
	{"array: 3 × 4", "array 3 by 4"},
	{"3 rows of 4", "array 3 by 4"},
	{"coins 1, 10¢, 25c, 5, 10", "coins 25, 10, 10, 5, 1"},
	{"count 13 dots", "count 13"},
	{"count 8 scattered", "count 8 scattered"},
	{"more: 5 or 8 dots", "more: 5 or 8 dots"},
	{"fewer: 5 dots or 8 dots", "fewer: 5 or 8 dots"},
	{"pairs of 7", "pairs of 7"},
	{"number pairs for 7", "pairs of 7"},
	{"write three hundred forty-two", "write three hundred forty-two"},
	{"Write the number: one hundred and five", "write one hundred five"},
	{"escribe trescientos cuarenta y dos", "write three hundred forty-two"},
	{"write 342 in words", "write 342 in words"},
	{"story add-to change-unknown: 5 + ? = 12, shells, Mia", "story add-to change-unknown: 5 + ? = 12, shells, Mia"},
	{"Story take-from result-unknown: 62-25, Rope, omar", "story take-from result-unknown: 62 - 25 = ?, rope, Omar"},
	{"story put-together both-unknown: 7 = __ + __, apples, Lin", "story put-together both-unknown: 7 = ? + ?, apples, Lin"},
	{"story compare bigger-unknown fewer: 5 + 7 = ?, books, Noor, Sam", "story compare bigger-unknown fewer: 5 + 7 = ?, books, Noor, Sam"},
	{"story two-step: 25 + 17 - 12, cents, Ravi", "story two-step: 25 + 17 - 12 = ?, cents, Ravi"},
	{"match 4 o'clock; 7:00; 11:00", "match 4:00, 7:00, 11:00"},

	// With words round it, or in words, in English and Spanish.
	{"¿Cuánto es 47 + 36?", "47 + 36 = ?"}, {"How much is 47 + 36?", "47 + 36 = ?"}, {"Add: 47 + 36", "47 + 36 = ?"}, {"a) 47 + 36", "47 + 36 = ?"},
	{"• 47 + 36", "47 + 36 = ?"}, {"(b) 83 - 47", "83 - 47 = ?"}, {"Find the sum: 47 + 36", "47 + 36 = ?"}, {"Calcula: 83 - 47", "83 - 47 = ?"},
	{"47 + 36 = n", "47 + 36 = ?"}, {"47 + x = 83", "47 + ? = 83"}, {"n + 36 = 83", "? + 36 = 83"}, {"83 = 47 + n", "83 = 47 + ?"}, {"47 + blank = 83", "47 + ? = 83"},
	{"47 + △ = 83", "47 + ? = 83"}, {"47 + (?) = 83", "47 + ? = 83"}, {"47 + 36 = ___.", "47 + 36 = ?"}, {"= 47 + 36", "? = 47 + 36"},
	{"47 plus 36 equals", "47 + 36 = ?"}, {"47 plus what is 83", "47 + ? = 83"}, {"47 plus what number equals 83?", "47 + ? = 83"}, {"forty-seven plus thirty-six", "47 + 36 = ?"},
	{"8 menos 5", "8 - 5 = ?"}, {"cuánto es 8 menos 5", "8 - 5 = ?"}, {"calcula 8 menos 5", "8 - 5 = ?"}, {"ocho menos cinco", "8 - 5 = ?"}, {"doce menos cinco", "12 - 5 = ?"},
	{"8 menos 5 = ?", "8 - 5 = ?"}, {"83 menos 47", "83 - 47 = ?"}, {"8 más 5", "8 + 5 = ?"}, {"8 más 5 es igual a ?", "8 + 5 = ?"}, {"treinta y seis más cuatro", "36 + 4 = ?"},
	{"subtract 47 from 83", "83 - 47 = ?"}, {"take 5 from 8", "8 - 5 = ?"}, {"resta 5 de 8", "8 - 5 = ?"}, {"83 less 47", "83 - 47 = ?"}, {"add 47 and 36", "47 + 36 = ?"},
	{"the sum of 47 and 36", "47 + 36 = ?"}, {"suma 47 y 36", "47 + 36 = ?"}, {"the difference between 83 and 47", "83 - 47 = ?"}, {"47 ➕ 36", "47 + 36 = ?"}, {"83 ➖ 47", "83 - 47 = ?"},
	{"8 take away 5", "8 - 5 = ?"}, {"Write the missing number: 47 + ? = 83", "47 + ? = 83"}, {"Escribe el número que falta: 47 + ? = 83", "47 + ? = 83"},
	{"7 = 8 - 1 true or false", "true or false: 7 = 8 - 1"}, {"7 = 8 - 1. True or false?", "true or false: 7 = 8 - 1"}, {"verdadero o falso: 7 = 8 - 1", "true or false: 7 = 8 - 1"},
	{"47 = ? tens + ? ones", "47 = ? tens ? ones"}, {"? tens ? ones = 47", "47 = ? tens ? ones"}, {"47 has ? tens and ? ones", "47 = ? tens ? ones"},
	{"47 = __ decenas __ unidades", "47 = ? tens ? ones"}, {"4 decenas 7 unidades", "4 tens 7 ones = ?"}, {"4 decenas y 7 unidades", "4 tens 7 ones = ?"},
	{"10 más que 47", "10 more than 47 = ?"}, {"diez menos que 47", "10 less than 47 = ?"}, {"What number is 10 more than 47?", "10 more than 47 = ?"}, {"¿Qué número es 10 más que 47?", "10 more than 47 = ?"},
	{"Write <, > or =: 47 ? 74", "47 ? 74"}, {"compara 47 y 74", "47 ? 74"}, {"compare: 47, 74", "47 ? 74"}, {"Compare 8 and 5.", "8 ? 5"},
	{"98; 99; ?; 101", "98, 99, ?, 101"}, {"count by fives: 5, 10, 15, ?", "5, 10, 15, ?"}, {"Skip count by 2s: 2, 4, ?, 8", "2, 4, ?, 8"}, {"Write the missing numbers: 98, 99, ?, 101", "98, 99, ?, 101"},
	{"Complete the pattern: 5, 10, 15, ___.", "5, 10, 15, ?"}, {"cuenta de 5 en 5: 5, 10, 15, ?", "5, 10, 15, ?"},
	{"3 rows of 4 dots", "array 3 by 4"}, {"3 filas de 4 puntos", "array 3 by 4"}, {"coins 1 quarter, 2 dimes", "coins 25, 10, 10"}, {"Coins: a quarter, two dimes and 3 pennies", "coins 25, 10, 10, 1, 1, 1"},
	{"monedas 25, 10", "coins 25, 10"}, {"Count 13 dots.", "count 13"}, {"cuenta 13 puntos", "count 13"}, {"par o impar: 14", "odd or even: 14"}, {"¿Es 14 par o impar?", "odd or even: 14"},
	{"escribe 342 con palabras", "write 342 in words"}, {"Escribe el número: trescientos cuarenta y dos", "write three hundred forty-two"},
	{"Half past 4.", "read 4:30"}, {"quarter of five", "read 4:45"}, {"quarter till 5", "read 4:45"}, {"half-past four", "read 4:30"}, {"draw four-thirty", "draw 4:30"}, {"12 noon", "read 12:00 pm"},
	{"12 midnight", "read 12:00 am"}, {"7 o clock", "read 7:00"}, {"a las cuatro y media", "read 4:30"}, {"son las cuatro y media", "read 4:30"}, {"cuarto para las cinco", "read 4:45"},
	{"4 : 30", "read 4:30"}, {"Draw the hands to show 4:30", "draw 4:30"}, {"Draw the hands to show half past 4.", "draw 4:30"}, {"dibuja las 4 y media", "draw 4:30"}, {"lee 4:30", "read 4:30"},
	{"match clocks: 4:00, 7:00", "match 4:00, 7:00"}, {"Match: 4:00, 7:00", "match 4:00, 7:00"}, {"Match the clocks: 4:00, 7:00", "match 4:00, 7:00"}, {"une 4:00, 7:00", "match 4:00, 7:00"},
	{"las 8 menos 5", "read 7:55"}, {"las 5 menos cuarto", "read 4:45"}, {"20 past 3", "read 3:20"}, {"ten to six", "read 5:50"}, {"20 minutes to 5", "read 4:40"}, {"read 20 to 5", "read 4:40"},
}

// None of these says what is asked; a wrong guess would be worse than none.
var unclear = []string{
	"8 y 5", "cuánto es 8 y 5", "7 8", "8 5", "3 4", "5 12", "seven eight", "ten four", "what is 1 before 10", "what is 2 after 5", "1 to 10", "12.50", "8 and 5", "4.30", "8 to 5",
	"Draw 5 apples", "Draw a shape with a smile", "Show 47 on a number line", "7 = ? + ?", "? + ? = 7", "1/2 + 1/4", "11/25/2026", "$12.50", "12,50", "read 7 8", "7 eggs", "47, 74",
	"half of 8", "8 o 5", "5 before 8", "10:30 - 11:30", "read 8 - 5", "a quarter", "match the shapes", "4 and a half", "47 36", "10 and 4 more",
}

func TestUnclearTextsAreNotGuessedAt(t *testing.T) {
	for _, text := range unclear {
		if asked, err := task.Parse(text); err == nil {
			t.Errorf("%q is read as %s", text, asked)
		}
	}
}

// A text with a sign of arithmetic is never read as a time, whatever else stands in it.
func TestSignsAreNoTimes(t *testing.T) {
	parts := []string{"8", "5", "12", "30", "?", "quarter", "half", "read", "say", "las", "menos", "y", "past", "to", "am", "o'clock", "4:30", "?"}
	rapid.Check(t, func(t *rapid.T) {
		pick := func(name string) string { return rapid.SampledFrom(parts).Draw(t, name) }
		sign := rapid.SampledFrom([]string{"+", "-", "=", "−", "<", "➕", "–"}).Draw(t, "sign")
		text := strings.Join([]string{pick("a"), pick("b"), sign, pick("c"), pick("d")}, " ")
		asked, err := task.Parse(text)
		if _, isClock := asked.(task.Clock); err == nil && isClock {
			t.Fatalf("%q is read as %s", text, asked)
		}
	})
}

// What an item's own words ask is either not read or read as the item.
func TestPromptsAreNeverMisread(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		asked := drawTask(t)
		for _, lang := range []string{"en", "es"} {
			if read, err := task.Parse(asked.Prompt(lang)); err == nil && read != asked {
				t.Fatalf("%s: its words %q are read as %s", asked, asked.Prompt(lang), read)
			}
		}
	})
}

func TestParseReadsWhatPeopleType(t *testing.T) {
	for _, row := range typed {
		asked, err := task.Parse(row.text)
		if err != nil {
			t.Errorf("Parse(%q): %v", row.text, err)
			continue
		}
		if asked.String() != row.want {
			t.Errorf("Parse(%q) = %q, want %q", row.text, asked, row.want)
		}
	}
}

func TestParseSaysWhatIsWrong(t *testing.T) {
	for text, want := range map[string]string{
		"":                  "no question here",
		"5 - 8":             "less than 0",
		"4 × 6":             "multiplies or divides",
		"4 x 6 = ?":         "multiplies or divides",
		"4:75":              "an hour has 60",
		"24:01":             "hours go from 00 to 23",
		"4:5":               "write two, as in 4:05",
		"16:30 am":          "not in the morning",
		"47 + 36 = 82":      "47 + 36 is 83",
		"47 + 36 = 83":      "nothing to fill in",
		"? + ? = 83":        "two places to fill in",
		"47 + ? = 40":       "no number from 0 up",
		"1 + 2 + 3 + 4 + 5": "more than four numbers",
		"5, 7, ?, 12":       "equal steps",
		"?, ?, 7":           "at least two",
		"142 = ? + ?":       "3 parts",
		"match 4:00":        "2 to 6",
		"match 4:00, 16:00": "different times",
		"Draw a triangle":   "not a task",
		"Shade 3/4 of it.":  "not a task",
		// In a teacher's own words: no task, but a good question to keep.
		"Story problem: Mia has 5 shells and finds 7.": "not a task",
		"Coins: is a dime more than 2 nickels?":        "not a task",
		"True or false: a square has 4 sides":          "not a task",
		"Odd or even? Ring the 3 odd numbers.":         "not a task",
		"Count the dots in the box.":                   "not a task",
		"Write your name.":                             "not a task",
		"10 less than 4":                               "0 to 1000",
		"99999 + 1":                                    "0 to 9999",
		"142 = ? tens ? ones":                          "digits",

		"true or false: 7":         "one equal sign",
		"true or false: 7 = ? - 1": "place to fill in",
		"true or false: 3 - 5 = 1": "less than 0",
		"8 + 3 = 3 + 8":            "nothing to fill in",
		"8 + ? = 3 + ?":            "two places to fill in",
		"2 + ? = 1 + 0":            "no number from 0 up",
		"8 + ? = 11, 11 - 3 = ?":   "same numbers",
		"odd or even: 14, 15":      "one number",
		"array 3 by 9":             "1 to 5",
		"coins 25, 20":             "no coin",
		"coins 25":                 "2 to 10",
		"coins 50, 50, 1":          "within a dollar",
		"count 25":                 "1 to 20",
		"count 12 scattered":       "1 to 10",
		"more: 5 or 18 dots":       "1 to 10",
		"pairs of 1":               "2 to 10",
		"story add-to chance-unknown: 5 + ? = 12, shells, Mia":           "did you mean",
		"story add-to change-unknown: 5 + 7 = ?, shells, Mia":            "does not tell",
		"story add-to change-unknown: 5 + ? = 12, dragons, Mia":          "choose one of shells",
		"story add-to change-unknown: 5 + ? = 12, shells, Rumpel":        "choose one of Mia",
		"story add-to change-unknown: 5 + ? = 12":                        "needs a sentence, a thing",
		"story add-to change-unknown: 50 + ? = 120, shells, Mia":         "stay within 100",
		"story add-to change-unknown: 1 + ? = 12, shells, Mia":           "numbers from 2",
		"story put-together both-unknown: 7 = ? + ?, cents, Mia":         "no thing for put-together",
		"story add-to result-unknown: 5 + 7 = ?, shells, Mia, telling 9": "no telling",
		"story compare difference-unknown: 12 - 5 = ?, shells, Mia, Mia": "two different children",
		"write 1001 in words":             "go to 1000",
		"marked line 5 to 20 by 1: 7":     "begin at 0",
		"marked line 0 to 21 by 3: 6":     "by 1, 2, 5 or 10",
		"marked line 0 to 200 by 10: 70":  "to 100",
		"marked line 0 to 100 by 10: 75":  "from 20 to 90 by 10s",
		"marked line 0 to 100 by 10: 100": "from 20 to 90 by 10s",
		"marked line 0 to 100 by 10: 10":  "from 20 to 90 by 10s",

		"line plot cm 4: 2, 5: 3, 7: 1: how many 5":                       "leaves out a length",
		"line plot cm 4: 2, 5: 3: how many 5":                             "4 to 7 lengths",
		"line plot cm 4: 2, 5: 9, 6: 1, 7: 1: how many 5":                 "more than 5 things",
		"line plot cm 4: 2, 5: 3, 6: 1, 7: 0: how many 5":                 "at an end",
		"line plot cm 4: 2, 5: 3, 6: 1, 7: 1: how many 9":                 "the scale doesn't have",
		"line plot cm 4: 3, 5: 3, 6: 1, 7: 1: which length is most often": "two answers",
		"line plot cm 4: 3, 5: 3, 6: 1, 7: 1: how heavy":                  "no line plot is asked",
		"blocks 6: which is right":                                        "doesn't show",
		"blocks 16: how long":                                             "2 to 10 blocks",
		"blocks 6 gaps, even, gaps: which is right":                       "each of gaps",
		"blocks 3 gaps, even, overlaps: which is right":                   "gaps and overlaps are seen",
		"blocks 4 long, 5 short in each: how many short":                  "2 or 3 short",
		"bars 5, 8, 3: which is longer":                                   "of 3 bars",
		"bars 5, 18: which is longer":                                     "1 to 10 long",
		"bars 5, 5: which is longer":                                      "make one longer",
		"bars 9, 4, 6: which is longer of a and c by b":                   "lie between",
		"estimate bed: 7 feet":                                            "not a task",
		"estimate dragon":                                                 "not a task",
		"ruler cm 9 to 2: how long":                                       "ends before it begins",
		"ruler cm 2 to 19: how long":                                      "goes past the ruler",
		"ruler inches 0 to 7: how long":                                   "ends at 6 inches",
		"ruler cm 0 to 4: how much longer":                                "two for how much longer",
		"ruler cm 0 to 4 and 3 to 7: how much longer":                     "none is longer",
		"bar graph cats 4, dragons 7: how many cats":                      "no graph here shows",
		"bar graph cats 4, apples 7: how many cats":                       "of one group",
		"bar graph cats 4, cats 7: how many cats":                         "each once",
		"bar graph cats 4, dogs 17: how many cats":                        "from 1 to 10",
		"bar graph cats 4, dogs 7: how many birds":                        "ask as in",
		"bar graph cats 4, dogs 7: order":                                 "can't be asked of",
		"bar graph cats 7, dogs 7, birds 2: which has the most":           "two answers",
		"bar graph cats 4, dogs 7: how many more cats than dogs":          "the other way round",
		"things cats 4, dogs 7: how many cats":                            "can be drawn",
		"things circles 9, stars 9, squares 9: how many stars":            "too many to sort",
		"things circles 4, stars 4, squares 7: order":                     "no order has",
		"equal shares: circle down 3":                                     "no way to cut a circle",
		"name share: circle strips 3":                                     "only equal shares",
		"find thirds: circle pie 3, circle pie 2":                         "3 or 4",
		"find thirds: circle pie 3, circle pie 3, circle pie 3":           "some not",
		"larger share: circle pie 2 or square down 2":                     "same shape",
		"cut: circle into 5":                                              "2, 3 or 4",
		"squares 3 by 9":                                                  "1 to 5 rows",
		"where: circle above circle":                                      "two shapes of one name",
		"count out 12 of 12":                                              "fewer than there are", "count 2 in a circle": "3 dots or more", "odd or even: 34 dots": "2 to 20 dots",
		"equal addends of 13": "an even number", "equal addends of array 3 by 9": "from 2 to 5",
		"money $3, 25": "no bill here", "money $5, 30": "no coin", "money $5, $1": "0 coins", "money $1, 50, 50": "less than a dollar",
		"mark 75 on line 0 to 100 by 10":                       "from 20 to 90 by 10s",
		"name shape: triangle at 20":                           "steps of 15",
		"flat or solid: circle at 30":                          "however it is turned",
		"sides of: open triangle":                              "no straight sides",
		"faces of: cone":                                       "not all flat",
		"find every triangle: triangle, square":                "3 to 5",
		"find every triangle: triangle, triangle, triangle":    "3 of 3",
		"make shape: circle from square":                       "no way is known",
		"join 2 half squares: hexagon, circle, long rectangle": "0 of the three",
		"join 2 triangles: rhombus, dragon, circle":            "no shape",
	} {
		asked, err := task.Parse(text)
		if err == nil {
			t.Errorf("Parse(%q) = %v, want an error", text, asked)
		} else if !strings.Contains(err.Error(), want) {
			t.Errorf("Parse(%q): %v; want it to say %q", text, err, want)
		}
	}
}

// typedOf are the texts of each kind.
var typedOf = sync.OnceValue(func() map[task.Kind][]string {
	texts := make(map[task.Kind][]string)
	for _, row := range typed {
		kind := task.Kind{Name: task.KindOf(task.MustParse(row.want))}
		texts[kind] = append(texts[kind], row.want)
	}
	return texts
})

// drawTask makes tasks of every kind: by their numbers, or as they stand in typed.
func drawTask(t *rapid.T) task.Task {
	n := func(low, high int, name string) int { return rapid.IntRange(low, high).Draw(t, name) }
	clock := words.Time{Hour: n(1, 12, "hour"), Minute: n(0, 59, "minute"), Half: rapid.SampledFrom([]words.Half{"", "am", "pm"}).Draw(t, "half")}
	kind := rapid.SampledFrom([]string{"sum", "difference", "place", "expanded", "compare", "sequence", "more", "clock",
		"truth", "balance", "related", "odd", "array", "coins", "count", "groups", "pairs", "write", "story", "match", "data", "ruler", "line plot", "blocks", "lengths", "estimate", "typed", "typed", "typed", "typed", "typed", "typed", "typed", "typed"}).Draw(t, "kind")
	switch kind {
	case "typed":
		rows := typedOf()[rapid.SampledFrom(task.Kinds()).Draw(t, "kind of text")]
		return task.MustParse(rows[n(0, len(rows)-1, "row")])
	case "sum":
		addends := rapid.SliceOfN(rapid.IntRange(0, 999), 2, 4).Draw(t, "addends")
		s, err := task.NewAddition(n(0, len(addends), "blank"), addends...)
		s.ResultFirst = rapid.Bool().Draw(t, "result first")
		return valid(t, s, err)
	case "difference":
		a := n(0, 9999, "a")
		s, err := task.NewSubtraction(n(0, 2, "blank"), a, n(0, a, "b"))
		return valid(t, s, err)
	case "place":
		if rapid.Bool().Draw(t, "hundreds") {
			return task.PlaceValue{Number: n(100, 999, "n"), Places: 3, Compose: rapid.Bool().Draw(t, "compose")}
		}
		return task.PlaceValue{Number: n(10, 99, "n"), Places: 2, Compose: rapid.Bool().Draw(t, "compose")}
	case "expanded":
		number := n(11, 999, "n")
		if number%10 == 0 && number < 100 || number%100 == 0 {
			number++
		}
		return task.Expanded{Number: number}
	case "compare":
		return task.Compare{A: n(0, 999, "a"), B: n(0, 999, "b")}
	case "sequence":
		places := n(4, 8, "places")
		return task.Sequence{First: n(200, 900, "first"), Step: rapid.SampledFrom([]int{1, -1, 2, 5, 10, -10}).Draw(t, "step"), N: places, Blanks: 1 << n(2, places-1, "blank")}
	case "more":
		return task.MoreLess{Number: n(100, 900, "n"), Step: rapid.SampledFrom([]int{10, 100}).Draw(t, "step"), Less: rapid.Bool().Draw(t, "less")}
	}
	if asked := drawEarly(t, kind, n); asked != nil {
		return asked
	}
	return task.Clock{Verb: rapid.SampledFrom([]task.ClockVerb{task.Read, task.Draw, task.Say}).Draw(t, "verb"), Time: clock}
}

// drawEarly makes tasks of the kinds that begin in kindergarten and grade 1, and
// those about coins, arrays and number names.
func drawEarly(t *rapid.T, kind string, n func(low, high int, name string) int) task.Task {
	switch kind {
	case "truth":
		return task.TrueFalse{Left: drawSide(t, "left"), Right: drawSide(t, "right")}
	case "balance": // 20 to 40 on the left, so that a number from 0 up makes it true
		a, b, c := n(10, 20, "a"), n(10, 20, "b"), n(0, 20, "c")
		left := task.Side{Terms: [3]int{a, b}, N: 2}
		right := task.Side{Terms: [3]int{c, a + b - c}, N: 2}
		return task.Balance{Left: left, Right: right, Blank: n(0, 3, "blank")}
	case "related":
		whole := n(2, 20, "whole")
		return task.Related{Whole: whole, Part: n(1, whole-1, "part")}
	case "odd":
		return task.OddEven{Number: n(0, 999, "n")}
	case "array":
		return task.Array{Rows: n(1, 5, "rows"), Columns: n(1, 5, "columns")}
	case "coins":
		return task.Coins{Counts: [5]int{0, n(0, 2, "25"), n(1, 3, "10"), n(1, 2, "5"), n(0, 3, "1")}}
	case "count":
		return task.HowMany{Number: n(1, 10, "n"), Scattered: rapid.Bool().Draw(t, "scattered")}
	case "groups":
		return task.Groups{Left: n(1, 10, "left"), Right: n(1, 10, "right"), Fewer: rapid.Bool().Draw(t, "fewer")}
	case "pairs":
		return task.Pairs{Whole: n(2, 10, "whole")}
	case "write":
		return task.WriteNumber{Number: n(0, 1000, "n"), InWords: rapid.Bool().Draw(t, "in words")}
	case "match":
		m := task.Match{N: n(2, 6, "clocks")}
		hours := rapid.Permutation([]int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12}).Draw(t, "hours")
		for i := range m.N {
			m.Times[i] = words.Time{Hour: hours[i], Minute: n(0, 59, "minute")}
		}
		return m
	case "story":
		return drawStory(t, n)
	case "data":
		return drawData(t, n)
	case "line plot":
		p := task.LinePlot{Inches: rapid.Bool().Draw(t, "inches"), First: n(1, 12, "first"), N: n(4, 7, "lengths"), Length: 0, Ask: task.PlotHowMany}
		for i := range p.N {
			p.Counts[i] = n(1, 2, "count")
		}
		p.Length = p.First + n(0, p.N-1, "length")
		if other := rapid.SampledFrom([]task.PlotAsk{task.PlotHowMany, task.PlotInAll, task.PlotDistance, task.PlotDraw}).Draw(t, "ask"); other != p.Ask {
			p.Ask, p.Length = other, 0
		}
		return p
	case "blocks":
		b := task.Blocks{Count: n(4, 6, "blocks"), Parts: rapid.SampledFrom([]int{0, 2, 3}).Draw(t, "short")}
		if b.Parts == 0 && rapid.Bool().Draw(t, "pictures") {
			b.Ways = [3]task.BlockWay(rapid.Permutation([]task.BlockWay{task.Even, task.Gaps, task.Overlaps}).Draw(t, "ways"))
		}
		return b
	case "lengths":
		lengths := rapid.Permutation([]int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10}).Draw(t, "lengths")
		if l := (task.Lengths{Bars: [3]int(lengths[:3]), N: 3, Ask: task.LengthOrder}); rapid.Bool().Draw(t, "three") {
			if slices.Sort(l.Bars[:]); rapid.Bool().Draw(t, "by a third") {
				l.Ask = task.LongerByAThird
			}
			return l
		}
		return task.Lengths{Bars: [3]int{lengths[0], lengths[1]}, N: 2, Ask: rapid.SampledFrom([]task.LengthAsk{task.WhichLonger, task.WhichShorter, task.WhichTaller}).Draw(t, "ask")}
	case "estimate":
		tool := rapid.Bool().Draw(t, "tool")
		return task.Estimate{Thing: rapid.SampledFrom(task.EstimatedThings(tool)).Draw(t, "thing"), Tool: tool}
	case "ruler":
		r := task.Ruler{Inches: rapid.Bool().Draw(t, "inches"), From: n(0, 3, "from"), To: n(4, 6, "to")}
		if rapid.Bool().Draw(t, "two") {
			if r.OtherTo = n(1, 5, "other"); r.OtherTo >= r.Length() {
				r.OtherTo++
			}
		}
		return r
	}
	return nil
}

// drawData makes a graph of sorts of different numbers.
func drawData(t *rapid.T, n func(low, high int, name string) int) task.Task {
	d := task.Data{N: n(2, 4, "sorts"), Form: rapid.SampledFrom([]task.DataForm{task.TallyChart, task.Table, task.PictureGraph, task.BarGraph}).Draw(t, "form")}
	group := rapid.SampledFrom(words.SortGroups).Draw(t, "group")
	counts := rapid.Permutation([]int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10}).Draw(t, "counts")
	for i, at := range rapid.Permutation([]int{0, 1, 2, 3}).Draw(t, "order")[:d.N] {
		d.Sorts[i], d.Counts[i] = group.Sorts[at].Name, counts[i]
	}
	d.Ask = rapid.SampledFrom([]task.DataAsk{task.HowManyOf, task.HowManyMore, task.InAll, task.WhichMost, task.WhichFewest}).Draw(t, "ask")
	switch d.Ask {
	case task.HowManyOf:
		d.First = n(0, d.N-1, "first")
	case task.HowManyMore:
		if d.Second = 1; d.Counts[0] < d.Counts[1] {
			d.First, d.Second = 1, 0
		}
	}
	return d
}

// drawStory makes a story of any situation.
func drawStory(t *rapid.T, n func(low, high int, name string) int) task.Task {
	s := task.Story{Situation: rapid.SampledFrom(task.Situations()).Draw(t, "situation")}
	s.Thing = rapid.SampledFrom(task.StoryThings(s.Situation)).Draw(t, "thing")
	names := rapid.Permutation(task.StoryNames()).Draw(t, "names")
	if s.Name = names[0]; s.Situation.People() == 2 {
		s.Other = names[1]
	}
	s.Telling = n(0, task.StoryTellings, "telling")
	a, b := n(3, 40, "a"), n(2, 40, "b")
	switch example := s.Situation.Example().(task.Story).Sentence; {
	case s.Situation == task.TwoSteps:
		s.Sentence = task.Sentence{Terms: [4]int{a, b, 2}, Minus: [4]bool{2: rapid.Bool().Draw(t, "minus")}, N: 3, Blank: 3}
	case s.Situation == task.TogetherBoth:
		s.Sentence = task.Sentence{Terms: [4]int{a / 2, a - a/2}, N: 2, Blank: 2}
	case example.IsAddition():
		s.Sentence = task.Sentence{Terms: [4]int{a, b}, N: 2, Blank: example.Blank}
	default:
		s.Sentence = task.Sentence{Terms: [4]int{a + b, b}, Minus: [4]bool{1: true}, N: 2, Blank: example.Blank}
	}
	return s
}

// drawSide makes one side of an equal sign.
func drawSide(t *rapid.T, name string) task.Side {
	var side task.Side
	for _, n := range rapid.SliceOfN(rapid.IntRange(0, 999), 1, 3).Draw(t, name) {
		side.Minus[side.N] = rapid.Bool().Draw(t, name+" minus") && side.N > 0 && side.Value() >= n
		side.Terms[side.N] = n
		side.N++
	}
	return side
}

func valid(t *rapid.T, s task.Sentence, err error) task.Task {
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestParseAndStringAreInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		asked := drawTask(t)
		back, err := task.Parse(asked.String())
		if err != nil || back != asked {
			t.Fatalf("Parse(%q) = %#v, %v; want %#v", asked, back, err, asked)
		}
	})
}

func TestEveryTaskIsWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { checkTask(t, drawTask(t)) })
}

// checkTask asserts what holds for every task.
func checkTask(t interface{ Fatalf(string, ...any) }, asked task.Task) {
	if !asked.Judge(asked.Key()) {
		t.Fatalf("%v: its own key %q is judged wrong", asked, asked.Key())
	}
	if standards.SkillOf(asked) == "" {
		t.Fatalf("%v has no skill", asked)
	}
	if len(asked.Looks()) == 0 {
		t.Fatalf("%v has no look", asked)
	}
	if fixed := task.FixedAnswers(asked); fixed != nil && !slices.Contains(fixed, asked.Key()) {
		t.Fatalf("%v: its key %q is none of its answers %v", asked, asked.Key(), fixed)
	}
	seen := map[string]bool{}
	for _, m := range asked.Missteps() {
		if asked.Judge(m.Answer) || seen[m.Answer] || len(m.Kinds) == 0 {
			t.Fatalf("%v: misstep %q is right, stands twice or has no kind", asked, m.Answer)
		}
		seen[m.Answer] = true
	}
	ts := asked.Traits()
	back, ok := task.ParseSignature(ts.Signature())
	if !ok || back != ts {
		t.Fatalf("%v: signature %q does not come back", asked, ts.Signature())
	}
}

func FuzzParse(f *testing.F) {
	for _, row := range typed {
		f.Add(row.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		asked, err := task.Parse(text)
		if err != nil {
			return
		}
		back, err := task.Parse(asked.String())
		if err != nil || back != asked {
			t.Fatalf("Parse(%q) = %#v, but Parse(%q) = %#v, %v", text, asked, asked, back, err)
		}
		checkTask(t, asked)
	})
}

func TestJudgeAcceptsWhatATeacherWould(t *testing.T) {
	for _, row := range []struct {
		task, answer string
		want         bool
	}{
		{"47 + 36", "83", true}, {"47 + 36", " 83 ", true}, {"47 + 36", "= 83", true}, {"47 + 36", "47+36=83", true}, {"47 + 36", "８３", true},
		{"47 + 36", "73", false}, {"47 + 36", "", false}, {"47 + 36", "-83", false}, {"47 + 36", "83 cats", false},
		{"read 3:30", "03:30", true}, {"read 3:30", "3:30", true}, {"read 3:30", "half past 3", true}, {"read 3:30", "3:30 pm", true}, {"read 3:30", "6:15", false},
		{"read 3:30 pm", "15:30", true}, {"read 3:30 pm", "3:30", true}, {"read 3:30 pm", "3:30 am", false},
		{"say 3:30", "three thirty", true}, {"say 3:30", "Half past three", true}, {"say 2:50", "ten to three", true},
		{"47 ? 74", "<", true}, {"47 ? 74", "47 < 74", true}, {"47 ? 74", "less than", true}, {"47 ? 74", ">", false},
		{"142 = ? hundreds ? tens ? ones", "1, 4, 2", true}, {"142 = ? hundreds ? tens ? ones", "1 hundred 4 tens 2 ones", true}, {"142 = ? hundreds ? tens ? ones", "142", false},
		{"142 = ? + ? + ?", "100+40+2", true}, {"142 = ? + ? + ?", "1 + 4 + 2", false},
		{"98, 99, ?, 101", "100", true}, {"98, 99, ?, 101", "98, 99, 100, 101", true}, {"98, ?, ?, 101", "99 100", true},
		{"match 4:00, 7:00", "4:00, 7 o'clock", true}, {"match 4:00, 7:00", "7:00, 4:00", false},
	} {
		if got := task.MustParse(row.task).Judge(row.answer); got != row.want {
			t.Errorf("%s: Judge(%q) = %v, want %v", row.task, row.answer, got, row.want)
		}
	}
}

// The hand-kept lists of this package hold every kind of the table.
func TestListsHoldEveryKind(t *testing.T) {
	typedKinds, drawn := make(map[string]bool), make(map[string]bool)
	for _, row := range typed {
		typedKinds[task.KindOf(task.MustParse(row.want))] = true
	}
	tasks := rapid.Custom(drawTask)
	for seed := range 2000 {
		drawn[task.KindOf(tasks.Example(seed))] = true
	}
	for _, kind := range task.Kinds() {
		if !typedKinds[kind.Name] || !drawn[kind.Name] {
			t.Errorf("%s: typed %v, drawn %v", kind.Name, typedKinds[kind.Name], drawn[kind.Name])
		}
	}
}
