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

// SkillOptions are the options of a field to choose a skill by name, by grades.
func (s sentences) SkillOptions(chosen any) template.HTML {
	value := optionValue(fmt.Sprint(chosen))
	return template.HTML(strings.Replace(s.skills, value, value+" selected", 1))
}

// skillOptions are the options of all skills, by grades.
func (s sentences) skillOptions() string {
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

// codeOptions are the options of all standards.
var codeOptions = sync.OnceValue(func() string {
	var text strings.Builder
	for _, code := range standards.AllCodes() {
		text.WriteString("<option>" + string(code) + "</option>") // letters, digits, points and hyphens
	}
	return text.String()
})

// CodeOptions are those of a field to choose a standard.
func (s sentences) CodeOptions(chosen string) template.HTML {
	return template.HTML(strings.Replace(codeOptions(), ">"+chosen+"<", " selected>"+chosen+"<", 1))
}

// optionValue begins an option that sends this value.
func optionValue(value string) string {
	return `<option value="` + template.HTMLEscapeString(value) + `"`
}
