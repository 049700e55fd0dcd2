package task_test

import (
	"slices"
	"strings"
	"testing"

	"evenhand/standards/task"
)

// notations are answers as children and teachers write them, for one item of each kind, with
// bars between. What is set aside is no possible answer, so it is neither right nor wrong. They
// follow common practice, from memory; each kind has at least twelve of right and of wrong.
var notations = slices.Concat(numberNotations, shapeNotations)

// notation is the answers to one item.
type notation struct{ kind, item, right, wrong, aside string }

// numberNotations are answers about numbers, sums, data, lengths and times.
var numberNotations = []notation{
	{"number sentence", "47 + 36 = ?",
		"83|083|= 83|83.|83!|I think 83|I think it is 83|+83|８３|eighty-three|Eighty three|ochenta y tres|" +
			"47 + 36 = 83|36 + 47 = 83|83 = 47 + 36|83=36+47|it is 83|The answer is 83.|It's 83|? = 83|es 83|" +
			"83.0|47 plus 36 equals 83|47 más 36 es 83",
		"73|713|38|84|11|830|813|0|47|36|seventy-three|47 + 36 = 73|47 + 46 = 83|46 + 37 = 83|40 + 43 = 83|" +
			"83 - 36 = 47|83 + 47 = 36|47 + 83 = 36|thirty-eight|8|3|1083",
		"|.|=|..|=.|8,3|8.3|8 3|83 or 84|not 83|83 apples|83x|absent|about 83|83?7|8/3|83 - |47 + 36|+|?|83 83"},
	{"number sentence", "47 + ? = 83",
		"36|thirty-six|treinta y seis|?=36|the missing number is 36|36 is missing|= 36|36.|47 + 36 = 83|" +
			"36 + 47 = 83|83 = 47 + 36|83 - 47 = 36|36 = 83 - 47|it's 36|the answer is 36|+36",
		"130|83|47|44|46|63|47 + 46 = 83|47 + 83 = 36|83 - 36 = 47|36 - 47 = 83|47 + 36 = 73|thirty|360",
		"|.|=|3,6|3 6|thirty-sicks|n|x"},
	{"number sentence", "83 - 47 = ?",
		"36|= 36|36.|thirty-six|83 - 47 = 36|36 = 83 - 47|83 minus 47 is 36|83 menos 47 es 36|It is 36.|036|+36|36!",
		"44|46|130|63|47|83|47 - 83 = 36|36 - 47 = 83|47 + 36 = 83|83 + 36 = 47|forty-four|83 - 36 = 47",
		"|-|=|3.6|36-|3 6|thirtysix apples"},
	{"balance", "4 + 6 = 7 + ?",
		"3|three|tres|= 3|3.|03|+3|it is 3|4 + 6 = 7 + 3|6 + 4 = 7 + 3|7 + 3 = 4 + 6|3 + 7 = 6 + 4|the answer is 3",
		"10|17|7|4|6|13|ten|4 + 6 = 7 + 4|4 + 7 = 6 + 5|3 + 6 = 7 + 2|30|0|4 + 6 = 10",
		"|.|=|3,7|left|3 7"},
	{"true or false", "true or false: 7 = 8 - 1",
		"true|True|TRUE|t|T.|true.|yes|y|right|correct|it is true|It's true!|7 = 8 - 1 is true|7=8-1 true|verdadero|V|sí|si",
		"false|False|FALSE|f|F.|no|n|wrong|not true|it is false|7 = 8 - 1 is false|falso|that's false",
		"|.|=|7|true or false|maybe|tru|7 = 8 - 1"},
	{"odd or even", "odd or even: 14",
		"even|Even|EVEN|e|even.|it is even|an even number|it is an even number|número par|It's even|14 is even|par|es par|14 es par|even!|is even",
		"odd|Odd|ODD|o|odd.|it is odd|It's odd|14 is odd|impar|es impar|14 es impar|odd!",
		"|.|=|14|13 is even|even or odd|evn|both"},
	{"array", "array 3 by 4",
		"12|twelve|doce|12 dots|12 dots.|there are 12 dots|12 in all|4 + 4 + 4 = 12|3 + 3 + 3 + 3 = 12|3 x 4 = 12|4 × 3 = 12|It is 12|12 puntos|12 = 4 + 4 + 4",
		"7|8|16|10|11|34|4 + 4 + 4 = 11|4 + 4 = 8|3 + 4 = 7|twenty|13 dots|12 + 12 = 24|0",
		"|.|=|3 4|1,2|3 by 4|12 cats|lots"},
	{"coins", "coins 25, 10, 10, 5, 1",
		"51|51¢|51 ¢|51 cents|51c|51 cent|51 centavos|$0.51|$.51|0.51|.51|fifty-one|fifty-one cents|51 cents.|" +
			"It is 51 cents|25 + 10 + 10 + 5 + 1 = 51|51 cents in all|= 51",
		"5|46|125|50|41|15|15¢|$51|$5.10|0.46|51 dollars|fifteen cents|25 + 10 + 10 + 5 = 50|5 coins|52|$0.15",
		"|.|=|¢|$|5,1|$0.51¢|51.00|51 shells"},
	{"coins", "coins 50, 25, 25",
		"100|100¢|100 cents|$1|$1.00|1.00|1 dollar|a dollar|one dollar|One dollar.|un dólar|$ 1.00|50 + 25 + 25 = 100|a hundred cents",
		"1|3|75|$100|$10|10|1000|150|99|101|$0.10|50 + 25 = 75",
		"|.|$|10,0|1.0.0"},
	{"how many", "count 13",
		"13|thirteen|trece|13 dots|13 dots.|there are 13|There are 13 dots|13 in all|= 13|013|13!|hay 13 puntos|it is 13|13 dot",
		"12|14|31|3|10|103|thirty|twelve|13000|30|14 dots|0|there are 12 dots",
		"|.|=|1,3|1 3|10 + 3 = 13|13 cats|a lot"},
	{"marked line", "marked line 0 to 100 by 10: 70",
		"70|070|= 70|70.|70!|+70|７０|seventy|Seventy|setenta|it is 70|It's 70|the number is 70|es 70|the answer is 70|70.0|the mark is at 70",
		"7|8|60|80|700|17|0|10|100|71|seventeen|sixty|the number is 60|7000|75",
		"|.|=|7,5|7 0|70 or 80|not 70|70 apples|about 70|70x|10 + 60 = 70|?"},
	{"line plot", "line plot cm 4: 2, 5: 3, 6: 1, 7: 1: how many 5",
		"3|three|tres|3 things|3.|= 3|03|3 long|there are 3|it is 3|3 cosas|hay 3 cosas|3 things long",
		"2|1|5|7|4|30|five|2 things|0|15|6|12|8",
		"|.|=|x|3 cats|2 + 1 = 3|3,5|5 3"},
	{"line plot", "line plot cm 4: 2, 5: 3, 6: 1, 7: 1: which length is most often",
		"5|five|cinco|5 cm|5 centimeters|5 cm.|5 centímetros|= 5|it is 5 cm|the length is 5|05|5 cm long|5cm",
		"3|4|6|7|2|three|4 cm|7 centimeters|50|1|6 cm|0|35",
		"|.|=|cm|5 inches|4 5|long"},
	{"line plot", "line plot cm 4: 2, 5: 3, 6: 1, 7: 1: draw",
		"2, 3, 1, 1|2 3 1 1|2,3,1,1|2; 3; 1; 1|4: 2, 5: 3, 6: 1, 7: 1|4:2 5:3 6:1 7:1|2 and 3 and 1 and 1|" +
			"two, three, one, one|2 y 3 y 1 y 1|2, 3, 1, 1.|2, 3, 1 and 1|02, 3, 1, 1",
		"3, 2, 1, 1|2, 3, 1|2|1, 1, 3, 2|2, 3, 1, 2|4: 3, 5: 2, 6: 1, 7: 1|2 3 1 1 1|7|0 0 0 0|2, 4, 1, 1|4, 5, 6, 7|one, two, three, four|2, 3",
		"|.|=|x|5: 3, 4: 2, 6: 1, 7: 1|tall|2 + 3"},
	{"blocks", "blocks 6: how long",
		"6|six|seis|6 blocks|6 blocks.|6 block|= 6|it is 6 blocks long|the bar is 6 blocks long|6 bloques|mide 6 bloques|06|+6",
		"5|7|12|3|16|60|five|5 blocks|7 bloques|0|1|66|4",
		"|.|=|blocks|6 cm|3 + 3 = 6|6 7|6,5"},
	{"blocks", "blocks 6 gaps, even, overlaps: which is right",
		"B|b|B.|B!|the B|picture B|row B|second|the second|the second one|2|segunda|la segunda|it is B|es el dibujo B",
		"A|a|C|c|1|3|first|third|the first one|picture C|la primera|tercero|row A|C.",
		"|.|=|D|A B|4|none|x"},
	{"blocks", "blocks 4 long, 2 short in each: how many short",
		"8|eight|ocho|8 blocks|8 short blocks|8 short|= 8|2 + 2 + 2 + 2 = 8|8 bloques cortos|it is 8 short blocks long|08|8.|the bar is 8 short blocks long",
		"4|2|6|12|10|80|four|4 short blocks|2 + 2 = 4|4 + 4 = 9|0|16|7",
		"|.|=|short|8 inches|4 2|many"},
	{"lengths", "bars 5, 8: which is longer",
		"B|b|B.|B!|bar B|the bar B|second|the second|the second one|2|B is longer|la barra B|segunda|es la B",
		"A|a|A.|bar A|first|the first one|1|la barra A|A is longer|primera|es la A|the first|the A",
		"|.|=|C|8|A B|both|x"},
	{"lengths", "bars 5, 8, 3: order from shortest",
		"2, 3, 1|2,3,1|2 3 1|2 and 3 and 1|two three one|A 2, B 3, C 1|A: 2, B: 3, C: 1|C, A, B|C A B|c, a, b|C < A < B|2; 3; 1|2, 3, 1.",
		"1, 2, 3|2, 1, 3|3, 2, 1|A, B, C|B, A, C|1 3 2|A 1, B 2, C 3|5, 8, 3|3 1 2|2, 3|2|one two three|C, B, A",
		"|.|=|A, B|x|A, C 2|short|D"},
	{"estimate", "estimate bed: 6 feet",
		"6 feet|6 ft|6 foot|6ft|six feet|6 feet.|about 6 feet|6 pies|seis pies|6 feet long|it is 6 feet long|6 FEET|unos 6 pies",
		"6 inches|60 feet|6 in|60 ft|60 pies|6 pulgadas|7 feet|6 meters|6 m|six inches|sixty feet|600 feet|6 cm",
		"|.|=|6|feet|6 or 60 feet|6 apples"},
	{"estimate", "tool for hallway: measuring tape",
		"measuring tape|Measuring tape|tape|the tape|a measuring tape|the measuring tape|tape.|cinta|" +
			"cinta métrica|la cinta métrica|una cinta|with a measuring tape|with the tape",
		"ruler|the ruler|a ruler|scale|the scale|regla|la regla|balanza|una balanza|with a ruler|con la regla|Ruler.|SCALE",
		"|.|=|hands|ruler and tape|3|measuring"},
	{"ruler", "ruler cm 2 to 9: how long",
		"7|seven|siete|7 cm|7cm|7 cms|it measures 7 cm|7 cm.|7 centimeters|7 centímetros|7 centimetres|= 7|" +
			"7 cm long|it is 7 cm long|the bar is 7 centimeters long|9 - 2 = 7|mide 7 centímetros|07",
		"9|8|2|11|6|70|9 cm|8 centimeters|nine|0|5|7 - 2 = 5|9 + 2 = 11|6 cm|nueve",
		"|.|=|cm|7 inches|2 to 9|7,5|7 or 8|long"},
	{"ruler", "ruler inches 0 to 5 and 0 to 2: how much longer",
		"3|three|tres|3 in|3 inches|3\"|3 \"|3”|3''|3″|3 inch|3 inches longer|3 pulgadas|3 pulgadas más|5 - 2 = 3|3 = 5 - 2|= 3|it is 3 inches longer|03|3.",
		"5|2|7|4|30|5 inches|5\"|7”|7 inches|2 in|seven|5 + 2 = 7|0|1|2 + 3 = 5|cinco",
		"|.|=|inches|3 cm|5 2|3'|\"3|3,5|longer"},
	{"data", "bar graph cats 4, dogs 7, birds 2: how many more dogs than cats",
		"3|three|tres|3.|= 3|+3|3 dogs|3 more dogs|three more|7 - 4 = 3|3 = 7 - 4|there are 3 more dogs than cats|3 more|it is 3|hay 3 perros más|03",
		"7|11|4|2|13|30|5|eleven|7 dogs|7 - 4 = 4|4 + 7 = 11|7 - 2 = 5|0|1|3 + 4 = 7",
		"|.|=|dogs|3 7|3,5|3 apples|a lot|3 or 4"},
	{"data", "table cats 4, dogs 7, birds 2: how many in all",
		"13|thirteen|trece|13.|= 13|13 pets|13 in all|4 + 7 + 2 = 13|7 + 4 + 2 = 13|13 = 4 + 7 + 2|there are 13 pets in all|13 mascotas|it is 13",
		"11|3|9|6|31|12|14|4 + 7 = 11|4 + 7 + 2 = 14|eleven|130|7|7 + 2 = 9",
		"|.|=|pets|4 7 2|1,3|13 cars|many"},
	{"data", "bar graph cats 4, dogs 7, birds 2: which has the most",
		"dogs|Dogs|DOGS|dogs.|dog|the dogs|perros|los perros|7|7 dogs|there are more dogs|dogs have the most|seven dogs|perros!",
		"cats|birds|cat|the cats|gatos|pájaros|4|2|4 cats|bird|los gatos|2 birds|13",
		"|.|=|cats dogs|apples|all|7 cats|fish"},
	{"data", "things circles 4, squares 7, stars 2: order from fewest",
		"2, 3, 1|2,3,1|2 3 1|2 and 3 and 1|two three one|circles 2, squares 3, stars 1|stars, circles, squares|" +
			"stars circles squares|star, circle, square|estrellas, círculos, cuadrados|2; 3; 1|" +
			"circles: 2, squares: 3, stars: 1|2, 3, 1.",
		"2, 1, 3|1, 2, 3|3, 2, 1|4, 7, 2|squares, circles, stars|circles, squares, stars|1 3 2|3 1 2|2, 3|2|2, 3, 1, 4|one two three|stars, squares, circles",
		"|.|=|circles, squares|cats, dogs|2 + 3|first circles"},
	{"data", "bar graph cats 4, dogs 7, birds 2: draw",
		"4, 7, 2|4 7 2|4,7,2|4; 7; 2|4 and 7 and 2|cats 4, dogs 7, birds 2|4 cats, 7 dogs, 2 birds|" +
			"cats: 4, dogs: 7, birds: 2|gatos 4, perros 7, pájaros 2|four, seven, two|4 7 2.|" +
			"cats = 4, dogs = 7, birds = 2",
		"7, 4, 2|4, 2, 7|4, 7|4|5, 7, 2|4, 7, 3|13|2 7 4|4 7 2 1|cats 4, dogs 7, birds 3|4, 7, 20|one, two, three|0 0 0",
		"|.|=|cats, dogs, birds|dogs 7, cats 4, birds 2|tall|4 + 7 + 2|right"},
	{"dots to count out", "count out 7 of 12",
		"7|seven|siete|7 dots|7 dots.|= 7|07|7!|it is 7|7 puntos|there are 7|7 colored",
		"12|8|6|5|17|70|twelve|0|71|8 dots|5 dots|ocho",
		"|.|=|7,5|7 8|7 cats|many"},
	{"dots one by one", "number 7 dots",
		"7|seven|siete|7 dots|7 dots.|= 7|07|7!|it is 7|7 puntos|there are 7|there are 7 dots",
		"8|6|5|17|70|eight|0|71|8 dots|5 dots|ocho|77",
		"|.|=|7,5|7 8|7 cats|many"},
	{"dots one by one", "7 dots and one more",
		"8|eight|ocho|8 dots|8 dots.|= 8|08|8!|it is 8|8 puntos|now there are 8|8 now",
		"7|9|6|1|80|seven|0|81|71|7 dots|siete|10",
		"|.|=|8,5|7 8|8 cats|many"},
	{"picture of a sum", "picture of 5 + 3",
		"5 + 3 = 8|5+3=8|3 + 5 = 8|8 = 5 + 3|8=3+5|five plus three equals eight|5 + 3 = 8.|5 más 3 es 8|5 más 3 son 8|5 plus 3 is 8|3 + 5 = 8!|5 + 3 = 8 dots",
		"5 - 3 = 2|5 + 3 = 3|5 + 3 = 7|5 + 3 = 9|8 - 3 = 5|8 + 3 = 11|5 + 8 = 3|4 + 4 = 8|3 - 5 = 2|5 + 5 = 10|8 = 4 + 4|3 + 3 = 6",
		"|.|=|8|5 3 8|cats|5 + 3"},
	{"picture of a sum", "picture of 8 - 3",
		"8 - 3 = 5|8-3=5|5 = 8 - 3|8 − 3 = 5|eight minus three equals five|8 - 3 = 5.|8 menos 3 es 5|8 - 3 is 5|8 minus 3 is 5|5=8-3|8 - 3 = 5!|8 - 3 = 5 dots",
		"8 + 3 = 11|5 - 3 = 2|3 - 8 = 5|8 - 5 = 3|5 + 3 = 8|8 - 3 = 6|8 - 3 = 4|11 - 3 = 8|8 - 2 = 6|3 + 5 = 8|8 - 4 = 4|8 = 5 - 3",
		"|.|=|5|8 3 5|cats|8 - 3"},
	{"picture of a sum", "draw dots for 5 + 3",
		"8|eight|ocho|8 dots|8.|= 8|08|8!|it is 8|5 + 3 = 8|3 + 5 = 8|8 puntos",
		"2|7|9|5|3|53|0|80|5 + 3 = 7|5 - 3 = 2|seven|11",
		"|.|=|8,5|5 8|8 cats|many"},
	{"reason", "why 47 + 30",
		"7, 7, 77|7 7 77|7,7,77|7; 7; 77|7, 7 and 77|seven, seven, seventy-seven|7 y 7 y 77|7, 7, 77.|07, 7, 77|7; 7, 77|siete, siete, setenta y siete|7, 7, 77!",
		"77|7, 77|7, 7, 50|1, 7, 17|7, 7|7, 7, 78|7, 8, 77|8, 7, 87|77, 7, 7|7|50|7, 10, 50",
		"|.|=|7, 7, 77, 1|cats|7 tens"},
	{"counting on", "count on 3 from 8",
		"9, 10, 11, 11|9 10 11 11|9,10,11,11|9; 10; 11; 11|9, 10, 11 and 11|nine, ten, eleven, eleven|11|8 + 3 = 11|3 + 8 = 11|11 = 8 + 3|= 11|once",
		"8, 9, 10, 10|10|7, 6, 5, 5|5|9, 10, 11|9, 10|9, 10, 11, 12|8 + 3 = 10|8 - 3 = 5|11, 10, 9, 11|12|9, 11, 10, 11",
		"|.|=|8, 9, 10, 11, 11|cats|11 cats"},
	{"counting on", "count back 3 from 11",
		"10, 9, 8, 8|10 9 8 8|10,9,8,8|10; 9; 8; 8|10, 9, 8 and 8|ten, nine, eight, eight|8|11 - 3 = 8|8 = 11 - 3|= 8|ocho|8.",
		"11, 10, 9, 9|9|12, 13, 14, 14|14|10, 9, 8|10, 9|10, 9, 8, 7|11 - 3 = 9|11 + 3 = 14|8, 9, 10, 8|7|10, 8, 9, 8",
		"|.|=|11, 10, 9, 8, 8|cats|8 cats"},
	{"story", "story put-together three-addends: 4 + 6 + 3 = ?, shells, Mia",
		"13|13.|13 shells|13 shells.|thirteen|thirteen shells|4 + 6 + 3 = 13|6 + 4 + 3 = 13|13 = 4 + 6 + 3|trece conchas|= 13|3 + 4 + 6 = 13",
		"10|9|7|4|6|3|463|12|14 shells|4 + 6 = 10|4 + 6 + 3 = 12|130",
		"|.|=|1,3|13 apples|12 or 13|shells|4 6 3"},
	{"odd or even", "odd or even: 14 dots",
		"even|Even|EVEN|e|even.|it is even|It's even|14 is even|par|es par|even!|is even",
		"odd|Odd|ODD|o|odd.|it is odd|It's odd|14 is odd|impar|es impar|odd!|is odd",
		"|.|=|14|13 is even|evn|both"},
	{"equal addends", "equal addends of 14",
		"7 + 7|7+7|7, 7|7 7|7 and 7|7 y 7|seven and seven|14 = 7 + 7|7 + 7 = 14|7 & 7|14=7+7|7; 7",
		"14 + 14|6 + 8|8 + 6|7, 6|6 7|10 + 4|14 = 8 + 6|6 and 8|7 + 8|7 + 7 = 15|1 1|70 + 70",
		"|.|=|7|14|cats|even"},
	{"equal addends", "equal addends of array 3 by 4",
		"4 + 4 + 4 = 12|4+4+4=12|12 = 4 + 4 + 4|3 + 3 + 3 + 3 = 12|4, 4, 4, 12|4 4 4 12|4 + 4 + 4 = 12.|" +
			"four + four + four = twelve|12=4+4+4|12 = 3 + 3 + 3 + 3|4; 4; 4; 12|4 + 4 + 4 is 12",
		"3 + 3 + 3 = 9|3 + 4 = 7|4 + 4 = 8|4 + 4 + 4 = 13|4, 4, 4|4 4 12|6 + 6 = 12|4 + 4 + 4 + 4 = 16|3, 3, 3, 3|1 1|4 4 4 13|12 + 0 = 12",
		"|.|=|12|4|cats|rows"},
	{"bills and coins", "money $5, $1, 25, 10, 10",
		"$6 and 45¢|$6.45|$6 45¢|6 dollars 45|$6 45|six dollars forty-five|6 dollars & 45 cents|6 dólares 45|" +
			"6 dollars and 45 cents|6 dollars 45 cents|$6, 45¢|6.45|645¢|645 cents|" +
			"six dollars and forty-five cents|6 dólares y 45 centavos|$6 y 45¢|it is $6 and 45 cents",
		"$45 and 6¢|$6.35|6 dollars 46|45 dollars 6|$6 54|a dollar and 45 cents|$6 and 35¢|$6|45¢|$5 and 45¢|" +
			"7 dollars 45 cents|$645|$2 and 3¢|$6.40|$64.50|six dollars",
		"|.|$|6|6 45|6 cats|¢|6 dollars 450|45¢ $6|6 45 dollars"},
	{"line to mark", "mark 70 on line 0 to 100 by 10",
		"70|070|= 70|70.|70!|seventy|setenta|it is 70|It's 70|the number is 70|es 70|at 70",
		"7|8|60|80|700|17|0|10|100|71|seventeen|sixty|75",
		"|.|=|7,5|7 0|70 or 80|70 apples|?"},
	{"line to mark", "show 40 + 30 on line 0 to 100 by 10",
		"70|070|= 70|70.|70!|seventy|setenta|it is 70|It's 70|the number is 70|es 70|at 70",
		"10|60|80|40|30|700|7|17|0|100|71|sixty",
		"|.|=|7,5|7 0|70 or 80|70 apples|?"},
	{"groups", "more: 5 or 8 dots",
		"right|Right|RIGHT|right.|the right|the right one|second|the second group|b|B|derecha|la derecha|8|8 dots|eight|right group",
		"left|Left|the left one|first|a|A|izquierda|5|five|5 dots|same|the same|both|equal|13|3|they are the same",
		"|.|=|left or right|up|5 8|right left"},
	{"pairs", "pairs of 7",
		"1 + 6, 2 + 5|1+6 2+5|1 + 6 and 2 + 5|2 + 5; 1 + 6|6 + 1, 5 + 2|1 and 6, 2 and 5|1 and 6; 3 and 4|" +
			"7 = 1 + 6, 7 = 2 + 5|1 + 6 = 7, 2 + 5 = 7|0 + 7, 1 + 6|1,6,2,5|1 6 2 5|three and four, one and six|" +
			"1 y 6, 2 y 5|3+4/2+5",
		"1 + 6|1 + 6, 6 + 1|1 + 5, 2 + 5|7 + 1, 7 + 2|1 + 6, 1 + 6|2 + 6, 1 + 5|1 6|3 4|1 + 6, 2 + 6|8 + 1, 2 + 5|10 + 3, 2 + 5|1 + 2, 6 + 5|1 and 2, 5 and 6",
		"|.|=|7|1 + 6 + 2 + 5|1|seven"},
	{"number writing", "write forty-two",
		"42|042|= 42|42.|+42|４２|it is 42|It's 42|the answer is 42|es 42|42!|42.0",
		"402|24|40|4|2|420|43|forty-two|cuarenta y dos|twenty-four|4002|0|40002",
		"|.|=|4,2|4.2|4 2|42 or 24|40 2|four two"},
	{"number writing", "write 342 in words",
		"three hundred forty-two|Three hundred forty-two.|three hundred forty two|three hundred and forty-two|" +
			"THREE HUNDRED FORTY-TWO|trescientos cuarenta y dos|It is three hundred forty-two|" +
			"three  hundred forty-two|= three hundred forty-two|Trescientos Cuarenta y Dos|" +
			"three hundred and forty two!|the answer is three hundred forty-two",
		"342|three four two|two hundred forty-three|three hundred twenty-four|thirty-four two|forty-two|" +
			"three hundred|three hundred forty|three hundred fourty-two|cuarenta y dos|tres cuatro dos|" +
			"four hundred thirty-two|3",
		"|.|=|yes|three hundred forty-two dollars and change"},
	{"clock", "read 4:30",
		"4:30|04:30|4.30|4 : 30|4 30|4:30.|it's 4:30|It is 4:30|half past 4|half past four|half-past four|" +
			"four thirty|four-thirty|16:30|4:30 pm|4:30 a.m.|las 4 y media|son las cuatro y media|" +
			"30 minutes past 4|4:30 in the afternoon",
		"6:20|5:30|3:30|4:06|4:00|6:30|4|four|four o'clock|half past 5|quarter past 4|quarter to 4|5|7:15|12:30",
		"|.|=|:|430|4:75|25:00|half|4:3|banana|4,30"},
	{"clock", "read 7:00",
		"7:00|7|seven|7 o'clock|seven o'clock|7 o clock|7 oclock|07:00|7.00|it's 7|It is 7 o'clock.|7:00 pm|las 7|las siete|19:00",
		"12:35|8:00|8|6|eight o'clock|12|12:00|7:12|7:30|half past 7|1|quarter to 7|5:00",
		"|.|=|0|13|seven cats|700"},
	{"clock", "say 4:45",
		"quarter to 5|quarter to five|a quarter to 5|Quarter to 5.|it's quarter to five|quarter of five|" +
			"quarter till 5|four forty-five|fifteen minutes to five|15 to 5|las 5 menos cuarto|" +
			"las cinco menos cuarto",
		"4:45|quarter to 4|quarter past 4|half past 4|4.45|16:45|quarter past 5|five o'clock|4 o'clock|ten to five|four fifteen|9:20|five forty-five",
		"|.|=|quarter|later|five to"},
	{"match clocks", "match 4:00, 7:00, 11:00",
		"4:00, 7:00, 11:00|4:00,7:00,11:00|4:00; 7:00; 11:00|4, 7, 11|4 o'clock, 7 o'clock, 11 o'clock|" +
			"04:00, 07:00, 11:00|four, seven, eleven|4.00, 7.00, 11.00|16:00, 19:00, 23:00|4:00 , 7:00 , 11:00.|" +
			"las 4, las 7, las 11|4,7,11",
		"7:00, 4:00, 11:00|11:00, 7:00, 4:00|4:00, 7:00|4:00|4:00, 11:00, 7:00|5:00, 7:00, 11:00|" +
			"4:00, 7:00, 12:00|4:30, 7:00, 11:00|7, 4, 11|11, 4, 7|4, 4, 4|12, 12, 12",
		"|.|=|,|a, b, c|4:00, 7:00, 11:00, 12:00"},
	{"place value", "47 = ? tens ? ones",
		"4 7|4, 7|4,7|4 tens 7 ones|7 ones 4 tens|4 tens and 7 ones|4 tens, 7 ones|47 = 4 tens 7 ones|4 and 7|" +
			"four tens seven ones|4 decenas 7 unidades|7 unidades y 4 decenas|4t 7o|4 tens 7 ones.",
		"7 4|4 ones 7 tens|7 tens 4 ones|40 7|4|7|47|4 tens|7 ones|4 tens 6 ones|3 tens 17 ones|4 tens 40 ones|4 unidades 7 decenas",
		"|.|=|4 apples|74 = 7 tens 4 ones|4 7 0|4 tens 7|tens ones"},
	{"place value", "142 = ? hundreds ? tens ? ones",
		"1 4 2|1, 4, 2|1 hundred 4 tens 2 ones|2 ones 4 tens 1 hundred|4 tens 1 hundred 2 ones|" +
			"1 hundred, 4 tens, 2 ones|142 = 1 hundred 4 tens 2 ones|1 and 4 and 2|" +
			"1 centena 4 decenas 2 unidades|1h 4t 2o|1,4,2|1 hundred + 4 tens + 2 ones",
		"2 4 1|1 ones 4 tens 2 hundreds|1 tens 4 hundreds 2 ones|4 1 2|100 40 2|1 2 4|1 4|142|1 hundred 2 tens 4 ones|14 2|1 hundred 42 ones|1 hundred 4 ones",
		"|.|=|1 4 2 0|abc"},
	{"place value", "4 tens 7 ones = ?",
		"47|= 47|47.|forty-seven|cuarenta y siete|4 tens 7 ones = 47|40 + 7 = 47|it is 47|047|47!|4 decenas 7 unidades = 47|The answer is 47",
		"74|407|11|4|7|40|4007|fourteen|4 tens 7 ones = 74|48|470|37|40 + 7 = 74",
		"|.|=|4,7|4 7|4.7"},
	{"expanded form", "142 = ? + ? + ?",
		"100 + 40 + 2|100+40+2|2 + 40 + 100|40 + 100 + 2|142 = 100 + 40 + 2|100 + 40 + 2 = 142|100, 40, 2|" +
			"100 40 2|100 and 40 and 2|100 + 40 + 2.|= 100 + 40 + 2|one hundred + forty + two",
		"1 + 4 + 2|100 + 4 + 2|10 + 40 + 2|100 + 42|140 + 2|142|200 + 40 + 1|100 + 40 + 20|100 40|1 4 2|100 + 40 + 3|40 + 2",
		"|.|=|1h 4t 2o|100 - 40|many"},
	{"more or less", "10 more than 47 = ?",
		"57|= 57|57.|fifty-seven|cincuenta y siete|57 is 10 more than 47|10 more than 47 is 57|" +
			"10 more than 47 = 57|47 + 10 = 57|10 + 47 = 57|it is 57|The number is 57|+57",
		"48|37|147|47|10|58|75|10 more than 47 is 48|37 is 10 more than 47|57 is 10 less than 47|47 is 10 more than 57|47 + 10 = 48|thirty-seven",
		"|.|=|5,7|5 7|57 apples"},
	{"compare", "47 ? 74",
		"<|less|less than|is less than|smaller|menor|menor que|es menor que|47 < 74|47<74|74 > 47|47 is less than 74|74 is greater than 47|it is less|<.",
		">|=|greater|more|bigger|mayor que|equal|same|47 > 74|74 < 47|47 = 74|47 is greater than 74|the same|46 < 74|4 < 7|47 < 47",
		"|.|..|47|74|47 74|?|< >|no"},
	{"compare", "52 ? 52",
		"=|equal|equals|the same|same|igual|iguales|son iguales|52 = 52|is equal to|equal to|52=52|they are equal",
		"<|>|less|more|greater|smaller|52 < 52|52 > 52|mayor|menor|bigger|less than",
		"|.|..|52|==|no"},
	{"sequence", "98, 99, ?, 101",
		"100|= 100|100.|one hundred|a hundred|cien|98, 99, 100, 101|98 99 100 101|it is 100|98,99,100,101|100!|The answer is 100|98; 99; 100; 101",
		"101|99|1000|1001|110|98|10|102|98, 99, 101, 101|98, 99, 100, 102|101, 100, 99, 98|97, 98|one hundred one",
		"|.|=|1,0,0,x|a b c|100 101 102 103 104"},
	{"sequence", "35, ?, ?, 50",
		"40, 45|40,45|40 45|40 and 45|40; 45|forty, forty-five|40 y 45|35, 40, 45, 50|35 40 45 50|40, 45.|they are 40 and 45|40 and 45!",
		"45, 40|36, 37|40|45|40, 50|30, 25|40, 46|4045|41, 45|35, 36, 37, 50|35, 45, 40, 50|45 and 40|40 45 50",
		"|.|=|40 + 45|x, y"},
	{"related facts", "8 + ? = 11, 11 - 8 = ?",
		"3|3, 3|3 3|3 and 3|three|tres|= 3|3.|it is 3|8 + 3 = 11, 11 - 8 = 3|3 + 8 = 11; 11 - 8 = 3|11 - 8 = 3|3,3|03",
		"19|11|4|8|3, 4|4, 3|4, 4|8 + 4 = 11, 11 - 8 = 4|8 + 3 = 11, 11 - 8 = 4|2|11, 11|30|11 - 3 = 8",
		"|.|=|3, 3, 3|3.5|left"},
	{"story", "story add-to result-unknown: 5 + 7 = ?, shells, Mia",
		"12|12.|12 shells|12 shells.|12 shell|twelve|twelve shells|Mia has 12 shells|She has 12|" +
			"she has 12 shells now|5 + 7 = 12|7 + 5 = 12|5 + 7 = 12 shells|doce conchas|tiene 12 conchas|= 12",
		"2|5|7|13|11|57|13 shells|seven|5 + 7 = 13|12 + 7 = 5|12 - 7 = 5|she has 5|21|120",
		"|.|=|1,2|12 apples|12 or 13|shells|5 7"},
	{"story", "story add-to change-unknown: 5 + ? = 12, shells, Mia",
		"7|seven|7 more|7 shells|7 more shells|5 + 7 = 12|12 - 5 = 7|7 = 12 - 5|Mia gets 7 more|siete|7.|= 7|7 shells!|7 shell",
		"17|12|5|8|6|seventeen|12 shells|12 + 5 = 17|5 + 12 = 17|12 - 7 = 5|0|70|5 + 7 = 13",
		"|.|=|0,7|7 eggs|many"},
	{"story", "story take-from result-unknown: 80 - 25 = ?, cents, Ana",
		"55|55¢|55 ¢|55 cents|55 cents.|55 cent|$0.55|$.55|0.55|55c|55 centavos|fifty-five cents|Ana has 55 cents|80 - 25 = 55|80¢ - 25¢ = 55¢|= 55",
		"105|65|45|25|80|$55|$5.50|105¢|65 cents|$0.65|5|80 - 25 = 65|55 dollars|80 + 25 = 105",
		"|.|=|¢|5,5|55 shells|$"},
	{"story", "story take-from result-unknown: 62 - 25 = ?, rope, Omar",
		"37|37 cm|37cm|37 cm.|37 centimeters|37 centimetres|37 centímetros|thirty-seven|The rope is 37 cm long|" +
			"it is 37 cm long now|62 - 25 = 37|62 cm - 25 cm = 37 cm|= 37",
		"87|43|47|62|25|38|87 cm|43 cm|62 - 25 = 43|25 - 62 = 37|370|73 cm|62 + 25 = 87",
		"|.|=|cm|3.7|37 apples"},
	{"story", "story put-together both-unknown: 7 = ? + ?, apples, Lin",
		"3 + 4|4 + 3|1 + 6|3 and 4|3, 4|3 4|3 red and 4 green|3 red, 4 green|7 = 3 + 4|3 + 4 = 7|2 y 5|three and four|6 & 1",
		"7 + 1|3 + 3|0 + 7|7 + 0|7|3|5 and 4|7 + 7|1, 7|8 + 1|70, 7|3 red and 3 green|6",
		"|.|=|3 + 4 + 0|1 2 3|apples"},
}

