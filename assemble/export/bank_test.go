package export_test

import (
	"bytes"
	"encoding/csv"
	"errors"
	"iter"
	"strconv"
	"strings"
	"testing"
	"time"

	"evenhand/assemble/export"
	"evenhand/bank"
	"evenhand/standards"
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
	made := bank.NewItem(standards.MustParse("402 - 178 = ?"), standards.LookColumn, bank.Origin{Kind: "generated", Seed: 18446744073709551615})
	made.ID, made.Revision, made.By, made.At = "01A", 1, "generate", time.Date(2026, 11, 25, 8, 0, 0, 500, time.UTC)
	hand := bank.NewHandItem("Mia has -5 points.\r\nHow many more to 0?", "5", "facts-within-20", "en", bank.Origin{Kind: "imported", File: "=list.csv", Row: 14, By: "B. Cole"})
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
	tail := records[0][len(records[0])-len(standards.AllTraits()):]
	for i, trait := range standards.AllTraits() {
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
