package intake

import (
	"strconv"

	"evenhand/standards/words"
)

// PackagedRow is a row of a list that comes in another form than a table, such as a package of items.
type PackagedRow struct {
	Question string
	Lang     string // "es" where the question is in Spanish
	Answer   string
	Skill    string
	Codes    string // of published standards, separated by spaces
	Where    string // where it stands in the package, kept with a row that is set aside
	Problem  string // why it can't be read; empty for most
}

// OpenPackaged makes a list of rows that were read already; written says for people what of. Its rows
// are numbered from 1.
func OpenPackaged(name, written string, rows []PackagedRow) (*Book, error) {
	heading := []string{string(Question), string(QuestionEs), string(Answer), string(Skill), string(Standards), "file"}
	g := grid{encoding: written, records: []record{{cells: heading}}, total: len(rows)}
	for i, row := range rows {
		cells := []string{row.Question, "", row.Answer, row.Skill, row.Codes, row.Where}
		if row.Lang == "es" {
			cells[0], cells[1] = "", row.Question
		}
		one := record{first: i + 1, last: i + 1, cells: cells}
		if row.Problem != "" {
			one.problem = words.Sayf("%s", row.Problem)
		}
		g.records = append(g.records, one)
	}
	wishes := map[Meaning]string{}
	for i, meaning := range []Meaning{Question, QuestionEs, Answer, Skill, Standards} {
		wishes[meaning] = strconv.Itoa(i + 1)
	}
	list, err := newList(name, g, wishes, []string{"6"})
	if err != nil {
		return nil, err
	}
	for i := range list.Columns {
		list.Columns[i].Why = "the package tells it"
	}
	list.Lines = list.Lines[1:] // the heading is none of the package's
	return &Book{Lists: []*List{list}}, nil
}
