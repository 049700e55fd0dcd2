package desk

import (
	"fmt"
	"html/template"
	"slices"
	"strings"

	"evenhand/standards"
	"evenhand/standards/task"
)

// Skill is a skill by name, as its description in English or what colleagues call it in Spanish.
func (s sentences) Skill(id any) string {
	skill, ok := standards.Catalogue().Skill(standards.SkillID(fmt.Sprint(id)))
	if !ok {
		return fmt.Sprint(id)
	}
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
	byGrade := slices.Clone(standards.Catalogue())
	slices.SortStableFunc(byGrade, func(a, b standards.Skill) int { return a.Grade - b.Grade })
	var text strings.Builder
	escape, grade := template.HTMLEscapeString, ""
	for _, skill := range byGrade {
		if skill.GradeName() != grade {
			if grade != "" {
				text.WriteString("</optgroup>")
			}
			grade = skill.GradeName()
			fmt.Fprintf(&text, `<optgroup label="%s">`, escape(s.say("grade", grade)))
		}
		selected := ""
		if string(skill.ID) == fmt.Sprint(chosen) {
			selected = " selected"
		}
		fmt.Fprintf(&text, `<option value="%s"%s>%s</option>`, escape(string(skill.ID)), selected, escape(s.Skill(skill.ID)))
	}
	text.WriteString("</optgroup>")
	return template.HTML(text.String())
}
