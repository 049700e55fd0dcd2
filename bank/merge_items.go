package bank

import (
	"errors"
	"slices"
	"time"

	"github.com/oklog/ulid/v2"

	"evenhand/bank/lineage"
	"evenhand/bank/store"
)

// mergeBatch is about how many items are merged in one transaction.
const mergeBatch = 2000

func newMerger(into, from *Bank, o MergeOptions, told *Merged) (*merger, error) {
	g := &merger{into: into, from: from, options: o, told: told, classes: classes{}}
	for i, b := range []*Bank{into, from} {
		aliases, err := b.aliasesOf()
		if err != nil {
			return nil, err
		}
		g.aliases[i] = aliases
		for head, others := range aliases {
			for _, other := range others {
				g.classes.join(head, other)
			}
		}
	}
	return g, nil
}

// items merges all items. Those that asked the same when they were added are merged in one
// transaction, so that doing it again after an interruption finds the same pairs.
func (g *merger) items() error {
	ours, err := g.into.births()
	if err != nil {
		return err
	}
	theirs, err := g.from.births()
	if err != nil {
		return err
	}
	sameBirths(ours, theirs, func(s group) {
		for i := range min(len(s.ours), len(s.theirs)) {
			g.classes.join(s.ours[i], s.theirs[i])
		}
	})
	members := map[ulid.ULID][]ulid.ULID{} // our items of each class that has another ID here
	for _, birth := range ours {
		if root := g.classes.root(birth.id); root != birth.id || len(g.aliases[0][root]) > 0 {
			members[root] = append(members[root], birth.id)
		}
	}
	here := make(map[ulid.ULID]bool, len(ours))
	for _, birth := range ours {
		here[birth.id] = true
	}
	var batch []class
	of := map[ulid.ULID]int{}
	done := 0
	flush := func() error {
		err := g.mergeClasses(batch)
		done += len(batch)
		batch = batch[:0]
		clear(of)
		if g.options.Advance != nil {
			g.options.Advance(done)
		}
		return err
	}
	var failed error
	sameBirths(ours, theirs, func(s group) {
		if failed != nil {
			return
		}
		for _, id := range s.theirs {
			root := g.classes.root(id)
			if at, ok := of[root]; ok {
				batch[at].theirs = append(batch[at].theirs, id)
				continue
			}
			c := class{head: root, ours: members[root], theirs: []ulid.ULID{id}}
			if here[root] && !slices.Contains(c.ours, root) {
				c.ours = append(c.ours, root)
			}
			of[root] = len(batch)
			batch = append(batch, c)
		}
		if len(batch) >= mergeBatch {
			failed = flush()
		}
	})
	if failed != nil {
		return failed
	}
	return flush()
}

// class is an item that goes by these IDs in the two banks.
type class struct {
	head         ulid.ULID
	ours, theirs []ulid.ULID
}

// state is all that a bank keeps of an item.
type state struct {
	line lineage.Line[Item]
	uses map[string]useMark // by week and quiz
}

// useMark is a use, or one that was taken back.
type useMark struct {
	at   time.Time
	back bool
}

// later says that m overrules the other.
func (m useMark) later(other useMark) bool {
	if !m.at.Equal(other.at) {
		return m.at.After(other.at)
	}
	return m.back && !other.back
}

// stateOf reads what a bank keeps of the items of a class.
func (b *Bank) stateOf(r store.Reader, ids []ulid.ULID) (s state, apart bool, err error) {
	s.uses = map[string]useMark{}
	for i, id := range ids {
		l, err := b.lineOf(r, id)
		if err != nil {
			return s, false, err
		}
		if i == 0 {
			s.line = l
		} else {
			joined, both := lineage.Join(s.line, l)
			s.line, apart = joined, apart || both
		}
		for _, bucket := range []string{usesBucket, takenBackBucket} {
			for e, err := range r.Scan(bucket, store.Prefix(id[:])) {
				if err != nil {
					return s, false, err
				}
				use, err := readUse(e.Key, e.Value)
				if err != nil {
					return s, false, b.damaged("a use of item %s can't be read", id)
				}
				s.note(string(e.Key[len(id):]), useMark{use.At, bucket == takenBackBucket})
			}
		}
	}
	return s, apart, nil
}

func (s *state) note(use string, mark useMark) (news bool) {
	before, known := s.uses[use]
	if known && !mark.later(before) {
		return false
	}
	s.uses[use] = mark
	return true
}

