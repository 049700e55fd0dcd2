package followup

import (
	"cmp"
	"io"
	"slices"

	"evenhand/assemble/plan"
	"evenhand/assemble/sheet"
	"evenhand/bank"
	"evenhand/standards/words"
)

// Letter is what families hear of a week: what was practiced and what to try at home. It tells no score and names
// no child.
type Letter struct {
	Week  string // ISO week
	Class string // may be empty

	homes []family // what was asked for most comes first
}

// LetterOf is the letter about quizzes of one week, by the skills that they asked for.
func LetterOf(quizzes []bank.Quiz) (Letter, error) {
	var l Letter
	count := map[string]int{}
	byWords := map[string]family{}
	for _, quiz := range quizzes {
		l.Week, l.Class = max(l.Week, quiz.Week), cmp.Or(l.Class, quiz.Class)
		for _, form := range quiz.Forms {
			for _, placed := range form.Items {
				if home, ok := homeOf(placed.Item.Skill); ok {
					if _, seen := byWords[home.practiced.en]; !seen {
						byWords[home.practiced.en] = home
						l.homes = append(l.homes, home)
					}
					count[home.practiced.en]++
				}
			}
		}
	}
	if len(l.homes) == 0 {
		return l, words.Errorf("nothing is known to say about the skills of these items")
	}
	slices.SortStableFunc(l.homes, func(a, b family) int { return count[b.practiced.en] - count[a.practiced.en] })
	return l, nil
}

// How much a letter says.
const (
	mostPracticed = 7
	thingsToTry   = 2
)

// tries are the things to try at home: of the two things practiced most, one each; from week to week another.
func (l Letter) tries() (list []both) {
	week, _ := plan.ParseWeek(l.Week)
	for i := range thingsToTry {
		home := l.homes[i%len(l.homes)]
		list = append(list, home.tries[(week.Number+i/len(l.homes))%len(home.tries)])
	}
	return list
}

// The sentences around.
var (
	letterTitle = both{"Mathematics this week", "Matemáticas de esta semana"}
	greeting    = both{"Dear families,", "Queridas familias:"}
	practiced   = both{"This week we practiced", "Esta semana practicamos"}
	tryAtHome   = both{"Two things to try at home", "Dos ideas para hacer en casa"}
	farewell    = both{
		"A few minutes are enough. Let your child explain, and enjoy it together: a mistake is a good place to begin. " +
			"Please write or call with any question. Thank you!",
		"Con unos minutos basta. Deje que su hija o hijo explique, y disfrútenlo juntos: un error es un buen comienzo. " +
			"Para cualquier pregunta, escriba o llame. ¡Gracias!"}
	teacherLine = both{"Your child's teacher: ______________________", "Maestra o maestro: ______________________"}
)

// in is the letter in one language.
func (l Letter) in(lang string) []sheet.TextPart {
	list := sheet.TextPart{Heading: practiced.in(lang)}
	for _, home := range l.homes[:min(mostPracticed, len(l.homes))] {
		list.Lines = append(list.Lines, "- "+home.practiced.in(lang))
	}
	ideas := sheet.TextPart{Heading: tryAtHome.in(lang)}
	for _, try := range l.tries() {
		ideas.Lines = append(ideas.Lines, "- "+try.in(lang))
	}
	ideas.Lines = append(ideas.Lines, farewell.in(lang), teacherLine.in(lang))
	return []sheet.TextPart{{Heading: greeting.in(lang)}, list, ideas}
}

// letterSizes are the types that are tried, in points, until the letter fits on one page.
var letterSizes = []float64{13, 12, 11, 10}

// Write prints the letter on one page, in usual print: in English ("en"), Spanish ("es"), or both, one below the
// other. Large print of both may take two.
func (l Letter) Write(w io.Writer, langs []string, o sheet.Options) error {
	o.Lang = langs[0]
	return sheet.WriteText(w, l.page(langs, o), o)
}

// WriteHTML writes the same as a page for a browser that prints the same.
func (l Letter) WriteHTML(w io.Writer, langs []string, o sheet.Options) error {
	o.Lang = langs[0]
	return sheet.WriteTextHTML(w, l.page(langs, o), o)
}

// page is the letter in the largest type in which it fits on one page.
func (l Letter) page(langs []string, o sheet.Options) sheet.Text {
	t := sheet.Text{Title: letterTitle.in(o.Lang)}
	if len(langs) > 1 {
		t.Title += " · " + letterTitle.in(langs[1])
	}
	for _, part := range []string{l.Class, l.Week} {
		if part != "" {
			t.Title += ", " + part
		}
	}
	for _, lang := range langs {
		for _, part := range l.in(lang) {
			part.Lang = lang
			t.Parts = append(t.Parts, part)
		}
	}
	for _, size := range letterSizes {
		t.Size = size
		if pages, err := sheet.TextPageCount(t, o); err != nil || pages == 1 {
			break
		}
	}
	return t
}
