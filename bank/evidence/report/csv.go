package report

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"evenhand/bank/cells"
	"evenhand/standards"
)

// tables are what WriteCSV writes, by name.
var tables = []struct {
	name string
	rows func(*Report) [][]string
}{
	{"answers", (*Report).answerRows},
	{"skills", (*Report).skillRows},
	{"pupils", (*Report).pupilRows},
	{"groups", (*Report).groupRows},
	{"items", (*Report).itemRows},
	{"standards", (*Report).standardRows},
}

// Tables lists the tables that WriteCSV writes.
func Tables() (names []string) {
	for _, t := range tables {
		names = append(names, t.name)
	}
	return names
}

// WriteCSV writes one of the tables, pupils by code: RFC 4180, UTF-8, and no cell that a
// spreadsheet would run as a formula.
func (r *Report) WriteCSV(w io.Writer, table string) error {
	at := slices.Index(Tables(), table)
	if at < 0 {
		return fmt.Errorf("no table %q; there are %s", table, strings.Join(Tables(), ", "))
	}
	out := csv.NewWriter(w)
	out.UseCRLF = true
	for i, row := range tables[at].rows(r) {
		for j, cell := range row {
			if i > 0 && !isNumber(cell) {
				row[j] = cells.Guard(cell)
			}
		}
		if err := out.Write(row); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// isNumber says that a cell is a plain number, which no spreadsheet runs.
func isNumber(cell string) bool {
	_, err := strconv.ParseFloat(cell, 64)
	return err == nil
}

func (r *Report) answerRows() [][]string {
	rows := [][]string{{"class", "pupil", "week", "quiz", "form", "number", "id", "skill", "task", "key", "answer", "state", "misstep"}}
	for _, p := range r.book.papers {
		for i, a := range p.Answers {
			item := p.form.Items[i]
			why := ""
			if a.Counts() && a.State != right {
				why = r.book.why(item, a.Written)
			}
			rows = append(rows, []string{
				p.Class, p.Pupil, p.quiz.Week, p.quiz.Title, p.form.Name, strconv.Itoa(i + 1),
				item.ID, string(item.Skill), item.Asks, item.Key, a.Written, string(a.State), why,
			})
		}
	}
	return rows
}

// counted is the columns right, answers, share, low, high.
func counted(p Part) []string {
	s := p.Share()
	return []string{strconv.Itoa(p.Right), strconv.Itoa(p.Of), decimal(s.Value), decimal(s.Low), decimal(s.High)}
}

// decimal is a number with three decimals, empty for none.
func decimal(x float64) string {
	if math.IsNaN(x) {
		return ""
	}
	return strconv.FormatFloat(x, 'f', 3, 64)
}

func (r *Report) skillRows() [][]string {
	rows := [][]string{{"class", "skill", "right", "answers", "share", "low", "high", "pupils"}}
	for _, s := range r.Skills {
		rows = append(rows, slices.Concat([]string{s.Class, string(s.ID)}, counted(s.Part), []string{strconv.Itoa(s.Pupils)}))
	}
	return rows
}

func (r *Report) pupilRows() [][]string {
	rows := [][]string{{"class", "pupil", "week", "right", "answers", "share", "low", "high", "stands_out"}}
	for _, p := range r.Pupils {
		for i, week := range p.Weeks {
			stands := ""
			if i == len(p.Weeks)-1 {
				stands = standoutText(p)
			}
			rows = append(rows, slices.Concat([]string{p.Class, p.Code, r.Weeks[i]}, counted(week), []string{stands}))
		}
	}
	return rows
}

func (r *Report) groupRows() [][]string {
	rows := [][]string{{"class", "work", "pupil", "counted", "why", "how_to_begin"}}
	for _, g := range r.Groups {
		for _, m := range g.Members {
			rows = append(rows, []string{g.Class, g.Work, m.Code, m.Count, g.Why, g.Next})
		}
	}
	return rows
}

func (r *Report) itemRows() [][]string {
	rows := [][]string{{
		"week", "quiz", "places", "id", "skill", "task", "key", "predicted_share", "predicted_difficulty",
		"right", "answers", "share", "low", "high", "item_rest", "flags", "wrong_answers",
	}}
	for _, it := range r.Items {
		wrong := make([]string, len(it.Wrong))
		for i, w := range it.Wrong {
			wrong[i] = fmt.Sprintf("%s: %d", w.Answer, w.Pupils)
		}
		rows = append(rows, slices.Concat(
			[]string{it.Week, it.Quiz, it.Place(), it.ID, string(it.Skill), it.Asks, it.Key, decimal(it.Expected()), it.Difficulty.String()},
			counted(it.Part), []string{decimal(it.ItemRest), strings.Join(it.Flags, "; "), strings.Join(wrong, "; ")},
		))
	}
	return rows
}

func (r *Report) standardRows() [][]string {
	rows := [][]string{{"standard", "topic", "right", "answers", "share", "low", "high", "pupils_mostly_right", "pupils_not_yet", "pupils_too_early", "not_yet"}}
	for _, s := range r.Standards {
		rows = append(rows, slices.Concat(
			[]string{string(s.Code), standards.Topic(s.Code)}, counted(s.Part),
			[]string{strconv.Itoa(s.MostlyRight), strconv.Itoa(len(s.NotYet)), strconv.Itoa(s.TooEarly), r.list(s.NotYet, r.code)},
		))
	}
	return rows
}
