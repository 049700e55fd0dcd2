package intake

import (
	"slices"
	"strings"
	"sync"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"evenhand/standards/words"
)

// Meaning is what a column holds; empty when it isn't used.
type Meaning string

// The meanings, under the names that --column takes.
const (
	Question     Meaning = "question"
	QuestionEs   Meaning = "question-es" // the question in Spanish
	Answer       Meaning = "answer"
	Skill        Meaning = "skill"
	Standards    Meaning = "standards"
	Difficulty   Meaning = "difficulty" // in the colleague's words, kept as a note
	Grade        Meaning = "grade"      // kept as a note
	Look         Meaning = "look"
	By           Meaning = "by"
	Notes        Meaning = "notes"
	Story        Meaning = "story"          // stands before the question
	Choices      Meaning = "choices"        // to choose from, all in one cell
	Choice       Meaning = "choice"         // one of them a column
	WrongAnswers Meaning = "wrong answers"  // kept as a note
	PupilsAnswer Meaning = "pupil's answer" // what a child wrote, not used
	Unused       Meaning = "unused"         // nothing for the bank, as a person said
	Number       Meaning = "number"         // the colleague's own numbering, not used
	MarkOfMends  Meaning = "mending"        // what an earlier import wrote of the row, not used
)

// meanings are those that a person may name.
var meanings = []Meaning{Question, QuestionEs, Answer, Skill, Standards, Difficulty, Grade, Look, By, Notes, Number, Story, Choices, Unused}

// Meanings are those that a person may name, the usual ones first.
func Meanings() []Meaning { return slices.Clone(meanings) }

// ParseMeaning finds a meaning by its name; the error lists them all.
func ParseMeaning(name string) (Meaning, error) {
	clean := strings.ToLower(strings.TrimSpace(name))
	names := make([]string, len(meanings))
	for i, m := range meanings {
		if names[i] = string(m); names[i] == clean {
			return m, nil
		}
	}
	return "", words.Errorf("no column can be the %q%s (it can be one of %s)", name, words.Suggest(clean, names), strings.Join(names, ", "))
}

// vocabulary holds the words people head their columns with, the surest first. Where
// a heading holds phrases of several meanings the longest counts, then the row that
// stands first here. Plural and accents don't matter.
var vocabulary = []struct {
	meaning Meaning
	phrases []string
}{
	{Number, []string{
		"question number", "item number", "problem number", "question no", "item no", "problem no", "number",
		"no", "nr", "num", "id", "item id", "row", "numero",
	}},
	{QuestionEs, []string{
		"question es", "question in spanish", "spanish", "pregunta", "problema", "ejercicio", "enunciado",
		"tarea", "cuenta", "operacion", "espanol",
	}},
	{WrongAnswers, []string{
		"wrong answer", "common wrong answer", "incorrect answer", "incorrect", "wrong", "distractor",
		"wrong choice", "common error", "common mistake", "misconception", "falsche antwort", "falsch",
		"respuesta incorrecta", "respuesta erronea", "distractores", "mauvaise reponse", "fausse reponse",
	}},
	{PupilsAnswer, []string{
		"student answer", "pupil answer", "child answer", "student s answer", "pupil s answer",
		"child s answer", "student response", "pupil response", "response", "student work",
		"respuesta del alumno", "respuesta alumno", "schulerantwort", "antwort des kindes",
		"reponse de l eleve",
	}},
	{Choices, []string{
		"answer choice", "choice", "option", "answer option", "possible answer", "opcion", "opciones",
		"alternativa", "antwortmoglichkeiten", "auswahl", "choix", "proposition",
	}},
	{Answer, []string{
		"answer", "answer key", "key", "correct answer", "right answer", "solution", "correct",
		"correct choice", "correct option", "correct letter", "right choice", "result", "ans",
		"expected answer", "it is", "respuesta", "respuesta correcta", "opcion correcta", "solucion",
		"resultado", "clave", "losung", "ergebnis", "antwort", "richtige antwort", "reponse", "bonne reponse",
		"corrige", "resultat", "risposta", "soluzione", "resposta", "solucao", "antwoord", "oplossing", "svar",
		"løsning", "fasit", "odpowiedź", "rozwiazanie", "vastaus", "cevap", "odpoved", "valasz",
	}},
	{Standards, []string{"standard", "standard code", "code", "ccss", "estandar", "codigo"}},
	{Skill, []string{
		"skill", "topic", "skill topic", "objective", "strand", "focus", "concept", "unit", "type", "task type",
		"habilidad", "tema", "destreza", "thema", "competence", "argomento", "onderwerp",
	}},
	{Difficulty, []string{"difficulty", "level", "difficulty level", "how hard", "band", "dificultad", "nivel", "schwierigkeit", "niveau"}},
	{Grade, []string{"grade", "grade level", "year", "grado", "curso", "klasse", "classe"}},
	{Look, []string{"look", "layout", "format", "shown as", "presentation", "aspecto"}},
	{By, []string{
		"by", "author", "teacher", "written by", "from", "initial", "who", "colleague", "autor", "autora",
		"maestra", "maestro", "por", "lehrer", "lehrerin", "auteur",
	}},
	{Notes, []string{
		"note", "comment", "remark", "hint", "explanation", "rationale", "distractor rationale", "feedback",
		"teacher note", "strategy", "notas", "nota", "comentario", "observacion", "observaciones", "pista",
		"explicacion", "hinweis", "bemerkung", "anmerkung", "remarque", "indice", "explication",
	}},
	{Story, []string{
		"story", "passage", "context", "situation", "scenario", "body", "story text", "problem text",
		"word problem", "background", "historia", "cuento", "contexto", "situacion", "geschichte",
		"rechengeschichte", "histoire", "contexte", "storia", "testo",
	}},
	{Question, []string{
		"question", "task", "problem", "stem", "sentence", "number sentence", "question text", "exercise",
		"item", "prompt", "sum", "text", "clock", "clock face", "q", "aufgabe", "frage", "rechnung", "exercice",
		"calcul", "domanda", "esercizio", "questao", "pergunta", "exercicio", "vraag", "opgave", "oppgave",
		"spørsmål", "spørgsmål", "fraga", "uppgift", "pytanie", "zadanie", "kysymys", "tehtava", "soru",
		"otazka", "priklad", "kerdes", "feladat",
	}},
}

