package desk

import (
	"cmp"
	"errors"
	"html/template"
	"net/http"
	"strings"

	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
)

// item shows one item with its history.
func item(v *visit) error {
	it, err := v.itemAsked()
	if err != nil {
		return err
	}
	history, err := v.desk.bank.History(it.ID)
	if err != nil {
		return err
	}
	uses, err := v.desk.bank.Uses(it.ID)
	if err != nil {
		return err
	}
	drafts, err := v.draftsToTell(it, history)
	if err != nil {
		return err
	}
	page := itemPage{
		Drafts: drafts,
		ID:     it.ID, Revision: it.Revision, Standing: it.Standing, Question: v.said.Asks(it.Question(v.said.Lang)),
		Drawing: v.draw(it).Drawing, Skill: it.Skill, Facts: v.said.facts(it), Missteps: v.said.missteps(it),
		Time: v.said.say("item.seconds", it.Seconds), From: v.said.origin(it.Origin), Notes: v.said.Reason(it.Notes),
		History: v.said.compared(history),
	}
	for _, use := range uses {
		page.Uses = append(page.Uses, v.said.Week(use.Week)+": "+use.Quiz)
	}
	return v.show("item", page)
}

// itemPage is all that the page of an item shows, in words.
type itemPage struct {
	Drafts     int // that wait, where this is one or was until its last change
	ID         string
	Revision   int
	Standing   bank.Standing
	Question   string
	Drawing    template.HTML
	Skill      standards.SkillID
	Facts      facts
	Missteps   []misstep
	Time, From string
	Notes      string
	Uses       []string
	History    []revision
}

// facts are what pages tell of an item in words.
type facts struct{ Key, Skill, Status, Codes, Right, Traits string }

func (s sentences) facts(it bank.Item) facts {
	right := it.Difficulty()
	var codes []string
	for _, code := range it.Codes {
		codes = append(codes, string(code))
	}
	return facts{
		Key: it.Key, Skill: cmp.Or(s.Skill(it.Skill), s.say("item.noskill")), Status: s.say("status." + string(it.Standing)),
		Codes:  cmp.Or(strings.Join(codes, " "), s.say("item.nocodes")),
		Right:  s.say("items.tenths", right.Tenths()) + ", " + s.say("band."+string(right.Band())),
		Traits: cmp.Or(strings.Join(s.Traits(it.Traits), " · "), s.say("item.byhand")),
	}
}

// origin is where an item is from.
func (s sentences) origin(from bank.Origin) string {
	text := s.say("origin." + from.Kind)
	for _, more := range []string{from.File, from.By} {
		if more != "" {
			text += ", " + more
		}
	}
	return text
}

// draftsToTell is how many drafts wait for a review, for who reviews: on the page of a draft, or of an item that was one
// before its last change. They are counted only there, as that goes through all groups.
func (v *visit) draftsToTell(it bank.Item, history []bank.Item) (int, error) {
	if it.Standing != bank.Draft && (len(history) < 2 || history[len(history)-2].Standing != bank.Draft) {
		return 0, nil
	}
	counts, err := v.desk.bank.Count()
	return counts[bank.Draft], err
}

// itemAsked is the item that the address names.
func (v *visit) itemAsked() (bank.Item, error) {
	it, err := v.desk.bank.Get(v.PathValue("id"))
	if err != nil {
		return it, &fault{status: http.StatusNotFound, text: v.said.say("item.nothing"), err: err}
	}
	return it, nil
}

// misstep is a wrong answer and what it suggests.
type misstep struct{ Answer, Suggests string }

// missteps are the wrong answers to an item that suggest something.
func (s sentences) missteps(it bank.Item) (list []misstep) {
	asked, err := task.Parse(it.Task)
	if err != nil {
		return nil
	}
	for _, m := range task.MisstepsIn(asked, it.Look) {
		list = append(list, misstep{m.Answer, s.Suggests(m.Kinds)})
	}
	return list
}

// Suggests is what an answer suggests that each of these missteps gives, in templates.
func (s sentences) Suggests(kinds []*task.MisstepKind) string {
	var tells []string
	for _, kind := range kinds {
		tells = append(tells, kind.TellsIn(s.Lang))
	}
	return strings.Join(tells, "; "+s.say("item.or")+" ")
}

// revision is a state of an item: which one it is, and what it changed.
type revision struct {
	Is      string
	Changes []change
}

// change is one thing that a revision changed; Name is the key of a sentence.
type change struct{ Name, Before, After string }

// compared are the revisions, the last one first, each with what it changed.
func (s sentences) compared(history []bank.Item) []revision {
	var list []revision
	for i := len(history) - 1; i >= 0; i-- {
		it := history[i]
		r := revision{Is: s.say("item.revision", it.Revision, it.By, s.Day(it.At))}
		if it.Reason != "" {
			r.Is += ": " + s.Reason(it.Reason)
		}
		if i > 0 {
			r.Changes = s.changesBetween(history[i-1], it)
		}
		list = append(list, r)
	}
	return list
}

// changesBetween lists what a person sees differ between two states of an item.
func (s sentences) changesBetween(before, after bank.Item) []change {
	var list []change
	for _, row := range []change{
		{"item.task", before.Task, after.Task},
		{"item.words", before.Wording["en"], after.Wording["en"]},
		{"item.words-es", before.Wording["es"], after.Wording["es"]},
		{"item.key", before.Key, after.Key},
		{"item.skill", s.Skill(before.Skill), s.Skill(after.Skill)},
		{"item.look", s.Term(before.Look.Title()), s.Term(after.Look.Title())},
		{"item.right", s.say("items.tenths", before.Difficulty().Tenths()), s.say("items.tenths", after.Difficulty().Tenths())},
		{"item.status", s.say("status." + string(before.Standing)), s.say("status." + string(after.Standing))},
		{"item.notes", before.Notes, after.Notes},
	} {
		if row.Before != row.After {
			list = append(list, row)
		}
	}
	return list
}

// setStanding makes an item ready, a draft again, or retires it.
func setStanding(v *visit) error {
	it, err := v.itemAsked()
	if err != nil {
		return err
	}
	standing := bank.Standing(v.FormValue("status"))
	switch standing {
	case bank.Draft, bank.Ready, bank.Retired:
	default:
		return v.wrong("item.nostatus")
	}
	reason := v.FormValue("reason")
	if reason == "" {
		reason = v.said.say("item.reason." + string(standing))
	}
	_, err = v.desk.bank.Revise(it.ID, v.by(), reason, v.now(), func(stands *bank.Item) error {
		if err := v.unchanged(*stands); err != nil {
			return err
		}
		stands.Standing = standing
		return nil
	})
	if errors.Is(err, errChanged) {
		return &fault{status: http.StatusConflict, text: v.said.say("item.changed"), err: err}
	}
	if errors.As(err, new(*bank.OwnDraftError)) {
		return &fault{status: http.StatusForbidden, text: v.said.say("item.owndraft"), err: err}
	}
	if err != nil {
		return err
	}
	return v.to("/items/" + it.ID)
}
