package marks

import (
	"bytes"
	"strings"

	"evenhand/bank/results"
	intake "evenhand/import"
	"evenhand/standards/words"
)

// Roster is a teacher's own list of pupils. It is read to show names on the screen and
// never kept.
type Roster struct {
	Codes []string // in the order of the list
	Names map[string]string
}

// ReadRoster reads a list with a code and a name in each row, with or without a heading. Columns behind these stand only
// below a heading of their own: elsewhere they are more likely the rest of a name with a comma in it.
func ReadRoster(name string, data []byte) (Roster, error) {
	if len(bytes.TrimSpace(data)) == 0 {
		return Roster{}, words.Errorf("%s is empty; a roster has a row for each pupil, the code and the name", name)
	}
	rows, err := intake.Cells(data)
	if err != nil {
		return Roster{}, words.Errorf("%s: %w", name, err)
	}
	r := Roster{Names: map[string]string{}}
	width := 2
	for i, row := range rows {
		code, err := results.ParseCode(at(row.Cells, 0))
		if err != nil && i == 0 {
			width = max(width, len(row.Cells))
			continue // the heading
		}
		if err != nil {
			return Roster{}, words.Errorf("%s, line %d: %w; the first column holds codes, the second names", name, row.Line, err)
		}
		if _, twice := r.Names[code]; twice {
			return Roster{}, words.Errorf("%s, line %d: %s is there twice; keep the right row", name, row.Line, code)
		}
		if more := row.Cells[min(width, len(row.Cells)):]; strings.TrimSpace(strings.Join(more, "")) != "" {
			return Roster{}, words.Errorf("%s, line %d: behind the name stands %q; write a name without a comma, or in quotes", name, row.Line,
				strings.TrimSpace(strings.Join(more, ", ")))
		}
		r.Codes = append(r.Codes, code)
		r.Names[code] = strings.TrimSpace(at(row.Cells, 1))
	}
	if len(r.Codes) == 0 {
		return Roster{}, words.Errorf(name + " has no rows; a row is a code and a name, such as P07,Ada")
	}
	return r, nil
}
