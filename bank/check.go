package bank

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/store"
	"evenhand/standards/words"
)

// Report is what Check found.
type Report struct {
	Items     int       `json:"items"`
	Revisions int       `json:"revisions"` // those that stand, too
	Uses      int       `json:"uses"`
	Plans     int       `json:"plans"`    // that stand
	Quizzes   int       `json:"quizzes"`  // that were given
	Lists     int       `json:"lists"`    // that came in
	Problems  []Problem `json:"problems"` // in plain words, in the order they were found; empty for a whole bank
	More      int       `json:"more"`     // problems beyond those listed
	Older     int       `json:"older"`    // items whose computed fields differ from what this program computes
	Example   string    `json:"example"`  // of such a difference
}

// Problem is something that is damaged, in words; in JSON it reads in English.
type Problem struct{ *words.Told }

// MarshalJSON writes it in English.
func (p Problem) MarshalJSON() ([]byte, error) { return json.Marshal(p.String()) }

// Whole says that nothing is damaged.
func (r Report) Whole() bool { return len(r.Problems) == 0 }

// mostProblems is how many problems a report lists; a damaged index may have
// one for every item.
const mostProblems = 100

// Check proves the bank whole: the structure of the file; every item readable and
// as it was written; its revisions without a gap; every item in each index in its
// place, and nothing else in them. It counts apart the items whose key, skill, traits,
// codes or seconds this program works out otherwise: that is no damage, another
// evenhand wrote them. An error means that it could not be finished.
func (b *Bank) Check() (report Report, err error) {
	problems, err := b.store.Inspect(b.ctx)
	if err != nil {
		return report, err
	}
	compute, err := b.recomputer()
	if err != nil && !errors.As(err, new(store.Damaged)) {
		return report, err
	}
	err = b.view(func(r store.Reader) error {
		c := newChecker(b, r, compute)
		for _, problem := range problems {
			c.found("%s", problem)
		}
		var err error
		if c.report.Whole() {
			err = c.entries()
		}
		report = c.report
		return err
	})
	return report, err
}

// plansAndQuizzes reads every plan, every quiz that was given and the settings.
func (c *checker) plansAndQuizzes() error {
	plans, err := c.bank.readPlans(c, nil)
	if errors.As(err, new(store.Damaged)) {
		c.found("%v", err)
	} else if err != nil {
		return err
	}
	for i, plan := range plans {
		if (i == len(plans)-1 || plans[i+1].Revision == 1) && !plan.Removed {
			c.report.Plans++
		}
	}
	if _, err := c.bank.readReview(c); errors.As(err, new(store.Damaged)) {
		c.found("%v", err)
	} else if err != nil {
		return err
	}
	for e, err := range c.Scan(quizzesBucket, store.Range{}) {
		if err != nil {
			return err
		}
		q, err := c.bank.readQuiz(e)
		switch {
		case err != nil:
			c.found("%v", err)
		case !q.TakenBack:
			c.report.Quizzes++
		}
	}
	return nil
}

// checker goes through a bank once, counting on the way what the indexes must hold.
type checker struct {
	store.Reader
	bank    *Bank
	compute recomputer
	report  Report
	latest  map[ulid.ULID]int // the revision that stands
	groups  map[string]*counted
	origins map[string]*counted
}

// counted is a set as it is kept, and how many items it should have.
type counted struct {
	set
	here bool
	want int
}

func newChecker(b *Bank, r store.Reader, compute recomputer) *checker {
	return &checker{r, b, compute, Report{Problems: []Problem{}}, map[ulid.ULID]int{}, map[string]*counted{}, map[string]*counted{}}
}

func (c *checker) entries() error {
	for _, part := range []func() error{c.sets, c.items, c.revisions, c.uses, c.table, c.plansAndQuizzes, c.lists, c.indexes} {
		if err := part(); err != nil {
			return err
		}
	}
	slices.SortFunc(c.report.Problems, func(a, b Problem) int { return strings.Compare(a.String(), b.String()) })
	return nil
}

// sets reads the sets of both indexes.
func (c *checker) sets() error {
	for bucket, into := range map[string]map[string]*counted{groupsBucket: c.groups, originsBucket: c.origins} {
		for e, err := range c.Scan(bucket, store.Range{}) {
			if err != nil {
				return err
			}
			if len(e.Value) != setNumber+4 {
				c.found("an entry of the index of %s can't be read", words.Term(bucket))
				continue
			}
			into[string(e.Key)] = &counted{set: readSet(e.Value), here: true}
		}
	}
	return nil
}

