package export_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenhand/assemble"
	"evenhand/assemble/export"
	"evenhand/assemble/search"
	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
)

// friday is a quiz of two forms.
func friday() assemble.Quiz {
	item := func(id, asked string, look task.Look) bank.Item {
		it := bank.NewItem(task.MustParse(asked), look, bank.Origin{Kind: "generated", Seed: 7})
		it.ID = id
		return it
	}
	sign := bank.NewHandItem("= 12, what goes before it?\n\"6 + 6\" or \"6 + 7\"", "-5", "facts-within-20", "en", bank.Origin{Kind: "written", By: "P. Ames"})
	sign.ID = "01H"
	measured := item("01B", "read 4:30", "")
	measured.Measured = &bank.Measured{Difficulty: -1099, StandardError: 210, Answers: 48}
	return assemble.Quiz{
		Title: "Friday check", Week: "2026-W48", ShareRight: 75, Seed: 1<<63 + 1,
		Ability: -250, Off: []int{2, 0}, Uneven: search.Points{0, 1, 0},
		Objective: 4003, UsesSum: 3, Bound: 4003, Proved: true,
		Forms: []assemble.Form{
			{Name: "A", Scores: search.Points{812, 1203, 1544}, Items: []assemble.Placed{
				{Number: 1, Item: item("01A", "27 + 35 = ?", task.LookColumn), Row: "row 1 (add-two-digit)", Uses: 3},
				{Number: 2, Item: measured, Row: "row 2 (clock-half-hour)", Basis: bank.MeasuredBasis},
			}},
			{Name: "B", Scores: search.Points{901, 1310, 1611}, Items: []assemble.Placed{
				{Number: 1, Item: item("01C", "47 ? 47", ""), Row: "row 1"},
				{Number: 2, Item: sign, Row: "row 2"},
			}},
		},
		Swaps: []assemble.Swap{{Form: "A", Number: 1, Out: "01Z", In: "01A"}},
	}
}

func TestQuizCSV(t *testing.T) {
	var file bytes.Buffer
	if err := export.WriteQuiz(&file, friday()); err != nil {
		t.Fatal(err)
	}
	head := "form,number,id,skill,standards,task,look,key,band,share_right,difficulty,seconds,uses,basis"
	for _, trait := range task.AllTraits() {
		head += "," + trait.String()
	}
	lines := strings.Split(file.String(), "\r\n") // RFC 4180, 2.1: CRLF ends a record
	if lines[0] != head {
		t.Errorf("heading\n got %s\nwant %s", lines[0], head)
	}

	records, err := csv.NewReader(&file).ReadAll()
	if err != nil || len(records) != 5 {
		t.Fatalf("%d records, %v, want 5", len(records), err)
	}
	cell := func(row int, column string) string {
		for i, name := range records[0] {
			if name == column {
				return records[row][i]
			}
		}
		t.Fatalf("no column %s", column)
		return ""
	}
	for _, row := range []struct {
		row          int
		column, want string
	}{
		{1, "form", "A"}, {1, "number", "1"}, {1, "id", "01A"}, {1, "look", "column"}, {1, "uses", "3"},
		// Common Core State Standards (2010): 27 + 35 is 2.NBT.B.5; one regrouping
		// by the digit-sum identity of Legendre and Kummer.
		{1, "standards", "2.NBT.B.5"}, {1, "regroups", "1"}, {1, "key", "62"}, {1, "clock_step", ""},
		{2, "clock_step", "half-hour"}, {2, "regroups", ""},
		// 1/(1 + e^-1.099) is .750: three in four.
		{2, "difficulty", "-1.099"}, {2, "share_right", "75"}, {2, "band", "core"}, {2, "basis", "measured"}, {1, "basis", ""},
		// OWASP on formula injection: one apostrophe before a cell that begins with = + - @.
		{3, "key", "'="}, {4, "key", "'-5"}, {4, "task", "'= 12, what goes before it?\n\"6 + 6\" or \"6 + 7\""},
		{4, "regroups", ""}, {4, "form", "B"}, {4, "number", "2"},
	} {
		if got := cell(row.row, row.column); got != row.want {
			t.Errorf("row %d, %s: got %q, want %q", row.row, row.column, got, row.want)
		}
	}
}

