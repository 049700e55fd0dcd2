package task

// StorySituation is what happens in a word problem and what is asked for: one of the
// fourteen of Table 1 of the Common Core State Standards for Mathematics (2010),
// three numbers put together, or two steps one after the other.
type StorySituation string

// The situations, in the order of the table.
const (
	AddToResult        StorySituation = "add-to result-unknown"
	AddToChange        StorySituation = "add-to change-unknown"
	AddToStart         StorySituation = "add-to start-unknown"
	TakeFromResult     StorySituation = "take-from result-unknown"
	TakeFromChange     StorySituation = "take-from change-unknown"
	TakeFromStart      StorySituation = "take-from start-unknown"
	TogetherTotal      StorySituation = "put-together total-unknown"
	TogetherAddend     StorySituation = "put-together addend-unknown"
	TogetherBoth       StorySituation = "put-together both-unknown"
	CompareDifference  StorySituation = "compare difference-unknown"
	CompareBigger      StorySituation = "compare bigger-unknown more"  // said with "more"
	CompareBiggerLess  StorySituation = "compare bigger-unknown fewer" // said with "fewer"
	CompareSmaller     StorySituation = "compare smaller-unknown fewer"
	CompareSmallerMore StorySituation = "compare smaller-unknown more"
	ThreeAddends       StorySituation = "put-together three-addends" // in one step, of 1.OA.A.2
	TwoSteps           StorySituation = "two-step"
)

// situationRow is what is fixed about a situation.
type situationRow struct {
	situation StorySituation
	mastered  int  // the grade by whose end it is mastered
	minus     bool // told by a − b = c, else by a + b = c
	blank     int  // place of the unknown: 0 start, 1 change, 2 result, 3 that of three numbers
	people    int  // how many children the story names
	example   string
}

// situationTable holds the situations; the grades of mastery are those of the
// published table: four in kindergarten, four only in grade 2, the others in grade 1.
var situationTable = []situationRow{
	{AddToResult, 0, false, 2, 1, "5 + 7 = ?"},
	{AddToChange, 1, false, 1, 1, "5 + ? = 12"},
	{AddToStart, 2, false, 0, 1, "? + 7 = 12"},
	{TakeFromResult, 0, true, 2, 1, "12 - 5 = ?"},
	{TakeFromChange, 1, true, 1, 1, "12 - ? = 7"},
	{TakeFromStart, 2, true, 0, 1, "? - 5 = 7"},
	{TogetherTotal, 0, false, 2, 1, "5 + 7 = ?"},
	{TogetherAddend, 1, false, 1, 1, "5 + ? = 12"},
	{TogetherBoth, 0, false, 2, 1, "12 = ? + ?"},
	{CompareDifference, 1, true, 2, 2, "12 - 5 = ?"},
	{CompareBigger, 1, false, 2, 2, "5 + 7 = ?"},
	{CompareBiggerLess, 2, false, 2, 2, "5 + 7 = ?"},
	{CompareSmaller, 1, true, 2, 2, "12 - 7 = ?"},
	{CompareSmallerMore, 2, true, 2, 2, "12 - 7 = ?"},
	{ThreeAddends, 1, false, 3, 1, "4 + 6 + 3 = ?"},
	{TwoSteps, 2, false, 3, 1, "25 + 17 - 12 = ?"},
}

// Situations lists the fourteen situations, three numbers and two steps.
func Situations() []StorySituation {
	list := make([]StorySituation, len(situationTable))
	for i, row := range situationTable {
		list[i] = row.situation
	}
	return list
}

// row is the situation's row; the zero row for none.
func (s StorySituation) row() situationRow {
	for _, row := range situationTable {
		if row.situation == s {
			return row
		}
	}
	return situationRow{}
}

// Mastered is the grade by whose end the situation is mastered: 0, 1 or 2.
func (s StorySituation) Mastered() int { return s.row().mastered }

// People is how many children a story of the situation names.
func (s StorySituation) People() int { return s.row().people }

// isCompare says that two children's numbers are compared.
func (s StorySituation) isCompare() bool { return s.People() == 2 }
