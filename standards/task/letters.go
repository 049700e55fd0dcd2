package task

import (
	"slices"
	"strings"

	"evenhand/standards/words"
)

// pictureWords are the words for the pictures A, B and C beside their letters.
var pictureWords = map[string]string{
	"a": "A", "b": "B", "c": "C", "first": "A", "second": "B", "third": "C",
	"primera": "A", "segunda": "B", "tercera": "C", "primero": "A", "segundo": "B", "tercero": "C",
}

// besidePictures are the words that may stand beside them.
var besidePictures = wordSet("the picture row bar one is are it it's longer longest shorter shortest taller tallest right " +
	"la el los las de es dibujo fila barra más larga corta alta mide está bien")

// readPicture is the letter that an answer names, one of those given.
func readPicture(answer string, letters ...string) (said string, ok bool) {
	for _, token := range trimmed(words.Tokens(answer)) {
		letter := pictureWords[token.Text]
		if token.Kind == words.Digits && token.Number >= 1 && token.Number <= 3 && len(token.Text) == 1 {
			letter = "ABC"[token.Number-1 : token.Number]
		}
		switch {
		case letter != "" && slices.Contains(letters, letter) && !ok:
			said, ok = letter, true
		case besidePictures[token.Text]:
		default:
			return "", false
		}
	}
	return said, ok
}

// readPlaces is the places that an answer gives to the pictures A, B, C: their numbers in this order, or the
// letters from the first place to the last.
func readPlaces(answer string) (places []int, ok bool) {
	var letters []string
	for _, token := range trimmed(words.ListTokens(answer)) {
		letter := pictureWords[token.Text]
		switch {
		case letter != "" && len(token.Text) == 1 && !slices.Contains(letters, letter):
			letters = append(letters, letter)
		case token.IsNumber():
			places = append(places, token.Number)
		case token.Kind == words.Sign && strings.Contains(",;:=<", token.Text), token.Text == "and", token.Text == "y":
		default:
			return nil, false
		}
	}
	switch {
	case len(places) == 0 && len(letters) == 3:
		places = make([]int, 3)
		for i, letter := range letters {
			places[letter[0]-'A'] = i + 1
		}
		return places, true
	case len(letters) > 0 && strings.Join(letters, "") != "ABC":
		return nil, false
	}
	return places, len(places) > 0
}