func TestQuizComesBack(t *testing.T) {
	quiz := friday()
	var file bytes.Buffer
	if err := export.WriteQuiz(&file, quiz); err != nil {
		t.Fatal(err)
	}
	rows, err := export.ReadQuiz(strings.NewReader("\ufeff" + file.String())) // a spreadsheet may add the mark
	if err != nil {
		t.Fatal(err)
	}
	i := 0
	for _, form := range quiz.Forms {
		for _, placed := range form.Items {
			row, item := rows[i], placed.Item
			i++
			same := string(row.Form) == form.Name && int(row.Number) == placed.Number && row.ID == item.ID &&
				row.Skill == string(item.Skill) && reflect.DeepEqual(standards.SplitCodes(row.Standards), item.Codes) &&
				row.Task == item.Task+item.Wording["en"] && row.Look == string(item.Look) && row.Key == item.Key &&
				standards.Difficulty(row.Difficulty) == item.Difficulty() && int(row.Seconds) == item.Seconds &&
				int(row.Uses) == placed.Uses && row.Traits.Values() == item.Traits
			if !same {
				t.Errorf("%s%d came back as %+v", form.Name, placed.Number, row)
			}
		}
	}
	if len(rows) != i {
		t.Errorf("%d rows came back, want %d", len(rows), i)
	}
}

func TestTextsComeBack(t *testing.T) {
	text := rapid.StringMatching(`[=+@'"a-c,;\t\n −-]{0,6}`)
	rapid.Check(t, func(t *rapid.T) {
		item := bank.Item{
			ID: "01A", Key: text.Draw(t, "key"), Wording: map[string]string{"en": text.Draw(t, "question")},
			Predicted: standards.Difficulty(rapid.IntRange(-9999, 9999).Draw(t, "difficulty")),
		}
		quiz := assemble.Quiz{Forms: []assemble.Form{{Name: "A", Scores: search.Points{812, 1203, 1544}, Items: []assemble.Placed{{Number: 1, Item: item}}}}}
		var file bytes.Buffer
		if err := export.WriteQuiz(&file, quiz); err != nil {
			t.Fatal(err)
		}
		rows, err := export.ReadQuiz(&file)
		if err != nil || len(rows) != 1 {
			t.Fatal(rows, err)
		}
		if got := rows[0]; got.Key != item.Key || got.Task != item.Wording["en"] || standards.Difficulty(got.Difficulty) != item.Predicted {
			t.Fatalf("%+v came back as %+v", item, got)
		}
	})
}

func TestReadQuizSaysWhatIsWrong(t *testing.T) {
	var file bytes.Buffer
	if err := export.WriteQuiz(&file, friday()); err != nil {
		t.Fatal(err)
	}
	good := file.String()
	heading, _, _ := strings.Cut(good, "\r\n")
	for _, row := range []struct{ name, from, to, want string }{
		{"empty file", good, "", "the file is empty; give one that evenhand wrote"},
		{"missing column", "form,number,id", "form,number,item", `line 1: there is no column "id"; give a file that evenhand wrote, separated by commas`},
		{"column twice", good, heading + ",number", `line 1: there are 2 columns "number"; leave the right one`},
		// gocsv itself would read 1.7 as 1.
		{"share of a number", "A,1,01A", "A,1.7,01A", `line 2, number: "1.7" is not a whole number such as 3`},
		{"no number", ",-1.099,", ",about -1,", `line 3, difficulty: "about -1" is not a difficulty in logits such as -1.099`},
		{"no finite number", ",-1.099,", ",NaN,", `line 3, difficulty: "NaN" is not a difficulty in logits such as -1.099`},
		// The quoted question of the fourth item holds a line end.
		{"after a line end", "\r\nA,2,", "\r\nA,\"1\n2\",", "line 3, number: \"1\\n2\" is not a whole number such as 3"},
		{"torn row", ",01C,", ",", "record on line 4: wrong number of fields"},
	} {
		_, err := export.ReadQuiz(strings.NewReader(strings.Replace(good, row.from, row.to, 1)))
		if err == nil || err.Error() != row.want {
			t.Errorf("%s:\n got %v\nwant %s", row.name, err, row.want)
		}
	}
}

