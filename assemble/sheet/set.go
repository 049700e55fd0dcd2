package sheet

import (
	"errors"
	"io"

	"evenhand/assemble"
)

// Seat is one pupil's place at a quiz: the form, and the code or name for the name line.
type Seat struct{ Form, Pupil string }

// SetOf is the sheets of a class in seating order; a seat with a form that the quiz lacks has none.
func SetOf(quiz assemble.Quiz, seats []Seat, lang string) (set []Paper) {
	for _, seat := range seats {
		for _, form := range quiz.Forms {
			if form.Name == seat.Form {
				paper := PaperOf(quiz, form, lang)
				paper.Pupil = seat.Pupil
				set = append(set, paper)
			}
		}
	}
	return set
}

// WriteSet prints the sheets of a class into one file, in the order of the papers; each counts its own
// pages.
func WriteSet(w io.Writer, papers []Paper, o Options) error {
	s, err := o.settle()
	if err != nil {
		return err
	}
	if len(papers) == 0 {
		return errors.New("a set of sheets needs somebody to sit them")
	}
	var all []leaf
	for _, p := range papers {
		own, err := s.leaves(p)
		if err != nil {
			return err
		}
		for i, page := range own {
			paint := page.paint
			page.paint = func(c pageCanvas, _, _ int) { paint(c, i+1, len(own)) }
			all = append(all, page)
		}
	}
	return s.write(w, s.documentTitle(withoutForm(papers)), all)
}
