package export

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"evenhand/standards"
)

// Whole is a cell with a whole number from 0 up. Other than a plain int, which gocsv reads
// from "1.7" as 1, it takes nothing else.
type Whole int

// MarshalCSV writes the number.
func (n Whole) MarshalCSV() (string, error) { return strconv.Itoa(int(n)), nil }

// UnmarshalCSV reads the number.
func (n *Whole) UnmarshalCSV(cell string) error {
	read, err := strconv.Atoi(cell)
	if err != nil || read < 0 {
		return fmt.Errorf("%q is not a whole number such as 3", cell)
	}
	*n = Whole(read)
	return nil
}

// Logits is a cell with a difficulty, in logits with three decimals.
type Logits standards.Difficulty

// MarshalCSV writes the logits, "-1.099".
func (d Logits) MarshalCSV() (string, error) { return standards.Difficulty(d).String(), nil }

// UnmarshalCSV reads logits, to the nearest thousandth.
func (d *Logits) UnmarshalCSV(cell string) error {
	read, err := strconv.ParseFloat(strings.Replace(cell, ",", ".", 1), 64) // -1,099 where that is the custom
	if err != nil || !(math.Abs(read) < mostLogits) {
		return fmt.Errorf("%q is not a difficulty in logits such as -1.099", cell)
	}
	*d = Logits(math.Round(1000 * read))
	return nil
}

// mostLogits is beyond any difficulty: right in one of e¹⁰⁰ answers.
const mostLogits = 100
