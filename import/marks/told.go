package marks

import (
	"cmp"
	"strings"

	"evenhand/bank/results"
	"evenhand/standards/words"
)

// inSpanish are what signs can mean, as it is said in Spanish without accents.
var inSpanish = map[string]string{
	"bien": "right", "correcto": "right", "mal": "wrong", "incorrecto": "wrong", "falto": "absent", "ausente": "absent",
	"no llego": "not reached", "respuesta": "answer", "respuestas": "answers", "vacio": "empty",
}

// ParseSigns reads what a person says that signs mean, such as "x=right", "-=wrong" or
// "100=answer", in Spanish "x=bien", for Options.Signs.
func ParseSigns(said []string) (map[string]results.State, error) {
	signs := map[string]results.State{}
	for _, text := range said {
		i := strings.LastIndex(text, "=")
		if i <= 0 {
			return nil, words.Errorf("%q is no sign and its meaning; write it as in x=wrong", text)
		}
		said := strings.FieldsFunc(strings.ToLower(text[i+1:]), func(r rune) bool { return r == ' ' || r == '-' })
		meaning := strings.Join(said, " ")
		state := results.State(cmp.Or(inSpanish[words.Unaccented(meaning)], meaning))
		switch state {
		case results.Right, results.Wrong, results.Absent, results.NotReached:
		case "answer", "answers":
			state = ""
		default:
			return nil, words.Errorf("%q is no meaning; it can be right, wrong, absent, not reached or answer", text[i+1:])
		}
		sign := plain(text[:i])
		if (sign == "empty" || inSpanish[words.Unaccented(sign)] == "empty") && state != "" {
			sign = "" // cells in which nothing stands
		}
		signs[sign] = state
	}
	return signs, nil
}
