package intake

import (
	"fmt"
	"strings"

	"evenhand/standards/words"
)

// askAboutColumns asks about each column left out that could hold questions, stories,
// choices or answers, so that none is left out silently.
func (l *List) askAboutColumns(rows []record) {
	if at := l.column(Question); at >= 0 && l.Columns[at].Why == longestTexts && !asking(rows, at) {
		l.ask("column %s was taken for the questions only as its texts are the longest, and few of them ask "+
			"anything; if it holds none, --undo takes them out of use again", l.Columns[at].name())
	}
	for i, c := range l.Columns {
		if c.Meaning != "" || c.block > 0 || l.own {
			continue
		}
		if could := l.couldHold(rows, i); could != "" {
			l.ask("column %s was left out, and it could hold %s; say what it is, as in --column %s=%s, or "+
				"--column unused=%s", c.name(), words.Term(could), suggested(could), c.Letter(), c.Letter())
		}
	}
}

// couldHold says what a column left out could hold that matters; empty for nothing.
func (l *List) couldHold(rows []record, column int) string {
	question := max(l.column(Question), l.column(QuestionEs))
	words, texts, right, tasks := 0, 0, 0, 0
	for _, rec := range rows {
		cell := rec.cell(column)
		if cell == "" {
			continue
		}
		texts++
		words += len(strings.Fields(cell))
		if task, ok := taskOf(rec.cell(question)); ok {
			tasks++
			right += int(truth(judgeAnswer(task, cell)))
		}
	}
	switch {
	case texts == 0:
		return ""
	case l.Columns[column].rival == Question, l.Columns[column].rival == QuestionEs, taskColumn(rows, column) && !allNumbers(rows, column):
		return "questions"
	case l.Columns[column].rival == Answer, tasks > 1 && 2*right >= tasks:
		return "answers"
	case words > 4*texts:
		return "stories, choices or notes"
	}
	return ""
}

// asking says whether half of a column's cells ask something: with a question mark, a gap
// to fill in or five words and more.
func asking(rows []record, column int) bool {
	ask, cells := 0, 0
	for _, rec := range rows {
		cell := rec.cell(column)
		cells += int(truth(cell != ""))
		ask += int(truth(strings.ContainsAny(cell, "?¿_=") || len(strings.Fields(cell)) > 4))
	}
	return 2*ask >= cells
}

func suggested(could string) string {
	switch could {
	case "questions":
		return "question"
	case "answers":
		return "answer"
	}
	return "story"
}

// name is the column as people call it: its letter, and its heading if it has one.
func (c Column) name() string {
	if c.Heading == "" {
		return c.Letter()
	}
	return fmt.Sprintf("%s %q", c.Letter(), shorten(c.Heading))
}
