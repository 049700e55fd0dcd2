package qti_test

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	"evenhand/assemble/export"
	"evenhand/assemble/export/qti"
	"evenhand/bank"
	"evenhand/standards/task"
)

// An item in two forms is one file, in two looks two; a form has its items in the order of the quiz.
func TestOfQuiz(t *testing.T) {
	rows := []export.QuizRow{
		{Form: "A", Number: 1, ID: "01", Key: "83", Look: "sentence"},
		{Form: "A", Number: 2, ID: "02", Key: "4:30", Look: "clock-face"},
		{Form: "B", Number: 1, ID: "02", Key: "4:30", Look: "clock-face"},
		{Form: "B", Number: 2, ID: "01", Key: "83", Look: "column"},
	}
	tasks := map[string]string{"01": "47 + 36 = ?", "02": "read 4:30"}
	get := func(id string) (bank.Item, error) {
		if tasks[id] == "" {
			return bank.Item{}, errors.New("no item " + id)
		}
		item := bank.NewItem(task.MustParse(tasks[id]), "", bank.Origin{})
		item.ID = id
		return item, nil
	}
	p, err := qti.OfQuiz("Friday check", "es", rows, get)
	if err != nil {
		t.Fatal(err)
	}
	want := []qti.Test{
		{ID: "form-A", Title: "Friday check, forma A", Items: []string{"item-01", "item-02"}},
		{ID: "form-B", Title: "Friday check, forma B", Items: []string{"item-02", "item-01-column"}},
	}
	if !reflect.DeepEqual(p.Tests, want) || len(p.Items) != 3 || p.Items[2].BankID != "01" || p.Items[2].Picture == nil {
		t.Errorf("got %+v, %d items", p.Tests, len(p.Items))
	}
	same(t, read(t, written(t, p)), p)

	rows[3].Key = "84"
	_, err = qti.OfQuiz("Friday check", "en", rows, get)
	if err == nil || !strings.Contains(err.Error(), `B2: item 01 has the answer "83" in the bank and "84" in the quiz`) {
		t.Errorf("got %v", err)
	}
	rows[3].ID = "03"
	if _, err := qti.OfQuiz("Friday check", "en", rows, get); err == nil || err.Error() != "B2: no item 03" {
		t.Errorf("got %v", err)
	}
}

// The metadata is where LOM has a place for it: IEEE 1484.12.1-2002, 1.1, 5.8, 5.9, 9.1, 9.2.
func TestMetadata(t *testing.T) {
	item := bank.NewItem(task.MustParse("27 + 35 = ?"), "", bank.Origin{})
	item.ID, item.Seconds = "01", 45
	p, err := qti.OfQuiz("Friday check", "en", []export.QuizRow{{Form: "A", Number: 1, ID: "01", Key: "62"}}, func(string) (bank.Item, error) { return item, nil })
	if err != nil {
		t.Fatal(err)
	}
	resource := parsed(t, written(t, p))["imsmanifest.xml"].named("resource")[0]
	var got []string
	for _, name := range []string{"entry", "value", "duration", "id", "interactionType"} {
		for _, n := range resource.named(name) {
			got = append(got, n.Text)
		}
	}
	// Common Core State Standards (2010): 27 + 35 is 2.NBT.B.5.
	want := []string{"01", "27 + 35 = ?", "medium", "educational objective", "competency", "PT45S", "2.NBT.B.5", "add-two-digit", "textEntryInteraction"}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got %q\nwant %q", got, want)
	}
}
