package qti_test

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenhand/assemble/export/qti"
	"evenhand/bank"
	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"
)

// every is a package with some generated items of every skill, in each of their looks.
func every(t testing.TB, lang string) qti.Package {
	t.Helper()
	if p, ok := everyMade[lang]; ok {
		p.Tests = []qti.Test{{ID: p.Tests[0].ID, Title: p.Tests[0].Title, Items: slices.Clone(p.Tests[0].Items)}}
		return p
	}
	count := 6
	if testing.Short() {
		count = 1
	}
	p := qti.Package{Title: "Every skill", Lang: lang, Tests: []qti.Test{{ID: "form-A", Title: "Every skill, A"}}}
	for _, skill := range standards.Catalogue() {
		made, err := generate.Make(generate.Request{Skill: skill.ID, Count: count, Seed: 11})
		if err != nil {
			t.Fatal(err)
		}
		for _, asked := range append(made.Tasks, task.MustParse(skill.Example)) {
			for _, look := range asked.Looks() {
				item := bank.NewItem(asked, look, bank.Origin{})
				item.ID = fmt.Sprintf("%026d", len(p.Items))
				add(t, &p, item)
			}
		}
	}
	everyMade[lang] = p
	return every(t, lang)
}

// everyMade keeps the packages of every, by language: they take time to draw.
var everyMade = make(map[string]qti.Package)

func add(t testing.TB, p *qti.Package, item bank.Item) {
	t.Helper()
	it, err := qti.NewItem(item, p.Lang)
	if err != nil {
		t.Fatalf("%s as %s: %v", item.Task, item.Look, err)
	}
	p.Items = append(p.Items, it)
	p.Tests[0].Items = append(p.Tests[0].Items, it.ID)
}

func written(t testing.TB, p qti.Package) []byte {
	t.Helper()
	var file bytes.Buffer
	if _, err := qti.Write(&file, p, p.Sequence()); err != nil {
		t.Fatal(err)
	}
	return file.Bytes()
}

func read(t testing.TB, data []byte) qti.Package {
	t.Helper()
	p, err := qti.Read(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// What is written is read back the same, for all skills and looks.
func TestEverySkillComesBack(t *testing.T) {
	for _, lang := range []string{"en", "es"} {
		p := every(t, lang)
		data := written(t, p)
		same(t, read(t, data), p)
		if !bytes.Equal(data, written(t, p)) {
			t.Error("the same package gives other bytes")
		}
	}
}

func same(t testing.TB, got, want qti.Package) {
	t.Helper()
	if got.Title != want.Title || got.Lang != want.Lang || !reflect.DeepEqual(got.Tests, want.Tests) || len(got.Items) != len(want.Items) {
		t.Fatalf("%q (%s), %d tests, %d items came back as %q (%s), %d, %d",
			want.Title, want.Lang, len(want.Tests), len(want.Items),
			got.Title, got.Lang, len(got.Tests), len(got.Items))
	}
	for i, item := range want.Items {
		if !reflect.DeepEqual(got.Items[i], item) {
			t.Fatalf("%s came back as\n%+v\nnot as\n%+v", item.Task, got.Items[i], item)
		}
	}
}

// The package's own scoring says of answers what the task says: the right ones are worth 1,
// those of known missteps nothing.
func TestScoringAgreesWithTheTask(t *testing.T) {
	typed := 0
	for _, item := range read(t, written(t, every(t, "en"))).Items {
		if item.Scoring.By == qti.ByPerson {
			continue
		}
		right := make(map[string][]string)
		for _, r := range item.Responses {
			right[r.ID] = r.Correct
		}
		if item.Score(right) != 1 || item.Score(nil) != 0 {
			t.Errorf("%s: the right answer %v scores %d, none %d", item.Task, right, item.Score(right), item.Score(nil))
		}
		if len(item.Responses) > 1 {
			continue
		}
		asked := task.MustParse(item.Task)
		for _, m := range asked.Missteps() {
			if item.Score(map[string][]string{item.Responses[0].ID: {m.Answer}}) != 0 {
				t.Errorf("%s: %q scores 1", item.Task, m.Answer)
			}
		}
		for _, text := range item.Responses[0].Accepted {
			typed++
			if !asked.Judge(text) || item.Score(map[string][]string{item.Responses[0].ID: {strings.ToUpper(text)}}) != 1 {
				t.Errorf("%s: %q is accepted or not, and the task says otherwise", item.Task, text)
			}
		}
	}
	if typed == 0 {
		t.Error("no accepted texts were tried")
	}
}

// Whatever two pairs a child types, the rule in the package judges as the task does.
func TestPairsAreJudgedAlike(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 10).Draw(t, "whole")
		var numbers [4]int
		answers := make(map[string][]string)
		for i := range numbers {
			numbers[i] = rapid.IntRange(0, n).Draw(t, "number")
		}
		if rapid.Bool().Draw(t, "make the whole") {
			numbers[1], numbers[3] = n-numbers[0], n-numbers[2]
		}
		for i, number := range numbers {
			answers[fmt.Sprintf("RESPONSE%d", i+1)] = []string{fmt.Sprint(number)}
		}
		asked := task.MustParse(fmt.Sprintf("pairs of %d", n))
		item, err := qti.NewItem(bank.NewItem(asked, "", bank.Origin{}), "en")
		if err != nil {
			t.Fatal(err)
		}
		text := fmt.Sprintf("%d + %d, %d + %d", numbers[0], numbers[1], numbers[2], numbers[3])
		if got := item.Score(answers) == 1; got != asked.Judge(text) {
			t.Fatalf("%s for %s: scored %v, judged %v", text, asked, got, !got)
		}
	})
}

