package assemble_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"evenhand/assemble"
	"evenhand/bank"
	"evenhand/standards"
)

// Of any form, fewer items are a part of it in its order with its numbers; each row of the plan keeps its share to
// within one item; and the middle of what is kept of a row lies no further out than its items do.
func TestFewerKeepsTheBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var form assemble.Form
		size := map[string]int{}
		for i := range rapid.IntRange(1, 24).Draw(t, "items") {
			row := fmt.Sprint("row ", rapid.IntRange(1, 4).Draw(t, "row"))
			size[row]++
			item := bank.Item{Predicted: standards.Difficulty(rapid.IntRange(-3000, 3000).Draw(t, "difficulty"))}
			form.Items = append(form.Items, assemble.Placed{Number: i + 1, Row: row, Item: item})
		}
		count := rapid.IntRange(1, len(form.Items)).Draw(t, "count")
		fewer, err := assemble.Fewer(form, count)
		if err != nil || len(fewer.Items) != count {
			t.Fatalf("%d items, want %d (%v)", len(fewer.Items), count, err)
		}
		kept := map[string]int{}
		for i, placed := range fewer.Items {
			if i > 0 && placed.Number <= fewer.Items[i-1].Number {
				t.Fatal("items are not in order, or one stands twice")
			}
			if form.Items[placed.Number-1].Row != placed.Row {
				t.Fatal("an item has another number")
			}
			kept[placed.Row]++
		}
		for row, n := range size {
			share := float64(n*count) / float64(len(form.Items))
			if d := float64(kept[row]) - share; d >= 1 || d <= -1 {
				t.Fatalf("%s keeps %d of %d items, its share is %.2f", row, kept[row], n, share)
			}
		}
	})
	for _, count := range []int{0, 3} {
		if _, err := assemble.Fewer(assemble.Form{Name: "A", Items: make([]assemble.Placed, 2)}, count); err == nil {
			t.Errorf("%d of 2 items were kept", count)
		}
	}
}
