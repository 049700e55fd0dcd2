package desk

import (
	"errors"
	"html/template"
	"net/http"
	"net/url"
	"sync"

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

// card is what the list shows of an item: as a page has many, all is put together before the template.
type card struct {
	ID       string
	Standing bank.Standing
	Drawing  template.HTML
	Question string // where there is no drawing
	Under    string
}

func (v *visit) card(it bank.Item) card {
	c := card{ID: it.ID, Standing: it.Standing, Drawing: v.draw(it).Drawing, Under: v.said.under(it)}
	if c.Drawing == "" {
		c.Question = it.Question(v.said.Lang)
	}
	return c
}

// under is what a card says of an item in one line.
func (s sentences) under(it bank.Item) string {
	right := it.Difficulty()
	return s.Skill(it.Skill) + " · " + s.say("band."+string(right.Band())) + " · " + s.say("items.tenths", right.Tenths())
}

// items shows the bank's items that a person asks for.
func items(v *visit) error {
	query, err := v.itemQuery()
	if err != nil {
		return err
	}
	var found []card
	next := ""
	for it, err := range v.desk.bank.Find(query) {
		if err != nil {
			return err
		}
		if len(found) == pageful {
			next = it.ID
			break
		}
		found = append(found, v.card(it))
	}
	chosen := v.URL.Query()
	if next != "" {
		chosen.Set("at", next)
		next = "/items?" + chosen.Encode()
	}
	chosen = v.URL.Query()
	if typed := chosen.Get("traits"); typed != "" {
		chosen.Set("traits", v.said.InWords(v.desk.pages.conditionsTyped(typed)))
	}
	return v.show("items", struct {
		Chosen    url.Values
		Bands     []standards.Band
		Standings []bank.Standing
		Items     []card
		Next      string // the address of the next page
	}{
		chosen, standards.Bands(),
		[]bank.Standing{bank.Draft, bank.Ready, bank.Retired}, found, next,
	})
}

// itemQuery reads the filter of the page.
func (v *visit) itemQuery() (bank.Query, error) {
	get := v.URL.Query().Get
	q := bank.Query{Words: get("words"), Author: get("author"), Unused: get("unused"), From: get("at"), About: pageful + 1}
	if q.From != "" {
		if _, err := v.desk.bank.Get(q.From); err != nil {
			return q, v.missing("item.nothing")
		}
	}
	if name := get("skill"); name != "" {
		skill, err := standards.ParseSkill(name)
		if err != nil {
			return q, asTyped(err)
		}
		q.Skills = []standards.SkillID{skill}
	}
	if text := get("code"); text != "" {
		code, err := standards.ParseCode(text)
		if err != nil {
			return q, asTyped(err)
		}
		q.Code = code
	}
	if typed := v.desk.pages.conditionsTyped(get("traits")); len(typed) > 0 {
		where, err := standards.ParseWhere(typed)
		if err != nil {
			return q, asTyped(err)
		}
		q.Where = where
	}
	if band := get("band"); band != "" {
		q.Bands = []standards.Band{standards.Band(band)}
	}
	switch standing := get("status"); standing {
	case "all":
	case "":
		q.Standings = []bank.Standing{bank.Draft, bank.Ready}
	default:
		q.Standings = []bank.Standing{bank.Standing(standing)}
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

// draw is the item with its drawing.
func (v *visit) draw(it bank.Item) shown {
	return shown{it, v.desk.drawings.of(it, v.said.Lang)}
}

// drawings remembers what was drawn, by all that a drawing depends on, so that it can't be out of date.
type drawings struct {
	sync.Mutex
	known map[drawn]template.HTML
}

// drawn is what a drawing shows.
type drawn struct {
	lang, task, words, key string
	look                   task.Look
}

// mostDrawings is how many are remembered, of some 1.3 KB each; beyond, all are forgotten at once.
const mostDrawings = 20_000

// of is the drawing of an item; empty where it can't be drawn.
func (d *drawings) of(it bank.Item, lang string) template.HTML {
	shows := drawn{lang, it.Task, it.OwnWords(lang), it.Key, it.Look}
	d.Lock()
	picture, ok := d.known[shows]
	d.Unlock()
	if ok {
		return picture
	}
	if svg, err := sheet.SVG(sheet.QuestionOf(it, 1, lang), sheet.Options{Lang: lang}); err == nil {
		picture = template.HTML(svg)
	}
	d.Lock()
	defer d.Unlock()
	if d.known == nil || len(d.known) >= mostDrawings {
		d.known = map[drawn]template.HTML{}
	}
	d.known[shows] = picture
	return picture
}
