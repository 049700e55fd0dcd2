package results

import (
	"slices"

	"evenhand/bank"
	"evenhand/standards/words"
)

// QuizOf is a quiz that a bank keeps, as papers are marked by it. Its ID is the same as that of the
// quiz read from its files.
func QuizOf(given bank.Quiz) Quiz {
	forms := make([]Form, len(given.Forms))
	for i, form := range given.Forms {
		forms[i].Name = form.Name
		for _, placed := range form.Items {
			it := placed.Item
			forms[i].Items = append(forms[i].Items, Item{
				ID: it.ID, Skill: it.Skill, Codes: it.Codes, Asks: it.Asks(), Key: it.Key, Difficulty: it.Difficulty(), Look: it.Look,
			})
		}
	}
	return NewQuiz(given.Title, given.Week, forms)
}

// ShownAs gives the quizzes the looks with which the bank says that they were given.
func ShownAs(quizzes []Quiz, given []bank.Quiz) []Quiz {
	shown := slices.Clone(quizzes)
	for _, one := range given {
		of := QuizOf(one)
		if at := slices.IndexFunc(shown, func(q Quiz) bool { return q.ID == of.ID }); at >= 0 {
			shown[at] = shown[at].shownAs(of)
		}
	}
	return shown
}

// shownAs is the quiz with the looks that the same items have in another.
func (q Quiz) shownAs(other Quiz) Quiz {
	q.Forms = slices.Clone(q.Forms)
	for i := range q.Forms {
		form := &q.Forms[i]
		form.Items = slices.Clone(form.Items)
		from, _ := other.Form(form.Name)
		for k := range form.Items {
			if k < len(from.Items) && from.Items[k].ID == form.Items[k].ID {
				form.Items[k].Look = from.Items[k].Look
			}
		}
	}
	return q
}

// AsGiven is the quiz as it was when its first papers were marked, where a quiz of the
// same week with the same items in the same places has papers: a difficulty that was
// learnt since makes no other quiz. The error says which question or key is another
// now, as the same answers would count twice.
func (s *Store) AsGiven(quiz Quiz) (Quiz, error) {
	all, err := s.Quizzes()
	if err != nil {
		return quiz, err
	}
	if at := slices.IndexFunc(all, func(other Quiz) bool { return other.ID == quiz.ID }); at >= 0 {
		return quiz.With(all[at].Forms), nil
	}
	for _, other := range all {
		if !other.samePlaces(quiz) {
			continue
		}
		for i, form := range quiz.first() {
			for k, item := range form.Items {
				if before := other.Forms[i].Items[k]; before.Key != item.Key || before.Asks != item.Asks {
					return quiz, words.Errorf("quiz.csv was changed since papers of %s were marked: %s%d was %q "+
						"with the key %q and is %q with the key %q; use the quiz.csv as it was given",
						other.Name(), form.Name, k+1, before.Asks, before.Key, item.Asks, item.Key)
				}
			}
		}
		return other.With(quiz.Forms), nil
	}
	return quiz, nil
}

// samePlaces says that two quizzes are of one week and have the same items in the same
// places, make-up forms aside.
func (q Quiz) samePlaces(other Quiz) bool {
	return q.Week == other.Week && slices.EqualFunc(q.first(), other.first(), func(a, b Form) bool {
		return a.Name == b.Name && slices.EqualFunc(a.Items, b.Items, func(x, y Item) bool { return x.ID == y.ID })
	})
}

// first are the forms that the quiz was given with; make-up forms stand behind them.
func (q Quiz) first() []Form {
	if at := slices.IndexFunc(q.Forms, func(f Form) bool { return f.MakeUp }); at >= 0 {
		return q.Forms[:at]
	}
	return q.Forms
}
