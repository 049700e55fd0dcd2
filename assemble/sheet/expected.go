package sheet

import (
	"fmt"
	"strings"

	"evenhand/bank"
)

var (
	expectedWords = phrase{"About how many in 10 get it right.", "Más o menos cuántos de cada 10 aciertan."}
	basisWords    = []struct {
		basis bank.Basis
		phrase
	}{
		{bank.GuessBasis, phrase{"Guess:", "Supuesto:"}},
		{bank.LearntBasis, phrase{"Learnt from papers:", "Aprendido de las pruebas:"}},
		{bank.MeasuredBasis, phrase{"Measured:", "Medido:"}},
	}
)

// expected says in a line or two how many pupils are expected to get each item right, by what that rests on;
// nothing where no item's basis is known.
func (k kit) expected(questions []Question) string {
	text := ""
	for _, w := range basisWords {
		var items []string
		for _, q := range questions {
			if q.Basis == w.basis {
				items = append(items, fmt.Sprintf("(%d) %d", q.Number, q.Tenths))
			}
		}
		if len(items) > 0 {
			text += " " + k.say(w.phrase) + " " + strings.Join(items, ", ") + "."
		}
	}
	if text == "" {
		return ""
	}
	return k.say(expectedWords) + text
}
