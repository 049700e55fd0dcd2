package intake

import (
	"fmt"
	"regexp"
	"strings"

	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// guessed gives meanings that no heading gave to columns by their cells: the
// question is where most cells are tasks, the answer where most cells answer them
// rightly, and so on. Without any task, the longest texts are the questions and the
// next column the answers.
func guessed(columns []Column, rows []record) {
	if story := holder(columns, Story); story >= 0 && holder(columns, Question) < 0 && holder(columns, QuestionEs) < 0 {
		columns[story].Meaning = Question // the only text that asks
	}
	if holder(columns, Question) < 0 && holder(columns, QuestionEs) < 0 {
		guess(columns, rows, Question, "its cells are tasks", taskShare)
	}
	if holder(columns, Question) < 0 && holder(columns, QuestionEs) < 0 {
		guessWordy(columns, rows)
	}
	question := max(holder(columns, Question), holder(columns, QuestionEs))
	guessStory(columns, rows, question)
	guess(columns, rows, Answer, "its cells answer the questions", func(rec record, cell string) (float64, bool) {
		asked, ok := taskOf(rec.cell(question))
		return truth(ok && judgeAnswer(asked, cell)), ok && cell != ""
	})
	if holder(columns, Answer) < 0 {
		guessNumbers(columns, rows, question)
	}
	guess(columns, rows, Skill, "its cells are skills", func(_ record, cell string) (float64, bool) {
		return truth(len(skillsNamed(cell)) > 0), cell != ""
	})
	guess(columns, rows, Standards, "its cells are standards", func(_ record, cell string) (float64, bool) {
		return truth(len(standards.SplitCodes(cell)) > 0), cell != ""
	})
	guess(columns, rows, Look, "its cells are looks", func(_ record, cell string) (float64, bool) {
		_, err := task.ParseLook(cell[:min(len(cell), longestHeadingBytes)])
		return truth(err == nil), cell != ""
	})
}

// guess gives a meaning that no column has to the unused column whose cells score
// best, at least half. The score of a cell is 0 to 1; counts says whether it counts.
func guess(columns []Column, rows []record, m Meaning, why string, score func(record, string) (points float64, counts bool)) {
	if holder(columns, m) >= 0 {
		return
	}
	best, at, found := 0.5, -1, ""
	for i, c := range columns {
		if c.Meaning != "" || c.block > 0 || c.rival == Question {
			continue
		}
		sum, hits, n := 0.0, 0, 0
		for _, rec := range rows {
			points, counts := score(rec, rec.cell(i))
			if counts {
				sum, n = sum+points, n+1
			}
			if points > 0 {
				hits++
			}
		}
		if share := sum / float64(n); n > 0 && (share > best || share == best && at < 0) {
			best, at, found = share, i, fmt.Sprintf("%s, %d of %d", why, hits, n)
		}
	}
	if at >= 0 {
		columns[at].Meaning, columns[at].Why = m, found
	}
}

// taskShare scores a cell as a question; a time by itself, also one that a spreadsheet
// has changed, may be an answer as well and counts half.
func taskShare(_ record, cell string) (float64, bool) {
	if _, changed := restoreTime(cell); changed && len(cell) > 5 {
		return 0.5, true
	}
	if !isTask(cell) {
		return 0, cell != ""
	}
	if _, err := words.ParseTime(cell); err == nil {
		return 0.5, true
	}
	return 1, true
}

// longestTexts is why a column is the questions where nothing better tells.
const longestTexts = "it has the longest texts"

// guessWordy takes the column with the longest texts as the questions and the next
// filled column as the answers.
func guessWordy(columns []Column, rows []record) {
	most, question := len(rows), -1 // more than one word a row
	for i, c := range columns {
		said := 0
		for _, rec := range rows {
			said += len(strings.Fields(rec.cell(i)))
		}
		if c.Meaning == "" && said > most {
			most, question = said, i
		}
	}
	if question < 0 {
		return
	}
	columns[question].Meaning, columns[question].Why = Question, longestTexts
	if next := question + 1; next < len(columns) && columns[next].Meaning == "" && columns[next].block == 0 && holder(columns, Answer) < 0 {
		columns[next].Meaning, columns[next].Why = Answer, "it stands next to the questions"
	}
}

// guessStory takes a column of long texts to the left of questions that are no tasks for
// the stories that they are asked about: "Problem" before "Question".
func guessStory(columns []Column, rows []record, question int) {
	if question < 1 || holder(columns, Story) >= 0 || taskColumn(rows, question) {
		return
	}
	for i := question - 1; i >= 0; i-- {
		c := &columns[i]
		if c.Meaning != "" || c.block > 0 {
			continue
		}
		words, texts := 0, 0
		for _, rec := range rows {
			words += len(strings.Fields(rec.cell(i)))
			texts += int(truth(rec.cell(i) != ""))
		}
		if texts > 0 && words > 5*texts && !taskColumn(rows, i) {
			c.Meaning, c.rival, c.Why = Story, "", "long texts before the questions"
			return
		}
	}
}

// guessNumbers takes the next column without heading after the questions for the
// answers when most of its cells could be answers, be they right or wrong.
func guessNumbers(columns []Column, rows []record, question int) {
	next := question + 1
	if next >= len(columns) || columns[next].Meaning != "" || columns[next].block > 0 || columns[next].Heading != "" {
		return
	}
	could, filled := 0, 0
	for _, rec := range rows {
		cell := rec.cell(next)
		_, err := words.ParseTime(cell)
		could += int(truth(err == nil || answerShape.MatchString(cell)))
		filled += int(truth(cell != ""))
	}
	if could > 0 && 2*could >= filled {
		columns[next].Meaning, columns[next].Why = Answer, fmt.Sprintf("next to the questions, and its cells could be answers, %d of %d", could, filled)
	}
}

var answerShape = regexp.MustCompile(`^[<>=]$|^[\d][\d ,.+]*$`)

func truth(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}
