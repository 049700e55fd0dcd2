package bank

import (
	"slices"
	"strings"

	"golang.org/x/text/unicode/norm"

	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// NewItem makes a ready item that asks the task in the given look; an empty look
// is the task's usual one. All but the origin is computed from the task.
func NewItem(asked task.Task, look task.Look, origin Origin) Item {
	it := Item{Look: look, Origin: origin, Standing: Ready}
	it.compute(asked)
	it.Predicted = standards.Predict(it.Skill, it.Traits)
	return it
}

// NewHandItem makes a ready item from a question that is no task known here, with
// its key and a skill chosen by hand. Codes, difficulty and seconds are those
// usual for the skill; they may be changed before the item is added.
func NewHandItem(question, key string, skill standards.SkillID, lang string, origin Origin) Item {
	it := Item{
		Wording:   map[string]string{lang: question},
		Key:       key,
		Skill:     skill,
		Look:      task.LookWords,
		Predicted: standards.Predict(skill, standards.Usual(skill)),
		Seconds:   standards.Seconds(skill, task.LookWords),
		Origin:    origin,
		Standing:  Ready,
	}
	if s, ok := standards.Catalogue().Skill(skill); ok {
		it.Codes = slices.Clone(s.Codes)
	}
	return it
}

// compute fills in what follows from the task.
func (it *Item) compute(asked task.Task) {
	it.Task, it.Key, it.Skill = asked.String(), asked.Key(), standards.SkillOf(asked)
	it.Codes, it.Traits = asked.Codes(), asked.Traits()
	if it.Look == "" {
		it.Look = asked.Looks()[0]
	}
	it.Seconds = standards.Seconds(it.Skill, it.Look)
}

// settle makes an item fit to be kept: what can be computed is computed anew,
// whatever was there, and the rest must make sense. It returns the fingerprint.
func (it *Item) settle() (fingerprint string, err error) {
	var asked task.Task
	if it.ByHand() {
		it.Traits = task.Traits{}
	} else {
		if asked, err = task.Parse(it.Task); err != nil {
			return "", err
		}
		it.compute(asked)
	}
	if err := it.check(asked); err != nil {
		return "", err
	}
	return it.fingerprint(asked), nil
}

// check says what is wrong with an item; task is nil for one by hand.
func (it *Item) check(asked task.Task) error {
	switch {
	case !slices.Contains([]Standing{Draft, Ready, Retired}, it.Standing):
		return words.Errorf("standing is %q; it must be draft, ready or retired", it.Standing)
	case len(it.Origin.Kind+it.Origin.File+it.Origin.By) > longest:
		return words.Errorf("file and author of the origin are more than %d bytes long together; shorten them", longest)
	case asked != nil && !slices.Contains(asked.Looks(), it.Look):
		return words.Errorf("%s can't be shown as %q; it can as %s", it.Task, it.Look, joinLooks(asked.Looks()))
	case asked != nil:
		return nil
	case it.askedAs() == "":
		return words.Errorf("there is no question; give a task such as 47 + 36 = ? or a wording")
	case strings.TrimSpace(it.Key) == "":
		return words.Errorf("%q has no key; an item whose mathematics isn't understood needs its right answer", it.askedAs())
	}
	if it.Skill != "" { // an item by hand may wait for its skill
		if _, err := standards.ParseSkill(string(it.Skill)); err != nil {
			return err
		}
	}
	_, err := task.ParseLook(string(it.Look))
	return err
}

func joinLooks(looks []task.Look) string {
	names := make([]string, len(looks))
	for i, look := range looks {
		names[i] = string(look)
	}
	return strings.Join(names, ", ")
}

// Fingerprint is equal for two items that ask the same: tasks also when one is
// turned around or written in another way, questions by hand also when they
// differ in spaces, capitals or the marks at their end.
func (it Item) Fingerprint() string {
	if it.ByHand() {
		return it.fingerprint(nil)
	}
	asked, err := task.Parse(it.Task)
	if err != nil { // Add will refuse the item
		return it.Task
	}
	return it.fingerprint(asked)
}

func (it *Item) fingerprint(asked task.Task) string {
	if asked != nil {
		return asked.Fingerprint()
	}
	words := strings.Fields(strings.ToLower(norm.NFKC.String(it.askedAs())))
	return "by hand: " + strings.TrimRight(strings.Join(words, " "), " .:;=?_")
}

// askedAs is the wording that stands for an item by hand: the English one, else
// that of the first language by name that has one.
func (it *Item) askedAs() string {
	if text := strings.TrimSpace(it.Wording["en"]); text != "" {
		return text
	}
	for _, lang := range languages(it.Wording) {
		if text := strings.TrimSpace(it.Wording[lang]); text != "" {
			return text
		}
	}
	return ""
}