// How each kind of task is asked.
func TestInteractions(t *testing.T) {
	for _, row := range []struct {
		task    string
		look    task.Look
		kind    qti.Kind
		number  int // of responses
		correct string
		picture bool
	}{
		{"47 + 36 = ?", "", qti.Number, 1, "83", false},
		{"47 + 36 = ?", task.LookColumn, qti.Number, 1, "83", true},
		{"47 + 36 = ?", task.LookChoice, qti.Choice, 1, "", false},
		{"47 ? 74", "", qti.Choice, 1, "less", false},
		{"true or false: 7 = 8 - 1", "", qti.Choice, 1, "true", false},
		{"more: 5 or 8 dots", "", qti.Choice, 1, "right", true},
		{"142 = ? hundreds ? tens ? ones", "", qti.Number, 3, "1", true},
		{"98, 99, ?, 101, ?", "", qti.Number, 2, "100", false},
		{"8 + ? = 11, 11 - 8 = ?", "", qti.Number, 2, "3", false},
		{"pairs of 7", "", qti.Number, 4, "1", false},
		{"read 4:30", "", qti.Words, 1, "4:30", true},
		{"say 4:30", "", qti.Words, 1, "half past 4", true},
		{"draw 4:30", "", qti.Drawing, 1, "", true},
		{"match 4:00, 7:00, 11:00", "", qti.Match, 1, "", false},
		{"write 342 in words", "", qti.Words, 1, "three hundred forty-two", false},
	} {
		item, err := qti.NewItem(bank.NewItem(task.MustParse(row.task), row.look, bank.Origin{}), "en")
		if err != nil {
			t.Fatal(err)
		}
		first := item.Responses[0]
		if first.Kind != row.kind || len(item.Responses) != row.number || (item.Picture != nil) != row.picture {
			t.Errorf("%s: %d of kind %s, picture %v", row.task, len(item.Responses), first.Kind, item.Picture != nil)
		}
		if row.correct != "" && first.Correct[0] != row.correct {
			t.Errorf("%s: right is %q, want %q", row.task, first.Correct[0], row.correct)
		}
		if item.Key() != task.MustParse(row.task).Key() {
			t.Errorf("%s: key %q", row.task, item.Key())
		}
	}
}