func (g *merger) mergeClasses(batch []class) error {
	theirs := make([]state, len(batch))
	err := g.from.view(func(r store.Reader) (err error) {
		for i, c := range batch {
			if theirs[i], _, err = g.from.stateOf(r, c.theirs); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	before := *g.told
	return g.write(func(w *writer) error {
		*g.told = before // the update may be tried again
		for i, c := range batch {
			if err := g.mergeClass(w, c, theirs[i]); err != nil {
				return err
			}
		}
		return nil
	})
}

// mergeClass makes one item of all that both banks have of it.
func (g *merger) mergeClass(w *writer, c class, theirs state) error {
	if len(c.ours) == 0 {
		g.told.Items++
		return g.put(w, c, theirs)
	}
	ours, _, err := g.into.stateOf(w, c.ours)
	if err != nil {
		return err
	}
	next, apart := lineage.Join(ours.line, theirs.line)
	uses, news := state{line: next, uses: map[string]useMark{}}, 0
	for use, mark := range ours.uses {
		uses.uses[use] = mark
	}
	for use, mark := range theirs.uses {
		if uses.note(use, mark) {
			news++
		}
	}
	others := g.othersOf(c)
	fresh := !slices.Equal(c.ours, []ulid.ULID{c.head}) || len(others) != len(g.aliases[0][c.head])
	if !fresh && news == 0 && sameLine(next, ours.line) {
		return nil
	}
	g.tell(c, others, fresh, next, len(ours.line), apart, news)
	for _, id := range c.ours {
		if err := w.drop(id); err != nil {
			return err
		}
	}
	return g.put(w, c, uses)
}

// sameLine says that a join has changed nothing.
func sameLine(a, b line) bool {
	return slices.EqualFunc(a, b, func(x, y lineage.Entry[Item]) bool {
		return x.Body == y.Body && x.Placed == y.Placed && x.Apart == y.Apart
	})
}

func (g *merger) tell(c class, others []ulid.ULID, fresh bool, l line, had int, apart bool, uses int) {
	stands := l[len(l)-1].Value
	if apart {
		if a, ok := apartOf(l, c.head.String()); ok {
			g.told.Apart = append(g.told.Apart, a)
		}
	} else if len(l) > had && !fresh {
		g.told.Ahead++
	}
	if fresh {
		j := Joined{ID: c.head.String(), Question: stands.Asks()}
		for _, id := range others {
			j.Others = append(j.Others, id.String())
		}
		g.told.Joined = append(g.told.Joined, j)
	}
	g.told.Uses += uses
}

// othersOf lists the other IDs of a class, in order.
func (g *merger) othersOf(c class) []ulid.ULID {
	all := slices.Concat(c.ours, c.theirs)
	for _, aliases := range g.aliases {
		for _, id := range slices.Concat(c.ours, c.theirs) {
			all = append(all, aliases[id]...)
		}
	}
	slices.SortFunc(all, ulid.ULID.Compare)
	all = slices.Compact(all)
	return slices.DeleteFunc(all, func(id ulid.ULID) bool { return id == c.head })
}

// drop takes an item out of every bucket, to be put back otherwise.
func (w *writer) drop(id ulid.ULID) error {
	w.records[id], w.weeks[id] = nil, nil
	if err := w.load([]ulid.ULID{id}); err != nil {
		return err
	}
	var it Item
	if err := w.get(id, &it); err != nil {
		return err
	}
	err := errors.Join(w.ungroup(id, &it), w.origins.remove(originName(it.Origin), id[:]),
		release(w, printKey(it.Fingerprint()), id), w.Delete(itemsBucket, id[:]))
	for _, bucket := range []string{revisionsBucket, placesBucket, usesBucket, takenBackBucket} {
		err = errors.Join(err, w.deleteAll(bucket, id[:]))
	}
	delete(w.records, id)
	delete(w.weeks, id)
	return err
}

// put writes the item of a class.
func (g *merger) put(w *writer, c class, s state) error {
	id := c.head
	for i := range s.line {
		e := &s.line[i]
		it := e.Value
		it.ID, it.Revision = id.String(), i+1
		if e.Placed {
			if err := putPlace(w, id, it.Revision, e); err != nil {
				return err
			}
		}
		if i < len(s.line)-1 {
			key := revisionKey(id, it.Revision)
			if err := w.Put(revisionsBucket, key, sealItem(key, &it)); err != nil {
				return err
			}
			continue
		}
		w.records[id] = sealItem(id[:], &it)
		if err := w.putUses(id, s.uses); err != nil {
			return err
		}
		err := errors.Join(w.Put(itemsBucket, id[:], w.records[id]), claim(w, printKey(it.Fingerprint()), id),
			w.origins.add(originName(it.Origin), id[:], nil), w.group(id, &it))
		if err != nil {
			return err
		}
	}
	for _, other := range g.othersOf(c) {
		if err := w.Put(joinedBucket, other[:], id[:]); err != nil {
			return err
		}
	}
	return nil
}

func (w *writer) putUses(id ulid.ULID, uses map[string]useMark) error {
	w.weeks[id] = nil
	for use, mark := range uses {
		key := append(id[:], use...)
		bucket := usesBucket
		if mark.back {
			bucket = takenBackBucket
		} else {
			w.weeks[id] = append(w.weeks[id], use[:weekSize])
		}
		if err := w.Put(bucket, key, Seal(key, appendTime(nil, mark.at))); err != nil {
			return err
		}
	}
	return nil
}
