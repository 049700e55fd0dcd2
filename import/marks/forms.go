package marks

import (
	"slices"
	"strings"
	"unicode"

	"evenhand/bank/results"
	"evenhand/standards/words"
)

// Seat is a pupil and the form that the pupil most likely had.
type Seat struct{ Pupil, Form string }

// Seats proposes a form for each of the pupils named, in the order given: the form that
// was marked before, else the forms in turn (A, B, A, B) along the class, in the order in which its pupils
// came to it; a make-up form only where it was marked. Grid, prompt and class set all ask here, so they
// propose the same form for a pupil, also when others come to the class. class is all codes of the class;
// marked are the papers of the quiz.
func Seats(quiz results.Quiz, name string, class []string, marked []results.Paper, pupils []string) []Seat {
	class = slices.Clone(class)
	for _, code := range pupils {
		if !slices.Contains(class, code) {
			class = append(class, code)
		}
	}
	forms := slices.DeleteFunc(slices.Clone(quiz.Forms), func(f results.Form) bool { return f.MakeUp })
	seats := make([]Seat, len(pupils))
	for i, code := range pupils {
		form := forms[slices.Index(class, code)%len(forms)].Name
		for _, p := range marked {
			if p.Class == name && p.Pupil == code {
				form = p.Form
			}
		}
		seats[i] = Seat{code, form}
	}
	return seats
}

// SeatsIn are the seats of the pupils named, who come to the class if they aren't in it, by what the store has
// of their class and of the quiz's papers.
func SeatsIn(s *results.Store, quiz results.Quiz, class string, pupils []string) ([]Seat, error) {
	if err := s.Enrol(class, pupils...); err != nil {
		return nil, err
	}
	return SeatsToMark(s, quiz, class, pupils)
}

// SeatsToMark are the seats of the pupils named or, without any, of those of the class
// who have no paper yet.
func SeatsToMark(s *results.Store, quiz results.Quiz, class string, pupils []string) ([]Seat, error) {
	all, err := s.Enrolled(class)
	if err != nil {
		return nil, err
	}
	marked, err := s.Papers(quiz.ID)
	if err != nil {
		return nil, err
	}
	if len(pupils) == 0 {
		pupils = slices.DeleteFunc(slices.Clone(all), func(code string) bool {
			return slices.ContainsFunc(marked, func(p results.Paper) bool { return p.Class == class && p.Pupil == code })
		})
	}
	return Seats(quiz, class, all, marked, pupils), nil
}

// leastOfForm is how many written answers must be right on another form, unless these
// are all that the row has (common practice): more than luck gives.
const leastOfForm = 3

// looksLike says that a row's answers are those of another form: at least so many are
// right there, and twice as many as on its own. Nil where they aren't.
func (g *grid) looksLike(row *row) *words.Told {
	own, all := rightOn(row.form, row.cells)
	for _, form := range g.quiz.Forms {
		if form.Name == row.form.Name {
			continue
		}
		there, _ := rightOn(form, row.cells)
		if there >= max(min(leastOfForm, all), 2, 2*own+1) {
			return words.Sayf("looks like form %s: %d of %d written answers are right there, %d on form %s; "+
				"mend the form, or mark the answers right and wrong",
				form.Name, there, all, own, row.form.Name)
		}
	}
	return nil
}

// rightOn is how many cells write out the right answer to a form's items, of how many
// that are written; signs, 1 and 0 among them, say nothing, nor do items that offer the
// same few answers.
func rightOn(form results.Form, cells []string) (right, all int) {
	for i, item := range form.Items {
		if i >= len(cells) || cells[i] == "" || !strings.ContainsFunc(item.Key, unicode.IsDigit) {
			continue
		}
		if _, isSign := signOf(plain(cells[i])); isSign {
			continue
		}
		all++
		if answer, problem := Written(item, cells[i]); problem == nil && answer.State == results.Right {
			right++
		}
	}
	return right, all
}
