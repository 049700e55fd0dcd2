package search

import "fmt"

// EveryForm as a Fixed form says that the item is one of the shared ones.
const EveryForm = -1

// Model is one assembly problem in numbers: which items may fill which rows,
// and what every form must hold. Indices are positions in the slices.
type Model struct {
	Forms      int      // how many forms, at least 1
	Rows       []Row    // what each form is made of; their counts sum to N, the items in a form
	Quotas     []Quota  // counts that cut across rows; difficulty bands are quotas too
	Balances   []string // names of the sets whose counts should be even across forms, where that costs nothing
	Items      []Item   // the candidates
	Same       []Same   // sets of which every form holds equally many
	ShareRight int      // how many in 100 answers of a typical pupil should be right; 0 means any
	MaxSeconds int      // most working seconds in a form; 0 means no limit
	Shared     int      // how many items stand in every form, in the same row of each; with one form it says nothing
	Fixed      []Fixed  // items that must stand where they are

	// Rules dropped while looking for a conflict:
	freeShared bool // any number of items may be shared
	apart      bool // an item may stand in several forms
}

// Row is a part of every form, filled by exactly Count items.
type Row struct {
	Name  string
	Count int

	free bool // any number will do: the rule is dropped while looking for a conflict
}

// Quota bounds how many items of a form belong to a set. Both bounds are
// inclusive; an item belongs to the set if it lists the quota.
type Quota struct {
	Name            string
	AtLeast, AtMost int
	TwoThirdsOf     []int // rows; where there are some, AtMost is two thirds of what they ask for, rounded up
}

// follow sets the upper bound by what its rows ask for.
func (q *Quota) follow(rows []Row) {
	n := 0
	for _, i := range q.TwoThirdsOf {
		n += rows[i].Count
	}
	if len(q.TwoThirdsOf) > 0 {
		q.AtMost = (2*n + 2) / 3
	}
}

// Same is a set of items of which every form holds as many as the others.
type Same struct {
	Name string

	free bool // the rule is dropped while looking for a conflict
}

// Item is one candidate.
type Item struct {
	Name     string
	Points   Points // what a weaker, a typical and a stronger pupil can expect of it, 0 to 1000 each
	Uses     int    // earlier uses, 0 or more; counted once if the item is chosen, even as a shared one
	LastUse  int    // any number, the larger the later; of items as good in all else the lowest is preferred
	Fits     []Fit  // the rows it may fill; it fills one
	Quotas   []int  // the quotas it counts in
	Same     []int  // the sets of Model.Same that it counts in
	Balances []int  // the balances it counts in
	Answer   int    // which of the few answers that its like all offer is right, above 0; 0 where they offer others
	Clashes  []int  // its clash groups, any numbers; a form holds at most one item of each group
}

// Fit says that an item may fill a row, and the working seconds if it does.
type Fit struct{ Row, Seconds int }

// Fixed puts an item into a row of one form, or of all forms (EveryForm).
type Fixed struct {
	Item, Form, Row int

	free bool // the rule is dropped while looking for a conflict
}

// Place is an item standing in a row.
type Place struct{ Item, Row int }

// Solution is a choice of items that keeps every rule of a model.
type Solution struct {
	Forms     [][]Place // each form by row, then by item; shared items stand in all of them
	Scores    []Points  // what pupils can expect of each form, in thousandths of a point
	Off       []int     // by how many hundredths of a point each form misses the mark, beyond one in 100
	Uneven    Points    // by how many the forms lie apart for each pupil, beyond half in 100
	Objective int       // 1000·(Σ Off + Forms·Σ Uneven) + Uses
	Uses      int       // Σ uses of the chosen items
	Bound     int       // no choice has a smaller objective than this
	Proved    bool      // Bound == Objective
}

// Size is N, the number of items in a form.
func (m *Model) Size() int {
	n := 0
	for _, r := range m.Rows {
		n += r.Count
	}
	return n
}

