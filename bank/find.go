package bank

import (
	"bytes"
	"iter"
	"slices"
	"strings"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"

	"evenhand/standards"
	"evenhand/standards/task"
)

// Query says which items are wanted: those for which every part that is given
// holds. The zero Query wants all items, retired ones too.
type Query struct {
	Skills     []standards.SkillID // one of these
	Where      standards.Where     // all of these about the traits
	Code       task.Code           // a standard that the item meets
	Standings  []Standing          // one of these
	Looks      []task.Look         // one of these
	Bands      []standards.Band    // one of these
	Difficulty *Range              // within
	ByHand     *bool               // traits by hand, or not
	Unused     string              // not used in this ISO week or later, or never

	Kind, File, Author string // of the origin

	From  string // the ID to begin at, for reading on where an earlier reading ended
	About int    // about how many the caller looks at, where that is few; 0 means many

	Words string // all of these words are in the question, in any language, capitals or not
}

// Range is a range of difficulties, both ends in it.
type Range struct{ From, To standards.Difficulty }

// Find gives the items that a query wants, in the order of their IDs, which is
// that of their adding. Where skills, traits, difficulty, standing, last use or
// origin leave only a part of the bank, only these items are read.
func (b *Bank) Find(q Query) iter.Seq2[Item, error] {
	q.Words = strings.ToLower(q.Words)
	return func(yield func(Item, error) bool) {
		var from []byte
		if q.From != "" {
			id, err := parseID(q.From)
			if err != nil {
				yield(Item{}, err)
				return
			}
			from = id[:]
		}
		var made choice
		pages(b, from, q.About, func(r store.Reader, next []byte, about int) (page []Item, after []byte, err error) {
			if bytes.Equal(next, from) { // the first page, maybe tried again
				if made, err = b.candidates(r, &q); err != nil {
					return nil, nil, err
				}
			}
			if made.narrow {
				page, after, err = b.among(r, &q, made.ids, next, about)
			} else {
				page, after, err = b.scan(r, &q, next, about)
			}
			if err == nil {
				page, err = q.unused(r, page)
			}
			return page, after, err
		})(yield)
	}
}

// Count counts the items of each standing. It reads the index only.
func (b *Bank) Count() (map[Standing]int, error) {
	count := map[Standing]int{}
	err := b.view(func(r store.Reader) error {
		groups, _, err := b.allGroups(r)
		clear(count)
		for i := range groups { // each is large to be copied
			count[groups[i].Standing] += groups[i].Size
		}
		return err
	})
	return count, err
}

// scan reads a page of all items in order, and the ID to go on at, nil at the end.
func (b *Bank) scan(r store.Reader, q *Query, from []byte, about int) (page []Item, next []byte, err error) {
	n := 0
	page = make([]Item, 0, q.room(about))
	for e, err := range r.Scan(itemsBucket, store.Range{From: from, Limit: about + 1}) {
		if err != nil {
			return nil, nil, err
		}
		if n++; n > about {
			return page, bytes.Clone(e.Key), nil
		}
		if page, err = b.keep(q, e.Key, e.Value, page); err != nil {
			return page, nil, err
		}
	}
	return page, nil, nil
}

// room is for how many of so many items a page has room at once: where their texts leave some unread, maybe nearly all,
// for few, and it grows.
func (q *Query) room(items int) int {
	if q.Words != "" || q.Code != "" || len(q.Skills) > 0 {
		return min(items, 64)
	}
	return items
}

// among reads a page of the items with the IDs, which are in order.
func (b *Bank) among(r store.Reader, q *Query, ids []rank, from []byte, about int) (page []Item, next []byte, err error) {
	if from != nil {
		first, _ := slices.BinarySearchFunc(ids, rankOf(from), rank.compare)
		ids = ids[first:]
	}
	if len(ids) > about {
		id := ids[about].id()
		ids, next = ids[:about], id[:]
	}
	now := make([]ulid.ULID, len(ids))
	for i := range now {
		now[i] = ids[i].id()
	}
	records, err := recordsOf(r, now)
	if err != nil {
		return nil, nil, err
	}
	page = make([]Item, 0, len(now))
	for i, id := range now {
		if records[i] == nil {
			return page, nil, b.damaged("an index names item %s, which is not there", id)
		}
		if page, err = b.keep(q, id[:], records[i], page); err != nil {
			return page, nil, err
		}
	}
	return page, next, nil
}

