package desk

import (
	"fmt"
	"html/template"
	"regexp"
	"slices"
	"strings"
	"sync"
	"unicode"

	"evenhand/standards"
	"evenhand/standards/task"
)

// Skill is a skill by name, as its description in English or what colleagues call it in Spanish.
func (s sentences) Skill(id any) string {
	name, ok := id.(standards.SkillID)
	if !ok {
		name = standards.SkillID(fmt.Sprint(id))
	}
	skill, ok := standards.Catalogue().Skill(name)
	if !ok {
		return string(name)
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
	if read := task.ReadIn(asked, s.Lang); read != asked.String() {
		return read
	}
	return spanishNotation().read(text)
}

// notation reads tasks as they are typed in words of Spanish, by the phrases that stand in the tables.
type notation struct {
	phrases *regexp.Regexp
	said    map[string]string
}

var spanishNotation = sync.OnceValue(func() notation {
	n := notation{said: map[string]string{}}
	p, err := loadPages()
	if err != nil {
		return n // which no desk opens with
	}
	var all []string
	for key, text := range p.said("es").text {
		if phrase, ok := strings.CutPrefix(key, "task."); ok {
			n.said[phrase] = text
			all = append(all, regexp.QuoteMeta(phrase))
		}
	}
	slices.SortFunc(all, func(a, b string) int { return len(b) - len(a) }) // the longest first
	n.phrases = regexp.MustCompile(`^(?:` + strings.Join(all, "|") + `)(?:\b|$| )`)
	return n
})

// read is the task in Spanish where all of its words stand in the tables; else it stays as it is typed.
func (n notation) read(text string) string {
	var said strings.Builder
	for rest := text; rest != ""; {
		at := strings.IndexFunc(rest, func(r rune) bool { return unicode.IsLetter(r) || r == ':' })
		if at < 0 {
			said.WriteString(rest)
			break
		}
		said.WriteString(rest[:at])
		rest = rest[at:]
		switch found := n.phrases.FindString(rest); {
		case found != "":
			phrase := strings.TrimSuffix(found, " ")
			said.WriteString(n.said[phrase])
			rest = rest[len(phrase):]
		case rest[0] == ':':
			said.WriteByte(':')
			rest = rest[1:]
		default:
			return text
		}
	}
	return said.String()
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
