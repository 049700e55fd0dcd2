package task

import (
	"slices"
	"strconv"
)

// Where the kinds of missteps in columns are described.
const (
	buggySource    = "Brown & Burton (1978); VanLehn (1990)"
	additionSource = "Ashlock, Error Patterns in Computation"
)

// The missteps in subtraction.
var (
	smallerFromLarger = newMisstep("smaller digit from larger",
		"takes the smaller digit from the larger in each column, whichever is on top",
		"resta en cada columna el dígito menor del mayor, sin importar cuál está arriba",
		"regrouping: take a ten apart with sticks before writing",
		"reagrupar: separar una decena con barras antes de escribir", buggySource)
	tenNotPaid = newMisstep("ten taken but not paid back",
		"takes a ten for the ones but leaves the tens as they were",
		"toma una decena para las unidades, pero deja las decenas como estaban",
		"cross out and write the new tens each time a ten is taken",
		"tachar y escribir las decenas que quedan cada vez que se toma una", buggySource)
	borrowFromZero = newMisstep("nine from zero unpaid",
		"turns a zero into nine when borrowing and does not go on to the next place",
		"al pedir prestado cambia un cero por nueve y no sigue a la posición siguiente",
		"borrowing through a zero, one place at a time",
		"pedir prestado a través de un cero, una posición a la vez", buggySource)
	borrowAcrossZero = newMisstep("borrow jumps the zero",
		"borrows from the place beyond the zero and leaves the zero as it was",
		"pide prestado a la posición que está más allá del cero y deja el cero como estaba",
		"borrowing through a zero, one place at a time",
		"pedir prestado a través de un cero, una posición a la vez", buggySource)
	zeroInstead = newMisstep("zero when too small",
		"writes 0 where the top digit is too small",
		"escribe 0 donde el dígito de arriba es demasiado pequeño",
		"what it means when there are not enough ones",
		"qué significa que no alcancen las unidades", buggySource)
	addedInstead = newMisstep("added instead",
		"adds although the sign says take away",
		"suma aunque el signo indica restar",
		"read the sign aloud first",
		"leer primero el signo en voz alta", additionSource)
)

// The missteps in addition.
var (
	carryDropped = newMisstep("ten dropped",
		"makes a new ten and forgets to add it",
		"forma una decena nueva y se olvida de sumarla",
		"put the new ten on top of the tens before adding them",
		"escribir la nueva decena sobre las decenas antes de sumarlas", additionSource)
	bothDigits = newMisstep("both digits written",
		"writes both digits of a column's sum side by side",
		"escribe uno al lado del otro los dos dígitos de la suma de una columna",
		"no more than nine in a place: trade ten ones for a ten",
		"no más de nueve en una posición: cambiar diez unidades por una decena", additionSource)
	tenWritten = newMisstep("ten written, ones carried",
		"writes the tens digit and carries the ones digit",
		"escribe el dígito de las decenas y lleva el de las unidades",
		"which digit is the ten and which the ones",
		"qué dígito es la decena y cuál las unidades", additionSource)
	allDigits = newMisstep("all digits added",
		"adds all the digits as if they were ones",
		"suma todos los dígitos como si fueran unidades",
		"what the digit in the tens place is worth",
		"cuánto vale el dígito de las decenas", additionSource)
	subtractedInstead = newMisstep("subtracted instead",
		"takes away although the sign says add",
		"resta aunque el signo indica sumar",
		"read the sign aloud first",
		"leer primero el signo en voz alta", additionSource)
)

// Missteps in putting one number under the other.
var (
	misaligned = newMisstep("columns not lined up",
		"puts the ones of the shorter number under the tens of the longer",
		"pone las unidades del número más corto debajo de las decenas del más largo",
		"ones under ones: write both into a place-value frame first",
		"unidades debajo de unidades: escribir primero los dos números en una tabla de valor posicional", additionSource)
	zeroDropped = newMisstep("tens added as ones",
		"leaves off the zero and adds tens as if they were ones",
		"deja fuera el cero y suma las decenas como si fueran unidades",
		"what the digit in the tens place is worth: build both numbers",
		"cuánto vale el dígito de las decenas: formar los dos números", additionSource)
)

// Missteps with small numbers and more than two numbers.
var (
	countedFirst = newMisstep("start counted too",
		"counts the starting number as the first step",
		"cuenta el número de partida como primer paso",
		"counting on: the first step lands on the next number",
		"seguir contando: el primer paso cae en el número siguiente", "common practice")
	addendLeftOut = newMisstep("a number left out",
		"leaves one of the numbers out",
		"deja fuera uno de los números",
		"tick each number once it is added",
		"palomear cada número cuando ya se sumó", "common practice")
	operatedSeen = newMisstep("worked with the numbers seen",
		"puts the two numbers seen together by the sign, although one of them is the whole",
		"suma o resta los dos números que ve, según el signo, aunque uno de ellos es el total",
		"what the equal sign means: both sides are worth the same",
		"qué significa el signo igual: los dos lados valen lo mismo", "common practice")
	copiedSeen = newMisstep("copied a number",
		"writes a number that stands in the sentence",
		"escribe un número que ya está en la igualdad",
		"what the equal sign means: both sides are worth the same",
		"qué significa el signo igual: los dos lados valen lo mismo", "common practice")
)

