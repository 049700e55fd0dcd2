package export_test

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"iter"
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"evenhand/assemble/export"
	"evenhand/bank"
	"evenhand/bank/cells"
	"evenhand/standards"
	"evenhand/standards/task"
)

// found is items as a bank finds them, and an error after them.
func found(err error, items ...bank.Item) iter.Seq2[bank.Item, error] {
	return func(yield func(bank.Item, error) bool) {
		for _, item := range items {
			if !yield(item, nil) {
				return
			}
		}
		if err != nil {
			yield(bank.Item{}, err)
		}
	}
}

func TestBankCSV(t *testing.T) {
	made := bank.NewItem(task.MustParse("402 - 178 = ?"), task.LookColumn, bank.Origin{Kind: "generated", Seed: 18446744073709551615})
	made.ID, made.Revision, made.By, made.At = "01A", 1, "generate", time.Date(2026, 11, 25, 8, 0, 0, 500, time.UTC)
	hand := bank.NewHandItem("Mia has -5 points.\r\nHow many more to 0?", "5", "facts-within-20", "en",
		bank.Origin{Kind: "imported", File: "=list.csv", Row: 14, By: "B. Cole"})
	hand.ID, hand.Revision, hand.By, hand.At, hand.Reason = "01B", 2, "@cole", time.Date(2026, 11, 24, 9, 0, 0, 0, time.FixedZone("", 3600)), "+ Spanish"
	hand.Wording["es"], hand.Notes, hand.Standing = "-5 puntos", "a \"quoted\" note", bank.Draft
	hand.Measured = &bank.Measured{Difficulty: -250, StandardError: 91, Answers: 120}

	var file bytes.Buffer
	if err := export.WriteBank(&file, found(nil, made, hand)); err != nil {
		t.Fatal(err)
	}
	records, err := csv.NewReader(strings.NewReader(file.String())).ReadAll()
	if err != nil || len(records) != 3 {
		t.Fatalf("%d records, %v, want 3", len(records), err)
	}
	want := []map[string]string{
		{
			"id": "01A", "revision": "1", "task": "402 - 178 = ?", "question_en": "", "key": "224", "skill": "subtract-within-1000",
			"look": "column", "standing": "ready", "measured": "", "measured_error": "", "measured_answers": "", "origin": "generated",
			"origin_by": "", "file": "", "row": "", "seed": "18446744073709551615", "by": "generate", "at": "2026-11-25T08:00:00.0000005Z", "reason": "",
			"difficulty": made.Predicted.String(), "predicted": made.Predicted.String(),
			// Common Core State Standards (2010); digit-sum identity of Legendre and Kummer: 402 − 178 regroups twice.
			"standards": "2.NBT.B.7", "regroups": "2", "zero_crossed": "true", "clock_step": "",
		},
		{
			"id": "01B", "revision": "2", "task": "", "question_en": "Mia has -5 points.\nHow many more to 0?", "question_es": "'-5 puntos", "key": "5",
			"standing": "draft", "difficulty": "-0.250", "predicted": hand.Predicted.String(), "measured": "-0.250", "measured_error": "0.091",
			"measured_answers": "120", "origin": "imported", "origin_by": "B. Cole", "file": "'=list.csv", "row": "14", "seed": "", "by": "'@cole",
			"at": "2026-11-24T08:00:00Z", "reason": "'+ Spanish", "notes": `a "quoted" note`, "regroups": "",
			// 1/(1 + e^-0.25) is .562: a little over half.
			"share_right": "56",
		},
	}
	for i, cells := range want {
		for column, want := range cells {
			if got := cell(t, records, i+1, column); got != want {
				t.Errorf("row %d, %s: got %q, want %q", i+1, column, got, want)
			}
		}
	}
	tail := records[0][len(records[0])-len(task.AllTraits()):]
	for i, trait := range task.AllTraits() {
		if tail[i] != trait.String() {
			t.Errorf("trait column %d is %s, want %s", i, tail[i], trait)
		}
	}
}

func cell(t *testing.T, records [][]string, row int, column string) string {
	t.Helper()
	for i, name := range records[0] {
		if name == column {
			return records[row][i]
		}
	}
	t.Fatalf("no column %s", column)
	return ""
}

