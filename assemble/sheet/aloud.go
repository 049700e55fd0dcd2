package sheet

import (
	"fmt"
	"slices"
	"strings"

	"evenhand/standards/task"
)

// Words that stand in place of something to write on.
var (
	lineToWrite = phrase{"A line to write on.", "Una línea para escribir."}
	boxToWrite  = phrase{"A box for a number:", "Un cuadro para un número:"}
	answerSaid  = phrase{"Answer: %s.", "Respuesta: %s."}
	blankSaid   = phrase{"blank", "espacio en blanco"}
)

// saidOn is what a screen reader says of a thing; on the key with the answer in it.
func (k kit) saidOn(thing, answer string) string {
	if !k.key {
		return thing
	}
	return thing + " " + fmt.Sprintf(k.say(answerSaid), answer)
}

// aloud is an item in words, as a screen reader says it in place of its picture: what is asked and what
// the picture shows, so that a child who can't see it can work on it, and never what is right. On
// the key the answer follows.
func (k kit) aloud(q Question) string {
	var parts []string
	if q.Text != "" {
		parts = append(parts, q.Text)
	}
	if q.Task != nil {
		parts = append(parts, k.shows(q)...)
	}
	parts = slices.DeleteFunc(parts, func(s string) bool { return s == "" })
	return k.saidOn(strings.Join(parts, " "), k.answerText(q))
}

// shows is what the picture of a task shows; where answers are to choose from, the picture in its
// usual look and the answers.
func (k kit) shows(q Question) []string {
	if q.Look == task.LookChoice {
		usual := Question{Number: q.Number, Task: q.Task, Look: q.Task.Looks()[0]}
		return append(k.shows(usual), k.optionsAloud(q))
	}
	if aloud := looks[q.Look].aloud; aloud != nil {
		return aloud(k, q.Task)
	}
	return []string{k.questionAloud(q.Task)}
}

// questionAloud is a question without a picture: in words of its own where it has such, a sentence as it is said, else the
// question in words.
func (k kit) questionAloud(asked task.Task) string {
	said := task.Said(asked, k.lang)
	if sentence, ok := task.Written(asked); ok && said == asked.Prompt(k.lang) {
		return k.sentenceAloud(sentence)
	}
	return k.signsAloud(said)
}

// signWords are the signs of sentences as they are said.
var signWords = map[string]phrase{
	"+": {"plus", "más"}, "-": {"minus", "menos"}, "=": {"equals", "es igual a"},
	"hundreds": {"hundreds", "centenas"}, "tens": {"tens", "decenas"}, "ones": {"ones", "unidades"},
}

// sentenceAloud is a sentence with its signs in words: "47 plus blank equals 83."
func (k kit) sentenceAloud(sentence string) string { return k.signsAloud(sentence) + "." }

// signsAloud is a text with the signs in it in words.
func (k kit) signsAloud(text string) string {
	said := strings.Fields(text)
	for i, token := range said {
		word := strings.TrimRight(token, ",.;:")
		switch sign, ok := signWords[word]; {
		case word == "?":
			token = strings.Replace(token, "?", k.say(blankSaid), 1)
		case ok:
			token = k.say(sign) + token[len(word):]
		}
		said[i] = token
	}
	return strings.Join(said, " ")
}
