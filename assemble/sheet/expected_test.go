package sheet_test

import (
	"bytes"
	"strings"
	"testing"

	"evenhand/assemble/sheet"
	"evenhand/bank"
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
