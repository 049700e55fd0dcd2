package desk

import (
	"regexp"
	"strings"

	intake "evenhand/import"
	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// What other packages tell in English has its sentences in said/told, by the English one.

// Told is a sentence of another package, in templates.
func (s sentences) Told(t *words.Told) string {
	return t.In(func(format string) (string, bool) {
		text, ok := s.instead[format]
		if !ok {
			text, ok = s.text[format]
		}
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

// madeReason is one that programs write into histories, in English as all that is kept.
type madeReason struct {
	format  string
	pattern *regexp.Regexp // of what reads so
}

var madeReasons = func() (made []madeReason) {
	for _, format := range []string{
		"list taken back: %s", "imported again from %s", "edited in %s, line %s", "reviewed",
		"calibrated on %s papers", "calibrated on %s paper", "catalogue %s",
		"skill proposed from its numbers", "skill proposed from its numbers; %s", // begins the notes of an item from a list
	} {
		pattern := "^" + strings.ReplaceAll(regexp.QuoteMeta(format), "%s", "(.+)") + "$"
		made = append(made, madeReason{format, regexp.MustCompile(pattern)})
	}
	return made
}()

// Reason is why an item was changed, or what is noted of it, as somebody wrote it or, where a program did, in words of the
// language, in templates.
func (s sentences) Reason(text string) string {
	for _, made := range madeReasons {
		if found := made.pattern.FindStringSubmatch(text); found != nil {
			told := words.Told{Format: made.format}
			for _, arg := range found[1:] {
				told.Args = append(told.Args, arg)
			}
			return s.Told(&told)
		}
	}
	return text
}

// Tell is what an error tells; one that no sentence tells stays as it reads.
func (s sentences) Tell(err error) string { return s.Told(words.ToldBy(err)) }
