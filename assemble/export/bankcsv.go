package export

import (
	"io"
	"iter"

	"evenhand/bank"
)

// bankRow is one line of a bank as CSV.
type bankRow struct {
	bank.Row
	Traits
}

// WriteBank writes one row for each item, up to the first error. What a bank keeps
// beside its items, earlier revisions and uses, is not in the file; nothing in
// it is about a pupil.
func WriteBank(w io.Writer, items iter.Seq2[bank.Item, error]) error {
	return writeRows(w, func(yield func(bankRow, error) bool) {
		for item, err := range items {
			if !yield(bankRow{bank.RowOf(item), TraitsOf(item.Traits)}, err) {
				return
			}
		}
	})
}