func TestNotations(t *testing.T) {
	seen := make(map[string]bool)
	for _, row := range notations {
		asked := task.MustParse(row.item)
		seen[row.kind] = true
		if got := task.KindOf(asked); got != row.kind {
			t.Errorf("%s is %s, not %s", row.item, got, row.kind)
		}
		right, wrong := strings.Split(row.right, "|"), strings.Split(row.wrong, "|")
		if len(right) < 12 || len(wrong) < 12 {
			t.Errorf("%s: %d right and %d wrong answers; twelve of each are the least", row.item, len(right), len(wrong))
		}
		for _, answer := range right {
			if !asked.Judge(answer) || !asked.Possible(answer) {
				t.Errorf("%s: %q is judged %v, possible %v; it is right", asked, answer, asked.Judge(answer), asked.Possible(answer))
			}
		}
		for _, answer := range wrong {
			if asked.Judge(answer) || !asked.Possible(answer) {
				t.Errorf("%s: %q is judged %v, possible %v; it is wrong and possible", asked, answer, asked.Judge(answer), asked.Possible(answer))
			}
		}
		for _, answer := range strings.Split(row.aside, "|") {
			if asked.Judge(answer) || asked.Possible(answer) {
				t.Errorf("%s: %q is judged %v, possible %v; it is no answer", asked, answer, asked.Judge(answer), asked.Possible(answer))
			}
		}
	}
	for _, kind := range task.Kinds() {
		if !seen[kind.Name] {
			t.Errorf("no notations are tried for %s", kind.Name)
		}
	}
}
