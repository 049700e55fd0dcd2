package intake

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
)

// understood makes an item of a task. Key, skill and standards are computed; what the
// row says of them is compared.
func (j *judge) understood(rec record, asked task.Task) (v verdict) {
	answer := j.cell(rec, Answer)
	if given := mendAnswer(asked, answer); given != "" && !asked.Judge(given) {
		return verdict{problem: &Problem{rec.first, string(Answer), wrongAnswer(asked, given)}}
	}
	v.item = bank.NewItem(asked, "", j.origin(rec))
	v.item.Notes = j.remarks(rec)
	if es := plainText(j.cell(rec, QuestionEs)); es != "" && !isTask(es) {
		v.item.Wording = map[string]string{"es": es}
	}
	j.chooseLook(&v, rec, asked.Looks())
	j.compareSkill(&v, rec)
	j.compareCodes(&v, rec)
	return v
}

// byHand makes an item of a question that isn't understood, when it has an answer.
func (j *judge) byHand(rec record, question, lang string) (v verdict) {
	answer := plainText(j.cell(rec, Answer))
	set := func(reason string) verdict {
		return verdict{problem: &Problem{rec.first, string(Answer), reason}}
	}
	if answer == "" {
		return set(fmt.Sprintf("there is no answer, and it can't be worked out from %q; write one", shorten(question)))
	}
	if explained, dated := readDate(answer); dated {
		return set(explained)
	}
	if typed, changed := restoreTime(answer); changed && len(answer) > 5 {
		return set(fmt.Sprintf("%s may be the time %s that a spreadsheet has changed; if so, write %s", answer, typed, typed))
	}
	v.item = bank.NewHandItem(question, answer, j.chooseSkill(&v, rec), lang, j.origin(rec))
	v.item.Notes = j.remarks(rec)
	if es := plainText(j.cell(rec, QuestionEs)); es != "" {
		v.item.Wording["es"] = es
	}
	if codes := standards.SplitCodes(j.cell(rec, Standards)); len(codes) > 0 {
		v.item.Codes = codes
	}
	j.chooseLook(&v, rec, task.AllLooks())
	return v
}

func (j *judge) origin(rec record) bank.Origin {
	by := plainText(j.cell(rec, By))
	if by == "" {
		by = j.by
	}
	file, line := j.list.origin(rec)
	return bank.Origin{Kind: "imported", File: file, Row: line, By: by}
}

// remarks are the colleague's notes, level and grade in one text.
func (j *judge) remarks(rec record) string {
	var parts []string
	if text := plainText(j.cell(rec, Notes)); text != "" {
		parts = append(parts, text)
	}
	for _, row := range []struct {
		meaning Meaning
		name    string
	}{{Difficulty, "level"}, {Grade, "grade"}} {
		if text := plainText(j.cell(rec, row.meaning)); text != "" {
			parts = append(parts, row.name+": "+text)
		}
	}
	return strings.Join(parts, "; ")
}

// chooseLook takes the look that the row names, if the item can take it.
func (j *judge) chooseLook(v *verdict, rec record, looks []task.Look) {
	cell := j.cell(rec, Look)
	if cell == "" {
		return
	}
	look, err := task.ParseLook(strings.ToLower(cell))
	switch {
	case err != nil:
		v.note(rec.first, Look, err.Error())
	case slices.Contains(looks, look):
		v.item.Look = look
	default:
		v.note(rec.first, Look, fmt.Sprintf("%s can't be shown as %s; it is shown as %s", v.item.Task, look, v.item.Look))
	}
}

// chooseSkill is the one skill that the row names, else the one for all.
func (j *judge) chooseSkill(v *verdict, rec record) standards.SkillID {
	cell := j.cell(rec, Skill)
	skills := j.skills(cell)
	if len(skills) == 1 {
		return skills[0]
	}
	switch {
	case len(skills) > 1:
		v.note(rec.first, Skill, fmt.Sprintf("%q may be %s; name one for this item by hand", shorten(cell), joinSkills(skills)))
	case cell != "":
		v.note(rec.first, Skill, fmt.Sprintf("%q is no skill known here; name one for this item by hand", shorten(cell)))
	}
	return j.skill
}

// compareSkill notes a named skill that isn't the computed one.
func (j *judge) compareSkill(v *verdict, rec record) {
	cell := j.cell(rec, Skill)
	if skills := j.skills(cell); len(skills) > 0 && !slices.Contains(skills, v.item.Skill) {
		v.note(rec.first, Skill, fmt.Sprintf("the list says %q; by its numbers %s is %s", shorten(cell), v.item.Task, v.item.Skill))
	}
}

// compareCodes notes named standards none of which the task meets.
func (j *judge) compareCodes(v *verdict, rec record) {
	cell := j.cell(rec, Standards)
	codes := standards.SplitCodes(cell)
	meets := func(c task.Code) bool { return slices.Contains(v.item.Codes, c) }
	switch {
	case cell == "" || cell == standards.BeyondK2 && len(v.item.Codes) == 0 || slices.ContainsFunc(codes, meets):
	case len(codes) == 0 && cell != standards.BeyondK2:
		v.note(rec.first, Standards, fmt.Sprintf("%q is no standard from kindergarten to grade 2; %s meets %s", shorten(cell), v.item.Task, standards.JoinCodes(v.item.Codes)))
	default:
		v.note(rec.first, Standards, fmt.Sprintf("the list says %s; by its numbers %s meets %s", shorten(cell), v.item.Task, standards.JoinCodes(v.item.Codes)))
	}
}

func (j *judge) skills(cell string) []standards.SkillID {
	skills, known := j.named[cell]
	if !known {
		skills = skillsNamed(cell)
		j.named[cell] = skills
	}
	return skills
}

func joinSkills(skills []standards.SkillID) string {
	names := make([]string, len(skills))
	for i, s := range skills {
		names[i] = string(s)
	}
	return strings.Join(names, ", ")
}

// wrongAnswer says what is right and what the list says.
func wrongAnswer(asked task.Task, given string) string {
	if explained, dated := readDate(given); dated {
		return explained
	}
	text := asked.String()
	left, asks := strings.CutSuffix(text, " = ?")
	if !asks {
		left, asks = strings.CutPrefix(text, "? = ")
	}
	if asks {
		return fmt.Sprintf("%s is %s, the list says %s", left, asked.Key(), shorten(given))
	}
	return fmt.Sprintf("the answer to %s is %s, the list says %s", text, asked.Key(), shorten(given))
}

var plainNumber = regexp.MustCompile(`^[=+]?\s*(\d+)(?:[.,]0+)?$`)

// mendAnswer undoes what spreadsheets do to answers: times where a clock is asked
// about, and 83.0, =83 or +83 for 83.
func mendAnswer(asked task.Task, answer string) string {
	switch asked.(type) {
	case task.Clock, task.Match:
		mended, _ := mendTimes(answer, true)
		return mended
	}
	if m := plainNumber.FindStringSubmatch(answer); m != nil {
		return m[1]
	}
	return answer
}