// A bank's file holds all of every item: built again from its cells alone, as the
// comment on bank.Row tells, it is the same.
func TestItemsComeBackWhole(t *testing.T) {
	text := rapid.StringMatching(`[=+@'"a-c,;\t\n −-]{0,5}`)
	thousandths := rapid.IntRange(-9999, 9999)
	rapid.Check(t, func(t *rapid.T) {
		origin := bank.Origin{Kind: "imported", File: text.Draw(t, "file"), Row: rapid.IntRange(1, 9999).Draw(t, "row"), By: text.Draw(t, "origin by")}
		if rapid.Bool().Draw(t, "generated") {
			origin = bank.Origin{Kind: "generated", Seed: rapid.Uint64().Draw(t, "seed")}
		}
		example := rapid.SampledFrom(standards.Catalogue()).Draw(t, "skill").Example
		item := bank.NewItem(task.MustParse(example), "", origin)
		if rapid.Bool().Draw(t, "by hand") {
			item = bank.NewHandItem("?"+text.Draw(t, "question"), text.Draw(t, "key"), "add-ones", "es", origin)
			item.Predicted = standards.Difficulty(thousandths.Draw(t, "predicted"))
		}
		if rapid.Bool().Draw(t, "evidence") {
			item.Measured = &bank.Measured{
				Difficulty:    standards.Difficulty(thousandths.Draw(t, "measured")),
				StandardError: standards.Difficulty(rapid.IntRange(1, 999).Draw(t, "error")),
				Answers:       rapid.IntRange(1, 999).Draw(t, "answers"),
			}
		}
		item.ID, item.Revision, item.By, item.Reason = "01A", rapid.IntRange(1, 99).Draw(t, "revision"), text.Draw(t, "by"), text.Draw(t, "reason")
		item.Notes, item.Standing = text.Draw(t, "notes"), rapid.SampledFrom([]bank.Standing{bank.Draft, bank.Ready, bank.Retired}).Draw(t, "standing")
		item.At = time.Unix(rapid.Int64Range(0, 4e9).Draw(t, "at"), rapid.Int64Range(0, 999_999_999).Draw(t, "nanoseconds")).UTC()

		var file bytes.Buffer
		if err := export.WriteBank(&file, found(nil, item)); err != nil {
			t.Fatal(err)
		}
		if back := itemOf(t, &file); !reflect.DeepEqual(back, item) {
			t.Fatalf("came back as\n%+v\nnot as\n%+v", back, item)
		}
	})
}

// itemOf builds the item of a file with one row.
func itemOf(t *rapid.T, file io.Reader) bank.Item {
	records, err := csv.NewReader(file).ReadAll()
	if err != nil || len(records) != 2 {
		t.Fatal(records, err)
	}
	row := make(map[string]string)
	for i, name := range records[0] {
		row[name] = cells.Unguard(records[1][i])
	}
	whole := func(column string) int {
		n, err := strconv.Atoi(row[column])
		if err != nil && row[column] != "" {
			t.Fatal(column, err)
		}
		return n
	}
	logits := func(column string) standards.Difficulty {
		d, err := strconv.ParseFloat(row[column], 64)
		if err != nil {
			t.Fatal(column, err)
		}
		return standards.Difficulty(math.Round(1000 * d))
	}
	seed, _ := strconv.ParseUint(row["seed"], 10, 64) // empty where nothing was generated
	origin := bank.Origin{Kind: row["origin"], Seed: seed, File: row["file"], Row: whole("row"), By: row["origin_by"]}
	item := bank.NewHandItem(row["question_es"], row["key"], standards.SkillID(row["skill"]), "es", origin)
	if row["task"] != "" {
		item = bank.NewItem(task.MustParse(row["task"]), task.Look(row["look"]), origin)
	}
	item.Predicted = logits("predicted")
	if row["measured"] != "" {
		item.Measured = &bank.Measured{Difficulty: logits("measured"), StandardError: logits("measured_error"), Answers: whole("measured_answers")}
	}
	item.ID, item.Revision, item.Standing = row["id"], whole("revision"), bank.Standing(row["standing"])
	item.By, item.Reason, item.Notes = row["by"], row["reason"], row["notes"]
	if item.At, err = time.Parse(time.RFC3339Nano, row["at"]); err != nil {
		t.Fatal(err)
	}
	return item
}

func TestWriteBankPassesTheErrorOn(t *testing.T) {
	torn := errors.New("the bank is torn")
	var file bytes.Buffer
	if err := export.WriteBank(&file, found(torn)); !errors.Is(err, torn) {
		t.Errorf("got %v, want %v", err, torn)
	}
}

func TestManyItemsKeepTheirOrder(t *testing.T) {
	const many = 2500 // more than two batches
	var items []bank.Item
	for n := range many {
		items = append(items, bank.Item{ID: "01A", Revision: n})
	}
	var file bytes.Buffer
	if err := export.WriteBank(&file, found(nil, items...)); err != nil {
		t.Fatal(err)
	}
	records, err := csv.NewReader(&file).ReadAll()
	if err != nil || len(records) != many+1 {
		t.Fatalf("%d records, %v, want %d", len(records), err, many+1)
	}
	for n, want := range items {
		if got := cell(t, records, n+1, "revision"); got != strconv.Itoa(want.Revision) {
			t.Fatalf("row %d has revision %s", n+1, got)
		}
	}
}