// keep reads an item into the page if the query, but for uses, wants it.
func (b *Bank) keep(q *Query, key, record []byte, page []Item) ([]Item, error) {
	if !q.mayWant(key, record) {
		return page, nil
	}
	at := len(page)
	page = append(page, Item{})
	if err := b.unsealItem(key, record, &page[at]); err != nil {
		return page[:at], err
	}
	if !q.wants(&page[at]) {
		page = page[:at]
	}
	return page, nil
}

// mayWant says whether a query may want an item. A record holds its texts as they are, so that one without a word that
// has no capitals, such as a number, without the code or without any of the skills need not be read. What can't be
// read is for its reader to say.
func (q *Query) mayWant(key, record []byte) bool {
	if q.inTextsOf(record) {
		return true
	}
	text, ok := Unseal(key, record)
	return !ok || len(text) == 0 || text[0] != recordFormat
}

func (q *Query) inTextsOf(record []byte) bool {
	for word := range strings.FieldsSeq(q.Words) {
		if strings.ToUpper(word) == word && !bytes.Contains(record, []byte(word)) {
			return false
		}
	}
	holds := func(skill standards.SkillID) bool { return bytes.Contains(record, []byte(skill)) }
	return bytes.Contains(record, []byte(q.Code)) && (len(q.Skills) == 0 || slices.ContainsFunc(q.Skills, holds))
}

// unused keeps of a page what wasn't used since the query's week.
func (q *Query) unused(r store.Reader, page []Item) ([]Item, error) {
	if q.Unused == "" {
		return page, nil
	}
	ids := make([]ulid.ULID, len(page))
	for i := range page {
		ids[i] = ulid.MustParse(page[i].ID)
	}
	weeks, err := weeksOf(r, ids)
	if err != nil {
		return nil, err
	}
	kept := page[:0]
	for i := range page {
		if usageIn(weeks[ids[i]]).lastWeek < q.Unused {
			kept = append(kept, page[i])
		}
	}
	return kept, nil
}

// wants says whether all but the uses is as the query wishes.
func (q *Query) wants(it *Item) bool {
	g := newGroup(it, usage{})
	return q.wantsGroup(&g) && q.wantsOrigin(it.Origin) &&
		(q.Code == "" || slices.Contains(it.Codes, q.Code)) &&
		(q.Words == "" || it.says(q.Words))
}

// wantsGroup says whether the query could want items of a group.
func (q *Query) wantsGroup(g *Group) bool {
	return oneOf(q.Skills, g.Skill) && oneOf(q.Standings, g.Standing) && oneOf(q.Looks, g.Look) &&
		oneOf(q.Bands, g.Difficulty.Band()) && q.Where.Holds(g.Traits) &&
		(q.Difficulty == nil || q.Difficulty.From <= g.Difficulty && g.Difficulty <= q.Difficulty.To) &&
		(q.ByHand == nil || *q.ByHand == g.ByHand) &&
		(q.Unused == "" || g.LastWeek < q.Unused)
}

func (q *Query) wantsOrigin(o Origin) bool {
	return (q.Kind == "" || q.Kind == o.Kind) && (q.File == "" || q.File == o.File) && (q.Author == "" || q.Author == o.By)
}

// oneOf says whether the list has the value; an empty list has every one.
func oneOf[T comparable](list []T, value T) bool {
	return len(list) == 0 || slices.Contains(list, value)
}

// says looks for words, in small letters, in the item's question.
func (it *Item) says(words string) bool {
	question := it.Task
	for _, wording := range it.Wording {
		question += "\n" + wording
	}
	question = strings.ToLower(question)
	for word := range strings.FieldsSeq(words) {
		if !strings.Contains(question, word) {
			return false
		}
	}
	return true
}
