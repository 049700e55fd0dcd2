package task

import (
	"regexp"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

var (
	bullet     = regexp.MustCompile(`^[•·▪■●*☐□] +([0-9¿a-zA-Z])`)
	itemNumber = regexp.MustCompile(`^\(?[0-9]{1,3}\)\s+|^[0-9]{1,3}\.\s+|^\(?[a-h]\)\s+`)
	blankRun   = regexp.MustCompile(`\?+|\[\s*\]|\(\s*\??\s*\)|\.{3,}|…`)
	endMarks   = regexp.MustCompile(`([^.])[.!]$`)
	// letterBlank is one letter, or "what", that stands for the number asked for.
	letterBlank  = regexp.MustCompile(`(^|[-+=] ?)(?:[a-z]|blank|what number|what|cuánto|qué número)( ?[-+=]| ?$)`)
	questionMark = regexp.MustCompile(`([0-9]) ?\?$`)
	spacedWord   = regexp.MustCompile(`[a-záéíóúñ]`)
	spanishLess  = regexp.MustCompile(`^([0-9]+|diez|cien) (más|menos) que ([0-9]+)`)
	takenFrom    = regexp.MustCompile(`^(?:subtract|take|resta|quita) ([0-9]+) (?:away )?(?:from|de|a) ([0-9]+)(?: ?\?)?$`)
	addedUp      = regexp.MustCompile(`^(?:add|suma|(?:the |la )?(?:sum|total|suma) (?:of|de)) ` +
		`([0-9]+(?:, ?[0-9]+)*),? (?:and|y|to|con) ([0-9]+)(?: ?\?)?$`)
	setApart  = regexp.MustCompile(`^(?:the |la )?(?:difference|diferencia) (?:between|of|entre|de) ([0-9]+) (?:and|y) ([0-9]+)(?: ?\?)?$`)
	doubled   = regexp.MustCompile(`^(?:double|twice|the double of|el doble de) ([0-9]+)(?: ?\?)?$`)
	countedBy = regexp.MustCompile(`^(?:skip[- ]?)?(?:count(?: on| back| backward| backwards| forward)?|cuenta(?: hacia atrás| hacia adelante)?) ` +
		`(?:by|in|de) [a-z0-9]+(?: en [a-z0-9]+)?'?s? ?[:,] ?`)
)

// askedWhole is a question of its own that stands before a sentence with a blank.
var askedWhole = regexp.MustCompile(`^(?:(?:what|which) (?:number )?is missing|(?:what is )?the missing number is|` +
	`qué (?:número )?falta|(?:cuál es )?el número que falta)(?: here| aquí)? ?[?:.]? +`)

// leadIns open a question without being part of it, the longer before the shorter.
var leadIns = []string{
	"how much is", "what number is", "what is", "what's", "calculate", "work out", "solve", "compute", "find the sum",
	"find the difference", "find the missing number", "find",
	"complete the pattern", "complete the number sentence", "complete", "fill in the missing numbers",
	"fill in the missing number", "fill in the blank", "fill in",
	"write the missing numbers", "write the missing number", "write <, > or =",
	"write the number as a sum of its parts", "write how many of each", "missing number", "add", "subtract",
	"cuánto es", "cuánto son", "cuál es", "qué número es", "calcula", "resuelve", "completa", "escribe los números que faltan",
	"escribe el número que falta", "escribe <, > o =",
	"escribe el número como suma de sus partes", "escribe cuántas hay", "suma", "resta", "halla",
}

// spanishTasks are the words with which tasks are typed in Spanish, beside the English ones.
var spanishTasks = strings.NewReplacer(
	"verdadero o falso", "true or false", "par o impar", "odd or even", "impar o par", "odd or even",
	" centenas", " hundreds", " centena", " hundred", " decenas", " tens", " decena", " ten", " unidades", " ones", " unidad", " one",
	" filas de ", " rows of ", " puntos", " dots", " con palabras", " in words",
)

// spanishVerbs open a task in Spanish.
var spanishVerbs = [][2]string{
	{"cuenta ", "count "}, {"lee ", "read "}, {"dibuja las manecillas para las ", "draw las "},
	{"dibuja las manecillas", "draw"}, {"dibuja ", "draw "}, {"monedas ", "coins "}, {"monedas: ", "coins "},
	{"une ", "match "}, {"compara ", "compare "}, {"es ", "is "}, {"escribe la hora", "write the time"}, {"qué hora es", "what time is it"},
}

// tidy brings what people type to one alphabet and to fewer ways of saying the same: full-width
// digits and signs, the many minus signs and the many marks for a blank become plain ones,
// runs of spaces one space, letters small; a leading item number ("3) ", "a) ") or "What is"
// goes; "8 menos 5" and "eight take away five" become 8 - 5.
func tidy(text string) string {
	s := bullet.ReplaceAllString(strings.TrimSpace(text), "$1")
	s = words.Plain(s)
	s = itemNumber.ReplaceAllString(s, "")
	s = strings.TrimLeft(s, "¿¡ ")
	whole := s
	s = askedWhole.ReplaceAllString(s, "")
	asked := s != whole
	s = cutLeadIn(s)
	s = blankRun.ReplaceAllString(s, "?")
	s = strings.TrimSpace(endMarks.ReplaceAllString(s, "$1"))
	if spacedWord.MatchString(s) {
		s = inWords(s)
	}
	if (asked || strings.Contains(s, "=")) && strings.Count(s, "?") > 1 { // "47 + ? = 83?"
		s = questionMark.ReplaceAllString(s, "$1")
	}
	return strings.TrimSpace(s)
}

// cutLeadIn drops what leads to the question, if a question follows.
func cutLeadIn(s string) string {
	for _, opening := range leadIns {
		rest, ok := strings.CutPrefix(s, opening)
		if !ok || rest == "" || !strings.ContainsAny(rest[:1], " :") {
			continue
		}
		rest = strings.TrimLeft(rest, " :")
		if strings.HasPrefix(rest, "of ") || strings.HasPrefix(rest, "between ") {
			continue // "find the difference between 83 and 47" is about a difference
		}
		if (opening == "add" || opening == "subtract" || opening == "suma" || opening == "resta") && !strings.ContainsAny(rest, "+-−–") {
			return s // "add 47 and 36"
		}
		return strings.TrimLeft(rest, "¿")
	}
	return s
}

// inWords reads the words of a task: signs and numbers in words become signs and digits.
func inWords(s string) string {
	if m := takenFrom.FindStringSubmatch(s); m != nil {
		return m[2] + " - " + m[1]
	}
	if m := addedUp.FindStringSubmatch(s); m != nil {
		return strings.ReplaceAll(m[1], ",", " + ") + " + " + m[2]
	}
	if m := doubled.FindStringSubmatch(s); m != nil {
		return m[1] + " + " + m[1]
	}
	if m := setApart.FindStringSubmatch(s); m != nil {
		return m[1] + " - " + m[2]
	}
	if m := spanishLess.FindStringSubmatch(s); m != nil {
		step := strings.NewReplacer("diez", "10", "cien", "100").Replace(m[1])
		return step + map[string]string{"más": " more than ", "menos": " less than "}[m[2]] + m[3] + s[len(m[0]):]
	}
	s = countedBy.ReplaceAllString(s, "")
	for _, row := range spanishVerbs {
		if rest, ok := strings.CutPrefix(s, row[0]); ok {
			s = row[1] + rest
			break
		}
	}
	s = spanishTasks.Replace(s)
	if signs, ok := inSigns(s); ok {
		return signs
	}
	return s
}

// operationWords are the words for signs in a typed sentence. The copulas are an equal sign
// only where there is an operation beside.
var operationWords = map[string]string{
	"plus": "+", "mas": "+", "minus": "-", "menos": "-", "less": "-", "take away": "-", "equals": "=", "equal": "=", "igual": "=",
	"is": "=", "are": "=", "makes": "=", "make": "=", "es": "=", "son": "=",
}

var (
	longOperations = strings.NewReplacer("take away", "minus", "is equal to", "equals", "es igual a", "equals", "igual a", "equals", "what number", "what")
	unknowns       = map[string]bool{"what": true, "blank": true, "cuanto": true, "que": true}
)

// inSigns is a number sentence that is written with words or letters, in digits and signs; ok
// is false for a text with any other word, or with no operation.
func inSigns(s string) (string, bool) {
	s = letterBlank.ReplaceAllString(letterBlank.ReplaceAllString(s, "${1}?$2"), "${1}?$2")
	var parts []string
	operation := false
	for _, t := range words.Tokens(longOperations.Replace(s)) {
		sign := operationWords[t.Text]
		switch {
		case t.Kind == words.Digits && !strings.ContainsAny(t.Text, "."), t.Kind == words.Spoken:
			sign = strconv.Itoa(t.Number)
		case t.Kind == words.Word && sign != "":
			operation = operation || sign != "="
		case unknowns[t.Text]:
			sign = "?"
		case t.Kind == words.Sign && strings.Contains("+-=?", t.Text):
			sign = t.Text
			operation = operation || sign == "+" || sign == "-"
		default:
			return "", false
		}
		parts = append(parts, sign)
	}
	return strings.Join(parts, " "), operation
}
