package task

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Array asks how many things stand in equal rows: "array 3 by 4" is 3 rows of 4.
type Array struct{ Rows, Columns int } // each 1 to 5

var arrayPattern = regexp.MustCompile(`^array:? ?([0-9]{1,3}) ?(?:by|x|×|rows of) ?([0-9]{1,3})$|^([0-9]{1,3}) rows of ([0-9]{1,3})(?: dots| things)?$`)

func readArray(text string) (Task, error) {
	m := arrayPattern.FindStringSubmatch(strings.TrimRight(text, "? ="))
	if m == nil {
		return nil, errOther
	}
	var t Array
	t.Rows, _ = strconv.Atoi(m[1] + m[3])
	t.Columns, _ = strconv.Atoi(m[2] + m[4])
	if min(t.Rows, t.Columns) < 1 || max(t.Rows, t.Columns) > 5 {
		return nil, words.Errorf("%q is not an array of grade 2; rows and columns go from 1 to 5, as in array 3 by 4", text)
	}
	return t, nil
}

func (t Array) String() string { return fmt.Sprintf("array %d by %d", t.Rows, t.Columns) }

func (t Array) answer() int { return t.Rows * t.Columns }

// Addends is the array as a sum of equal addends, one a row: "4 + 4 + 4".
func (t Array) Addends() string {
	return strings.TrimSuffix(strings.Repeat(strconv.Itoa(t.Columns)+" + ", t.Rows), " + ")
}

// Key is how many in all.
func (t Array) Key() string { return strconv.Itoa(t.answer()) }

// Judge accepts the number, also with its unit or after the equal addends of the rows or the
// columns ("4 + 4 + 4 = 12", "3 x 4 = 12").
func (t Array) Judge(answer string) bool {
	r, ok := t.reply(answer)
	return ok && t.says(r)
}

// says says that what was read is how many, or a sum of rows or columns that makes it.
func (t Array) says(r reply) bool {
	if r.equation == nil {
		return r.number == t.answer()
	}
	return r.equation.says(slices.Repeat([]int{t.Columns}, t.Rows), t.answer()) || r.equation.says(slices.Repeat([]int{t.Rows}, t.Columns), t.answer())
}

// Possible takes a number of dots and number sentences.
func (t Array) Possible(answer string) bool { _, ok := t.reply(answer); return ok }

func (t Array) reply(answer string) (reply, bool) { return t.replyWith(answer, vocabulary(t.Prompt)) }

// replyWith reads an answer in which some words are known.
func (t Array) replyWith(answer string, known func(string) bool) (reply, bool) {
	answer = timesPattern.ReplaceAllStringFunc(words.Plain(answer), func(product string) string {
		m := timesPattern.FindStringSubmatch(product)
		if m[1] == strconv.Itoa(t.Rows) && m[2] == strconv.Itoa(t.Columns) || m[1] == strconv.Itoa(t.Columns) && m[2] == strconv.Itoa(t.Rows) {
			return ""
		}
		return product
	})
	return readReply(answer, known)
}

// timesPattern is the array as a product, which some children write already.
var timesPattern = regexp.MustCompile(`^([1-9]) ?(?:x|×|\*|times|by|por) ?([1-9]) ?=`)

// Prompt asks how many in all.
func (t Array) Prompt(lang string) string {
	if lang == "es" {
		return fmt.Sprintf("Hay %d filas de %d puntos. ¿Cuántos puntos hay en total?", t.Rows, t.Columns)
	}
	return fmt.Sprintf("There are %d rows of %d dots. How many dots in all?", t.Rows, t.Columns)
}

// Said doesn't count the rows and columns for the child.
func (t Array) Said(lang string) string {
	_, question, _ := strings.Cut(t.Prompt(lang), ". ")
	return question
}

// Traits of an array: one addend a row.
func (t Array) Traits() Traits {
	var ts Traits
	ts.setNumber(Digits, 1)
	ts.setNumber(Addends, t.Rows)
	ts.setNumber(Largest, t.answer())
	ts[Asks] = "in all"
	return ts
}

// Codes of an array: equal addends in grade 2.
func (t Array) Codes() []Code { return []Code{"2.OA.C.4"} }

// The missteps with arrays.
var (
	edgesAdded = newMisstep("rows and columns added",
		"adds the number of rows and the number of columns",
		"suma el número de filas y el número de columnas",
		"ring each row and add the rows: 4 + 4 + 4",
		"encerrar cada fila y sumar las filas: 4 + 4 + 4", "common practice")
	rowLeftOut = newMisstep("a row left out",
		"adds one row too few",
		"suma una fila de menos",
		"tick each row once it is added",
		"palomear cada fila cuando ya se sumó", "common practice")
	rowTooMany = newMisstep("a row too many",
		"adds one row too many",
		"suma una fila de más",
		"tick each row once it is added",
		"palomear cada fila cuando ya se sumó", "common practice")
)

// Missteps of an array.
func (t Array) Missteps() []Misstep {
	return gather(t, []slip{
		{edgesAdded, strconv.Itoa(t.Rows + t.Columns)},
		{rowLeftOut, strconv.Itoa((t.Rows - 1) * t.Columns)},
		{rowTooMany, strconv.Itoa((t.Rows + 1) * t.Columns)},
	})
}

// Clashes of an array: the array, also turned.
func (t Array) Clashes() []string {
	return []string{fmt.Sprintf("array:%d,%d", min(t.Rows, t.Columns), max(t.Rows, t.Columns))}
}

// Fingerprint of an array is its text.
func (t Array) Fingerprint() string { return t.String() }

// Looks of an array.
func (t Array) Looks() []Look { return []Look{LookArray} }
