package desk

import (
	"html/template"
	"net/http"
	"net/url"
	"strings"

	"evenhand/assemble/sheet"
	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
)

// pageful is how many items one page shows.
const pageful = 24

// shown is an item with its drawing as a sheet shows it; empty where it can't be drawn.
type shown struct {
	bank.Item
	Drawing template.HTML
}

// items shows the bank's items that a person asks for.
func items(v *visit) error {
	query, err := v.itemQuery()
	if err != nil {
		return err
	}
	var found []shown
	next := ""
	for it, err := range v.desk.bank.Find(query) {
		if err != nil {
			return err
		}
		if len(found) == pageful {
			next = it.ID
			break
		}
		found = append(found, v.draw(it))
	}
	chosen := v.URL.Query()
	if next != "" {
		chosen.Set("at", next)
		next = "/items?" + chosen.Encode()
	}
	return v.show("items", struct {
		Chosen    url.Values
		Codes     []task.Code
		Bands     []standards.Band
		Standings []bank.Standing
		Items     []shown
		Next      string // the address of the next page
	}{
		v.URL.Query(), standards.AllCodes(), standards.Bands(),
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
	if text := strings.TrimSpace(get("traits")); text != "" {
		where, err := standards.ParseWhere(strings.Split(text, ","))
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
func asTyped(err error) error { return &fault{status: http.StatusBadRequest, text: err.Error()} }

// draw is the item with its drawing.
func (v *visit) draw(it bank.Item) shown {
	picture, err := sheet.SVG(sheet.QuestionOf(it, 1, v.said.Lang), sheet.Options{Lang: v.said.Lang})
	if err != nil {
		return shown{Item: it}
	}
	return shown{Item: it, Drawing: template.HTML(picture)}
}
