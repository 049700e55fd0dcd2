package sheet

import (
	"slices"
	"strings"
	"testing"

	"evenhand/standards/task"
)

// Words of the item's own are printed in every look of every kind, and a story's or a
// question's computed words are not printed beside them.
func TestOwnWordsArePrintedEverywhere(t *testing.T) {
	const own = "Three frogs sit by the pond, and more come."
	eachExample(t, func(asked task.Task, l task.Look) {
		k := testKit(t, false)
		d, err := k.draw(Question{Number: 1, Task: asked, Look: l, Text: own})
		if err != nil {
			t.Fatal(err)
		}
		r := &recorder{face: k.face}
		d.paint(r, point{})
		words := strings.Join(r.words(), " ")
		if strings.Count(words, "Three frogs") != 1 || !strings.Contains(words, "more come.") {
			t.Errorf("%s as %s reads %q", asked, l, words)
		}
		plain := strings.Join(record(t, testKit(t, false), asked, l).words(), " ")
		replaced := strings.Contains(plain, asked.Prompt("en")) // the question in words is the item's own
		if replaced && strings.Contains(words, asked.Prompt("en")) {
			t.Errorf("%s as %s has both wordings: %q", asked, l, words)
		}
		if replaced || l == task.LookChoice {
			return
		}
		if !strings.HasSuffix(words, plain) {
			t.Errorf("%s as %s lost its own drawing: %q, without the words %q", asked, l, words, plain)
		}
		svg, err := SVG(Question{Number: 1, Task: asked, Look: l, Text: own}, Options{Font: BuiltInFont})
		if err != nil || !strings.Contains(string(svg), own) {
			t.Errorf("%s as %s: the picture's description lacks its words (%v)", asked, l, err)
		}
	})
}

// toMark are the looks in which answers are marked.
var toMark = []task.Look{task.LookChoice, task.LookTick, task.LookGroups, task.LookShape, task.LookFlatSolid, task.LookFindShapes, task.LookJoinShapes,
	task.LookShares, task.LookFindCuts, task.LookLargerShare, task.LookWhere, task.LookParityDots,
	task.LookBlockWays, task.LookTwoBars, task.LookBarPairs, task.LookEstimate}

// Where answers are to be marked, nothing says to write; where something is written, nothing
// says to mark.
func TestDirectionsFitTheItem(t *testing.T) {
	eachExample(t, func(asked task.Task, l task.Look) {
		q := Question{Number: 1, Task: asked, Look: l}
		words := directionOf(q).en + " " + strings.Join(record(t, testKit(t, false), asked, l).words(), " ")
		marked := slices.Contains(toMark, l)
		if marked && strings.Contains(words, "Write") || !marked && strings.Contains(words, "Mark ") {
			t.Errorf("%s as %s: %q", asked, l, words)
		}
	})
	for text, want := range map[string]string{
		"57 = ? + ?":      "Break the number into tens and ones. Write how much each part is worth.",
		"142 = ? + ? + ?": "Break the number into hundreds, tens and ones. Write how much each part is worth.",
		"405 = ? + ?":     "Break the number into hundreds and ones. Write how much each part is worth.",
	} {
		if got := directionOf(Question{Task: task.MustParse(text), Look: task.LookBond}).en; got != want {
			t.Errorf("%s: the direction is %q, want %q", text, got, want)
		}
	}
}

// On a sheet of answers to choose, the key explains the wrong ones that stand there and no others.
func TestKeyExplainsWhatIsToChoose(t *testing.T) {
	eachExample(t, func(asked task.Task, l task.Look) {
		q := Question{Number: 2, Task: asked, Look: l, Missteps: asked.Missteps()}
		if l != task.LookChoice {
			if len(shown(q)) != len(q.Missteps) {
				t.Errorf("%s as %s loses missteps", asked, l)
			}
			return
		}
		if list := shown(q); len(list) != 2 {
			t.Errorf("%s: %d missteps for two wrong answers", asked, len(list))
		}
	})
}
