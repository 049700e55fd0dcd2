package intake_test

import (
	"fmt"
	"strings"
	"testing"

	"evenhand/bank"
	"evenhand/standards/task"

	intake "evenhand/import"
)

// ownHeading is what evenhand export writes above a bank, here without the traits.
const ownHeading = "id,revision,task,question_en,question_es,key,skill,standards,look,standing,band,share_right,difficulty,predicted," +
	"measured,measured_error,measured_answers,seconds,origin,origin_by,file,row,seed,by,at,reason,notes\r\n"

// A bank's export gives equal items in another bank, which has its own IDs and times
// and predicts by its own table.
func TestOwnExportGivesEqualItems(t *testing.T) {
	b, r := importText(t, ownHeading+
		"01A,3,402 - 178 = ?,,¿Cuánto queda?,224,subtract-within-1000,2.NBT.B.7,column,retired,core,70,-0.250,"+
		"-0.812,-0.250,0.091,120,75,generated,,,,18446744073709551615,generate,2026-11-25T08:00:00Z,easier,"+
		"'+ blocks\r\n"+
		"01B,1,,\"Mia has -5 points.\nHow many more to 0? \",'-5 puntos,'-5,,2.G.A.1 2.G.A.2,words,draft,core,"+
		"73,-1.000,-1.000,,,,41,imported,B. Cole,'=list.csv,14,,@cole,2026-11-24T08:00:00Z,,\r\n")
	if r.Count(intake.Added) != 2 || len(r.Notes) != 0 {
		t.Fatalf("%s\n%s\n%v", r.Summary(), problems(r), r.Notes)
	}
	asked := bank.NewItem(task.MustParse("402 - 178 = ?"), task.LookColumn, bank.Origin{Kind: "generated", Seed: 18446744073709551615})
	asked.Wording = map[string]string{"es": "¿Cuánto queda?"}
	asked.Measured = &bank.Measured{Difficulty: -250, StandardError: 91, Answers: 120}
	asked.Standing, asked.Notes = bank.Retired, "+ blocks"
	hand := bank.NewHandItem("Mia has -5 points.\nHow many more to 0? ", "-5", "", "en", bank.Origin{Kind: "imported", File: "=list.csv", Row: 14, By: "B. Cole"})
	hand.Wording["es"] = "-5 puntos"
	hand.Codes, hand.Standing, hand.Seconds = []task.Code{"2.G.A.1", "2.G.A.2"}, bank.Draft, 41
	for i, want := range []bank.Item{asked, hand} {
		got := items(t, b, r)[i]
		want.ID, want.Revision, want.By, want.At = got.ID, 1, "M.O.", monday
		if show(got) != show(want) {
			t.Errorf("got  %s\nwant %s", show(got), show(want))
		}
	}
}

// show is all of an item in one text.
func show(it bank.Item) string {
	measured := it.Measured
	it.Measured = nil
	return fmt.Sprintf("%+v %+v", it, measured)
}

func TestOwnExportWithMistakes(t *testing.T) {
	good := strings.Split("01A,1,47 + 36 = ?,,,83,add-two-digit,2.NBT.B.5,column,ready,core,70,-0.9,-0.9,,,,45,written,M.O.,,,,M.O.,2026-11-25T08:00:00Z,,", ",")
	hand := strings.Split("01B,1,,How many?,,4,,beyond K-2,words,ready,core,70,-1,-1,,,,45,written,M.O.,,,,M.O.,2026-11-25T08:00:00Z,,", ",")
	at := func(row []string, column, cell string) string {
		row = append([]string(nil), row...)
		for i, name := range strings.Split(strings.TrimSpace(ownHeading), ",") {
			if name == column {
				row[i] = cell
			}
		}
		return strings.Join(row, ",")
	}
	for _, c := range []struct{ row, want string }{
		{at(good, "key", "73"), "key: 47 + 36 is 83, the list says 73"},
		{at(good, "task", "5 - 8"), "task: 5 - 8 is less than 0; quizzes for these grades stay with 0 and more"},
		{at(good, "look", "clock-face"), `look: 47 + 36 = ? can't be shown as "clock-face"`},
		{at(good, "standing", "gone"), `standing: "gone" is not draft, ready or retired`},
		{at(good, "origin", "found"), `origin: "found" is not generated, written or imported`},
		{at(good, "predicted", "hard"), `predicted: "hard" is not a difficulty in logits such as -1.099`},
		{at(good, "measured", "1e9"), `measured: "1e9" is not a difficulty in logits such as -1.099`},
		{at(good, "row", "-1"), `row: "-1" is not a whole number`},
		{at(hand, "key", ""), "key: there is no key, and it can't be worked out; write one"},
		{at(hand, "question_en", ""), "question: there is neither a task nor a question here"},
		{at(hand, "skill", "shapes"), `skill: no skill "shapes"`},
		{at(hand, "look", "round"), `look: no layout "round"`},
		{strings.Join(good, ",") + ",x", ": the cells of this row can't be told apart; look at its quotation marks"},
	} {
		b, r := importText(t, ownHeading+c.row+"\r\n"+strings.Join(good, ",")+"\r\n")
		if got := problems(r); !strings.Contains(got, c.want) || r.Count(intake.Added) != 1 {
			t.Errorf("%s\n%s\nwant %s", r.Summary(), got, c.want)
			continue
		}
		// Set aside, it is still our own export and can be mended.
		_, rows := setAside(t, r)
		if again := mustImport(t, b, mustOpen(t, csvText(rows)), intake.ImportOptions{}); problems(again) != problems(r) && !strings.HasPrefix(c.want, ":") {
			t.Errorf("set aside and imported again:\ngot  %s\nwant %s", problems(again), problems(r))
		}
	}
}

func csvText(rows [][]string) string {
	var b strings.Builder
	for _, row := range rows {
		for i, cell := range row {
			row[i] = quoted(cell, ",")
		}
		b.WriteString(strings.Join(row, ",") + "\r\n")
	}
	return b.String()
}
