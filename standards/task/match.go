package task

import (
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Match asks to join clock faces with their times: "match 4:00, 7:00, 11:00".
// The answer is the times in the order of the faces.
type Match struct {
	Times [6]words.Time
	N     int // how many, 2 to 6, all different
}

// readMatch reads the verb and the times, separated by commas or semicolons.
func readMatch(text string) (Task, error) {
	rest, ok := strings.CutPrefix(text, "match")
	if !ok || rest == "" || !strings.ContainsAny(rest[:1], " :") {
		return nil, errOther
	}
	rest = strings.TrimLeft(rest, " :")
	rest = strings.TrimPrefix(strings.TrimPrefix(rest, "the "), "clocks")
	if !strings.ContainsAny(rest, ",;") && !words.SaysTime(rest) {
		return nil, errOther // a question in somebody's own words
	}
	cells := strings.FieldsFunc(strings.TrimLeft(rest, ": "), func(r rune) bool { return r == ',' || r == ';' })
	if len(cells) < 2 || len(cells) > 6 {
		return nil, words.Errorf("%q gives %d times; matching takes 2 to 6, as in match 4:00, 7:00, 11:00", text, len(cells))
	}
	var m Match
	for _, cell := range cells {
		t, err := words.ParseTime(cell)
		if err != nil {
			return nil, err
		}
		for _, other := range m.List() {
			if words.SameDial(t, other) || t.Dial() == other.Dial() {
				return nil, words.Errorf("%q stands twice; the clocks to match must all show different times", t)
			}
		}
		m.Times[m.N] = t
		m.N++
	}
	return m, nil
}

// List is the times in order.
func (m Match) List() []words.Time { return slices.Clone(m.Times[:m.N]) }

func (m Match) String() string { return "match " + m.Key() }

// Key is the times in the order of the faces.
func (m Match) Key() string { return joinTimes(m.List()) }

func joinTimes(times []words.Time) string {
	parts := make([]string, len(times))
	for i, t := range times {
		parts[i] = t.String()
	}
	return strings.Join(parts, ", ")
}

// Judge accepts the times in the order of the faces.
func (m Match) Judge(answer string) bool {
	times, ok := m.reply(answer)
	if !ok || len(times) != m.N {
		return false
	}
	for i, t := range times {
		if !words.SameDial(t, m.Times[i]) {
			return false
		}
	}
	return true
}

// Possible takes one time or more, at most as many as there are faces. A single whole number
// joins no clocks.
func (m Match) Possible(answer string) bool {
	times, ok := m.reply(answer)
	_, err := strconv.Atoi(strings.TrimSpace(answer))
	return ok && (len(times) > 1 || err != nil)
}

// reply is the times of an answer in order.
func (m Match) reply(answer string) (times []words.Time, ok bool) {
	for _, cell := range strings.FieldsFunc(answer, func(r rune) bool { return r == ',' || r == ';' }) {
		t, ok := readTime(cell)
		if !ok {
			return nil, false
		}
		times = append(times, t)
	}
	return times, len(times) > 0 && len(times) <= m.N
}

// Prompt asks to join.
func (m Match) Prompt(lang string) string {
	if lang == "es" {
		return "Une cada reloj con su hora."
	}
	return "Join each clock with its time."
}

// Traits of matching are those of the finest step.
func (m Match) Traits() Traits {
	ts := clockTraits(m.List()...)
	ts[Asks] = "match"
	return ts
}

// Codes of matching follow from the finest step.
func (m Match) Codes() []Code { return clockCodes(m.Traits()) }

// Missteps of matching: a misreading that gives another of the times, so that the
// two are joined the wrong way round.
func (m Match) Missteps() []Misstep {
	var slips []slip
	for i, t := range m.List() {
		for _, wrong := range misread(t) {
			j := slices.IndexFunc(m.List(), func(other words.Time) bool { return other.Dial() == wrong.time.Dial() })
			if j < 0 || j == i {
				continue
			}
			order := m.List()
			order[i], order[j] = order[j], order[i]
			slips = append(slips, slip{wrong.kind, joinTimes(order)})
		}
	}
	return gather(m, slips)
}

// Clashes of matching: every time on a dial.
func (m Match) Clashes() []string {
	groups := make([]string, m.N)
	for i, t := range m.List() {
		groups[i] = "time:" + t.Dial()
	}
	return groups
}

// Fingerprint of matching is the times in order of the day, whatever order they stand in.
func (m Match) Fingerprint() string {
	times := m.List()
	slices.SortFunc(times, func(a, b words.Time) int { return (a.Hour%12*60 + a.Minute) - (b.Hour%12*60 + b.Minute) })
	return "match " + joinTimes(times)
}

// Looks of matching.
func (m Match) Looks() []Look { return []Look{LookMatch} }

// Short tells the times.
func (m Match) Short(lang string) string { return shown(m, lang, m.Key()) }

// Answers are times.
func (m Match) Answers() Answers { return SeveralTimes }
