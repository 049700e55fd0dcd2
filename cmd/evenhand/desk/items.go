package desk

import (
	"errors"
	"html/template"
	"net/http"
	"net/url"
	"strings"

	"evenhand/assemble/plan"
	"evenhand/assemble/sheet"
	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// pageful is how many items one page shows.
const pageful = 24

// shown is an item with its drawing as a sheet shows it; empty where it can't be drawn.
type shown struct {
	bank.Item
	Drawing template.HTML
}

// usualCard is about as many bytes as a card has.
const usualCard = 1700

// addCard adds to a page what the list shows of an item. As a page has many, that is quicker than by the template.
func (v *visit) addCard(page *strings.Builder, it bank.Item) {
	picture := string(v.draw(it).Drawing)
	if picture == "" {
		picture = template.HTMLEscapeString(it.Question(v.said.Lang))
	}
	standing := ""
	if it.Standing != bank.Ready {
		standing = " · <b>" + template.HTMLEscapeString(v.said.say("status."+string(it.Standing))) + "</b>"
	}
	for _, text := range []string{
		`<li class="card"><a href="/items/`, it.ID, `"><span class="paper">`, picture, `</span><span class="under">`,
		template.HTMLEscapeString(v.said.under(it)), standing, "</span></a></li>\n",
	} {
		page.WriteString(text)
	}
}

// under is what a card says of an item in one line.
func (s sentences) under(it bank.Item) string {
	right := it.Difficulty()
	return s.Skill(it.Skill) + " · " + s.say("band."+string(right.Band())) + " · " + s.say("items.tenths", right.Tenths())
}

// items shows the bank's items that a person asks for.
func items(v *visit) error {
	asked := filterOf(v.URL.Query())
	query, err := v.itemQuery(asked)
	if err != nil {
		return err
	}
	var found strings.Builder
	found.Grow(pageful * usualCard)
	n, next := 0, ""
	for it, err := range v.desk.bank.Find(query) {
		if err != nil {
			return err
		}
		if n == pageful {
			next = it.ID
			break
		}
		v.addCard(&found, it)
		n++
	}
	if next != "" {
		here := v.URL.Query()
		here.Set("at", next)
		next = "/items?" + here.Encode()
	}
	fields, err := v.filterFields(asked)
	if err != nil {
		return err
	}
	return v.show("items", struct {
		Filter template.HTML
		Items  template.HTML
		Next   string // the address of the next page
	}{fields, template.HTML(found.String()), next})
}

// filter is what of the bank's items a person asks for, as it is typed.
type filter struct{ Words, Skill, Code, Band, Status, Traits, Author, Unused string }

func filterOf(asked url.Values) filter {
	get := asked.Get
	return filter{
		get("words"), get("skill"), get("code"), get("band"), get("status"), get("traits"), get("author"), get("unused"),
	}
}

// filterIn is a filter as it is shown in a language.
type filterIn struct {
	lang string
	filter
}

// filterFields are the fields of the filter, filled.
func (v *visit) filterFields(f filter) (template.HTML, error) {
	if f.Traits != "" {
		f.Traits = v.said.InWords(v.desk.pages.conditionsTyped(f.Traits))
	}
	type fields struct {
		filter
		Bands     []standards.Band
		Standings []bank.Standing
	}
	return v.desk.pages.filters.of(filterIn{v.said.Lang, f}, func() (template.HTML, error) {
		return v.piece("items", "filter", struct {
			Said sentences
			Data fields
		}{v.said, fields{f, standards.Bands(), []bank.Standing{bank.Draft, bank.Ready, bank.Retired}}})
	})
}

// itemQuery reads the filter of the page.
func (v *visit) itemQuery(f filter) (bank.Query, error) {
	q := bank.Query{Words: f.Words, Author: f.Author, From: v.URL.Query().Get("at"), About: pageful + 1}
	if q.From != "" {
		if _, err := v.desk.bank.Get(q.From); err != nil {
			return q, v.missing("item.nothing")
		}
	}
	if f.Unused != "" { // a browser may let any text through
		since, err := plan.ParseWeek(f.Unused)
		if err != nil {
			return q, asTyped(err)
		}
		q.Unused = since.String()
	}
	if f.Skill != "" {
		skill, err := standards.ParseSkill(f.Skill)
		if err != nil {
			return q, asTyped(err)
		}
		q.Skills = []standards.SkillID{skill}
	}
	if f.Code != "" {
		code, err := standards.ParseCode(f.Code)
		if err != nil {
			return q, asTyped(err)
		}
		q.Code = code
	}
	if typed := v.desk.pages.conditionsTyped(f.Traits); len(typed) > 0 {
		where, err := standards.ParseWhere(typed)
		if err != nil {
			return q, asTyped(err)
		}
		q.Where = where
	}
	if f.Band != "" {
		q.Bands = []standards.Band{standards.Band(f.Band)}
	}
	switch f.Status {
	case "all":
	case "":
		q.Standings = []bank.Standing{bank.Draft, bank.Ready}
	default:
		q.Standings = []bank.Standing{bank.Standing(f.Status)}
	}
	return q, nil
}

// asTyped is a fault whose sentence already says what was read and what would be right.
func asTyped(err error) error { return &fault{status: http.StatusBadRequest, err: err} }

// asRefused is asTyped for what the bank refuses with a sentence; any other error is not the person's.
func asRefused(err error) error {
	if errors.As(err, new(*words.Told)) && !noRoom(err) {
		return asTyped(err)
	}
	return err
}

// draw is the item with its drawing; without where it can't be drawn.
func (v *visit) draw(it bank.Item) shown {
	lang := v.said.Lang
	picture, _ := v.desk.drawings.of(drawn{lang, it.Task, it.OwnWords(lang), it.Key, it.Look}, func() (template.HTML, error) {
		svg, err := sheet.SVG(sheet.PictureOf(it, 1, lang), sheet.Options{Lang: lang})
		if err != nil {
			svg = nil
		}
		return template.HTML(svg), nil
	})
	return shown{it, picture}
}

// drawn is all that a drawing shows.
type drawn struct {
	lang, task, words, key string
	look                   task.Look
}

// mostDrawings is how many are remembered, of some 1.3 KB each.
const mostDrawings = 20_000
