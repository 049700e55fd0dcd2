package export

import "evenhand/standards/task"

// Traits are the columns of the traits. They stand last in every file, in the order of
// standards.AllTraits and under the same names.
type Traits struct {
	Regroups      string `csv:"regroups"`
	Crosses100    string `csv:"crosses_100"`
	Reaches100    string `csv:"reaches_100"`
	ClockStep     string `csv:"clock_step"`
	Digits        string `csv:"digits"`
	RegroupPlaces string `csv:"regroup_places"`
	ZeroCrossed   string `csv:"zero_crossed"`
	Doubles       string `csv:"doubles"`
	NearDoubles   string `csv:"near_doubles"`
	MakesTen      string `csv:"makes_ten"`
	Unknown       string `csv:"unknown"`
	Situation     string `csv:"situation"`
	HandsOverlap  string `csv:"hands_overlap"`
	PastNoon      string `csv:"past_noon"`
	Largest       string `csv:"largest"`
	Addends       string `csv:"addends"`
	Asks          string `csv:"asks"`
	CountSteps    string `csv:"count_steps"`
	Apart         string `csv:"apart"`
	Decides       string `csv:"decides"`
	Misleads      string `csv:"misleads"`
	Step          string `csv:"step"`
	PastHalf      string `csv:"past_half"`
}

// TraitsOf fills the columns.
func TraitsOf(ts task.Traits) Traits {
	var row Traits
	for trait, cell := range row.cells() {
		*cell = ts[trait]
	}
	return row
}

// Values is the traits in the columns.
func (row Traits) Values() task.Traits {
	var ts task.Traits
	for trait, cell := range row.cells() {
		ts[trait] = *cell
	}
	return ts
}

// cells are the columns by trait; this compiles only while there is one for each trait.
func (row *Traits) cells() [len(task.Traits{})]*string {
	all := [...]*string{
		&row.Regroups, &row.Crosses100, &row.Reaches100, &row.ClockStep, &row.Digits, &row.RegroupPlaces, &row.ZeroCrossed, &row.Doubles,
		&row.NearDoubles, &row.MakesTen, &row.Unknown, &row.Situation, &row.HandsOverlap, &row.PastNoon, &row.Largest, &row.Addends,
		&row.Asks, &row.CountSteps, &row.Apart, &row.Decides, &row.Misleads, &row.Step, &row.PastHalf,
	}
	return all
}
