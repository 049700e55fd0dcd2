package followup_test

import (
	"bytes"
	"testing"

	"evenhand/assemble/followup"
	"evenhand/assemble/sheet"
	"evenhand/bank"
	"evenhand/standards"
)

// quizOf is a quiz of one item of each skill.
func quizOf(skills ...standards.SkillID) bank.Quiz {
	form := bank.QuizForm{Name: "A"}
	for _, id := range skills {
		form.Items = append(form.Items, bank.QuizItem{Item: bank.Item{Skill: id}})
	}
	return bank.Quiz{Title: "Friday check", Week: "2026-W48", Class: "2A", Forms: []bank.QuizForm{form}}
}

// Of every skill of the catalogue families hear something, and whatever was practiced fits on one page, in both
// languages and on both papers; in large print each language does.
func TestLetters(t *testing.T) {
	var all []standards.SkillID
	for _, skill := range standards.Catalogue() {
		all = append(all, skill.ID)
		if skill.Grade > 2 {
			continue // beyond K-2; in a family of its own or in none
		}
		if _, err := followup.LetterOf([]bank.Quiz{quizOf(skill.ID)}); err != nil {
			t.Errorf("%s: %v", skill.ID, err)
		}
	}
	for _, c := range []struct {
		skills []standards.SkillID
		langs  []string
		o      sheet.Options
	}{
		{all, []string{"en", "es"}, sheet.Options{}},
		{all, []string{"en", "es"}, sheet.Options{PaperSize: "a4", Font: sheet.BuiltInFont}},
		{all[:1], []string{"es"}, sheet.Options{Large: true}},
		{all[20:24], []string{"en"}, sheet.Options{Large: true, PaperSize: "a4"}},
	} {
		letter, err := followup.LetterOf([]bank.Quiz{quizOf(c.skills...)})
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		if err := letter.Write(&out, c.langs, c.o); err != nil {
			t.Fatal(err)
		}
		if n := bytes.Count(out.Bytes(), []byte("/StructParents")); n != 1 {
			t.Errorf("%v %+v: %d pages", c.langs, c.o, n)
		}
	}
	if _, err := followup.LetterOf([]bank.Quiz{quizOf("our own skill")}); err == nil {
		t.Error("a letter about nothing known")
	}
}
