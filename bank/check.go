package bank

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"github.com/oklog/ulid/v2"
	"go.etcd.io/bbolt"

	"evenhand/standards"
)

// Report is what Check found.
type Report struct {
	Items     int      `json:"items"`
	Revisions int      `json:"revisions"` // those that stand, too
	Uses      int      `json:"uses"`
	Plans     int      `json:"plans"`    // that stand
	Quizzes   int      `json:"quizzes"`  // that were given
	Problems  []string `json:"problems"` // in plain words, in the order they were found; empty for a whole bank
	More      int      `json:"more"`     // problems beyond those listed
	Older     int      `json:"older"`    // items whose computed fields differ from what this program computes
	Example   string   `json:"example"`  // of such a difference
}

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
	err = b.undisturbed(func(tx *bbolt.Tx) error {
		c := newChecker(b, tx)
		c.report.Problems = []string{}
		c.structure()
		if c.report.Whole() {
			c.items()
			c.revisions()
			c.uses()
			c.table()
			c.plansAndQuizzes()
			c.indexes()
		}
		report = c.report
		return nil
	})
	return report, err
}

// plansAndQuizzes reads every plan and every quiz that was given.
func (c *checker) plansAndQuizzes() {
	plans, err := c.bank.readPlans(c.tx.Bucket(plansBucket), nil)
	if err != nil {
		c.found("%v", err)
	}
	for i, plan := range plans {
		if (i == len(plans)-1 || plans[i+1].Revision == 1) && !plan.Removed {
			c.report.Plans++
		}
	}
	quizzes := c.tx.Bucket(quizzesBucket)
	if quizzes == nil {
		return
	}
	_ = quizzes.ForEach(func(key, sealed []byte) error {
		q, err := c.bank.readQuiz(key, sealed)
		switch {
		case err != nil:
			c.found("%v", err)
		case !q.TakenBack:
			c.report.Quizzes++
		}
		return nil
	})
}

// undisturbed reads while nobody writes, as bbolt's check demands.
func (b *Bank) undisturbed(read func(*bbolt.Tx) error) error { return b.file.Undisturbed(read) }

// Undisturbed reads while nobody writes.
func (f *File) Undisturbed(read func(*bbolt.Tx) error) error {
	if f.db.IsReadOnly() { // then no other program can write
		return f.View(read)
	}
	done := errors.New("done, nothing is to be written")
	err := f.Update(func(tx *bbolt.Tx) error {
		if err := read(tx); err != nil {
			return err
		}
		return done
	})
	if errors.Is(err, done) {
		return nil
	}
	return err
}

// checker goes through a bank once, counting on the way what the indexes must hold.
type checker struct {
	*writer // reads only
	tx      *bbolt.Tx
	report  Report
	latest  map[ulid.ULID]int // the revision that stands
	groups  map[string]int    // how many items each group should have
	origins map[string]int
}

func newChecker(b *Bank, tx *bbolt.Tx) *checker {
	return &checker{b.writer(tx), tx, Report{}, map[ulid.ULID]int{}, map[string]int{}, map[string]int{}}
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
	problem := strings.Map(printable, fmt.Sprintf(format, args...))
	c.report.Problems = append(c.report.Problems, problem)
}

func (c *checker) structure() {
	for _, problem := range c.bank.file.Structure(c.tx) {
		c.found("%s", problem)
	}
}

// Structure looks at the pages of the file and, if they can be trusted so far,
// lets bbolt look at them, too. Nobody may write meanwhile.
func (f *File) Structure(tx *bbolt.Tx) (problems []string) {
	if err := structure(f.path); err != nil {
		return []string{fmt.Sprintf("the file's structure: %v", err)}
	}
	for problem := range tx.Check() {
		problems = append(problems, fmt.Sprintf("the file's structure: %v", problem))
	}
	return problems
}

func (c *checker) items() {
	c.writer.items.ForEach(func(key, record []byte) error {
		c.report.Items++
		if len(key) != len(ulid.ULID{}) {
			c.found("the key of an item, %x, is no ID", key)
			return nil
		}
		var it Item
		id := ulid.ULID(key)
		if err := c.bank.unsealItem(key, record, &it); err != nil {
			c.found("item %s can't be read", id)
			return nil
		}
		c.latest[id] = it.Revision
		c.computed(&it)
		c.indexed(id, &it)
		return nil
	})
}

