package desk

import (
	"fmt"
	"html/template"
	"slices"
	"strings"
	"sync"

	"evenhand/standards"
	"evenhand/standards/task"
)

// Skill is a skill by name, as its description in English or what colleagues call it in Spanish.
func (s sentences) Skill(id any) string {
	skill, ok := standards.Catalogue().Skill(standards.SkillID(fmt.Sprint(id)))
	if !ok {
		return fmt.Sprint(id)
	}
	return s.called(skill)
}

func (s sentences) called(skill standards.Skill) string {
	if s.Lang == "es" {
		return skill.Words("es")[0]
	}
	return skill.Description
}

// Asks is what an item asks, as it is typed in English and as it is read in Spanish.
func (s sentences) Asks(text string) string {
	if s.Lang == "en" {
		return text
	}
	asked, err := task.Parse(text)
	if err != nil {
		return text
	}
	return task.ReadIn(asked, s.Lang)
}

// skillOptions are the options of all skills by grades, by language, put together once.
var skillOptions sync.Map

// SkillOptions are the options of a field to choose a skill by name, by grades.
func (s sentences) SkillOptions(chosen any) template.HTML {
	all, ok := skillOptions.Load(s.Lang)
	if !ok {
		all, _ = skillOptions.LoadOrStore(s.Lang, s.allSkillOptions())
	}
	value := optionValue(fmt.Sprint(chosen))
	return template.HTML(strings.Replace(all.(string), value, value+" selected", 1))
}

func (s sentences) allSkillOptions() string {
	byGrade := slices.Clone(standards.Catalogue())
	slices.SortStableFunc(byGrade, func(a, b standards.Skill) int { return a.Grade - b.Grade })
	var text strings.Builder
	grade := ""
	for _, skill := range byGrade {
		if skill.GradeName() != grade {
			if grade != "" {
				text.WriteString("</optgroup>")
			}
			grade = skill.GradeName()
			text.WriteString(`<optgroup label="` + template.HTMLEscapeString(s.say("grade", grade)) + `">`)
		}
		text.WriteString(optionValue(string(skill.ID)) + ">" + template.HTMLEscapeString(s.called(skill)) + "</option>")
	}
	text.WriteString("</optgroup>")
	return text.String()
}

// CodeOptions are those of a field to choose a standard.
func (s sentences) CodeOptions(chosen string) template.HTML {
	var text strings.Builder
	for _, code := range standards.AllCodes() {
		selected := ""
		if string(code) == chosen {
			selected = " selected"
		}
		fmt.Fprintf(&text, "<option%s>%s</option>", selected, template.HTMLEscapeString(string(code)))
	}
	return template.HTML(text.String())
}

// optionValue begins an option that sends this value.
func optionValue(value string) string {
	return `<option value="` + template.HTMLEscapeString(value) + `"`
}