func TestQuizJSON(t *testing.T) {
	var file bytes.Buffer
	quiz := friday()
	if err := export.WriteQuizJSON(&file, quiz); err != nil {
		t.Fatal(err)
	}
	var got struct {
		Title, Week, Seed             string
		Objective, Uses, Bound, Level int
		ShareRight                    int `json:"share_right"`
		Off, Uneven                   []int
		Proved                        bool
		Forms                         []struct {
			Form   string
			Scores []int `json:"expected_scores"`
			Items  []struct {
				Number    int
				ID, Key   string
				Standards []string
				Traits    map[string]string
			}
		}
		Swaps []struct{ Form, Out, In string }
	}
	if err := json.Unmarshal(file.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	if got.Title != "Friday check" || got.Week != "2026-W48" || got.Seed != "9223372036854775809" {
		t.Errorf("got title %q, week %q, seed %q", got.Title, got.Week, got.Seed)
	}
	if got.Objective != 4003 || got.Uses != 3 || got.Bound != 4003 || !got.Proved || got.Level != -250 || got.ShareRight != 75 ||
		fmt.Sprint(got.Off, got.Uneven) != "[2 0] [0 1 0]" {
		t.Errorf("got figures %+v", got)
	}
	if s := fmt.Sprint(got.Forms[0].Scores, got.Forms[1].Scores); s != "[812 1203 1544] [901 1310 1611]" {
		t.Errorf("got scores %s", s)
	}
	if item := got.Forms[1].Items[0]; item.ID != "01C" || item.Key != "=" || item.Traits["digits"] != "2" || item.Traits["regroups"] != "" {
		t.Errorf("got item %+v", item)
	}
	if len(got.Swaps) != 1 || got.Swaps[0].Out != "01Z" {
		t.Errorf("got swaps %+v", got.Swaps)
	}
}

func FuzzReadQuiz(f *testing.F) {
	var file bytes.Buffer
	if err := export.WriteQuiz(&file, friday()); err != nil {
		f.Fatal(err)
	}
	f.Add(file.Bytes())
	f.Add([]byte("form,number\n\"A"))
	f.Add([]byte("\ufeff"))
	f.Fuzz(func(t *testing.T, data []byte) {
		rows, err := export.ReadQuiz(bytes.NewReader(data))
		if err != nil {
			if rows != nil {
				t.Errorf("rows with an error: %v, %v", rows, err)
			}
			return
		}
		records, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
		if err != nil || len(rows) != len(records)-1 {
			t.Errorf("%d rows of %d records, %v", len(rows), len(records), err)
		}
	})
}

// A form's name becomes part of files' names, in the zip of a test too: what is no name of a
// form is refused (path traversal: CWE-22).
func TestOddFormNamesAreRefused(t *testing.T) {
	var written bytes.Buffer
	if err := export.WriteQuiz(&written, friday()); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"../../x", `..\x`, "A/B", "C:", ".", "A B", ""} {
		text := strings.Replace(written.String(), "\r\nA,", "\r\n"+name+",", 1)
		want := fmt.Sprintf("line 2, form: %q is no name; a form is named by a letter", name)
		if _, err := export.ReadQuiz(strings.NewReader(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("form %q: %v", name, err)
		}
	}
	if _, err := export.ReadQuiz(&written); err != nil {
		t.Error(err)
	}
}
