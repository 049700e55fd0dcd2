package plan

import (
	"fmt"
	"slices"
	"strings"

	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// planText is a plan as it is typed; its values are of any kind until they are
// read one by one.
type planText struct {
	commonText
	Shared   any         `toml:"shared"`
	Diagnose any         `toml:"diagnose"`
	Same     any         `toml:"same"`
	Rows     []rowText   `toml:"row"`
	Quotas   []quotaText `toml:"quota"`
}

// commonText is what plans and pacing lists have in common.
type commonText struct {
	Title      any            `toml:"title"`
	Items      any            `toml:"items"`
	Minutes    any            `toml:"minutes"`
	Forms      any            `toml:"forms"`
	ShareRight any            `toml:"share_right"`
	Rest       any            `toml:"rest"`
	Grade      any            `toml:"grade"`
	Class      any            `toml:"class"`
	Bands      map[string]any `toml:"bands"`
}

type rowText struct {
	Skill   any `toml:"skill"`
	Count   any `toml:"count"`
	Where   any `toml:"where"`
	Layouts any `toml:"layouts"`
	Looks   any `toml:"looks"` // as plans called layouts before
	Vary    any `toml:"vary"`
}

type quotaText struct {
	Where any `toml:"where"`
	Count any `toml:"count"`
}

// Parse reads a plan in TOML; name is the file's name for messages.
// Example shows all that may stand in it. Everything that is wrong is told
// together, in a *MistakesError.
func Parse(text []byte, name string) (Plan, error) {
	d := newDocument(text, name)
	var typed planText
	if err := d.decode(&typed); err != nil {
		return Plan{}, err
	}
	if d.has("new") && !d.has("row") {
		return Plan{}, words.Errorf("%s is a pacing list for a term, not a plan; "+
			"evenhand assemble takes it with --weeks, evenhand plan and evenhand plans with --pacing", name)
	}
	if !d.atMost("row", len(typed.Rows)) || !d.atMost("quota", len(typed.Quotas)) {
		return Plan{}, d.err()
	}
	plan := d.common(typed.commonText)
	for i, r := range typed.Rows {
		plan.Rows = append(plan.Rows, d.row(element("row", i), r))
	}
	size := d.size(plan, typed)
	if typed.Items != nil {
		plan.Items = size
	}
	plan.Shared = d.whole("shared", typed.Shared, 0, 0, size)
	plan.Diagnose = d.missteps("diagnose", typed.Diagnose)
	plan.Same = d.where("same", typed.Same)
	plan.Bands = d.bands(typed.Bands, size)
	for i, q := range typed.Quotas {
		plan.Quotas = append(plan.Quotas, d.quota(element("quota", i), q, size))
	}
	return plan, d.err()
}

// atMost bounds how many rules of a kind there may be, before any is looked at: the search
// weighs them all against each other.
func (d *document) atMost(rule string, n int) bool {
	if n > maxRules {
		d.wrong(element(rule, maxRules), nil, "there are %d [[%s]] here; %d are the most", n, rule, maxRules)
	}
	return n <= maxRules
}

// common reads what plans and pacing lists have in common, but for items and
// bands, which depend on more.
func (d *document) common(typed commonText) Plan {
	return Plan{
		Title:      d.words("title", typed.Title),
		Minutes:    d.whole("minutes", typed.Minutes, 0, 1, maxMinutes),
		Forms:      d.whole("forms", typed.Forms, 1, 1, MaxForms),
		ShareRight: d.whole("share_right", typed.ShareRight, DefaultShareRight, 1, 99),
		Rest:       d.whole("rest", typed.Rest, 0, 0, maxRest),
		Grade:      d.grade("grade", typed.Grade),
		Class:      strings.TrimSpace(d.words("class", typed.Class)),
	}
}

// grade reads K, 1 or 2, also as a number.
func (d *document) grade(path string, value any) string {
	if value == nil {
		return ""
	}
	if text := strings.ToUpper(fmt.Sprint(value)); MayName(text) {
		return text
	}
	d.wrong(path, nil, "grade is \"K\", 1 or 2, not %s", d.read(path))
	return ""
}

// size is how many items a form holds, checked against what items says; the
// most that a form may hold when the rows can't tell.
func (d *document) size(plan Plan, typed planText) int {
	size := plan.Size()
	switch {
	case len(typed.Rows) == 0:
		d.wrong("row", words.Sayf("evenhand plan writes an example."), "the plan has no row; a quiz needs at least one [[row]] with a skill and a count")
		return MaxItems
	case slices.ContainsFunc(plan.Rows, func(r Row) bool { return r.Count == 0 }):
		return MaxItems
	case size > MaxItems:
		d.wrong("row", nil, "the rows ask for %d items in a form; %d are the most", size, MaxItems)
		return MaxItems
	}
	if n := d.whole("items", typed.Items, size, 1, MaxItems); n != size {
		d.wrong("items", nil, "items says %d, the counts of the rows add up to %d; change one of them, or leave items out", n, size)
	}
	return size
}

func (d *document) row(path string, typed rowText) Row {
	return Row{
		Skill: d.skill(path+".skill", typed.Skill),
		Count: d.count(path+".count", typed.Count),
		Where: d.where(path+".where", typed.Where),
		Looks: d.looks(path, typed),
		Vary:  d.vary(path, typed),
	}
}

// vary reads whether a row takes its looks by turns; it needs two or more.
func (d *document) vary(path string, typed rowText) bool {
	vary, ok := typed.Vary.(bool)
	_, value := layoutsOf(typed)
	looks, _ := value.([]any)
	switch {
	case typed.Vary == nil:
	case !ok:
		d.wrong(path+".vary", nil, "vary is true or false, not %s", d.read(path+".vary"))
	case vary && len(looks) < 2:
		d.wrong(path+".vary", nil, "vary takes the layouts of the row by turns; write two or more, layouts = [\"bond\", \"column\"]")
	}
	return vary
}

func (d *document) skill(path string, value any) standards.SkillID {
	hint := words.Sayf("evenhand skills lists them all.")
	if value == nil {
		d.wrongKey(path, hint, "the row has no skill; write skill = \"...\"")
		return ""
	}
	name := d.words(path, value)
	if name == "" {
		if value == "" {
			d.wrong(path, hint, "the skill is empty")
		}
		return ""
	}
	skill, err := standards.ParseSkill(name)
	if err != nil {
		d.wrong(path, hint, "%v", err)
	}
	return skill
}

func (d *document) count(path string, value any) int {
	if value == nil {
		d.wrongKey(path, nil, "the row has no count; write how many items each form takes from it, count = 2")
		return 0
	}
	return d.whole(path, value, 0, 1, MaxItems)
}

func (d *document) missteps(path string, value any) []*task.MisstepKind {
	var kinds []*task.MisstepKind
	for i, text := range d.texts(path, value) {
		kind, err := task.ParseMisstep(text)
		if err != nil {
			d.wrong(element(path, i), words.Sayf("evenhand tag shows the missteps of a task."), "%v", err)
			continue
		}
		kinds = append(kinds, kind)
	}
	return kinds
}

func (d *document) where(path string, value any) standards.Where {
	var where standards.Where
	for i, text := range d.texts(path, value) {
		c, err := standards.ParseCondition(text)
		if err != nil {
			d.wrong(element(path, i), nil, "%v", err)
			continue
		}
		where = append(where, c)
	}
	return where
}

// looks reads the looks of a row; each must be one that its skill can take.
func (d *document) looks(path string, typed rowText) []task.Look {
	name, _ := typed.Skill.(string)
	id, _ := standards.ParseSkill(name)
	skill, known := standards.Catalogue().Skill(id)
	var looks []task.Look
	key, value := layoutsOf(typed)
	if typed.Layouts != nil && typed.Looks != nil {
		d.wrongKey(path+".looks", nil, "layouts and looks are the same; leave one of them out")
	}
	for i, text := range d.texts(path+"."+key, value) {
		at := element(path+"."+key, i)
		look, err := task.ParseLook(text)
		switch {
		case err != nil:
			d.wrong(at, nil, "%v", err)
		case known && !slices.Contains(skill.Looks, look):
			d.wrong(at, nil, "%s items aren't shown as %s; they can be %s", id, look, lookNames(skill.Looks))
		default:
			looks = append(looks, look)
		}
	}
	return looks
}

// layoutsOf is the key and value of a row's layouts, which earlier plans call looks.
func layoutsOf(typed rowText) (key string, value any) {
	if typed.Layouts == nil && typed.Looks != nil {
		return "looks", typed.Looks
	}
	return "layouts", typed.Layouts
}

func lookNames(looks []task.Look) string {
	names := make([]string, len(looks))
	for i, l := range looks {
		names[i] = string(l)
	}
	return strings.Join(names, ", ")
}

// bands reads the bands in the order from easy to hard.
func (d *document) bands(typed map[string]any, size int) []BandCount {
	var names []string
	var list []BandCount
	for _, band := range standards.Bands() {
		names = append(names, string(band))
		if value, ok := typed[string(band)]; ok {
			atLeast, atMost := d.counts("bands."+string(band), value, size)
			list = append(list, BandCount{band, atLeast, atMost})
		}
	}
	for name := range typed {
		if !slices.Contains(names, name) {
			hint := words.Sayf("The bands are %s.", strings.Join(names, ", "))
			d.wrongKey("bands."+name, hint, "no band %q%s", name, words.Suggest(name, names))
		}
	}
	return list
}

func (d *document) quota(path string, typed quotaText, size int) Quota {
	where := d.where(path+".where", typed.Where)
	if typed.Where == nil {
		d.wrongKey(path+".where", nil, "the quota has no where; write which items it counts, where = [\"regroups = 2\"]")
	}
	atLeast, atMost := d.counts(path+".count", typed.Count, size)
	return Quota{where, atLeast, atMost}
}
