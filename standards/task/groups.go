package task

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Groups asks which of two groups of dots has more, or fewer: "more: 5 or 8 dots".
type Groups struct {
	Left, Right int // 1 to 10
	Fewer       bool
}

var groupsPattern = regexp.MustCompile(`^(more|fewer):? ([0-9]{1,4}) (?:dots )?or ([0-9]{1,4}) dots$`)

func readGroups(text string) (Task, error) {
	m := groupsPattern.FindStringSubmatch(text)
	if m == nil {
		return nil, errOther
	}
	t := Groups{Fewer: m[1] == "fewer"}
	t.Left, _ = strconv.Atoi(m[2])
	t.Right, _ = strconv.Atoi(m[3])
	if min(t.Left, t.Right) < 1 || max(t.Left, t.Right) > 10 {
		return nil, words.Errorf("%q has groups that are not 1 to 10; write for example more: 5 or 8 dots", text)
	}
	return t, nil
}

func (t Groups) String() string {
	return fmt.Sprintf("%s: %d or %d dots", t.word(), t.Left, t.Right)
}

func (t Groups) word() string {
	if t.Fewer {
		return "fewer"
	}
	return "more"
}

// Key is "left", "right" or "same".
func (t Groups) Key() string {
	switch {
	case t.Left == t.Right:
		return "same"
	case t.Left > t.Right != t.Fewer:
		return "left"
	}
	return "right"
}

// groupWords are what people write for the answers.
var groupWords = map[string]string{
	"left": "left", "first": "left", "a": "left", "izquierda": "left", "izquierdo": "left", "primero": "left",
	"right": "right", "second": "right", "b": "right", "derecha": "right", "derecho": "right", "segundo": "right",
	"same": "same", "equal": "same", "neither": "same", "both": "same", "igual": "same", "iguales": "same", "mismos": "same", "mismo": "same", "ambos": "same",
}

// besideGroups are the words that may stand beside them.
const besideGroups = " the one group side dots dot is are has have it it's they number of more fewer " +
	"el la los de grupo lado puntos tiene tienen son es mas menos "

// Judge accepts the word, or how many dots the group has.
func (t Groups) Judge(answer string) bool {
	said, ok := t.reply(answer)
	return ok && said == t.Key()
}

// Possible takes a side, the words for the same, and numbers of dots.
func (t Groups) Possible(answer string) bool { _, ok := t.reply(answer); return ok }

// reply is the group that an answer names; empty for a number that neither has.
func (t Groups) reply(answer string) (said string, ok bool) {
	number := -1
	for _, token := range trimmed(words.Tokens(answer)) {
		switch group := groupWords[token.Text]; {
		case group != "" && said == "":
			said = group
		case group == "same" && said == "same": // "both are the same"
		case strings.Contains(besideGroups, " "+token.Text+" ") && (token.Kind != words.Spoken || said != ""):
		case token.IsNumber() && number < 0:
			number = token.Number
		default:
			return "", false
		}
	}
	switch {
	case number < 0:
		return said, said != ""
	case t.Left == t.Right && number == t.Left: // the number alone tells of no comparison
		return said, said == "" || said == "same"
	case number == t.Left:
		return "left", said == "" || said == "left"
	case number == t.Right:
		return "right", said == "" || said == "right"
	}
	return "", true
}

// Prompt asks which group, without saying how many.
func (t Groups) Prompt(lang string) string {
	if lang == "es" {
		return fmt.Sprintf("¿Qué grupo tiene %s puntos, o tienen los mismos?", map[bool]string{false: "más", true: "menos"}[t.Fewer])
	}
	return fmt.Sprintf("Which group has %s dots, or are they the same?", t.word())
}

// Traits of two groups.
func (t Groups) Traits() Traits {
	var ts Traits
	ts.setNumber(Largest, max(t.Left, t.Right))
	ts.setNumber(Apart, gap(t.Left, t.Right))
	ts[Asks] = t.word()
	return ts
}

// Codes of two groups: comparing groups, kindergarten.
func (t Groups) Codes() []Code { return []Code{"K.CC.C.6"} }

// The missteps in comparing groups.
var (
	moreFewerMixed = newMisstep("more and fewer mixed up",
		"chooses the group with fewer where more is asked, or the other way round",
		"elige el grupo con menos cuando se pide el que tiene más, o al revés",
		"the words more and fewer, with things to pair up",
		"las palabras «más» y «menos», con cosas para formar parejas", "common practice")
	roomCompared = newMisstep("room compared",
		"goes by how much room the dots take and not by how many there are",
		"se guía por el espacio que ocupan los puntos y no por cuántos hay",
		"pair the dots off, one to one",
		"formar parejas de puntos, uno con uno", "Piaget (1952)")
)

// Missteps of two groups. Groups of the same size are drawn with the right one spread out.
func (t Groups) Missteps() []Misstep {
	if t.Left == t.Right {
		wide, narrow := "right", "left"
		if t.Fewer {
			wide, narrow = narrow, wide
		}
		return gather(t, []slip{{roomCompared, wide}, {moreFewerMixed, narrow}})
	}
	other := map[string]string{"left": "right", "right": "left"}[t.Key()]
	return gather(t, []slip{{moreFewerMixed, other}})
}

// Clashes of two groups: the two numbers, either way round.
func (t Groups) Clashes() []string {
	return []string{fmt.Sprintf("groups:%d,%d", min(t.Left, t.Right), max(t.Left, t.Right))}
}

// Fingerprint of two groups is their text.
func (t Groups) Fingerprint() string { return t.String() }

// Looks of two groups.
func (t Groups) Looks() []Look { return []Look{LookGroups} }

// Short tells how many dots the groups have.
func (t Groups) Short(lang string) string {
	return shown(t, lang, fmt.Sprintf("%d, %d", t.Left, t.Right))
}

// Offers are the sides, and neither.
func (t Groups) Offers() []string { return []string{"left", "same", "right"} }

// AnswerIn is the side.
func (t Groups) AnswerIn(answer, lang string) string {
	return inSpanish(answer, lang, map[string]string{"left": "izquierda", "right": "derecha", "same": "igual"})
}