func TestStem(t *testing.T) {
	for _, row := range []struct{ task, lang, want string }{
		{"47 + 36 = ?", "en", "Write the missing number: 47 + 36 = [RESPONSE]"},
		{"83 - 47 = ?", "es", "Escribe el número que falta: 83 − 47 = [RESPONSE]"},
		{"142 = ? hundreds ? tens ? ones", "en", "Write how many of each: 142 = [RESPONSE1] hundreds [RESPONSE2] tens [RESPONSE3] ones"},
		{"odd or even: 14", "en", "Is 14 odd or even?"},
		{"10 more than 47 = ?", "en", "What number is 10 more than 47?/[RESPONSE]"},
		{"pairs of 7", "es", "Escribe dos pares distintos que hagan 7./7 = [RESPONSE1] + [RESPONSE2]/7 = [RESPONSE3] + [RESPONSE4]"},
	} {
		item, err := qti.NewItem(bank.NewItem(task.MustParse(row.task), "", bank.Origin{}), row.lang)
		if err != nil {
			t.Fatal(err)
		}
		if got := shown(item.Stem); got != row.want {
			t.Errorf("%s:\n got %s\nwant %s", row.task, got, row.want)
		}
	}
}

func shown(stem [][]qti.Part) string {
	var lines []string
	for _, parts := range stem {
		line := ""
		for _, part := range parts {
			line += part.Text
			if part.Response != "" {
				line += "[" + part.Response + "]"
			}
		}
		lines = append(lines, line)
	}
	return strings.Join(lines, "/")
}

// No alternative text and no title tells the answer.
func TestPicturesDoNotTellTheAnswer(t *testing.T) {
	pictures := 0
	for _, item := range every(t, "en").Items {
		list := []*qti.Picture{{Alt: item.Title}, item.Picture}
		for _, option := range item.Responses[0].Options {
			list = append(list, option.Picture)
		}
		for _, p := range list {
			if p == nil {
				continue
			}
			pictures++
			told := regexp.MustCompile(`(^|[^0-9:])` + regexp.QuoteMeta(item.Key()) + `($|[^0-9:])`)
			if p.Alt == "" || told.MatchString(p.Alt) {
				t.Errorf("%s, answer %s: alternative text %q", item.Task, item.Key(), p.Alt)
			}
		}
	}
	if pictures == 0 {
		t.Error("no pictures")
	}
}

// A clock face alone is cut off below the dial: both hands are in the picture, and no box to
// write in.
func TestClockFaceAlone(t *testing.T) {
	item, err := qti.NewItem(bank.NewItem(task.MustParse("match 4:00, 7:30, 11:15"), "", bank.Origin{}), "en")
	if err != nil {
		t.Fatal(err)
	}
	number := regexp.MustCompile(`[0-9.]+`)
	for _, option := range item.Responses[0].Options {
		var height float64
		if _, err := fmt.Sscan(number.FindAllString(regexp.MustCompile(`viewBox="[^"]*"`).FindString(option.Picture.SVG), -1)[3], &height); err != nil {
			t.Fatal(err)
		}
		hands := regexp.MustCompile(`<polygon points="([^"]*)"`).FindAllStringSubmatch(option.Picture.SVG, -1)
		if len(hands) != 2 {
			t.Fatalf("%d hands", len(hands))
		}
		for _, hand := range hands {
			for i, value := range number.FindAllString(hand[1], -1) {
				var v float64
				if fmt.Sscan(value, &v); i%2 == 1 && v > height {
					t.Errorf("a hand reaches to %v of %v", v, height)
				}
			}
		}
		for _, box := range regexp.MustCompile(`<rect x="[0-9.]+" y="([0-9.]+)"`).FindAllStringSubmatch(option.Picture.SVG, -1) {
			var y float64
			if fmt.Sscan(box[1], &y); y < height {
				t.Errorf("a box at %v, within %v", y, height)
			}
		}
	}
}

