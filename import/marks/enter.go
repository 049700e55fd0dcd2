package marks

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"slices"
	"strings"

	"evenhand/bank/results"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// Entry asks for marks one by one, on a terminal or from a pipe.
//
// For each pupil it asks the form (nothing takes the one proposed, - says that the
// pupil was absent), then each item: nothing means right, - absent, . not reached, x
// wrong, and the other marks of a grid mean what they mean there; a possible answer is
// what the pupil wrote, 1 and 0 too. Anything else is asked again, and after every item
// stands how it was taken. < goes one question back; where numbers are compared < is an
// answer, and << goes back.
type Entry struct {
	In    io.Reader
	Out   io.Writer // the questions
	Quiz  results.Quiz
	Class string
	Seats []Seat
	Save  func(results.Paper) error // called after every pupil
}

// move is where to go after a question or a pupil.
type move int

const (
	ahead move = iota
	back
	stop
)

// Run asks until all pupils are done, the input ends or the context does. saved is how
// many papers were saved; unfinished is the pupil whose paper was begun and is not kept.
func (e Entry) Run(ctx context.Context) (saved int, unfinished string, err error) {
	a := asker{e, ctx, linesOf(ctx, e.In)}
	for i := 0; i < len(e.Seats); {
		paper, to := a.paper(i)
		switch to {
		case back:
			i = max(0, i-1)
		case stop:
			fmt.Fprintln(e.Out)
			if len(paper.Answers) > 0 {
				unfinished = paper.Pupil
			}
			return saved, unfinished, nil
		default:
			if err := e.Save(paper); err != nil {
				return saved, paper.Pupil, err
			}
			saved++
			i++
		}
	}
	return saved, "", nil
}

// linesOf reads lines in the background, so that an interrupt need not wait for one.
func linesOf(ctx context.Context, in io.Reader) <-chan string {
	lines := make(chan string)
	go func() {
		defer close(lines)
		for scanner := bufio.NewScanner(in); scanner.Scan(); {
			select {
			case lines <- scanner.Text():
			case <-ctx.Done():
				return
			}
		}
	}()
	return lines
}

type asker struct {
	Entry
	ctx   context.Context
	lines <-chan string
}

// ask puts a question; ok is false at the end of the input.
func (a *asker) ask(format string, args ...any) (answer string, ok bool) {
	fmt.Fprintf(a.Out, format, args...)
	select {
	case answer, ok = <-a.lines:
		return strings.TrimSpace(answer), ok
	case <-a.ctx.Done():
		return "", false
	}
}

// paper asks for one pupil's paper. On stop it is what was asked so far.
func (a *asker) paper(i int) (paper results.Paper, to move) {
	seat := a.Seats[i]
	paper = results.Paper{Class: a.Class, Pupil: seat.Pupil}
	for {
		form, absent, to := a.form(i)
		if to != ahead {
			return paper, to
		}
		paper.Form, paper.Answers = form.Name, nil
		if absent {
			for range form.Items {
				paper.Answers = append(paper.Answers, results.Answer{State: results.Absent})
			}
			return paper, ahead
		}
		if to = a.items(form, &paper); to != back {
			return paper, to
		}
	}
}

// form asks which form the pupil had.
func (a *asker) form(i int) (form results.Form, absent bool, to move) {
	seat := a.Seats[i]
	for {
		answer, ok := a.ask("%s (%d of %d), form %s: ", seat.Pupil, i+1, len(a.Seats), seat.Form)
		state, _ := Sign(answer)
		switch absent = state == results.Absent; {
		case !ok:
			return form, false, stop
		case answer == "<" || answer == "<<":
			return form, false, back
		case answer == "" || absent:
			answer = seat.Form
		}
		if form, ok = a.Quiz.Form(answer); ok {
			return form, absent, ahead
		}
		fmt.Fprintf(a.Out, "%q is no form of this quiz; it has %s\n", answer, strings.Join(a.Quiz.FormNames(), ", "))
	}
}

// items asks for the answers of a form.
func (a *asker) items(form results.Form, paper *results.Paper) move {
	for k := 0; k < len(form.Items); {
		item := form.Items[k]
		cell, ok := a.ask("  %2d  %s  [%s] ", k+1, item.Asks, item.Key)
		switch {
		case !ok:
			return stop
		case goesBack(item, cell) && k == 0:
			return back
		case goesBack(item, cell):
			k--
			paper.Answers = paper.Answers[:k]
			continue
		}
		answer, problem := Typed(item, cell)
		if problem != nil {
			fmt.Fprintln(a.Out, "      "+problem.String())
			continue
		}
		fmt.Fprintln(a.Out, "      "+echo(item, answer))
		paper.Answers = append(paper.Answers, answer)
		k++
	}
	return ahead
}

// goesBack says that what was typed for an item asks for the question before. A single
// < is an answer where numbers are compared.
func goesBack(item results.Item, cell string) bool {
	asked, ok := item.Task()
	return cell == "<<" || cell == "<" && !(ok && slices.Contains(task.FixedAnswers(asked), "<"))
}

// echo says how an answer was taken.
func echo(item results.Item, a results.Answer) string {
	switch {
	case a.Written == "":
		return string(a.State)
	case a.State == results.Wrong && oneOrZero.MatchString(plain(a.Written)):
		return fmt.Sprintf("wrong: %s (if it is a mark: Enter is right, x is wrong, and < goes back)", a.Written)
	}
	return fmt.Sprintf("%s: %s", a.State, a.Written)
}

// Typed reads what was typed for an item: nothing means right, and 1 or 0 is what the pupil wrote.
// problem says why it is neither a mark nor a possible answer, or asks which it is.
func Typed(item results.Item, text string) (results.Answer, *words.Told) {
	if strings.TrimSpace(text) == "" {
		return results.Answer{State: results.Right}, nil
	}
	c := look(0, item, text, nil)
	if c.sign == nil {
		return c.answer, c.why
	}
	row := rowCells{cells: []cell{c}, grid: &evidence{}}
	states := row.states(c.plain, *c.sign)
	switch clear := len(states) == 1; {
	case c.mayBeBoth() && (c.sign.family == digitFamily || c.sign.family == boxFamily || clear && states[0] == c.answer.State):
		return c.answer, nil
	case c.mayBeBoth():
		return c.answer, words.Sayf("%q can be a mark or what the child wrote; Enter is right, 0 of 1 wrong; "+
			"for what the child wrote type: wrote %s", text, text)
	case c.sign.family == digitFamily || !clear:
		return c.answer, words.Sayf("%q is not clear here; Enter is right, x wrong, - absent, . not reached, "+
			"or type what the child wrote", text)
	}
	return results.Answer{State: states[0]}, nil
}
