package intake

import (
	"regexp"
	"slices"
	"strings"

	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// understood makes an item of a task. Key, skill and standards are computed; what the
// row says of them is compared.
func (j *judge) understood(rec record, posed task.Task) (v verdict) {
	answer, choices := j.cell(rec, Answer), j.choices(rec)
	said := words.Sayf("%s", shorten(answer))
	if at, points := j.chosen(answer, choices); points && !judgeAnswer(posed, answer) {
		said, answer = words.Sayf("%s, which is %s", said, shorten(choices[at])), choices[at]
	} else if points && j.keysPoint {
		said, answer = words.Sayf("%s, which is %s", said, shorten(choices[at])), choices[at]
	}
	if given := mendAnswer(posed, answer); given != "" && !judgeAnswer(posed, answer) {
		return verdict{problem: &Problem{rec.first, string(Answer), wrongAnswer(posed, given, said)}}
	}
	v.item = bank.NewItem(posed, "", j.origin(rec))
	v.item.Notes = j.remarks(rec, choices, "")
	if story := plainText(j.cell(rec, Story)); story != "" {
		v.item.Notes = strings.TrimPrefix(v.item.Notes+"; story: "+story, "; ")
		v.note(rec.first, Story, words.Sayf("kept as a note, as the question says all by itself"))
	}
	if es := plainText(j.cell(rec, QuestionEs)); es != "" && !isTask(es) {
		v.item.Wording = map[string]string{"es": es}
	}
	j.chooseLook(&v, rec, posed.Looks())
	j.compareSkill(&v, rec)
	j.compareCodes(&v, rec)
	return v
}

// byHand makes an item of a question that isn't understood, when it has an answer.
func (j *judge) byHand(rec record, question, lang string) (v verdict) {
	answer, choices := plainText(j.cell(rec, Answer)), j.choices(rec)
	set := func(reason *words.Told) verdict {
		return verdict{problem: &Problem{rec.first, string(Answer), reason}}
	}
	question = join(plainText(j.cell(rec, Story)), question)
	switch doubt := j.doubtfulKey(answer, choices); {
	case answer == "":
		return set(words.Sayf("there is no answer, and it can't be worked out from %q; write one", shorten(question)))
	case len(question)+len(answer) > longestQuestion:
		return set(words.Sayf("question and answer are %d characters long together; shorten them to %d",
			len(question)+len(answer), longestQuestion))
	case doubt != nil:
		return set(doubt)
	case SheetError(answer):
		return set(notWorkedOut(answer))
	}
	if reason := spoiltAnswer(question, answer); reason != nil {
		return set(reason)
	}
	if at, points := j.chosen(answer, choices); points {
		answer = string(rune('A' + at))
	}
	if m := plainNumber.FindStringSubmatch(answer); m != nil {
		answer = m[1]
	}
	es := plainText(j.cell(rec, QuestionEs))
	if len(choices) > 1 {
		question += lettered(choices)
	}
	skill := j.chooseSkill(&v, rec)
	v.item = bank.NewHandItem(question, answer, skill, lang, j.origin(rec))
	if es != "" && lang != "es" {
		v.item.Wording["es"] = es
	}
	v.item.Notes = j.remarks(rec, nil, j.cell(rec, Skill))
	if codes := standards.SplitCodes(j.cell(rec, Standards)); len(codes) > 0 {
		v.item.Codes = codes
	}
	j.chooseLook(&v, rec, task.AllLooks())
	j.proposeSkill(&v, rec, question)
	return v
}

// join puts a story before its question, unless the question says it already.
func join(story, question string) string {
	if story == "" || strings.Contains(question, story) {
		return question
	}
	return story + " " + question
}

// spoiltAnswer says what a spreadsheet may have done to an answer by hand; nil for an
// answer that can stand. A date written out is one, and so is any to a question about the
// calendar.
func spoiltAnswer(question, answer string) *words.Told {
	if explained, dated := readDate(answer); dated && !meansDate(question, answer) {
		return explained
	}
	if typed, changed := restoreTime(answer); changed && len(answer) > 5 {
		return words.Sayf(mayBeTime, answer, typed, typed)
	}
	return nil
}

// meansDate says whether a date can stand as the answer.
func meansDate(question, answer string) bool {
	return writtenDate.MatchString(answer) || bigNumber.MatchString(question) ||
		calendar.MatchString(question) && !isoDate.MatchString(answer)
}

var (
	writtenDate = regexp.MustCompile(`(?i)^(?:(?:may|\pL{4,}) \d{1,2}(?:st|nd|rd|th)?|\d{1,2}(?:st|nd|rd|th|\.)? (?:de )?(?:may|\pL{4,}))$`)
	calendar    = regexp.MustCompile(`(?i)\b(?:dates?|calendar|calendario|months?|mes|day|d[ií]a|week|semana|` +
		`today|tomorrow|yesterday|birthday|fecha|datum|kalender)\b`)
	isoDate   = regexp.MustCompile(`^\d{4}-\d\d-\d\d\b`) // as a workbook keeps it: nobody in these grades writes so
	bigNumber = regexp.MustCompile(`\d{4}|\d[.,]\d{3}`)  // as are asked about in such a question
)

func (j *judge) origin(rec record) bank.Origin {
	by := plainText(j.cell(rec, By))
	if by == "" {
		by = j.by
	}
	file, line := j.list.origin(rec)
	return bank.Origin{Kind: "imported", File: file, Row: line, By: by}
}

// remarks are the colleague's notes, level and grade in one text, with what else the row
// says and the item has no place for: choices of an understood task, the word for a skill.
func (j *judge) remarks(rec record, choices []string, skill string) string {
	var parts []string
	add := func(name, text string) {
		if text = plainText(text); text != "" && name != "" {
			text = name + ": " + text
		}
		if text != "" {
			parts = append(parts, text)
		}
	}
	for i, c := range j.list.Columns {
		switch {
		case c.Meaning == Notes && i == j.list.column(Notes):
			add("", rec.cell(i))
		case c.Meaning == Notes, c.Meaning == WrongAnswers:
			add(strings.ToLower(c.Heading), rec.cell(i))
		}
	}
	add("level", j.cell(rec, Difficulty))
	add("grade", j.cell(rec, Grade))
	add("choices", strings.Join(choices, ", "))
	if len(j.skills(skill)) != 1 {
		add("skill", skill)
	}
	return strings.Join(parts, "; ")
}

// chooseLook takes the look that the row names, if the item can take it.
func (j *judge) chooseLook(v *verdict, rec record, looks []task.Look) {
	cell := j.cell(rec, Look)
	if cell == "" {
		return
	}
	look, err := task.ParseLook(strings.ToLower(shorten(cell)))
	switch {
	case err != nil:
		v.note(rec.first, Look, words.ToldBy(err))
	case slices.Contains(looks, look):
		v.item.Look = look
	default:
		v.note(rec.first, Look, words.Sayf("%s can't be shown as %s; it is shown as %s", v.item.Task, look, v.item.Look))
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
		v.note(rec.first, Skill, words.Sayf("%q may be %s; name one for this item by hand", shorten(cell), words.Joined(skills, "%s; %s")))
	case cell != "":
		v.note(rec.first, Skill, words.Sayf("%q is no skill known here; name one for this item by hand", shorten(cell)))
	}
	return j.skill
}

// compareSkill notes a named skill that isn't the computed one.
func (j *judge) compareSkill(v *verdict, rec record) {
	cell := j.cell(rec, Skill)
	if skills := j.skills(cell); len(skills) > 0 && !slices.Contains(skills, v.item.Skill) {
		v.note(rec.first, Skill, words.Sayf("the list says %q; by its numbers %s is %s", shorten(cell), v.item.Task, v.item.Skill))
	}
}

// compareCodes notes named standards none of which the task meets.
func (j *judge) compareCodes(v *verdict, rec record) {
	cell := j.cell(rec, Standards)
	codes := standards.SplitCodes(cell)
	noCode := slices.Contains([]string{standards.BeyondK2, standards.NoneNamesIt, standards.CodeNotKnown}, cell)
	meets := func(c task.Code) bool { return slices.Contains(v.item.Codes, c) }
	switch {
	case cell == "" || noCode && len(v.item.Codes) == 0 || slices.ContainsFunc(codes, meets):
	case len(codes) == 0 && !noCode:
		v.note(rec.first, Standards, words.Sayf("%q is no standard from kindergarten to grade 2; %s meets %s",
			shorten(cell), v.item.Task, v.item.Standards()))
	default:
		v.note(rec.first, Standards, words.Sayf("the list says %s; by its numbers %s meets %s",
			shorten(cell), v.item.Task, v.item.Standards()))
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

// notWorkedOut says what to do about a cell in which a formula failed.
func notWorkedOut(cell string) *words.Told {
	return words.Sayf("%s is what a spreadsheet writes when it can't work out a formula; write what was meant",
		shorten(cell))
}

// wrongAnswer says what is right and what the list says.
func wrongAnswer(asked task.Task, given string, said *words.Told) *words.Told {
	if explained, dated := readDate(given); dated {
		return explained
	}
	text := asked.String()
	left, asks := strings.CutSuffix(text, " = ?")
	if !asks {
		left, asks = strings.CutPrefix(text, "? = ")
	}
	if asks {
		return words.Sayf("%s is %s, the list says %s", left, asked.Key(), said)
	}
	return words.Sayf("the answer to %s is %s, the list says %s", text, asked.Key(), said)
}