// Missteps of a number sentence: column errors for the result, and for a missing
// number those of the work that finds it.
func (s Sentence) Missteps() []Misstep {
	switch {
	case s.IsExpanded():
		return gather(s, writtenOutSlips(s.Result(), expandedParts(s.Result())))
	case s.Blank != s.N && s.N == 2:
		return gather(s, s.missingSlips())
	case s.Blank != s.N:
		return gather(s, s.missingOfSeveralSlips())
	case s.IsAddition():
		return gather(s, s.additionSlips())
	case s.N == 2:
		return gather(s, subtractionSlips(s.Terms[0], s.Terms[1]))
	}
	return gather(s, s.chainSlips())
}

func (s Sentence) additionSlips() []slip {
	operands, result := s.Operands(), s.Result()
	digits := 0
	for _, n := range operands {
		digits += DigitSum(n)
	}
	slips := []slip{
		{carryDropped, columnsDropped(operands)},
		{bothDigits, columnsWrittenOut(operands)},
		{tenWritten, columnsSwapped(operands)},
	}
	if slices.Max(operands) >= 10 {
		slips = append(slips, slip{allDigits, strconv.Itoa(digits)})
	} else {
		slips = nil
	}
	if slices.Max(operands) < 10 && result > slices.Max(operands) || s.N == 2 && slices.Min(operands) < 10 && slices.Min(operands) > 0 && result <= 20 {
		slips = append(slips, slip{countedFirst, strconv.Itoa(result - 1)})
	}
	if s.N == 2 {
		a, b := operands[0], operands[1]
		slips = append(slips, slip{misaligned, alignedLeft(max(a, b), min(a, b), 1)}, slip{zeroDropped, withoutZero(a, b)})
		return append(slips, slip{subtractedInstead, strconv.Itoa(max(a-b, b-a))})
	}
	return append(slips, s.leftOutSlips()...)
}

func (s Sentence) leftOutSlips() []slip {
	var slips []slip
	for i, n := range s.Operands() {
		if without := s.Result() - s.sign(i)*n; without >= 0 {
			slips = append(slips, slip{addendLeftOut, strconv.Itoa(without)})
		}
	}
	return slips
}

// chainSlips are those of longer sentences that take away.
func (s Sentence) chainSlips() []slip {
	sum := 0
	for _, n := range s.Operands() {
		sum += n
	}
	return append(s.leftOutSlips(), slip{addedInstead, strconv.Itoa(sum)})
}

// missingSlips are the wrong ways to find the missing one of two numbers.
func (s Sentence) missingSlips() []slip {
	seen, result := s.Terms[1-s.Blank], s.Result()
	copied := slip{copiedSeen, strconv.Itoa(result)}
	if s.Minus[1] && s.Blank == 0 { // ? − b = c is found by adding
		b := s.Terms[1]
		work, _ := NewAddition(2, result, b)
		slips := work.additionSlips()
		sign := len(slips) - 1 // the wrong sign is operatedSeen here
		return append([]slip{{operatedSeen, slips[sign].answer}, copied}, slips[:sign]...)
	}
	if s.Minus[1] { // a − ? = c is found by a − c
		return append([]slip{{operatedSeen, strconv.Itoa(seen + result)}, copied}, workSlips(seen, result)...)
	}
	return append([]slip{{operatedSeen, strconv.Itoa(seen + result)}, copied}, workSlips(result, seen)...)
}

// missingOfSeveralSlips are the wrong ways to find one number among more than two.
func (s Sentence) missingOfSeveralSlips() []slip {
	all, result := s.Result(), s.Result()
	var left []slip
	for i, n := range s.Operands() {
		if i == s.Blank {
			continue
		}
		all += n
		if found := s.answer() + s.sign(s.Blank)*s.sign(i)*n; found >= 0 && n > 0 {
			left = append(left, slip{addendLeftOut, strconv.Itoa(found)})
		}
	}
	return append([]slip{{operatedSeen, strconv.Itoa(all)}, {copiedSeen, strconv.Itoa(result)}}, left...)
}

// workSlips are those of a − b when it is only the work towards an answer: the sign
// is not on paper, so it can't be misread, and numbers to 10 are not worked in columns.
func workSlips(a, b int) []slip {
	return slices.DeleteFunc(subtractionSlips(a, b), func(s slip) bool {
		return s.kind == addedInstead || s.kind == smallerFromLarger && a <= 10
	})
}

func subtractionSlips(a, b int) []slip {
	if a < 10 || a <= 20 && b < 10 {
		slips := []slip{{addedInstead, strconv.Itoa(a + b)}, {smallerFromLarger, columnwise(a, b, largerMinusSmaller)}}
		if b > 0 { // with nothing to take away no step is counted
			slips = slices.Insert(slips, 0, slip{countedFirst, strconv.Itoa(a - b + 1)})
		}
		return slips
	}
	return []slip{
		{smallerFromLarger, columnwise(a, b, largerMinusSmaller)},
		{tenNotPaid, columnwise(a, b, unpaid)},
		{borrowFromZero, buggyBorrow(a, b, true)},
		{borrowAcrossZero, buggyBorrow(a, b, false)},
		{zeroInstead, columnwise(a, b, zeroIfSmaller)},
		{misaligned, alignedLeft(a, b, -1)},
		{addedInstead, strconv.Itoa(a + b)},
	}
}
