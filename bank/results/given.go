package results

import (
	"fmt"
	"slices"

	"evenhand/bank"
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
				ID: it.ID, Skill: it.Skill, Codes: it.Codes, Asks: it.Asks(), Key: it.Key, Difficulty: it.Difficulty(),
			})
		}
	}
	return NewQuiz(given.Title, given.Week, forms)
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
	if slices.ContainsFunc(all, func(other Quiz) bool { return other.ID == quiz.ID }) {
		return quiz, nil
	}
	for _, other := range all {
		if !other.samePlaces(quiz) {
			continue
		}
		for i, form := range quiz.Forms {
			for k, item := range form.Items {
				if before := other.Forms[i].Items[k]; before.Key != item.Key || before.Asks != item.Asks {
					return quiz, fmt.Errorf("quiz.csv was changed since papers of %s were marked: %s%d was %q with the key %q and is %q with the key %q; use the quiz.csv as it was given",
						other.Name(), form.Name, k+1, before.Asks, before.Key, item.Asks, item.Key)
				}
			}
		}
		return other, nil
	}
	return quiz, nil
}

// samePlaces says that two quizzes are of one week and have the same items in the same
// places.
func (q Quiz) samePlaces(other Quiz) bool {
	return q.Week == other.Week && slices.EqualFunc(q.Forms, other.Forms, func(a, b Form) bool {
		return a.Name == b.Name && slices.EqualFunc(a.Items, b.Items, func(x, y Item) bool { return x.ID == y.ID })
	})
}
