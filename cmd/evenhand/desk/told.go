package desk

import (
	intake "evenhand/import"
	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// What other packages tell in English has its sentences in said/told, by the English one.

// Told is a sentence of another package, in templates.
func (s sentences) Told(t *words.Told) string {
	return t.In(func(format string) (string, bool) {
		text, ok := s.text[format]
		if !ok {
			text, ok = s.text["value."+format]
		}
		return text, ok
	}, s.put)
}

// put is a thing that goes into a sentence, as it is said here.
func (s sentences) put(arg any) any {
	switch arg := arg.(type) {
	case *words.Told:
		return s.Told(arg)
	case error:
		return s.Tell(arg)
	case standards.SkillID:
		return s.Skill(arg)
	case intake.Meaning:
		return s.say("meaning." + string(arg))
	case task.Task:
		return s.Asks(arg.String())
	case task.Trait:
		return s.say("trait." + arg.String())
	case standards.Condition:
		return s.condition(arg)
	case standards.Where:
		return s.where(arg)
	}
	return arg
}

// Term is a word or name that stands in a fixed list elsewhere, in templates.
func (s sentences) Term(name string) string { return s.Told(words.Term(name)) }

// Tell is what an error tells; one that no sentence tells stays as it reads.
func (s sentences) Tell(err error) string { return s.Told(words.ToldBy(err)) }
