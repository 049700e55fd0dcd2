package assemble

import (
	"context"
	"fmt"

	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/standards/words"
)

// MakeUp makes one more even form of a quiz that was given, for pupils who were absent. The forms that
// were sat stand as they are; the new one, named by the next letter, holds none of their items, keeps
// the rules of the plan and is the best possible beside them, in the sense of Assemble with one form
// more. sat is the quiz and any make-up forms of it that were given before.
//
// The quiz returned has all forms, the new one last: its figures are of them all. Options name the seed
// and the limit; title, week and the ability of the pupils are the quiz's.
func MakeUp(ctx context.Context, b *bank.Bank, asked plan.Plan, sat []bank.Quiz, o Options) (Quiz, error) {
	first := QuizOf(sat[0])
	var forms []bank.QuizForm
	for _, quiz := range sat {
		forms = append(forms, quiz.Forms...)
	}
	if len(forms) >= plan.MaxForms {
		return Quiz{}, words.Errorf("%s has %d forms already, and a quiz has at most %d", sat[0].Name(), len(forms), plan.MaxForms)
	}
	asked.ShareRight, asked.Shared = first.ShareRight, 0
	o.Week, o.Ability, o.Forms, o.sat = first.Week, &first.Ability, len(forms)+1, forms
	q, err := Assemble(ctx, b, asked, o)
	if err != nil {
		return Quiz{}, err
	}
	q.Title = first.Title
	made := &q.Forms[len(forms)]
	made.Name = nextName(forms)
	copy(q.Forms, QuizOf(bank.Quiz{Forms: forms}).Forms)
	return q, nil
}

// LastForm is the quiz with its last form alone, as a make-up form is kept.
func (q Quiz) LastForm() Quiz {
	last := len(q.Forms) - 1
	q.Forms, q.Off = q.Forms[last:], q.Off[last:]
	return q
}

// nextName is the letter after the last of the forms.
func nextName(forms []bank.QuizForm) string {
	last := byte('A' - 1)
	for _, form := range forms {
		last = max(last, form.Name[0])
	}
	return string(rune(last + 1))
}

// takeSat puts the forms that were sat in their places, as they stood then: an item that was revised
// or retired since is what the pupils saw. A shared one stands in each form by itself.
func (p *problem) takeSat(o Options) error {
	rows := map[string]int{}
	for i, row := range p.plan.Rows {
		rows[rowName(i, row)] = i
	}
	for f, form := range o.sat {
		if len(form.Items) != p.plan.Size() {
			return words.Errorf("form %s was given with %d items, and the plan asks for %d", form.Name, len(form.Items), p.plan.Size())
		}
		for i, placed := range form.Items {
			row, ok := rows[placed.Row]
			if !ok {
				return words.Errorf("%s%d filled %q, which the plan does not have", form.Name, i+1, placed.Row)
			}
			own, err := p.asSat(placed.Item, row)
			if err != nil {
				return err
			}
			p.kept = append(p.kept, kept{id: placed.Item.ID, name: fmt.Sprint(form.Name, i+1), pool: own, form: f, row: row})
			p.out[placed.Item.ID] = true
		}
	}
	return nil
}

// asSat makes a pool of one item in the row that it filled.
func (p *problem) asSat(item bank.Item, row int) (*pool, error) {
	g := groupOf(item, 0)
	own := &pool{
		fits: []fit{{row, item.Seconds}}, quotas: p.quotas(g), same: p.same(g), balances: p.balancesOf(g),
		difficulty: p.difficulty(g), size: 1,
	}
	c, err := p.candidate(own, &g, bank.Member{ID: item.ID, Task: item.Task, Key: item.Key})
	c.id, c.looks, c.seconds = item.ID, append(c.looks[:0], item.Look), append(c.seconds[:0], item.Seconds)
	own.read = []candidate{c}
	return own, err
}
