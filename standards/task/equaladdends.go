package task

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// EqualAddends asks for a sum of equal addends: two for an even number, "equal addends of 14", or one for each row of
// an array, "equal addends of array 3 by 4".
type EqualAddends struct {
	Number        int // even, 2 to 20; 0 for an array
	Rows, Columns int // each 2 to 5; 0 for a number
}

// LookEqualAddends is dots and a sum of equal addends to write.
const LookEqualAddends Look = "equal-addends"

var _ = ownLook(LookEqualAddends, "dots and a sum of equal addends", 0)

var equalAddendsPattern = regexp.MustCompile(`^equal addends of:? ?(?:([0-9]{1,3})|array ([0-9]{1,2}) by ([0-9]{1,2}))$`)

func readEqualAddends(text string) (Task, error) {
	m := equalAddendsPattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	var t EqualAddends
	t.Number, _ = strconv.Atoi(m[1])
	t.Rows, _ = strconv.Atoi(m[2])
	t.Columns, _ = strconv.Atoi(m[3])
	switch {
	case m[1] != "" && (t.Number%2 != 0 || t.Number < 2 || t.Number > 20):
		return nil, words.Errorf("%q: an even number from 2 to 20 has two equal addends, as in equal addends of 14", text)
	case m[1] == "" && (min(t.Rows, t.Columns) < 2 || max(t.Rows, t.Columns) > 5):
		return nil, words.Errorf("%q: rows and columns go from 2 to 5, as in equal addends of array 3 by 4", text)
	}
	return t, nil
}

func (t EqualAddends) String() string {
	if t.Number > 0 {
		return fmt.Sprintf("equal addends of %d", t.Number)
	}
	return fmt.Sprintf("equal addends of array %d by %d", t.Rows, t.Columns)
}

// addends are the equal addends and the sum.
func (t EqualAddends) addends() (list []int, sum int) {
	if t.Number > 0 {
		return []int{t.Number / 2, t.Number / 2}, t.Number
	}
	return slices.Repeat([]int{t.Columns}, t.Rows), t.Rows * t.Columns
}

// Dots are how many are drawn, and how many in a row.
func (t EqualAddends) Dots() (n, each int) {
	if t.Number > 0 {
		return t.Number, 5
	}
	return t.Rows * t.Columns, t.Columns
}

// Key is the addends, and for an array the whole sum.
func (t EqualAddends) Key() string {
	list, sum := t.addends()
	if t.Number > 0 {
		return joinInts(list, " + ")
	}
	return joinInts(list, " + ") + " = " + strconv.Itoa(sum)
}

// Written is the sum with its blanks.
func (t EqualAddends) Written() string {
	list, _ := t.addends()
	blanks := strings.TrimSuffix(strings.Repeat("? + ", len(list)), " + ")
	if t.Number > 0 {
		return fmt.Sprintf("%d = %s", t.Number, blanks)
	}
	return blanks + " = ?"
}

// Fills are the numbers for the blanks.
func (t EqualAddends) Fills() (list []string) {
	addends, sum := t.addends()
	if t.Number == 0 {
		addends = append(addends, sum)
	}
	for _, n := range addends {
		list = append(list, strconv.Itoa(n))
	}
	return list
}

// Judge accepts the sum of the two halves, or of the rows or the columns with its result.
func (t EqualAddends) Judge(answer string) bool {
	r, numbers, ok := t.reply(answer)
	list, sum := t.addends()
	switch {
	case !ok:
		return false
	case r.equation != nil && t.Number > 0:
		return r.equation.says(list, sum)
	case r.equation != nil:
		return r.equation.says(list, sum) || r.equation.says(slices.Repeat([]int{t.Rows}, t.Columns), sum)
	case t.Number > 0:
		return slices.Equal(numbers, list)
	}
	return slices.Equal(numbers, append(list, sum))
}

// Possible takes sums, and numbers beside each other.
func (t EqualAddends) Possible(answer string) bool { _, _, ok := t.reply(answer); return ok }

func (t EqualAddends) reply(answer string) (r reply, numbers []int, ok bool) {
	if r, ok = readReply(answer, noWords); ok && r.equation != nil {
		return r, nil, true
	}
	numbers, ok = listOf(words.ListTokens(answer), "+,;&")
	return reply{}, numbers, ok && len(numbers) > 1
}

// Prompt asks for the sum.
func (t EqualAddends) Prompt(lang string) string {
	switch {
	case t.Number > 0 && lang == "es":
		return "Escribe dos veces el mismo número: " + t.Written()
	case t.Number > 0:
		return "Write the same number twice: " + t.Written()
	case lang == "es":
		return "Escribe una suma con el número de puntos de cada fila: " + t.Written()
	}
	return "Write a sum with the number of dots in each row: " + t.Written()
}

// Short tells the number or the array.
func (t EqualAddends) Short(lang string) string {
	if t.Number > 0 {
		return t.Prompt(lang)
	}
	return shown(t, lang, fmt.Sprintf("%d × %d", t.Rows, t.Columns))
}

// Traits of equal addends.
func (t EqualAddends) Traits() Traits {
	list, sum := t.addends()
	var ts Traits
	ts.setNumber(Largest, sum)
	ts.setNumber(Addends, len(list))
	ts[Asks] = "equal addends"
	return ts
}

// Codes of equal addends: of an even number, and of an array, grade 2.
func (t EqualAddends) Codes() []Code {
	if t.Number > 0 {
		return []Code{"2.OA.C.3"}
	}
	return []Code{"2.OA.C.4"}
}

// The missteps with equal addends.
var (
	wholeTwice = newMisstep("whole written twice",
		"writes the whole number as each addend",
		"escribe el número entero como cada sumando",
		"deal the dots to two plates, one by one, and count one plate",
		"repartir los puntos en dos platos, uno por uno, y contar un plato", "common practice")
	addendsUnlike = newMisstep("addends not equal",
		"makes the number of two addends that are not the same",
		"forma el número con dos sumandos que no son iguales",
		"draw the dots in two rows, one under the other",
		"dibujar los puntos en dos filas, una debajo de la otra", "common practice")
	rowsForColumns = newMisstep("rows written as addends",
		"writes how many rows there are in place of how many dots a row has",
		"escribe cuántas filas hay en lugar de cuántos puntos tiene cada fila",
		"ring one row and count its dots",
		"encerrar una fila y contar sus puntos", "common practice")
)

// Missteps of equal addends.
func (t EqualAddends) Missteps() []Misstep {
	if t.Number > 0 {
		return gather(t, []slip{
			{wholeTwice, joinInts([]int{t.Number, t.Number}, " + ")},
			{addendsUnlike, joinInts([]int{t.Number/2 - 1, t.Number/2 + 1}, " + ")},
		})
	}
	rows := slices.Repeat([]int{t.Rows}, t.Rows)
	return gather(t, []slip{{rowsForColumns, joinInts(rows, " + ") + " = " + strconv.Itoa(sum(rows))}})
}

// Clashes of equal addends: the number, or the array either way.
func (t EqualAddends) Clashes() []string {
	if t.Number > 0 {
		return []string{"parity:" + strconv.Itoa(t.Number)}
	}
	return Array{t.Rows, t.Columns}.Clashes()
}

// Fingerprint of equal addends is its text.
func (t EqualAddends) Fingerprint() string { return t.String() }

// Looks of equal addends.
func (t EqualAddends) Looks() []Look { return []Look{LookEqualAddends} }
