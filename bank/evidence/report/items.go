package report

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"evenhand/bank/evidence"
	"evenhand/bank/results"
)

// Item is how an item did in one quiz, over all classes.
type Item struct {
	results.Item
	Quiz   string   // its name
	Week   string   // of the quiz
	Places []string // "A3"; several where forms share it
	Part
	ItemRest float64 // corrected item-rest correlation; NaN where the answers don't tell
	Wrong    []Wrong // wrong answers that were written, the most given first
	Flags    []string
}

// Wrong is a wrong answer that pupils wrote.
type Wrong struct {
	Answer string
	Pupils int
	Why    string // missteps that lead to it; empty when none is known
}

// Expected is the share right by which the quiz was assembled.
func (it Item) Expected() float64 { return it.Difficulty.ShareRight() }

// ExpectedInTen is that share in words, "8 in 10".
func (it Item) ExpectedInTen() string {
	return fmt.Sprintf("%d in 10", it.Difficulty.Tenths())
}

// items lists the items of each quiz, the latest quiz first, from the easiest to the
// hardest as the pupils found them; items nobody answered come last.
func (b *book) items() (list []Item) {
	for i := range slices.Backward(b.quizzes) {
		rows := b.itemsOf(&b.quizzes[i])
		slices.SortStableFunc(rows, func(x, y Item) int {
			return cmp.Or(-cmp.Compare(x.ease(), y.ease()), cmp.Compare(x.Difficulty, y.Difficulty))
		})
		list = append(list, rows...)
	}
	return list
}

func (it Item) ease() float64 {
	if it.Of == 0 {
		return -1
	}
	return it.Share().Value
}

func (b *book) itemsOf(quiz *results.Quiz) []Item {
	list, columns := columnsOf(quiz)
	var rows []evidence.Row
	var papers []sat
	for _, p := range b.papers {
		if p.quiz != quiz {
			continue
		}
		marks := make([]evidence.Mark, len(list))
		for i, mark := range marksOf(p.Answers) {
			marks[columns[p.form.Items[i].ID]] = mark
		}
		rows, papers = append(rows, evidence.Row{Marks: marks, Pupils: 1}), append(papers, p)
	}
	stats := evidence.Stats(rows)
	for i, s := range stats {
		list[i].Part, list[i].ItemRest, list[i].Flags = Part{s.Right, s.Answers}, s.ItemRest, s.Flags()
		list[i].Wrong = b.wrong(list[i], rows, stats, papers, i)
	}
	return list
}

// columnsOf lists the items of a quiz, each once, and where each stands in the list.
func columnsOf(quiz *results.Quiz) (list []Item, columns map[string]int) {
	columns = map[string]int{}
	for _, form := range quiz.Forms {
		for k, item := range form.Items {
			i, known := columns[item.ID]
			if !known {
				i = len(list)
				columns[item.ID] = i
				list = append(list, Item{Item: item, Quiz: quiz.Name(), Week: quiz.Week, ItemRest: math.NaN()})
			}
			list[i].Places = append(list[i].Places, fmt.Sprintf("%s%d", form.Name, k+1))
		}
	}
	return list, columns
}

// wrong counts the wrong answers that were written to item i.
func (b *book) wrong(it Item, rows []evidence.Row, stats []evidence.ItemStats, papers []sat, i int) (list []Wrong) {
	answers := make([]string, len(rows))
	for r, p := range papers {
		for k, item := range p.form.Items {
			if item.ID == it.ID && p.Answers[k].State == results.Wrong {
				answers[r] = p.Answers[k].Written
			}
		}
	}
	for _, choice := range evidence.Choices(rows, stats, i, answers) {
		if choice.Answer != "" {
			list = append(list, Wrong{choice.Answer, choice.Pupils, b.why(it.Item, choice.Answer)})
		}
	}
	return list
}

func (b *book) why(it results.Item, answer string) string {
	kinds := b.question(it).explain(answer)
	return Standout{Kinds: kinds}.Name()
}

// Often is the most given wrong answer in words, if more than one pupil wrote it.
func (it Item) Often() string {
	if len(it.Wrong) == 0 || it.Wrong[0].Pupils < 2 {
		return ""
	}
	w := it.Wrong[0]
	text := fmt.Sprintf("%s wrote %s", plural(w.Pupils, "pupil"), w.Answer)
	if w.Why != "" {
		text += " (" + w.Why + ")"
	}
	return text
}

// Look is what is worth a look: the wrong answer given most, and the flags.
func (it Item) Look() (list []string) {
	if often := it.Often(); often != "" {
		list = append(list, often)
	}
	return append(list, it.Flags...)
}

// LastItems are the items of the last week of each class; earlier ones have had their
// report.
func (r *Report) LastItems() (list []Item) {
	for _, it := range r.Items {
		if slices.Contains(r.lastWeeks(), it.Week) {
			list = append(list, it)
		}
	}
	return list
}

// lastWeeks are the last weeks of the classes, each once.
func (r *Report) lastWeeks() (weeks []string) {
	for _, class := range r.Classes {
		own := r.book.own[class]
		weeks = append(weeks, own[len(own)-1])
	}
	slices.Sort(weeks)
	return slices.Compact(weeks)
}

// Place is where the item stood.
func (it Item) Place() string { return strings.Join(it.Places, " ") }
