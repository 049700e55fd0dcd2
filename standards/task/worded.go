package task

import (
	"slices"
	"strings"

	"evenhand/standards/words"
)

// How answers are read that are one of a few words, or the letters of some pictures.

// besideWords may stand before or behind the word of an answer.
var besideWords = wordSet("it it's its is an a the this that they are shape shapes figure one ones share there there's " +
	"looks like called just of them i think side size on " +
	"es un una el la las los son figura parte se llama forma hay está lado")

// oneWord reads an answer that is one of some words, with no more than small words around it: "It's a
// square."
func oneWord(answer string, known map[string]string) (said string, ok bool) {
	var parts []string
	for _, t := range trimmed(words.Tokens(answer)) {
		parts = append(parts, t.Text)
	}
	for from := 0; from < len(parts); from++ {
		for to := len(parts); to > from; to-- {
			if said, ok = known[strings.Join(parts[from:to], " ")]; ok {
				return said, !slices.ContainsFunc(parts[to:], func(word string) bool { return !besideWords[word] })
			}
		}
		if !besideWords[parts[from]] {
			return "", false
		}
	}
	return "", false
}

// pictureLetters are the names of pictures beside each other.
const pictureLetters = "ABCDEF"

// lettersOf are the letters of the pictures that pass, "A, C".
func lettersOf(n int, passes func(i int) bool) string {
	var list []string
	for i := range n {
		if passes(i) {
			list = append(list, pictureLetters[i:i+1])
		}
	}
	return strings.Join(list, ", ")
}

// readLetters reads letters of n pictures as lettersOf writes them: "c and a", "AC", "A, C".
func readLetters(answer string, n int) (letters string, ok bool) {
	chosen := map[int]bool{}
	for _, t := range trimmed(words.Tokens(answer)) {
		text := strings.ToUpper(t.Text)
		switch {
		case t.Kind == words.Sign && strings.Contains(",;&+/()", t.Text), t.Text == "and", t.Text == "y" && len(chosen) > 0:
		case besideWords[t.Text] && text != "A":
		case t.Kind == words.Word && strings.Trim(text, pictureLetters[:n]) == "":
			for _, letter := range text {
				at := strings.IndexRune(pictureLetters, letter)
				if chosen[at] {
					return "", false
				}
				chosen[at] = true
			}
		default:
			return "", false
		}
	}
	return lettersOf(n, func(i int) bool { return chosen[i] }), len(chosen) > 0
}

// letterTexts are usual ways to write letters, for programs that compare texts.
func letterTexts(key string) []string {
	spaced := strings.ReplaceAll(key, ",", "")
	return []string{key, spaced, strings.ReplaceAll(key, ", ", ","), strings.ReplaceAll(spaced, " ", "")}
}
