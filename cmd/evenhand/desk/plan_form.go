package desk

import (
	"bytes"
	"fmt"
	"net/url"
	"strconv"
	"strings"

	"evenhand/assemble/plan"

	"github.com/pelletier/go-toml/v2"
)

// planForm is a plan as a person fills it in. What the form has no field for, such as bands and
// quotas, stands in More as the plan's own text.
type planForm struct {
	Title   string    `toml:"title"`
	Minutes int       `toml:"minutes,omitempty"`
	Forms   int       `toml:"forms"`
	Share   int       `toml:"share_right"`
	Rest    int       `toml:"rest"`
	Class   string    `toml:"class,omitempty"`
	Ending  string    `toml:"-"` // of the title, such as ", week {week}"; empty without the week's number
	Rows    []rowForm `toml:"-"`
	More    string    `toml:"-"`
}

// rowForm is one row of the form.
type rowForm struct {
	Skill string   `toml:"skill"`
	Count int      `toml:"count"`
	Where []string `toml:"where,omitempty"`
	Looks []string `toml:"layouts,omitempty"`
	Older []string `toml:"looks,omitempty"` // as plans called layouts before; none once read
	Vary  bool     `toml:"vary,omitempty"`
}

// splitTitle takes off a title what ends it with the week's number, from the last comma on.
func splitTitle(title string) (text, ending string) {
	at := strings.LastIndex(title, ",")
	if at < 1 || !strings.Contains(title[at:], weekMark) {
		return title, ""
	}
	return title[:at], title[at:]
}

// weekMark stands in a title for the number of the week, and mostEnding is how long what ends a title may be.
const (
	weekMark   = "{week}"
	mostEnding = 40
)

// PlanName is the name of a plan as it is shown, in templates: one that was kept under its title ends with no
// mark.
func (s sentences) PlanName(name string) string {
	text, _ := splitTitle(name)
	return text
}

// newPlanForm is what a plan begins with.
func newPlanForm(said sentences) planForm {
	return planForm{
		Title: said.say("plan.firsttitle"), Ending: said.say("plan.ending"), Minutes: 15, Forms: 2, Share: plan.DefaultShareRight, Rest: 4,
		Rows: []rowForm{{Count: 3}, {Count: 2}},
	}
}

// text is the form as a plan's text.
func (f planForm) text() (string, error) {
	var text bytes.Buffer
	f.Title += f.Ending
	head, err := toml.Marshal(f)
	if err != nil {
		return "", err
	}
	// Single keys of More have to stand before the first table.
	keys, tables := f.More, ""
	if at := strings.Index("\n"+f.More, "\n["); at >= 0 {
		keys, tables = f.More[:max(0, at-1)], f.More[max(0, at-1):]
	}
	fmt.Fprintf(&text, "%s%s\n", head, strings.TrimSpace(keys))
	for _, row := range f.Rows {
		if row.Skill == "" {
			continue
		}
		part, err := toml.Marshal(row)
		if err != nil {
			return "", err
		}
		fmt.Fprintf(&text, "\n[[row]]\n%s", part)
	}
	if tables = strings.TrimSpace(tables); tables != "" {
		fmt.Fprintf(&text, "\n%s\n", tables)
	}
	return text.String(), nil
}

// readPlanForm is the form that shows a plan's text.
func readPlanForm(text string) (planForm, error) {
	var f planForm
	var rows struct {
		Rows []rowForm `toml:"row"`
	}
	var rest map[string]any
	for _, part := range []any{&f, &rows, &rest} {
		if err := toml.Unmarshal([]byte(text), part); err != nil {
			return f, err
		}
	}
	f.Title, f.Ending = splitTitle(f.Title)
	f.Rows = rows.Rows
	for i := range f.Rows {
		row := &f.Rows[i]
		row.Looks, row.Older = append(row.Looks, row.Older...), nil
	}
	for _, key := range []string{"title", "minutes", "forms", "share_right", "rest", "class", "row", "items"} {
		delete(rest, key)
	}
	if len(rest) > 0 {
		more, err := toml.Marshal(rest)
		if err != nil {
			return f, err
		}
		f.More = strings.TrimSpace(string(more))
	}
	if f.Forms == 0 {
		f.Forms = 1
	}
	if f.Share == 0 {
		f.Share = plan.DefaultShareRight
	}
	return f, nil
}

// planFormOf reads the form that was sent. What is no number becomes 0, which the plan then refuses
// in its own words.
func (p *pages) planFormOf(sent url.Values) planForm {
	number := func(text string) int { n, _ := strconv.Atoi(strings.TrimSpace(text)); return n }
	f := planForm{
		Title: strings.TrimSpace(sent.Get("title")), Minutes: number(sent.Get("minutes")), Forms: number(sent.Get("forms")),
		Share: number(sent.Get("share")), Rest: number(sent.Get("rest")), Class: strings.TrimSpace(sent.Get("class")),
		More: strings.TrimSpace(strings.ReplaceAll(sent.Get("more"), "\r\n", "\n")),
	}
	if ending := sent.Get("ending"); strings.Contains(ending, weekMark) && len(ending) <= mostEnding {
		f.Ending = ending
	}
	at := func(name string, i int) string {
		if list := sent[name]; i < len(list) {
			return list[i]
		}
		return ""
	}
	for i := range sent["skill"] {
		row := rowForm{Skill: at("skill", i), Count: number(at("count", i)), Vary: at("vary", i) == "yes"}
		row.Where = p.conditionsTyped(at("where", i))
		for part := range strings.SplitSeq(at("looks", i), ",") {
			if part = strings.TrimSpace(part); part != "" {
				row.Looks = append(row.Looks, part)
			}
		}
		f.Rows = append(f.Rows, row)
	}
	return f
}
