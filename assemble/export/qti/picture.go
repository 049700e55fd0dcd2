package qti

import (
	"fmt"
	"html"
	"regexp"

	"evenhand/assemble/sheet"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// told are the looks that show no more than the words of the question.
var told = map[task.Look]bool{
	task.LookSentence: true, task.LookExpanded: true, task.LookCompare: true, task.LookSequence: true,
	task.LookWords: true, task.LookTick: true, task.LookPairs: true, task.LookStory: true, task.LookTwin: true,
	task.LookChoice: true, task.LookEstimate: true, task.LookReason: true, task.LookCountOn: true, task.LookDrawSum: true,
	task.LookMatch: true, // each clock is a picture of its own
}

// pictured is the title of a question, which is what kind of question it is, and its picture; nil
// where words say it all.
func pictured(q sheet.Question, lang string) (title string, picture *Picture, err error) {
	drawing, err := drawn(q, lang)
	if err != nil {
		return "", nil, err
	}
	if t, ok := q.Task.(task.Clock); ok && t.Verb != task.Draw {
		return drawing.Alt, dial(t.Time, lang), nil
	}
	if q.Task == nil || told[q.Look] {
		return drawing.Alt, nil, nil
	}
	return drawing.Alt, &drawing, nil
}

// drawn is a question as assemble/sheet draws it. The type is the built-in one, so that the bytes
// are the same on every machine.
func drawn(q sheet.Question, lang string) (Picture, error) {
	svg, err := sheet.SVG(q, sheet.Options{Lang: lang, Font: sheet.BuiltInFont})
	if err != nil {
		return Picture{}, err
	}
	return Picture{Alt: titleOf(svg), SVG: string(svg)}, nil
}

var svgTitle = regexp.MustCompile(`<title>([^<]*)</title>`)

// titleOf is the title of a drawing of ours, which says what kind of picture it is and never what
// is right.
func titleOf(svg []byte) string { return html.UnescapeString(string(svgTitle.FindSubmatch(svg)[1])) }

// dialSide is the side of a clock face with its edge in millimetres, as assemble/sheet draws it at the
// top of the picture of a time to be read.
const dialSide = 53

var svgSize = regexp.MustCompile(`height="[0-9.]+mm" viewBox="0 0 ([0-9.]+) [0-9.]+"`)

// dial is a clock face alone: the picture of a time to be read, cut off below the face, as there
// is nothing to write on.
func dial(t words.Time, lang string) *Picture {
	q := sheet.Question{Number: 1, Task: task.Clock{Verb: task.Read, Time: t}, Look: task.LookClockFace}
	p, err := drawn(q, lang)
	if err != nil {
		panic(err) // every time can be shown on a dial
	}
	p.SVG = svgSize.ReplaceAllString(p.SVG, fmt.Sprintf(`height="%dmm" viewBox="0 0 $1 %[1]d"`, dialSide))
	return &p
}
