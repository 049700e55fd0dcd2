package task

import (
	"cmp"
	"slices"
	"strings"

	"evenhand/standards/words"
)

// MisstepKind is a known way of going wrong.
type MisstepKind struct {
	Name    string // short name in plain words, as in CSV files and plans
	Tells   string // what such an answer suggests, for the key
	spanish string // the same in Spanish as it is written in Latin America; it doesn't begin with the sound of o, as several are joined by "; o "
	Reteach string // what to work on next, for reports and the teacher's page of practice
	reteach string // the same in Spanish
	Source  string // where the kind is described, or "common practice"
}

// misstepKinds are all that newMisstep made.
var misstepKinds []*MisstepKind

// newMisstep names a kind of misstep, in the file of the kind of task where it is most at home.
func newMisstep(name, tells, spanish, reteach, reteachSpanish, source string) *MisstepKind {
	kind := &MisstepKind{name, tells, spanish, reteach, reteachSpanish, source}
	misstepKinds = append(misstepKinds, kind)
	return kind
}

// TellsIn is what such an answer suggests, in the language ("en" or "es"; any other
// reads as "en").
func (k *MisstepKind) TellsIn(lang string) string {
	if lang == "es" {
		return k.spanish
	}
	return k.Tells
}

// ReteachIn is what to work on next, in the language, as TellsIn.
func (k *MisstepKind) ReteachIn(lang string) string {
	if lang == "es" {
		return k.reteach
	}
	return k.Reteach
}

// MisstepKinds lists every kind, by name.
func MisstepKinds() []*MisstepKind {
	return slices.SortedFunc(slices.Values(misstepKinds), func(a, b *MisstepKind) int { return cmp.Compare(a.Name, b.Name) })
}

// ParseMisstep finds a kind by its name; the error names the nearest.
func ParseMisstep(name string) (*MisstepKind, error) {
	var names []string
	for _, kind := range MisstepKinds() {
		if kind.Name == strings.TrimSpace(name) {
			return kind, nil
		}
		names = append(names, kind.Name)
	}
	return nil, words.Errorf("no misstep %q%s", name, words.Suggest(name, names))
}

// Misstep is a wrong answer and the kinds that give it. More than one kind means
// that this task can't tell them apart.
type Misstep struct {
	Answer string
	Kinds  []*MisstepKind
}

// Why is the names of the kinds, joined by " or ".
func (m Misstep) Why() string {
	names := make([]string, len(m.Kinds))
	for i, kind := range m.Kinds {
		names[i] = kind.Name
	}
	return strings.Join(names, " or ")
}

// unseen are the looks in which a kind can't be made: a time said in words has no hands to
// misread, hands that are drawn are not read, a bond has no sign, and in a column one number
// already stands rightly under the other.
var unseen = map[*MisstepKind][]Look{
	handsSwapped: {LookSaidTime}, nextHour: {LookSaidTime},
	numeralMinutes:    {LookSaidTime, LookBlankFace, LookSaidFace},
	minuteIgnored:     {LookSaidTime, LookBlankFace, LookSaidFace},
	hourFromMinutes:   {LookSaidTime, LookBlankFace, LookSaidFace},
	addedInstead:      {LookBond},
	subtractedInstead: {LookBond},
	misaligned:        {LookColumn},
}

// MisstepsIn are the missteps of a task that a child can make on what the look shows.
func MisstepsIn(t Task, look Look) []Misstep {
	var list []Misstep
	for _, m := range t.Missteps() {
		m.Kinds = slices.DeleteFunc(slices.Clone(m.Kinds), func(kind *MisstepKind) bool { return slices.Contains(unseen[kind], look) })
		if len(m.Kinds) > 0 {
			list = append(list, m)
		}
	}
	return list
}

// slip is one wrong answer on its way into a list of missteps.
type slip struct {
	kind   *MisstepKind
	answer string
}

// gather makes the list of missteps of a task: slips whose answer is empty or
// right are dropped, those with one answer are put together.
func gather(task Task, slips []slip) []Misstep {
	var list []Misstep
	for _, s := range slips {
		if s.answer == "" || task.Judge(s.answer) {
			continue
		}
		at := slices.IndexFunc(list, func(m Misstep) bool { return m.Answer == s.answer })
		switch {
		case at < 0:
			list = append(list, Misstep{s.answer, []*MisstepKind{s.kind}})
		case !slices.Contains(list[at].Kinds, s.kind):
			list[at].Kinds = append(list[at].Kinds, s.kind)
		}
	}
	return list
}
