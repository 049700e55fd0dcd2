package followup

import (
	"slices"

	"evenhand/assemble/sheet"
	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"
)

// way is how work on something is shown: the looks of a worked example, the wished-for first, and looks that help
// with the first items (common practice: from a picture to the bare sum). A hundreds chart takes too much room to
// stand at more than one place.
type way struct{ example, help []task.Look }

// The ways.
var (
	inPlaces = way{[]task.Look{task.LookFrame, task.LookColumn}, []task.Look{task.LookColumn, task.LookTensAndOnes}}
	byWorth  = way{[]task.Look{task.LookFrame, task.LookBreakApart}, []task.Look{task.LookBreakApart, task.LookColumn}}
	byJumps  = way{[]task.Look{task.LookNumberLine, task.LookHundredsChart, task.LookColumn}, []task.Look{task.LookNumberLine, task.LookMakeTen, task.LookBond}}
	onChart  = way{[]task.Look{task.LookHundredsChart, task.LookNumberLine}, []task.Look{task.LookNumberLine}}
	inSticks = way{[]task.Look{task.LookTensAndOnes, task.LookFrame}, []task.Look{task.LookTensAndOnes, task.LookFrame}}
	onClock  = way{[]task.Look{task.LookClockFace, task.LookBlankFace}, []task.Look{task.LookClockFace}}
	asParts  = way{[]task.Look{task.LookBond, task.LookNumberLine, task.LookTwin}, []task.Look{task.LookBond, task.LookNumberLine}}
	asWorked = way{nil, []task.Look{task.LookTensAndOnes, task.LookMakeTen, task.LookBreakApart, task.LookNumberLine, task.LookColumn}}
)

// waysOf has a row for each misstep that a drawing other than the item's own explains best.
var waysOf = map[string]way{
	"smaller digit from larger":    inPlaces,
	"ten taken but not paid back":  inPlaces,
	"nine from zero unpaid":        inPlaces,
	"borrow jumps the zero":        inPlaces,
	"zero when too small":          inPlaces,
	"ten dropped":                  inPlaces,
	"both digits written":          inPlaces,
	"ten written, ones carried":    inPlaces,
	"columns not lined up":         inPlaces,
	"all digits added":             byWorth,
	"tens added as ones":           byWorth,
	"added instead":                byJumps,
	"subtracted instead":           byJumps,
	"start counted too":            byJumps,
	"worked with the numbers seen": asParts,
	"copied a number":              asParts,
	"ones changed":                 onChart,
	"other way":                    onChart,
	"tens and hundreds mixed up":   onChart,
	"each part written out":        inSticks,
	"hundred written out":          inSticks,
	"digits turned around":         inSticks,
	"value for digit":              inSticks,
	"digits added":                 inSticks,
	"digits as parts":              inSticks,
	"hands swapped":                onClock,
	"next hour":                    onClock,
	"numeral as minutes":           onClock,
	"long hand ignored":            onClock,
	"hour from the long hand":      onClock,
}

// wayFor is the way for a group: of its first misstep, else the helping looks that the skill has.
func wayFor(skill standards.Skill, kinds []*task.MisstepKind) way {
	for _, kind := range kinds {
		if w, ok := waysOf[kind.Name]; ok {
			return w
		}
	}
	w := asWorked
	for _, look := range w.help {
		switch {
		case !slices.Contains(skill.Looks, look):
		case look == task.LookColumn:
			w.example = append(w.example, task.LookFrame, look)
		default:
			w.example = append(w.example, look)
		}
	}
	return w
}

// exampleSample is how many items are made to choose an example from; they are not kept.
const exampleSample = 80

// exampleOf makes an example for a skill: in the best look that draws one of the items made, in which the misstep
// could show, and none of those that stand on the sheets.
func exampleOf(skill standards.Skill, kinds []*task.MisstepKind, seed uint64, taken func(task.Task) bool) (sheet.Example, bool) {
	made, err := generate.Make(generate.Request{Skill: skill.ID, Where: telling(skill.ID, kinds), Count: exampleSample, Seed: seed})
	if err != nil {
		return sheet.Example{}, false
	}
	tasks := slices.DeleteFunc(made.Tasks, taken)
	if telling := slices.DeleteFunc(slices.Clone(tasks), func(t task.Task) bool { return !canShow(t, kinds) }); len(telling) > 0 {
		tasks = telling
	}
	slices.SortStableFunc(tasks, func(a, b task.Task) int { return largest(a) - largest(b) })
	tasks = tasks[len(tasks)/4:] // not the very smallest numbers
	for _, look := range wayFor(skill, kinds).example {
		for _, asked := range tasks {
			if e := (sheet.Example{Task: asked, Look: look}); e.Draws() {
				return e, true
			}
		}
	}
	for _, asked := range tasks {
		if e := (sheet.Example{Task: asked, Look: asked.Looks()[0]}); e.Draws() {
			return e, true
		}
	}
	return sheet.Example{}, false
}

func largest(t task.Task) int {
	n, _ := t.Traits().Number(task.Largest)
	return n
}