func TestItemsByHand(t *testing.T) {
	text := rapid.StringMatching(`[a-c&<>"'?¿ \n\t\x01é−]{0,12}`)
	rapid.Check(t, func(t *rapid.T) {
		hand := bank.NewHandItem("Q"+text.Draw(t, "question"), text.Draw(t, "key"), "add-ones",
			rapid.SampledFrom([]string{"en", "es"}).Draw(t, "lang"), bank.Origin{})
		hand.ID = "01H"
		item, err := qti.NewItem(hand, "en")
		if err != nil {
			t.Fatal(err)
		}
		p := qti.Package{Title: "by hand", Lang: "en", Items: []qti.Item{item}}
		var file bytes.Buffer
		if _, err := qti.Write(&file, p, p.Sequence()); err != nil {
			t.Fatal(err)
		}
		got, err := qti.Read(bytes.NewReader(file.Bytes()), int64(file.Len()))
		if err != nil || !reflect.DeepEqual(got, p) {
			t.Fatalf("%v\n%+v\nnot\n%+v", err, got, p)
		}
	})
}

// What a machine can compare is typed; the rest a person marks.
func TestKeysByHand(t *testing.T) {
	for _, row := range []struct {
		key   string
		kind  qti.Kind
		by    qti.Way
		other string // a wrong answer
	}{
		{"12", qti.Number, qti.ByMatch, "21"},
		{"012", qti.Words, qti.ByMap, "12"},
		{"a square", qti.Words, qti.ByMap, "a triangle"},
		{"", qti.Text, qti.ByPerson, ""},
		{"Both sides are worth the same, so it is true.", qti.Text, qti.ByPerson, ""},
		{"first\nsecond", qti.Text, qti.ByPerson, ""},
	} {
		item, err := qti.NewItem(bank.NewHandItem("What is it?", row.key, "add-ones", "en", bank.Origin{}), "en")
		if err != nil {
			t.Fatal(err)
		}
		if item.Responses[0].Kind != row.kind || item.Scoring.By != row.by || item.Key() != strings.Join(strings.Fields(row.key), " ") {
			t.Errorf("%q: %s by %s, key %q", row.key, item.Responses[0].Kind, item.Scoring.By, item.Key())
		}
		if row.other == "" {
			continue
		}
		if item.Score(map[string][]string{"RESPONSE": {row.key}}) != 1 || item.Score(map[string][]string{"RESPONSE": {row.other}}) != 0 {
			t.Errorf("%q scores as %q does", row.key, row.other)
		}
	}
}

// The times to match never stand in the order of the faces.
func TestTimesStandInAnotherOrder(t *testing.T) {
	for _, item := range every(t, "en").Items {
		first := item.Responses[0]
		if first.Kind != qti.Match {
			continue
		}
		inOrder := true
		for i, pair := range first.Correct {
			inOrder = inOrder && pair == fmt.Sprintf("clock%d time%d", i+1, i+1)
		}
		if inOrder {
			t.Errorf("%s: the times stand in the order of the faces", item.Task)
		}
	}
}

func TestWriteRefuses(t *testing.T) {
	if _, err := qti.Write(io.Discard, qti.Package{}, qti.Package{}.Sequence()); err == nil {
		t.Error("an empty package was written")
	}
	p := every(t, "en")
	p.Tests[0].Items = append(p.Tests[0].Items, "item-none")
	if _, err := qti.Write(io.Discard, p, p.Sequence()); err == nil || !strings.Contains(err.Error(), "item-none") {
		t.Errorf("got %v", err)
	}
	broken := errors.New("page 7 is damaged")
	_, err := qti.Write(io.Discard, p, qti.OfBank(func(yield func(bank.Item, error) bool) { yield(bank.Item{}, broken) }, "en"))
	if !errors.Is(err, broken) {
		t.Errorf("got %v", err)
	}
}
