package assemble

import (
	"cmp"
	"context"
	"errors"
	"time"

	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/bank/generate"
	"evenhand/standards"
)

// What Filling makes where items lack: so many more than the fewest that will do, and so many at
// least, that the quiz can choose. With 60 a skill the example plan meets its mark week by week
// (measured); with the fewest it missed it by up to two in 100.
const (
	toChooseFrom = 60
	spare        = 3
)

// mostFillings is how often items are made for one quiz: once is enough where items mend all, and where they
// mend only some of several clashes, more may be found to lack behind these.
const mostFillings = 3

// Filling makes the items that a bank lacks for a quiz, ready ones, beside those it has.
type Filling struct {
	Bank   *bank.Bank
	Choose *bank.Bank // what the quiz is chosen from, where that is the bank as it would be; nil for the bank
	By     string     // in whose name
	At     time.Time
	Made   func(standards.SkillID, generate.Result) // is told what was made; nil for nobody
}

// Try tries to assemble; up to so many times it makes the items that are said to lack and tries again. Where
// items mend only some of what is in the way, these are made, and the error says what is left.
func (f Filling) Try(times int, try func() error) error {
	err := try()
	var impossible *ImpossibleError
	for ; times > 0 && errors.As(err, &impossible) && len(impossible.Generate) > 0; times-- {
		for _, wish := range impossible.Generate {
			request := generate.Request{Skill: wish.Skill, Where: wish.Where, Count: max(toChooseFrom, spare*wish.Count), Seed: wish.Seed}
			if err := f.make(request); err != nil {
				return err
			}
		}
		err = try()
	}
	return err
}

// Assemble is Assemble with the items made that lack for a quiz, or for one that meets its mark.
func (f Filling) Assemble(ctx context.Context, p plan.Plan, o Options) (quiz Quiz, err error) {
	choose := cmp.Or(f.Choose, f.Bank)
	err = f.Try(mostFillings, func() error {
		quiz, err = Assemble(ctx, choose, p, o)
		return err
	})
	if err != nil || quiz.OnTheMark() {
		return quiz, err
	}
	for _, row := range p.Rows { // there is a quiz, but too little to choose from; no more can be made of some
		_ = f.make(generate.Request{Skill: row.Skill, Where: row.Where, Count: toChooseFrom, Seed: o.Seed})
	}
	return Assemble(ctx, choose, p, o)
}

func (f Filling) make(request generate.Request) error {
	result, err := generate.Into(f.Bank, request, bank.Ready, f.By, f.At)
	if err == nil && f.Made != nil {
		f.Made(request.Skill, result)
	}
	return err
}
