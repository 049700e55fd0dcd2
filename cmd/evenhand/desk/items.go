package desk

import (
	"errors"
	"html/template"

	"evenhand/assemble/sheet"
	"evenhand/bank"
	"evenhand/standards"
)

// pageful is how many items one page shows.
const pageful = 48

// shown is an item with its drawing as a sheet shows it.
type shown struct {
	bank.Item
	Drawing template.HTML
}

// items shows the bank's items that a person asks for.
func items(v *visit) error {
	query := bank.Query{Words: v.FormValue("words")}
	skill := v.FormValue("skill")
	if skill != "" {
		id, err := standards.ParseSkill(skill)
		if err != nil {
			return &fault{status: 400, text: err.Error()}
		}
		query.Skills = []standards.SkillID{id}
	}
	var found []shown
	for it, err := range v.desk.bank.Find(query) {
		if err != nil {
			return err
		}
		if len(found) == pageful {
			break
		}
		found = append(found, v.draw(it))
	}
	return v.show("items", struct {
		Words, Skill string
		Skills       []string
		Items        []shown
	}{query.Words, skill, standards.Catalogue().IDs(), found})
}

// item shows one item.
func item(v *visit) error {
	it, err := v.desk.bank.Get(v.PathValue("id"))
	if err != nil {
		return errors.Join(v.missing("fault.nothing"), err)
	}
	drawn := v.draw(it)
	return v.show("item", struct {
		shown
		Question string
	}{drawn, it.Question(v.said.Lang)})
}

// draw is the item with its drawing; one that can't be drawn has none.
func (v *visit) draw(it bank.Item) shown {
	picture, err := sheet.SVG(sheet.QuestionOf(it, 1, v.said.Lang), sheet.Options{Lang: v.said.Lang})
	if err != nil {
		return shown{Item: it}
	}
	return shown{Item: it, Drawing: template.HTML(picture)}
}