// match is how well a heading names a meaning: exact or only in part, and how sure
// the word is (0 is the surest).
type match struct {
	meaning Meaning
	exact   bool
	words   int
	rank    int
}

// better says whether m names its meaning more surely than other does the same one.
func (m match) better(other match) bool {
	if m.exact != other.exact {
		return m.exact
	}
	return m.rank < other.rank
}

// phrases are those of the vocabulary in plain words.
var phrases = sync.OnceValue(func() (all []phrase) {
	for _, row := range vocabulary {
		for rank, text := range row.phrases {
			text = plainWords(text)
			all = append(all, phrase{text, strings.Count(text, " ") + 1, row.meaning, rank})
		}
	}
	return all
})

type phrase struct {
	text    string
	words   int
	meaning Meaning
	rank    int
}

// understand finds the meaning that a heading names; the zero match for none.
func understand(heading string) match {
	if len(heading) > longestHeadingBytes {
		return match{}
	}
	clean := plainWords(heading)
	padded := " " + clean + " "
	var best match
	for _, p := range phrases() {
		exact := clean == p.text
		if p.words > best.words && (exact || strings.Contains(padded, " "+p.text+" ")) {
			best = match{p.meaning, exact, p.words, p.rank}
		}
	}
	return best
}

// longestHeadingBytes is how long a heading may be, in bytes.
const longestHeadingBytes = 200

// plainWords brings a heading or a skill's name to plain words: small letters without
// accents, "#" said as "number", other marks as spaces, a plural "s" dropped.
func plainWords(text string) string {
	text = strings.ReplaceAll(strings.ToLower(text), "#", " number ")
	text = strings.Map(func(r rune) rune {
		switch {
		case unicode.Is(unicode.Mn, r):
			return -1
		case unicode.IsLetter(r), unicode.IsDigit(r):
			return r
		}
		return ' '
	}, norm.NFKD.String(text))
	said := strings.Fields(text)
	for i, word := range said {
		if len(word) > 3 {
			said[i] = strings.TrimSuffix(word, "s")
		}
	}
	return strings.Join(said, " ")
}