// Check reports the first thing in the model that makes no sense, such as an
// index without a row.
func (m *Model) Check() error {
	if m.Forms < 1 {
		return fmt.Errorf("the model asks for %d forms; ask for at least 1", m.Forms)
	}
	if m.ShareRight < 0 || m.ShareRight > 100 {
		return fmt.Errorf("the model asks for %d right in 100", m.ShareRight)
	}
	if m.MaxSeconds < 0 || m.Shared < 0 {
		return fmt.Errorf("seconds (%d) and shared items (%d) can't be negative", m.MaxSeconds, m.Shared)
	}
	for _, r := range m.Rows {
		if r.Count < 0 {
			return fmt.Errorf("row %q asks for %d items; ask for 0 or more", r.Name, r.Count)
		}
	}
	for _, q := range m.Quotas {
		if err := checkSet(q.TwoThirdsOf, len(m.Rows)); err != nil {
			return fmt.Errorf("quota %q, rows: %w", q.Name, err)
		}
	}
	for i := range m.Items {
		if err := m.checkItem(&m.Items[i]); err != nil {
			return err
		}
	}
	return m.checkFixed()
}

// largest keeps every sum of the search far inside 64 bits.
const largest = 1_000_000

func (m *Model) checkItem(it *Item) error {
	if it.Uses < 0 || it.Uses > largest {
		return fmt.Errorf("item %q: uses %d must be 0 to %d", it.Name, it.Uses, largest)
	}
	for _, p := range it.Points {
		if p < 0 || p > 1000 {
			return fmt.Errorf("item %q: %d thousandths of a point; an item gives 0 to 1000", it.Name, p)
		}
	}
	for k, f := range it.Fits {
		if f.Row < 0 || f.Row >= len(m.Rows) || f.Seconds < 0 || f.Seconds > largest {
			return fmt.Errorf("item %q fits row %d in %d seconds; there are %d rows", it.Name, f.Row, f.Seconds, len(m.Rows))
		}
		for _, g := range it.Fits[:k] {
			if g.Row == f.Row {
				return fmt.Errorf("item %q fits row %d twice", it.Name, f.Row)
			}
		}
	}
	if err := checkSet(it.Quotas, len(m.Quotas)); err != nil {
		return fmt.Errorf("item %q, quotas: %w", it.Name, err)
	}
	if err := checkSet(it.Balances, len(m.Balances)); err != nil {
		return fmt.Errorf("item %q, balances: %w", it.Name, err)
	}
	if err := checkSet(it.Same, len(m.Same)); err != nil {
		return fmt.Errorf("item %q, same: %w", it.Name, err)
	}
	return nil
}

func checkSet(set []int, n int) error {
	for k, v := range set {
		if v < 0 || v >= n {
			return fmt.Errorf("number %d of %d", v, n)
		}
		for _, w := range set[:k] {
			if v == w {
				return fmt.Errorf("number %d stands twice", v)
			}
		}
	}
	return nil
}

func (m *Model) checkFixed() error {
	taken := map[int]bool{}
	for _, f := range m.Fixed {
		if f.Item < 0 || f.Item >= len(m.Items) || f.Form < EveryForm || f.Form >= m.Forms {
			return fmt.Errorf("fixed item %d in form %d: there are %d items and %d forms", f.Item, f.Form, len(m.Items), m.Forms)
		}
		if taken[f.Item] {
			return fmt.Errorf("item %q is fixed twice", m.Items[f.Item].Name)
		}
		taken[f.Item] = true
		if _, ok := m.Items[f.Item].seconds(f.Row); !ok {
			return fmt.Errorf("item %q is fixed in row %d, which it does not fit", m.Items[f.Item].Name, f.Row)
		}
	}
	return nil
}

// seconds gives the working seconds of the item in a row, if it fits there.
func (it *Item) seconds(row int) (int, bool) {
	for _, f := range it.Fits {
		if f.Row == row {
			return f.Seconds, true
		}
	}
	return 0, false
}
