package standards

import (
	"slices"

	"evenhand/standards/task"
	"evenhand/standards/words"
)

// CatalogueNumber grows by one whenever this program computes other values for an item than the
// one before: its skill, codes, traits, looks, seconds or predicted difficulty. A stored bank
// carries the number by which its items were computed.
//
//  1. as first kept
//  2. traits of what is asked; a hundred crossed and reached as taught; codes at their limits;
//     one scale of difficulty
const CatalogueNumber = 2

// catalogue is the skills in teaching order. A task belongs to the first row whose
// test it passes, so narrower skills stand before wider ones. Base difficulties and
// working times are common practice, no source; the order of the clock skills is
// that of Boulton-Lewis, Wilss & Mutch (1997), by the weights in weights.go.
var catalogue = SkillList{
	{"count-dots", 0, []task.Code{"K.CC.B.5"}, []task.Look{task.LookDots}, 20, -3000,
		"count up to 20 things in rows or in a circle, up to 10 scattered", "count 13",
		called{"counting dots|counting objects|counting things|how many dots", "contar puntos|contar objetos|contar cosas"}, is[task.HowMany]},
	{"compare-groups", 0, []task.Code{"K.CC.C.6"}, []task.Look{task.LookGroups}, 15, -1900,
		"say which of two groups has more or fewer", "more: 5 or 8 dots",
		called{"comparing groups|compare groups|more or fewer|which group has more", "comparar grupos|más o menos puntos"}, is[task.Groups]},
	{"write-to-20", 0, []task.Code{"K.CC.A.3", "1.NBT.A.1", "2.NBT.A.3"}, []task.Look{task.LookWords, task.LookChoice}, 15, -2200,
		"write numbers to 20 in digits", "write thirteen",
		called{"writing numbers to 20|write numbers to 20|numbers to 20", "escribir números hasta 20|números hasta 20"}, writing(20)},
	{"number-pairs", 0, []task.Code{"K.OA.A.3"}, []task.Look{task.LookPairs}, 45, -2000,
		"find two pairs that make a number to 10", "pairs of 7",
		called{"number pairs|decomposing numbers|ways to make a number|compose and decompose", "pares de números|descomponer números"}, is[task.Pairs]},
	{"make-ten", 0, []task.Code{"K.OA.A.4", "1.OA.D.8"}, []task.Look{task.LookSentence, task.LookBond, task.LookNumberLine, task.LookHundredsChart, task.LookChoice}, 20, -2600,
		"find the partner that makes 10", "6 + ? = 10",
		called{"make 10|making ten|partners of 10|friends of ten|facts|number bonds|missing number|missing addend", "formar diez|formar 10|amigos del 10|sumas de 10"}, sentence(func(s task.Sentence) bool {
			return s.N == 2 && s.IsAddition() && s.Blank != 2 && s.Result() == 10 && min(s.Terms[0], s.Terms[1]) > 0
		})},
	{"subtract-tens", 1, []task.Code{"1.NBT.C.6", "1.OA.C.6", "2.OA.B.2", "K.OA.A.2"}, []task.Look{task.LookSentence, task.LookColumn, task.LookBond, task.LookNumberLine, task.LookHundredsChart}, 25, -2400,
		"take tens from tens", "80 - 30 = ?",
		called{"subtracting tens|subtract tens|taking away tens|two-digit subtraction|2-digit subtraction", "restar decenas|resta de decenas"}, result2(func(s task.Sentence) bool { return s.IsTens() })},
	{"stories-within-10", 0, []task.Code{"K.OA.A.2", "K.OA.A.3", "1.OA.A.1", "2.OA.A.1"}, []task.Look{task.LookStory, task.LookChoice}, 60, -2100,
		"stories of the situations of kindergarten, within 10", "story add-to result-unknown: 5 + 3 = ?, shells, Mia",
		called{"word problems within 10|story problems within 10|stories to 10|word problems|story problems|stories", "problemas hasta 10|problemas|problemas verbales"}, kindergartenStory},
	{"length-stories", 2, []task.Code{"2.MD.B.5", "2.OA.A.1", "1.OA.A.1"}, []task.Look{task.LookStory, task.LookChoice}, 80, -1800,
		"stories about lengths, within 100", "story take-from result-unknown: 62 - 25 = ?, rope, Omar",
		called{"length problems|length word problems|word problems about length|word problems with length|word problems", "problemas de longitud|problemas con longitudes|problemas"}, story(func(s task.Story) bool { return s.Measured() })},
	{"money-stories", 2, []task.Code{"2.MD.C.8", "2.OA.A.1", "1.OA.A.1"}, []task.Look{task.LookStory, task.LookChoice}, 80, -1800,
		"stories about cents, within a dollar", "story take-from result-unknown: 60 - 25 = ?, cents, Ana",
		called{"money problems|money word problems|word problems with money|word problems about money|word problems|money", "problemas de dinero|problemas con dinero|problemas|dinero"}, story(func(s task.Story) bool { return s.Money() })},
	{"two-step-stories", 2, []task.Code{"2.OA.A.1", "1.OA.A.2"}, []task.Look{task.LookStory, task.LookChoice}, 100, -1100,
		"stories with two steps, within 100", "story two-step: 25 + 17 - 12 = ?, shells, Mia",
		called{"two-step problems|2-step problems|two step word problems|word problems", "problemas de dos pasos|problemas"}, story(func(s task.Story) bool { return s.Situation == task.TwoSteps })},
	{"stories-within-20", 1, []task.Code{"1.OA.A.1", "2.OA.A.1"}, []task.Look{task.LookStory, task.LookChoice}, 70, -2100,
		"stories of the situations of grade 1, within 20", "story add-to change-unknown: 5 + ? = 12, shells, Mia",
		called{"word problems within 20|story problems within 20|stories to 20|word problems|story problems|stories", "problemas hasta 20|problemas|problemas verbales"}, story(func(s task.Story) bool {
			return s.Situation.Mastered() <= 1 && s.Sentence.Size() <= 20
		})},
	{"stories-within-100", 2, []task.Code{"2.OA.A.1", "1.OA.A.1"}, []task.Look{task.LookStory, task.LookChoice}, 80, -2000,
		"stories of all fourteen situations, within 100", "story compare smaller-unknown more: 62 - 25 = ?, books, Lin, Kofi",
		called{"word problems within 100|story problems within 100|stories to 100|word problems|story problems|stories", "problemas hasta 100|problemas|problemas verbales"}, is[task.Story]},
	{"facts-within-20", 1, []task.Code{"K.OA.A.2", "K.OA.A.5", "1.OA.C.6", "2.OA.B.2", "K.NBT.A.1"}, []task.Look{task.LookSentence, task.LookBond, task.LookColumn, task.LookMakeTen, task.LookNumberLine, task.LookHundredsChart, task.LookChoice}, 20, -2600,
		"add and subtract two numbers within 20", "7 + 8 = ?",
		called{"facts|addition facts|subtraction facts|add within 20|subtract within 20|math facts", "sumas hasta 20|restas hasta 20|sumas y restas hasta 20"}, result2(func(s task.Sentence) bool { return s.Size() <= 20 })},
	{"three-addends", 1, []task.Code{"1.OA.B.3", "1.OA.C.6"}, []task.Look{task.LookSentence, task.LookColumn, task.LookChoice}, 30, -2100,
		"add three numbers to 20", "9 + 4 + 6 = ?",
		called{"three numbers|three addends|adding three numbers", "tres sumandos|sumar tres números"}, sentence(func(s task.Sentence) bool {
			return s.N == 3 && s.Blank == 3 && s.IsAddition() && s.Size() <= 20
		})},
	{"missing-number", 1, []task.Code{"1.OA.D.8", "K.NBT.A.1"}, []task.Look{task.LookSentence, task.LookBond, task.LookNumberLine, task.LookHundredsChart, task.LookChoice}, 30, -2600,
		"find the unknown number within 20", "8 + ? = 11",
		called{"missing number|missing addend|unknown number|number bonds", "número que falta hasta 20|número que falta|sumando que falta"}, sentence(func(s task.Sentence) bool { return s.Blank != s.N && s.Size() <= 20 })},
	{"related-facts", 1, []task.Code{"1.OA.B.4"}, []task.Look{task.LookTwin}, 35, -2500,
		"take away by finding the unknown addend", "8 + ? = 11, 11 - 8 = ?",
		called{"related facts|fact families|fact family|think addition", "familias de operaciones|operaciones relacionadas"}, is[task.Related]},
	{"true-or-false", 1, []task.Code{"1.OA.D.7"}, []task.Look{task.LookTick}, 25, -2300,
		"say whether both sides of the equal sign are worth the same, within 20", "true or false: 7 = 8 - 1",
		called{"true or false|true false equations|equal sign", "verdadero o falso|cierto o falso|signo igual"}, func(t task.Task) bool {
			s, ok := t.(task.TrueFalse)
			return ok && s.Largest() <= 20
		}},
	{"turn-around", 1, []task.Code{"1.OA.B.3", "1.OA.D.7"}, []task.Look{task.LookSentence, task.LookChoice}, 30, -2900,
		"add in another order, or two of three addends first, within 20", "8 + 3 = 3 + ?",
		called{"turn around facts|turn-arounds|commutative property|order of addends", "propiedad conmutativa|orden de los sumandos"}, func(t task.Task) bool {
			s, ok := t.(task.Balance)
			return ok && s.SameAddends() && s.Largest() <= 20
		}},
	{"balance", 1, []task.Code{"1.OA.D.7"}, []task.Look{task.LookSentence, task.LookChoice}, 35, -1400,
		"make both sides of the equal sign worth the same, within 20", "4 + 6 = 7 + ?",
		called{"balance equations|balancing equations|balance|both sides equal|equal sign", "igualdades|ecuaciones equilibradas|signo igual"}, func(t task.Task) bool {
			s, ok := t.(task.Balance)
			return ok && s.Largest() <= 20
		}},
	{"balance-larger", 2, []task.Code{"2.NBT.B.5", "2.NBT.B.7"}, []task.Look{task.LookSentence, task.LookTick, task.LookChoice}, 60, -1500,
		"equal sides past 20, to fill in or to judge", "40 + 30 = 50 + ?",
		called{"balance larger numbers|balancing larger equations|balance equations", "igualdades con números mayores|igualdades"}, func(t task.Task) bool { return is[task.Balance](t) || is[task.TrueFalse](t) }},
	{"missing-number-larger", 2, []task.Code{"2.NBT.B.5", "2.NBT.B.7"}, []task.Look{task.LookSentence, task.LookBond, task.LookNumberLine, task.LookHundredsChart, task.LookChoice}, 45, -2600,
		"find the unknown number past 20", "47 + ? = 83",
		called{"missing number past 20|missing number|missing addend|unknown number past 20|number bonds", "número que falta hasta 1000|número que falta|sumando que falta"}, sentence(func(s task.Sentence) bool { return s.Blank != s.N && s.Size() <= 1000 })},
	{"add-ones", 1, []task.Code{"1.NBT.C.4"}, []task.Look{task.LookSentence, task.LookColumn, task.LookBond, task.LookMakeTen, task.LookNumberLine, task.LookHundredsChart, task.LookChoice}, 30, -2400,
		"add ones to a two-digit number, within 100", "47 + 5 = ?",
		called{"adding ones|add ones|two-digit plus one-digit|two-digit addition|2-digit addition", "sumar unidades"}, sum2(func(a, b, sum int) bool { return a < 100 && b < 10 && sum <= 100 })},
	{"add-tens", 1, []task.Code{"1.NBT.C.4"}, []task.Look{task.LookSentence, task.LookColumn, task.LookBond, task.LookNumberLine, task.LookHundredsChart, task.LookChoice}, 30, -2300,
		"add tens to a two-digit number, within 100", "47 + 30 = ?",
		called{"adding tens|add tens|two-digit addition|2-digit addition", "sumar decenas"}, sum2(func(a, b, sum int) bool {
			return a < 100 && (a%10 == 0 || b%10 == 0) && sum <= 100
		})},
	{"add-two-digit", 2, []task.Code{"2.NBT.B.5"}, []task.Look{task.LookSentence, task.LookColumn, task.LookBond, task.LookBreakApart, task.LookNumberLine, task.LookHundredsChart, task.LookChoice}, 45, -2100,
		"add two two-digit numbers, within 100", "47 + 36 = ?",
		called{"two-digit addition|2-digit addition|adding two-digit numbers", "suma de dos cifras|suma de dos dígitos|sumar números de dos cifras"}, sum2(func(a, _, sum int) bool { return a <= 100 && sum <= 100 })},
	{"add-past-100", 2, []task.Code{"2.NBT.B.7"}, []task.Look{task.LookSentence, task.LookColumn, task.LookBreakApart, task.LookHundredsChart, task.LookChoice}, 50, -1900,
		"add numbers below 100 to a sum past 100", "63 + 45 = ?",
		called{"past 100|over 100|sums past 100|two-digit addition|2-digit addition", "sumas mayores que 100|sumar más de 100"}, sum2(func(a, _, _ int) bool { return a < 100 })},
	{"expanded-form", 2, []task.Code{"2.NBT.A.3", "1.NBT.B.2", "K.NBT.A.1"}, []task.Look{task.LookExpanded, task.LookSentence, task.LookFrame, task.LookBond, task.LookChoice}, 35, -1900,
		"write a number as hundreds, tens and ones added, and back", "142 = ? + ? + ?",
		called{"expanded|expanded form|expanded notation|place value", "forma desarrollada|notación desarrollada|valor posicional"}, func(t task.Task) bool {
			s, isSentence := t.(task.Sentence)
			_, isExpanded := t.(task.Expanded)
			return isExpanded || isSentence && s.IsExpanded()
		}},
	{"add-several", 2, []task.Code{"2.NBT.B.6"}, []task.Look{task.LookSentence, task.LookColumn, task.LookChoice}, 75, -2200,
		"add three or four numbers of up to two digits", "20 + 15 + 36 + 12 = ?",
		called{"several addends|four addends|three numbers|adding several numbers", "varios sumandos|cuatro sumandos"}, sentence(func(s task.Sentence) bool {
			return s.N > 2 && s.Blank == s.N && s.IsAddition() && slices.Max(s.Operands()) <= 99
		})},
	{"add-within-1000", 2, []task.Code{"2.NBT.B.7"}, []task.Look{task.LookSentence, task.LookColumn, task.LookHundredsChart, task.LookChoice}, 60, -2200,
		"add within 1000", "347 + 128 = ?",
		called{"three-digit addition|3-digit addition|add within 1000", "suma de tres cifras|suma de tres dígitos"}, sentence(func(s task.Sentence) bool { return s.Blank == s.N && s.IsAddition() && s.Size() <= 1000 })},
	{"subtract-two-digit", 2, []task.Code{"2.NBT.B.5"}, []task.Look{task.LookSentence, task.LookColumn, task.LookBond, task.LookNumberLine, task.LookHundredsChart, task.LookChoice}, 40, -2500,
		"subtract within 100 without regrouping", "87 - 34 = ?",
		called{"two-digit subtraction|2-digit subtraction|subtract without regrouping|subtraction without regrouping", "resta de dos cifras|resta sin reagrupar"}, result2(func(s task.Sentence) bool {
			return s.Size() <= 100 && task.SubtractionRegroups(s.Terms[0], s.Terms[1]) == 0
		})},
	{"subtract-regrouping", 2, []task.Code{"2.NBT.B.5"}, []task.Look{task.LookSentence, task.LookColumn, task.LookBond, task.LookNumberLine, task.LookHundredsChart, task.LookChoice}, 50, -2500,
		"subtract within 100 with regrouping", "83 - 47 = ?",
		called{"subtract with regrouping|subtraction regrouping|subtraction with regrouping|borrowing|two-digit subtraction|2-digit subtraction", "resta con reagrupación|resta reagrupando|resta llevando|pedir prestado"}, result2(func(s task.Sentence) bool { return s.Size() <= 100 })},
	{"subtract-within-1000", 2, []task.Code{"2.NBT.B.7"}, []task.Look{task.LookSentence, task.LookColumn, task.LookBond, task.LookHundredsChart, task.LookChoice}, 65, -2600,
		"subtract within 1000", "402 - 178 = ?",
		called{"three-digit subtraction|3-digit subtraction|subtract within 1000|subtract with regrouping|subtraction regrouping|borrowing", "resta de tres cifras|resta de tres dígitos"}, result2(func(s task.Sentence) bool { return s.Size() <= 1000 })},
	{"add-and-subtract", 2, []task.Code{"1.OA.C.6", "2.NBT.B.5", "2.NBT.B.7", "2.OA.B.2"}, []task.Look{task.LookSentence, task.LookChoice}, 50, -1900,
		"add and take away in one sentence", "12 + 5 - 3 = ?",
		called{"add and subtract|adding and subtracting|mixed operations|addition and subtraction", "sumar y restar|sumas y restas mezcladas"}, sentence(func(s task.Sentence) bool { return s.N > 2 && !s.IsAddition() && s.Size() <= 1000 })},
	{"tens-and-ones", 1, []task.Code{"1.NBT.B.2", "K.NBT.A.1"}, []task.Look{task.LookFrame, task.LookTensAndOnes, task.LookSentence, task.LookChoice}, 30, -2200,
		"tens and ones of a two-digit number, and back", "47 = ? tens ? ones",
		called{"tens and ones|two-digit place value|place value", "decenas y unidades|valor posicional"}, placeValue(2)},
	{"hundreds-tens-ones", 2, []task.Code{"2.NBT.A.1"}, []task.Look{task.LookFrame, task.LookTensAndOnes, task.LookSentence, task.LookChoice}, 35, -2000,
		"hundreds, tens and ones of a three-digit number, and back", "142 = ? hundreds ? tens ? ones",
		called{"hundreds tens ones|hundreds tens and ones|three-digit place value|place value", "centenas decenas y unidades|centenas|valor posicional"}, placeValue(3)},
	{"compare-within-10", 0, []task.Code{"K.CC.C.7"}, []task.Look{task.LookCompare}, 15, -2100,
		"compare numbers to 10", "4 ? 7",
		called{"compare within 10|comparing numbers to 10|compare numbers to 10", "comparar números hasta 10"}, comparing(10)},
	{"compare-two-digit", 1, []task.Code{"1.NBT.B.3"}, []task.Look{task.LookCompare}, 20, -2000,
		"compare two-digit numbers", "47 ? 74",
		called{"compare two-digit numbers|comparing two-digit numbers|comparing to 100", "comparar números de dos cifras"}, comparing(99)},
	{"compare-three-digit", 2, []task.Code{"2.NBT.A.4"}, []task.Look{task.LookCompare}, 25, -2100,
		"compare three-digit numbers", "347 ? 374",
		called{"compare three-digit numbers|comparing three-digit numbers|comparing to 1000", "comparar números de tres cifras"}, comparing(task.MaxNumber)},
	{"count-on", 1, []task.Code{"K.CC.A.2", "1.NBT.A.1", "K.CC.A.1"}, []task.Look{task.LookSequence}, 25, -2600,
		"count on and back by ones, to 120", "98, 99, ?, 101",
		called{"counting|sequences|counting on|count on|counting to 120|count forward|counting back", "contar|contar hasta 120|contar hacia adelante|secuencias"}, func(t task.Task) bool {
			s, ok := t.(task.Sequence)
			return ok && (s.Step == 1 || s.Step == -1) && max(s.First, s.Number(s.N-1)) <= 120
		}},
	{"count-by-steps", 2, []task.Code{"K.CC.A.1", "2.NBT.A.2", "2.OA.C.3"}, []task.Look{task.LookSequence}, 30, -2100,
		"count by ones past 120, and by 2s, 5s, 10s and 100s, within 1000", "35, 40, ?, 50",
		called{"counting|sequences|skip counting|count by|counting by", "contar|contar de dos en dos|contar de cinco en cinco|contar de diez en diez|contar a saltos|secuencias"}, is[task.Sequence]},
	{"write-to-120", 1, []task.Code{"1.NBT.A.1", "2.NBT.A.3"}, []task.Look{task.LookWords, task.LookChoice}, 20, -2000,
		"write numbers to 120 in digits", "write forty-two",
		called{"writing numbers to 120|write numbers to 120|numbers to 120|writing numbers", "escribir números hasta 120|números hasta 120"}, writing(120)},
	{"write-to-1000", 2, []task.Code{"2.NBT.A.3"}, []task.Look{task.LookWords, task.LookChoice}, 25, -1900,
		"write numbers to 1000 in digits", "write three hundred forty-two",
		called{"writing numbers to 1000|write numbers to 1000|numbers to 1000|writing numbers", "escribir números hasta 1000|números hasta 1000"}, writing(words.MostNamed)},
	{"number-names", 2, []task.Code{"2.NBT.A.3"}, []task.Look{task.LookWords}, 50, -2000,
		"write numbers in words", "write 342 in words",
		called{"number names|number words|word form|numbers in words", "nombres de los números|números con palabras|números con letras"}, is[task.WriteNumber]},
	{"odd-or-even", 2, []task.Code{"2.OA.C.3"}, []task.Look{task.LookTick}, 15, -2600,
		"say whether a number is odd or even", "odd or even: 14",
		called{"odd or even|odd and even|even and odd|even or odd|even odd|odd even", "par o impar|pares e impares|impares y pares"}, func(t task.Task) bool { o, ok := t.(task.OddEven); return ok && !o.Dots }},
	{"small-arrays", 2, []task.Code{"2.OA.C.4"}, []task.Look{task.LookArray}, 30, -2300,
		"find how many in equal rows, up to 5 by 5", "array 3 by 4",
		called{"arrays|rows and columns|repeated addition|equal rows|equal groups", "filas y columnas|suma repetida|arreglos|filas iguales"}, is[task.Array]},
	{"ten-more-less", 1, []task.Code{"1.NBT.C.5"}, []task.Look{task.LookWords, task.LookHundredsChart, task.LookChoice}, 20, -2000,
		"ten more or ten less than a two-digit number", "10 more than 47 = ?",
		called{"ten more|10 more|ten less|10 less|ten more or ten less|10 more or 10 less", "diez más o diez menos|diez más|10 más|diez menos|10 menos"}, func(t task.Task) bool {
			m, ok := t.(task.MoreLess)
			return ok && m.Step == 10 && m.Number <= 99
		}},
	{"hundred-more-less", 2, []task.Code{"2.NBT.B.8"}, []task.Look{task.LookWords, task.LookHundredsChart, task.LookChoice}, 25, -2200,
		"ten or a hundred more or less, 100 to 900", "100 less than 340 = ?",
		called{"hundred more|100 more|hundred less|100 less|ten more|10 more|ten less|10 less", "cien más|100 más|cien menos|100 menos"}, is[task.MoreLess]},
	{"count-coins", 2, []task.Code{"2.MD.C.8"}, []task.Look{task.LookCoins}, 40, -2500,
		"find what coins are worth, up to a dollar", "coins 25, 10, 10, 5, 1",
		called{"counting coins|count coins|coins|counting money|count money|money", "contar monedas|monedas|contar dinero|dinero"}, is[task.Coins]},
	{"read-number-line", 2, []task.Code{"2.MD.B.6"}, []task.Look{task.LookMarkedLine}, 25, -2200,
		"read the number at a mark on a number line, to 100", "marked line 0 to 100 by 10: 70",
		called{"number lines|number line|reading a number line|points on a number line", "recta numérica|rectas numéricas"}, is[task.MarkedLine]},
	{"sort-things", 0, []task.Code{"K.MD.B.3"}, []task.Look{task.LookThings}, 40, -2300,
		"sort mixed shapes, count each kind and put the kinds in order", "things circles 4, squares 7, stars 2: how many squares",
		called{"sorting|sort and count|classify and count|sorting shapes", "clasificar|clasificar y contar|clasificar figuras"}, func(t task.Task) bool {
			d, ok := t.(task.Data)
			return ok && d.Form == task.Things
		}},
	{"read-data", 1, []task.Code{"1.MD.C.4", "2.MD.D.10"}, []task.Look{task.LookTallyChart, task.LookTable, task.LookPictureGraph, task.LookBarGraph}, 40, -2400,
		"read and make tally charts, tables and graphs of up to three kinds", "tally chart cats 4, dogs 7, birds 2: how many dogs",
		called{"tally charts|tally marks|data|reading data|graphs|charts", "tablas de conteo|datos|gráficas"}, func(t task.Task) bool {
			d, ok := t.(task.Data)
			return ok && d.N <= 3
		}},
	{"read-graphs", 2, []task.Code{"2.MD.D.10"}, []task.Look{task.LookPictureGraph, task.LookBarGraph}, 45, -2600,
		"read and draw picture graphs and bar graphs of four kinds", "bar graph cats 4, dogs 7, birds 2, fish 5: how many more dogs than cats",
		called{"bar graphs|bar graph|picture graphs|picture graph|pictographs|graphs|data", "gráficas de barras|pictogramas|gráficas|datos"}, is[task.Data]},
	{"compare-lengths", 0, []task.Code{"K.MD.A.2"}, []task.Look{task.LookTwoBars}, 15, -2000,
		"say which of two bars is longer, shorter or taller", "bars 5, 8: which is longer",
		called{"longer or shorter|compare lengths|comparing lengths|taller or shorter", "más largo o más corto|comparar longitudes"}, lengths(task.WhichLonger, task.WhichShorter, task.WhichTaller)},
	{"order-lengths", 1, []task.Code{"1.MD.A.1"}, []task.Look{task.LookThreeBars}, 30, -1700,
		"put three bars in order by length", "bars 5, 8, 3: order from shortest",
		called{"order by length|ordering lengths|order lengths", "ordenar por longitud|ordenar longitudes"}, lengths(task.LengthOrder)},
	{"compare-by-third", 1, []task.Code{"1.MD.A.1"}, []task.Look{task.LookBarPairs}, 35, -1200,
		"compare two bars by a third", "bars 9, 6, 4: which is longer of a and c by b",
		called{"compare indirectly|indirect comparison|compare by a third", "comparar con un tercero|comparación indirecta"}, lengths(task.LongerByAThird, task.ShorterByAThird)},
	{"measured-right", 1, []task.Code{"1.MD.A.2"}, []task.Look{task.LookBlockWays}, 30, -1500,
		"find where equal units are laid right, without gaps and overlaps", "blocks 6 gaps, even, overlaps: which is right",
		called{"gaps and overlaps|no gaps no overlaps", "huecos y encimados|sin huecos ni encimados"}, func(t task.Task) bool {
			b, ok := t.(task.Blocks)
			return ok && b.Pictures()
		}},
	{"two-units", 2, []task.Code{"2.MD.A.2"}, []task.Look{task.LookShortBlocks}, 45, -1500,
		"measure a bar with a long unit and a short one", "blocks 4 long, 2 short in each: how many short",
		called{"two units|different units|measure twice", "dos unidades|unidades distintas"}, func(t task.Task) bool {
			b, ok := t.(task.Blocks)
			return ok && b.Parts > 0
		}},
	{"measure-with-blocks", 1, []task.Code{"1.MD.A.2"}, []task.Look{task.LookBlocks}, 20, -2700,
		"measure a bar with equal units end to end", "blocks 6: how long",
		called{"nonstandard units|non-standard units|measure with cubes|measuring length|measurement", "unidades no estándar|medir con cubos|medir longitudes"}, is[task.Blocks]},
	{"measuring-tools", 2, []task.Code{"2.MD.A.1"}, []task.Look{task.LookEstimate}, 20, -2200,
		"choose the tool to measure a length with", "tool for hallway: measuring tape",
		called{"measuring tools|tools for measuring|choose a tool", "instrumentos de medida|elegir el instrumento"}, func(t task.Task) bool {
			e, ok := t.(task.Estimate)
			return ok && e.Tool
		}},
	{"estimate-lengths", 2, []task.Code{"2.MD.A.3"}, []task.Look{task.LookEstimate}, 25, -1200,
		"choose the length that fits, in inches, feet, centimeters and meters", "estimate bed: 6 feet",
		called{"estimating length|estimate length|estimating lengths|estimation", "estimar longitudes|estimar medidas|estimación"}, is[task.Estimate]},
	{"line-plots", 2, []task.Code{"2.MD.D.9"}, []task.Look{task.LookLinePlot}, 45, -2300,
		"read and draw line plots of lengths in whole units", "line plot cm 4: 2, 5: 3, 6: 1, 7: 1: how many 5",
		called{"line plots|line plot|dot plots|measurement data", "diagramas de puntos|diagrama de puntos|datos de medidas"}, is[task.LinePlot]},
	{"measure-with-ruler", 2, []task.Code{"2.MD.A.1"}, []task.Look{task.LookCentimeters, task.LookInches}, 35, -2300,
		"measure a bar with a drawn ruler, in centimeters and inches, from 0 and not from 0", "ruler cm 0 to 7: how long",
		called{"measuring|measuring length|measure with a ruler|rulers|centimeters|inches|measurement", "medir|medir con regla|medir longitudes|centímetros|pulgadas"}, func(t task.Task) bool {
			r, ok := t.(task.Ruler)
			return ok && !r.Two()
		}},
	{"how-much-longer", 2, []task.Code{"2.MD.A.4"}, []task.Look{task.LookCentimeters, task.LookInches}, 45, -1900,
		"measure two bars and say how much longer one is", "ruler cm 0 to 9 and 0 to 4: how much longer",
		called{"how much longer|comparing lengths|compare lengths|length difference|measurement", "cuánto más largo|comparar longitudes"}, is[task.Ruler]},
	{"name-shapes", 0, []task.Code{"K.G.A.2"}, []task.Look{task.LookShape}, 15, -2400,
		"name circles, triangles, squares, rectangles and hexagons at any size and turn", "name shape: thin triangle at 45",
		called{"naming shapes|name shapes|shapes|2d shapes|flat shapes", "nombrar figuras|figuras|figuras planas"}, naming(false)},
	{"name-solids", 0, []task.Code{"K.G.A.2"}, []task.Look{task.LookShape}, 15, -1900,
		"name cubes, cones, cylinders and spheres at any size and turn", "name shape: cylinder at 180",
		called{"naming solids|solid shapes|3d shapes|shapes", "cuerpos geométricos|nombrar cuerpos|figuras"}, naming(true)},
	{"flat-or-solid", 0, []task.Code{"K.G.A.3"}, []task.Look{task.LookFlatSolid}, 12, -2400,
		"say whether a shape is flat or solid", "flat or solid: cone",
		called{"flat or solid|2d and 3d shapes|flat and solid shapes", "plana o sólida|figuras planas y cuerpos"}, is[task.FlatSolid]},
	{"sides-and-corners", 0, []task.Code{"K.G.B.4", "2.G.A.1"}, []task.Look{task.LookShapeParts}, 20, -2400,
		"count the sides and corners of flat shapes, and the faces of solids", "sides of: hexagon at 15",
		called{"sides and corners|sides and vertices|attributes of shapes|shapes", "lados y esquinas|lados y vértices|figuras"}, is[task.ShapeParts]},
	{"make-shapes", 0, []task.Code{"K.G.B.6", "1.G.A.2"}, []task.Look{task.LookMakeShape}, 35, -1500,
		"find how many pieces make a larger shape", "make shape: hexagon from triangle",
		called{"composing shapes|compose shapes|making shapes|pattern blocks", "componer figuras|formar figuras"}, is[task.MakeShape]},
	{"join-shapes", 0, []task.Code{"K.G.B.6", "1.G.A.2"}, []task.Look{task.LookJoinShapes}, 35, -1700,
		"find the shape that some pieces make", "join 2 half squares: hexagon, square, circle",
		called{"joining shapes|join shapes|composing shapes|putting shapes together", "juntar figuras|componer figuras"}, is[task.JoinShapes]},
	{"find-shapes", 1, []task.Code{"1.G.A.1", "K.G.A.2", "K.G.A.3", "2.G.A.1"}, []task.Look{task.LookFindShapes}, 30, -2200,
		"find the shapes of a name among others, whatever their size and turn", "find every triangle: thin triangle at 45, open triangle, square, small triangle at 75, trapezoid",
		called{"which shapes|defining attributes|attributes of shapes|sorting shapes|shapes", "qué figuras son|atributos de figuras|figuras"}, finding("circle", "triangle", "square", "rectangle", "flat", "solid")},
	{"find-by-corners", 2, []task.Code{"2.G.A.1"}, []task.Look{task.LookFindShapes}, 35, -2100,
		"find quadrilaterals, pentagons, hexagons and cubes, and shapes of so many corners", "find every 5 corners: pentagon, uneven hexagon, uneven pentagon at 45, hexagon, uneven quadrilateral",
		called{"quadrilaterals|polygons|angles of shapes|attributes of shapes|shapes", "cuadriláteros|polígonos|ángulos de figuras|figuras"}, is[task.FindShapes]},
	{"draw-shapes", 1, []task.Code{"1.G.A.1", "K.G.B.5", "2.G.A.1"}, []task.Look{task.LookDrawShape}, 40, -1900,
		"draw shapes of a name or of so many corners", "draw shape: triangle",
		called{"drawing shapes|draw shapes|shapes", "dibujar figuras|figuras"}, is[task.DrawShape]},
	{"equal-shares", 1, []task.Code{"1.G.A.3", "2.G.A.3"}, []task.Look{task.LookShares}, 15, -2100,
		"say whether a shape is cut into equal shares", "equal shares: circle uneven pie 2",
		called{"equal shares|equal parts|fractions", "partes iguales|partes iguales o desiguales|fracciones"}, sharing("equal shares")},
	{"name-shares", 1, []task.Code{"1.G.A.3", "2.G.A.3"}, []task.Look{task.LookShares}, 15, -2000,
		"name one share a half, a third or a fourth", "name share: square corners 4",
		called{"halves and fourths|halves thirds and fourths|halves and quarters|naming fractions|fractions", "mitades y cuartos|mitades tercios y cuartos|fracciones"}, sharing("name share")},
	{"shares-in-all", 1, []task.Code{"1.G.A.3", "2.G.A.3"}, []task.Look{task.LookShares}, 15, -2300,
		"say how many halves, thirds or fourths make the whole", "shares in all: rectangle down 3",
		called{"shares of the whole|the whole in shares|equal shares|fractions", "partes del entero|fracciones"}, is[task.Shares]},
	{"find-shares", 2, []task.Code{"2.G.A.3", "1.G.A.3"}, []task.Look{task.LookFindCuts}, 30, -2100,
		"find the shapes that are cut into halves, thirds or fourths, in whatever way", "find fourths: square crossed 4, square uneven down 4, square corners 4, square across 3",
		called{"finding halves|finding fourths|which shape shows fourths|equal shares|fractions", "encontrar mitades|encontrar cuartos|partes iguales|fracciones"}, is[task.FindCuts]},
	{"compare-shares", 1, []task.Code{"1.G.A.3", "2.G.A.3"}, []task.Look{task.LookLargerShare}, 25, -1700,
		"say which of two shares of the same shape is larger, or that they are the same size", "larger share: circle pie 2 or circle pie 4",
		called{"comparing shares|comparing fractions|larger share|fractions", "comparar partes|comparar fracciones|fracciones"}, is[task.LargerShare]},
	{"cut-shapes", 1, []task.Code{"1.G.A.3", "2.G.A.3"}, []task.Look{task.LookCutShape}, 30, -1900,
		"cut circles and rectangles into halves, thirds and fourths", "cut: circle into 4",
		called{"partitioning shapes|partition shapes|cutting shapes|equal shares|fractions", "dividir figuras|cortar figuras|partes iguales|fracciones"}, is[task.CutShape]},
	{"rows-of-squares", 2, []task.Code{"2.G.A.2"}, []task.Look{task.LookSquares}, 35, -2300,
		"find how many equal squares fill a rectangle in rows and columns, drawn or to draw", "squares 3 by 4",
		called{"rows and columns of squares|partitioning rectangles|rows and columns", "filas y columnas de cuadrados|filas y columnas"}, is[task.Squares]},
	{"where-shapes-are", 0, []task.Code{"K.G.A.1"}, []task.Look{task.LookWhere}, 15, -2100,
		"say where a shape is: above, below, beside, in front of, behind", "where: circle above square",
		called{"positions|position words|where things are|above and below", "posiciones|arriba y abajo|dónde están las cosas"}, is[task.Where]},
	{"count-out", 0, []task.Code{"K.CC.B.5"}, []task.Look{task.LookCountOut}, 30, -2500,
		"count out so many of up to 20 things", "count out 7 of 12",
		called{"counting out|count out", "contar y apartar|colorear tantos"}, is[task.CountOut]},
	{"odd-or-even-groups", 2, []task.Code{"2.OA.C.3"}, []task.Look{task.LookParityDots}, 25, -2600,
		"say whether a group of up to 20 things is odd or even", "odd or even: 14 dots",
		called{"odd or even groups|pairing|odd and even groups", "grupos pares e impares|formar pares"}, is[task.OddEven]},
	{"equal-addends", 2, []task.Code{"2.OA.C.3"}, []task.Look{task.LookEqualAddends}, 25, -2700,
		"write an even number as a sum of two equal addends", "equal addends of 14",
		called{"doubles|equal addends|even numbers as doubles", "dobles|sumandos iguales"}, func(t task.Task) bool {
			e, ok := t.(task.EqualAddends)
			return ok && e.Number > 0
		}},
	{"array-sums", 2, []task.Code{"2.OA.C.4"}, []task.Look{task.LookEqualAddends}, 40, -2300,
		"write a sum of equal addends for the rows of an array", "equal addends of array 3 by 4",
		called{"array equations|array sums|repeated addition equations", "sumas de filas iguales|sumas de arreglos"}, is[task.EqualAddends]},
	{"bills-and-coins", 2, []task.Code{"2.MD.C.8"}, []task.Look{task.LookBills}, 50, -2300,
		"find what bills and coins are worth, in dollars and cents", "money $5, $1, 25, 10, 10",
		called{"bills and coins|dollars and cents|counting money|money", "billetes y monedas|dólares y centavos|contar dinero|dinero"}, is[task.Bills]},
	{"mark-number-line", 2, []task.Code{"2.MD.B.6"}, []task.Look{task.LookLineMark}, 25, -2100,
		"mark a number on a number line, to 100", "mark 70 on line 0 to 100 by 10",
		called{"marking a number line|mark a number line", "marcar en la recta numérica|marcar la recta numérica"}, is[task.LineMark]},
	{"match-clocks", 1, []task.Code{"1.MD.B.3", "2.MD.C.7"}, []task.Look{task.LookMatch}, 60, -2200,
		"join clock faces with times", "match 4:00, 7:00, 11:00",
		called{"match clocks|matching clocks|match times", "unir relojes|relojes y horas"}, is[task.Match]},
	{"clock-hour", 1, []task.Code{"1.MD.B.3"}, []task.Look{task.LookClockFace, task.LookBlankFace, task.LookSaidFace, task.LookSaidTime, task.LookChoice}, 25, -2300,
		"time to the hour", "read 4:00",
		called{"o'clock|time to the hour|telling time to the hour", "hora en punto|horas en punto|en punto"}, onDial("hour")},
	{"clock-half-hour", 1, []task.Code{"1.MD.B.3"}, []task.Look{task.LookClockFace, task.LookBlankFace, task.LookSaidFace, task.LookSaidTime, task.LookChoice}, 30, -2300,
		"time to the half hour", "read 4:30",
		called{"half past|half hour|time to the half hour", "media hora|y media"}, onDial("half-hour")},
	{"clock-quarter-hour", 2, []task.Code{"2.MD.C.7"}, []task.Look{task.LookClockFace, task.LookBlankFace, task.LookSaidFace, task.LookSaidTime, task.LookChoice}, 35, -2400,
		"time to the quarter hour", "read 4:15",
		called{"quarter hour|quarter past|quarter to|time to the quarter hour|five minutes|5 minutes", "cuarto de hora|y cuarto|menos cuarto"}, onDial("quarter-hour")},
	{"clock-five-minutes", 2, []task.Code{"2.MD.C.7"}, []task.Look{task.LookClockFace, task.LookBlankFace, task.LookSaidFace, task.LookSaidTime, task.LookChoice}, 40, -2600,
		"time to five minutes", "read 4:35",
		called{"five minutes|5 minutes|time to five minutes", "cinco minutos|de cinco en cinco minutos"}, onDial("five-minute")},
	{"clock-minute", 3, nil, []task.Look{task.LookClockFace, task.LookBlankFace, task.LookSaidFace, task.LookSaidTime, task.LookChoice}, 45, -2600,
		"time to the minute, beyond K-2", "read 4:37",
		called{"time to the minute|to the minute|nearest minute", "hora al minuto|minuto a minuto"}, onDial("minute")},
	{"add-larger", 3, nil, []task.Look{task.LookSentence, task.LookColumn, task.LookChoice}, 75, -3000,
		"add past 1000, beyond K-2", "742 + 638 = ?",
		called{"four-digit addition|addition past 1000|larger addition", "suma de cuatro cifras|sumas mayores que 1000"}, sentence(func(s task.Sentence) bool { return s.IsAddition() })},
	{"subtract-larger", 3, nil, []task.Look{task.LookSentence, task.LookColumn, task.LookBond, task.LookChoice}, 80, -3668,
		"subtract past 1000, beyond K-2", "2000 - 475 = ?",
		called{"four-digit subtraction|subtraction past 1000|larger subtraction", "resta de cuatro cifras|restas mayores que 1000"}, sentence(func(task.Sentence) bool { return true })},
}

