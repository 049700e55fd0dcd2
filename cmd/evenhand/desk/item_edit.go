package desk

import (
	"errors"
	"maps"
	"net/http"
	"strconv"
	"strings"

	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
)

// errChanged says that somebody changed the item since the form was opened.
var errChanged = errors.New("the item was changed meanwhile")

// itemForm is an item as a person types it.
type itemForm struct {
	ID       string // empty for a new one
	Revision int    // that the form began from
	Task     string // the task, or any question in words
	Key      string // for a question that is not understood
	Skill    string // likewise
	Look     string
	WordsEn  string
	WordsEs  string
	Notes    string
	Reason   string
	Ready    bool
}

func (v *visit) itemForm() itemForm {
	revision, _ := strconv.Atoi(v.FormValue("revision"))
	value := func(name string) string { return strings.TrimSpace(v.FormValue(name)) }
	return itemForm{
		ID: v.PathValue("id"), Revision: revision,
		Task: value("task"), Key: value("key"), Skill: value("skill"), Look: value("look"),
		WordsEn: value("words-en"), WordsEs: value("words-es"), Notes: value("notes"), Reason: value("reason"),
		Ready: v.FormValue("ready") != "",
	}
}

// formOf is the form that an item would be typed by.
func formOf(it bank.Item) itemForm {
	f := itemForm{
		ID: it.ID, Revision: it.Revision, Task: it.Task, Key: it.Key, Skill: string(it.Skill), Look: string(it.Look),
		WordsEn: it.Wording["en"], WordsEs: it.Wording["es"], Notes: it.Notes, Ready: it.Standing == bank.Ready,
	}
	if it.ByHand() {
		f.Task, f.WordsEn = it.Question("en"), ""
	}
	return f
}

// item is the item that the form describes, and what keeps it from being one in a sentence.
func (v *visit) item(f itemForm) (it bank.Item, problem string) {
	if f.Task == "" {
		return it, v.said.say("edit.empty")
	}
	origin := bank.Origin{Kind: "written", By: v.by()}
	asked, err := task.Parse(f.Task)
	var other *task.NotUnderstoodError
	switch {
	case err == nil:
		it = bank.NewItem(asked, task.Look(f.Look), origin)
	case !errors.As(err, &other):
		return it, v.said.Tell(err)
	case f.Key == "" || f.Skill == "":
		return it, v.said.say("edit.byhand")
	default:
		skill, err := standards.ParseSkill(f.Skill)
		if err != nil {
			return it, v.said.Tell(err)
		}
		it = bank.NewHandItem(f.Task, f.Key, skill, v.said.Lang, origin)
	}
	wording := maps.Clone(it.Wording)
	if wording == nil {
		wording = map[string]string{}
	}
	for language, words := range map[string]string{"en": f.WordsEn, "es": f.WordsEs} {
		if words != "" {
			wording[language] = words
		}
	}
	it.Wording, it.Notes = wording, f.Notes
	it.Standing = bank.Draft
	if f.Ready {
		it.Standing = bank.Ready
	}
	return it, ""
}

// editPage is all that the page of the form shows.
type editPage struct {
	Form     itemForm
	Problem  string // what is missing so far
	Shown    *shown // as it stands typed; nil while something is missing
	Facts    facts
	Missteps []misstep
	Looks    []task.Look
	Conflict []change // what somebody else changed meanwhile
}

func (v *visit) editPage(f itemForm) editPage {
	page := editPage{Form: f}
	it, problem := v.item(f)
	if problem != "" {
		page.Problem = problem
		return page
	}
	drawn := v.draw(it)
	page.Shown, page.Facts, page.Missteps = &drawn, v.said.facts(it), v.said.missteps(it)
	if asked, err := task.Parse(it.Task); err == nil {
		page.Looks = asked.Looks()
	}
	return page
}

// newItem shows the form for a new item, or as far as it is filled in.
func newItem(v *visit) error {
	page := v.editPage(v.itemForm())
	if page.Form.Task == "" {
		page.Problem = ""
	}
	return v.show("item_edit", page)
}

// addItem keeps a new item.
func addItem(v *visit) error {
	f := v.itemForm()
	it, problem := v.item(f)
	if problem != "" {
		v.w.WriteHeader(http.StatusBadRequest)
		return v.show("item_edit", v.editPage(f))
	}
	added, err := v.desk.bank.Add([]bank.Item{it}, v.by(), v.now())
	if err != nil {
		return asRefused(err)
	}
	return v.to("/items/" + added[0].ID)
}

// editItem shows the form for an item that is there.
func editItem(v *visit) error {
	it, err := v.itemAsked()
	if err != nil {
		return err
	}
	f := formOf(it)
	if v.URL.Query().Has("task") {
		f = v.itemForm()
	}
	return v.show("item_edit", v.editPage(f))
}

// reviseItem keeps a changed item, unless somebody else has changed it since the form was opened.
func reviseItem(v *visit) error {
	stands, err := v.itemAsked()
	if err != nil {
		return err
	}
	f := v.itemForm()
	wanted, problem := v.item(f)
	page := v.editPage(f)
	if problem == "" && f.Reason == "" {
		page.Problem = v.said.say("edit.reason")
	}
	if page.Problem != "" {
		v.w.WriteHeader(http.StatusBadRequest)
		return v.show("item_edit", page)
	}
	_, err = v.desk.bank.Revise(stands.ID, v.by(), f.Reason, v.now(), func(it *bank.Item) error {
		if err := v.unchanged(*it); err != nil {
			return err
		}
		it.Task, it.Look, it.Wording, it.Notes = wanted.Task, wanted.Look, wanted.Wording, wanted.Notes
		if it.Standing != bank.Retired {
			it.Standing = wanted.Standing
		}
		if wanted.ByHand() {
			it.Key, it.Skill = wanted.Key, wanted.Skill
		}
		return nil
	})
	if errors.Is(err, errChanged) {
		page.Conflict = v.said.changesBetween(wanted, stands)
		page.Form.Revision = stands.Revision
		v.w.WriteHeader(http.StatusConflict)
		return v.show("item_edit", page)
	}
	if errors.As(err, new(*bank.OwnDraftError)) {
		page.Problem = v.said.say("item.owndraft")
		v.w.WriteHeader(http.StatusForbidden)
		return v.show("item_edit", page)
	}
	if err != nil {
		return asRefused(err)
	}
	return v.to("/items/" + stands.ID)
}

// unchanged says that an item stands as the form that was sent began from.
func (v *visit) unchanged(stands bank.Item) error {
	if v.FormValue("revision") != strconv.Itoa(stands.Revision) {
		return errChanged
	}
	return nil
}
