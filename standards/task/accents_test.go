package task_test

import (
	"testing"

	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// Whoever types answers on a keyboard without accents is read as well: the right answer and every wrong one mean in
// Spanish what they mean in English, with accents and without.
func TestSpanishAnswersWithoutAccents(t *testing.T) {
	texts := append([]string{}, tellingTasks...)
	for _, skill := range standards.Catalogue() {
		texts = append(texts, skill.Example)
	}
	for _, row := range typed {
		texts = append(texts, row.text)
	}
	for _, text := range texts {
		asked := task.MustParse(text)
		for _, answer := range append([]task.Misstep{{Answer: asked.Key()}}, asked.Missteps()...) {
			right := answer.Answer == asked.Key()
			said := task.AnswerIn(asked, answer.Answer, "es")
			for _, written := range []string{said, words.Unaccented(said)} {
				if asked.Judge(written) != right || !asked.Possible(written) {
					t.Errorf("%s: %q is judged %v, possible %v", asked, written, asked.Judge(written), asked.Possible(written))
				}
			}
		}
	}
}

// Answers as they are typed in a hurry that can mean only one thing: common practice, no source.
func TestHurriedAnswersAreRead(t *testing.T) {
	for _, row := range []struct {
		item, answer string
		want         bool
	}{
		{"47 = ? tens ? ones", "tens 4 ones 7", true}, {"47 = ? tens ? ones", "Tens: 4, Ones: 7", true},
		{"47 = ? tens ? ones", "ones 7, tens 4", true}, {"47 = ? tens ? ones", "decenas 4 y unidades 7", true},
		{"47 = ? tens ? ones", "tens 7 ones 4", false}, {"142 = ? hundreds ? tens ? ones", "hundreds 1 tens 4 ones 2", true},
		{"142 = ? hundreds ? tens ? ones", "hundreds 1 tens 2 ones 4", false},
		{"name shape: thin triangle at 45", "un triangulo", true}, {"name shape: thin triangle at 45", "rectangulo", false},
		{"where: circle behind square", "detras", true}, {"flat or solid: cone", "es un cuerpo solido", false},
		{"flat or solid: cone", "solida", true}, {"read 4:30 pm", "4:30 de la manana", false}, {"read 4:30 am", "4 y media de la manana", true},
		{"47 ? 74", "mas", false}, {"74 ? 47", "mas", true}, {"write 342 in words", "trescientos cuarenta y dos", true},
		{"write sixteen", "dieciseis", false}, {"tool for hallway", "cinta metrica", true}, {"estimate door", "2 metros", true},
		{"estimate car", "5 metros", true},
		{"table birds 4, fish 7: which has the most", "peces", true}, {"table birds 4, fish 2: which has the most", "pajaros", true},
		{"table pens 4, erasers 7: which has the most", "gomas", true}, {"table pens 4, erasers 7: which has the most", "borradores", true},
		{"10 more than 47 = ?", "57 es 10 mas que 47", true}, {"10 more than 47 = ?", "57 es 10 menos que 47", false},
		{"true or false: 7 = 8 - 1", "si", true}, {"story add-to result-unknown: 5 + 7 = ?, pencils, Mia", "12 lapices", true},
	} {
		asked := task.MustParse(row.item)
		if asked.Judge(row.answer) != row.want {
			t.Errorf("%s: %q is judged %v, possible %v", asked, row.answer, asked.Judge(row.answer), asked.Possible(row.answer))
		}
	}
}