// is tests for one kind of task.
func is[T task.Task](t task.Task) bool {
	_, ok := t.(T)
	return ok
}

// writing tests for numbers to write in digits, up to most.
func writing(most int) func(task.Task) bool {
	return func(t task.Task) bool { w, ok := t.(task.WriteNumber); return ok && !w.InWords && w.Number <= most }
}

// naming tests for shapes to name, flat or solid.
func naming(solid bool) func(task.Task) bool {
	return func(t task.Task) bool { n, ok := t.(task.NameShape); return ok && n.Figure.Solid() == solid }
}

// finding tests for shapes to find of one of the sorts.
func finding(sorts ...string) func(task.Task) bool {
	return func(t task.Task) bool { f, ok := t.(task.FindShapes); return ok && slices.Contains(sorts, f.Sort) }
}

// sharing tests for one question about shares.
func sharing(asks string) func(task.Task) bool {
	return func(t task.Task) bool { s, ok := t.(task.Shares); return ok && s.Asks == asks }
}

func story(test func(task.Story) bool) func(task.Task) bool {
	return func(t task.Task) bool { s, ok := t.(task.Story); return ok && test(s) }
}

// kindergartenStory tests for stories of kindergarten.
func kindergartenStory(t task.Task) bool {
	return story(func(s task.Story) bool {
		plain := !s.Measured() && !s.Money()
		return plain && s.Situation.Mastered() == 0 && s.Sentence.Size() <= 10
	})(t)
}