// printable puts a space for what a damaged text may do to a terminal.
func printable(r rune) rune {
	if unicode.IsPrint(r) {
		return r
	}
	return ' '
}

func (c *checker) found(format string, args ...any) {
	if len(c.report.Problems) == mostProblems {
		c.report.More++
		return
	}
	c.report.Problems = append(c.report.Problems, Problem{printed(words.Sayf(format, args...))})
}

// printed is a sentence in whose texts nothing stands that can't be printed.
func printed(t *words.Told) *words.Told {
	args := slices.Clone(t.Args)
	for i, arg := range args {
		switch arg := arg.(type) {
		case string:
			args[i] = strings.Map(printable, arg)
		case *words.Told:
			args[i] = printed(arg)
		case error:
			args[i] = printed(words.ToldBy(arg))
		}
	}
	return words.Sayf(t.Format, args...)
}

// together is how many items are looked up in the indexes at once.
const together = 2000

func (c *checker) items() error {
	some := make([]Item, 0, together)
	for e, err := range c.Scan(itemsBucket, store.Range{}) {
		if err != nil {
			return err
		}
		c.report.Items++
		if len(e.Key) != len(ulid.ULID{}) {
			c.found("the key of an item, %x, is no ID", e.Key)
			continue
		}
		var it Item
		if err := c.bank.unsealItem(e.Key, e.Value, &it); err != nil {
			c.found("item %s can't be read", ulid.ULID(e.Key))
			continue
		}
		c.latest[ulid.ULID(e.Key)] = it.Revision
		c.computed(&it)
		if some = append(some, it); len(some) < together {
			continue
		}
		if err := c.indexed(some); err != nil {
			return err
		}
		some = some[:0]
	}
	return c.indexed(some)
}

// computed compares what was kept with what the task gives today. The seal says that
// it is what was written.
func (c *checker) computed(it *Item) {
	again, err := c.compute.item(*it)
	if err != nil {
		c.older("item %s: %v", it.ID, err)
		return
	}
	for _, f := range computed(*it, again) {
		if f.Old != f.New {
			c.older("item %s, %s: %s %s, the bank says %s", it.ID, it.Question("en"), f.Name, f.New, f.Old)
			return
		}
	}
}

// older counts an item that another evenhand worked out otherwise.
func (c *checker) older(format string, args ...any) {
	if c.report.Older++; c.report.Older == 1 {
		c.report.Example = strings.Map(printable, fmt.Sprintf(format, args...))
	}
}

// revisions looks for gaps: each item has revisions 1 to the one before it stands.
func (c *checker) revisions() error {
	count := map[ulid.ULID]int{}
	for e, err := range c.Scan(revisionsBucket, store.Range{}) {
		if err != nil {
			return err
		}
		if len(e.Key) < len(ulid.ULID{}) {
			c.found("the key of an earlier revision, %x, holds no ID", e.Key)
			continue
		}
		var it Item
		id := ulid.ULID(e.Key[:len(ulid.ULID{})])
		if err := c.bank.unsealItem(e.Key, e.Value, &it); err != nil || !bytes.Equal(e.Key, revisionKey(id, it.Revision)) {
			c.found("an earlier revision of item %s can't be read", id)
			continue
		}
		count[id]++
		if it.Revision != count[id] || it.Revision >= c.latest[id] {
			c.found("item %s has a revision %d out of order", id, it.Revision)
		}
		c.report.Revisions++
	}
	for id, latest := range c.latest {
		c.report.Revisions++
		if count[id] != latest-1 {
			c.found("item %s stands in revision %d, but %d earlier ones are kept", id, latest, count[id])
		}
	}
	return nil
}

func (c *checker) table() error {
	_, err := c.bank.readTable(c)
	if errors.As(err, new(store.Damaged)) {
		c.found("what was learnt from papers can't be read")
		return nil
	}
	return err
}

func (c *checker) uses() error {
	for e, err := range c.Scan(usesBucket, store.Range{}) {
		if err != nil {
			return err
		}
		c.report.Uses++
		if len(e.Key) < len(ulid.ULID{}) {
			c.found("the key of a use, %x, holds no ID", e.Key)
			continue
		}
		id := ulid.ULID(e.Key[:len(ulid.ULID{})])
		if c.latest[id] == 0 {
			c.found("a use of item %s is kept, but not the item", id)
		}
		if _, err := readUse(e.Key, e.Value); err != nil {
			c.found("a use of item %s can't be read", id)
		}
	}
	return nil
}
