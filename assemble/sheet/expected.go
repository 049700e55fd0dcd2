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

// expected says in a line or two how many pupils are expected to get each item right, by what that rests on, in words
// to be broken between; nothing where no item's basis is known.
func (k kit) expected(questions []Question) (words []string) {
	for _, w := range basisWords {
		var items []string
		for _, q := range questions {
			if q.Basis == w.basis {
				items = append(items, fmt.Sprintf("(%d) %d,", q.Number, q.Tenths))
			}
		}
		if last := len(items) - 1; last >= 0 {
			items[last] = strings.TrimSuffix(items[last], ",") + "."
			words = append(append(words, strings.Fields(k.say(w.phrase))...), items...)
		}
	}
	if words == nil {
		return nil
	}
	return append(strings.Fields(k.say(expectedWords)), words...)
}
