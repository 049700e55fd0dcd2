package bank

import (
	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
)

// Told says what a write to the bank did that colleagues want to hear of: "item", "plan", "quiz", "quizback", "list" or
// "listback", and who did it, where that is known. The write is told by the buckets of the store that it changed, with
// one key of each; for one that changed nothing of these what is empty.
func (b *Bank) Told(changed map[string][]byte) (what, by string, err error) {
	err = b.view(func(r store.Reader) error {
		what, by = "", ""
		if key := changed[listsBucket]; key != nil {
			lists, err := b.readLists(r, key)
			if err != nil || len(lists) == 0 {
				return err
			}
			what, by = "list", lists[0].By
			if back := lists[0].TakenBack; back != nil {
				what, by = "listback", back.By
			}
			return nil
		}
		if key := changed[quizzesBucket]; key != nil {
			value, err := r.Get(quizzesBucket, key)
			if err != nil || value == nil {
				return err
			}
			q, err := b.readQuiz(store.Entry{Key: key, Value: value})
			if what, by = "quiz", q.By; q.TakenBack {
				what, by = "quizback", "" // nobody noted who
			}
			return err
		}
		if key := changed[plansBucket]; key != nil {
			plans, err := b.readPlans(r, key)
			if err != nil || len(plans) == 0 {
				return err
			}
			what, by = "plan", plans[0].By
			return nil
		}
		if key := changed[itemsBucket]; len(key) == len(ulid.ULID{}) {
			value, err := r.Get(itemsBucket, key)
			if err != nil || value == nil {
				return err
			}
			var it Item
			err = b.unsealItem(key, value, &it)
			what, by = "item", it.By
			return err
		}
		return nil
	})
	return what, by, err
}
