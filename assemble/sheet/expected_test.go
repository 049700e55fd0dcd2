package sheet_test

import (
	"bytes"
	"strings"
	"testing"

	"evenhand/assemble"
	"evenhand/assemble/sheet"
	"evenhand/bank"
	"evenhand/standards/task"
)

// Every key says of each item how many in 10 are expected to get it right and whether that is a guess,
// learnt or measured; a quiz that doesn't know prints as before, and no sheet for pupils says it.
func TestKeySaysWhatSharesRestOn(t *testing.T) {
	p := paper("83 - 47 = ?", "47 + 36 = ?", "read 4:30", "47 ? 74")
	unknown := []sheet.Paper{p}
	p.Questions = append([]sheet.Question(nil), p.Questions...)
	for i, basis := range []bank.Basis{bank.GuessBasis, bank.MeasuredBasis, bank.GuessBasis, ""} {
		p.Questions[i].Tenths, p.Questions[i].Basis = 6+i, basis
	}
	known := []sheet.Paper{p}
	for lang, want := range map[string]string{
		"en": "About how many in 10 get it right. Guess: (1) 6, (3) 8. Measured: (2) 7.",
		"es": "Más o menos cuántos de cada 10 aciertan. Supuesto: (1) 6, (3) 8. Medido: (2) 7.",
	} {
		start := want[:strings.Index(want, "10")]
		o := sheet.Options{Key: true, Lang: lang, Font: sheet.BuiltInFont}
		var html, without bytes.Buffer
		if err := sheet.WriteHTML(&html, p, o); err != nil {
			t.Fatal(err)
		}
		if err := sheet.WriteHTML(&without, unknown[0], o); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(html.String(), want) || strings.Contains(without.String(), start) {
			t.Errorf("the page in %s lacks %q, or says it without knowing", lang, want)
		}
		var keys bytes.Buffer
		if err := sheet.WriteKeys(&keys, known, o); err != nil {
			t.Fatal(err)
		}
		for name, file := range map[string][]byte{"the key": pdf(t, p, o), "keys.pdf": keys.Bytes()} {
			if got := printedText(t, file); !strings.Contains(got, want) {
				t.Errorf("%s lacks %q; it reads\n%s", name, want, got)
			}
		}
	}
	if o := (sheet.Options{}); !bytes.Equal(pdf(t, p, o), pdf(t, unknown[0], o)) {
		t.Error("what pupils read depends on what is expected of them")
	}
}

// A key speaks of the pupils that the quiz is for, as its expected score does. By hand: 15 + 23 lies at
// -1.8 + 2.604 for all grades, and 1/(1 + exp(.804 - 2.604)) = .86, 1/(1 + exp(.804 - 1.253)) = .61.
func TestAKeySpeaksOfWhomTheQuizIsFor(t *testing.T) {
	sum := bank.NewItem(task.MustParse("15 + 23 = ?"), "", bank.Origin{})
	sum.Predicted = -1800
	form := assemble.Form{Name: "A", Items: []assemble.Placed{{Item: sum, Number: 1, Basis: bank.GuessBasis}}}
	for ability, want := range map[int]int{2604: 9, 1253: 6} {
		quiz := assemble.Quiz{Ability: ability, Forms: []assemble.Form{form}}
		if got := sheet.PaperOf(quiz, form, "en").Questions[0].Tenths; got != want {
			t.Errorf("for pupils at %d the key says %d in 10, want %d", ability, got, want)
		}
	}
}