// computed compares what was kept with what the task gives today. The seal says that
// it is what was written.
func (c *checker) computed(it *Item) {
	again := it.clone()
	if _, err := again.settle(); err != nil {
		c.older("item %s: %v", it.ID, err)
		return
	}
	for _, field := range []struct{ name, kept, now string }{
		{"task", it.Task, again.Task},
		{"key", it.Key, again.Key},
		{"skill", string(it.Skill), string(again.Skill)},
		{"traits", strings.Join(it.Traits.List(), " "), strings.Join(again.Traits.List(), " ")},
		{"standards", standards.JoinCodes(it.Codes), standards.JoinCodes(again.Codes)},
		{"seconds", fmt.Sprint(it.Seconds), fmt.Sprint(again.Seconds)},
	} {
		if field.kept != field.now {
			c.older("item %s, %s: %s %s, the bank says %s", it.ID, it.Question("en"), field.name, field.now, field.kept)
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

// indexed looks the item up in every index.
func (c *checker) indexed(id ulid.ULID, it *Item) {
	if !bytes.Equal(c.fingerprint.Get(printKey(it.Fingerprint())), id[:]) {
		c.found("item %s is not found by what it asks", id)
	}
	g := newGroup(it, usageOf(c.writer.uses, id))
	name := g.appendName(nil)
	c.groups[string(name)]++
	if member := lookUp(c.writer.groups, name, memberRest(id)); !bytes.Equal(member, appendMember(nil, it)) {
		c.found("item %s is not found in its group", id)
	}
	name = originName(it.Origin)
	c.origins[string(name)]++
	if lookUp(c.writer.origins, name, id[:]) == nil {
		c.found("item %s is not found by its origin", id)
	}
}

// lookUp finds a member's value in a set; nil if it isn't there.
func lookUp(s *sets, name, rest []byte) []byte {
	value := s.names.Get(name)
	if value == nil {
		return nil
	}
	set := readSet(value)
	return s.members.Get(s.memberKey(&set, rest))
}

// revisions looks for gaps: each item has revisions 1 to the one before it stands.
func (c *checker) revisions() {
	count := map[ulid.ULID]int{}
	c.writer.revisions.ForEach(func(key, record []byte) error {
		var it Item
		id := ulid.ULID(key[:len(ulid.ULID{})])
		err := c.bank.unsealItem(key, record, &it)
		if err != nil || !bytes.Equal(key, revisionKey(id, it.Revision)) {
			c.found("an earlier revision of item %s can't be read", id)
			return nil
		}
		count[id]++
		if it.Revision != count[id] || it.Revision >= c.latest[id] {
			c.found("item %s has a revision %d out of order", id, it.Revision)
		}
		c.report.Revisions++
		return nil
	})
	for id, latest := range c.latest {
		c.report.Revisions++
		if count[id] != latest-1 {
			c.found("item %s stands in revision %d, but %d earlier ones are kept", id, latest, count[id])
		}
	}
}

func (c *checker) table() {
	if _, err := c.bank.readTable(c.tx); err != nil {
		c.found("what was learnt from papers can't be read")
	}
}

func (c *checker) uses() {
	c.writer.uses.ForEach(func(key, value []byte) error {
		c.report.Uses++
		id := ulid.ULID(key[:len(ulid.ULID{})])
		if c.latest[id] == 0 {
			c.found("a use of item %s is kept, but not the item", id)
		}
		if _, err := readUse(key, value); err != nil {
			c.found("a use of item %s can't be read", id)
		}
		return nil
	})
}

// indexes compares sizes: as every item was found in its places, an index that
// is as large as it should be holds nothing else.
func (c *checker) indexes() {
	for _, index := range []struct {
		name   string
		bucket *bbolt.Bucket
		want   int
	}{
		{"fingerprints", c.fingerprint, c.report.Items},
		{"groups", c.writer.groups.names, len(c.groups)},
		{"members of groups", c.writer.groups.members, c.report.Items},
		{"origins", c.writer.origins.names, len(c.origins)},
		{"members of origins", c.writer.origins.members, c.report.Items},
	} {
		if size := index.bucket.Stats().KeyN; size != index.want {
			c.found("the index of %s has %d entries, but should have %d", index.name, size, index.want)
		}
	}
	c.sizes("groups", c.writer.groups.names, c.groups)
	c.sizes("origins", c.writer.origins.names, c.origins)
	slices.Sort(c.report.Problems)
}

// sizes compares the size that each set says it has with the items counted.
func (c *checker) sizes(index string, names *bbolt.Bucket, want map[string]int) {
	names.ForEach(func(name, value []byte) error {
		if size := int(readSet(value).size); size != want[string(name)] {
			c.found("an entry of the index of %s counts %d items where there are %d", index, size, want[string(name)])
		}
		return nil
	})
}