func sentence(test func(task.Sentence) bool) func(task.Task) bool {
	return func(t task.Task) bool {
		s, ok := t.(task.Sentence)
		return ok && test(s)
	}
}

// result2 tests sentences of two numbers whose result is asked for.
func result2(test func(task.Sentence) bool) func(task.Task) bool {
	return sentence(func(s task.Sentence) bool { return s.N == 2 && s.Blank == 2 && test(s) })
}

// sum2 tests sums of two numbers whose result is asked for, the larger first.
func sum2(test func(larger, smaller, sum int) bool) func(task.Task) bool {
	return result2(func(s task.Sentence) bool {
		a, b := s.Terms[0], s.Terms[1]
		return s.IsAddition() && test(max(a, b), min(a, b), a+b)
	})
}

func lengths(asks ...task.LengthAsk) func(task.Task) bool {
	return func(t task.Task) bool { l, ok := t.(task.Lengths); return ok && slices.Contains(asks, l.Ask) }
}

func placeValue(places int) func(task.Task) bool {
	return func(t task.Task) bool { p, ok := t.(task.PlaceValue); return ok && p.Places == places }
}

func comparing(most int) func(task.Task) bool {
	return func(t task.Task) bool { c, ok := t.(task.Compare); return ok && max(c.A, c.B) <= most }
}

func onDial(step string) func(task.Task) bool {
	return func(t task.Task) bool { c, ok := t.(task.Clock); return ok && c.Time.Step() == step }
}
