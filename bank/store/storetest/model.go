package storetest

import (
	"flag"
	"maps"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"evenhand/bank/store"
)

// contents is what a store should hold.
type contents struct {
	entries   map[string]map[string]string // by bucket and key
	sequences map[string]uint64
}

func (c contents) clone() contents {
	next := contents{map[string]map[string]string{}, maps.Clone(c.sequences)}
	for bucket, entries := range c.entries {
		next.entries[bucket] = maps.Clone(entries)
	}
	return next
}

func (c contents) bucket(name string) map[string]string {
	if c.entries[name] == nil {
		c.entries[name] = map[string]string{}
	}
	return c.entries[name]
}

// within is the keys and values of a range, as a Scan gives them.
func (c contents) within(bucket string, r store.Range) (list []string) {
	keys := slices.Sorted(maps.Keys(c.entries[bucket]))
	if r.Backward {
		slices.Reverse(keys)
	}
	for _, key := range keys {
		if key < string(r.From) || r.To != nil && key >= string(r.To) {
			continue
		}
		if r.Limit > 0 && len(list) == 2*r.Limit {
			break
		}
		list = append(list, key, c.entries[bucket][key])
	}
	return list
}

// machine uses a store at random; the store must say the same as plain maps all the way.
type machine struct {
	maker   Maker
	address string
	store   store.Store
	want    contents
}

func model(t *testing.T, maker Maker) {
	if maker.Shared { // behind a network all takes ten times as long
		fewer(t, "15")
	}
	rapid.Check(t, func(r *rapid.T) {
		m := &machine{maker: maker, address: maker.Place(t), want: contents{map[string]map[string]string{}, map[string]uint64{}}}
		m.store = madeAt(r, maker, m.address)
		defer func() { must(r, m.store.Close()) }()
		r.Repeat(map[string]func(*rapid.T){
			"update": m.update,
			"fail":   m.fail,
			"reopen": m.reopen,
			"": func(t *rapid.T) {
				must(t, m.store.View(background, func(r store.Reader) error { return m.agree(t, r, m.want) }))
			},
		})
	})
}

// fewer runs laws of rapid only so many times.
func fewer(t *testing.T, checks string) {
	usual := flag.Lookup("rapid.checks")
	before := usual.Value.String()
	must(t, flag.Set(usual.Name, checks))
	t.Cleanup(func() { must(t, flag.Set(usual.Name, before)) })
}

var (
	anyBucket = rapid.SampledFrom([]string{"items", "uses"})
	anyKey    = rapid.Custom(func(t *rapid.T) string { // few enough to meet often, of bytes that are easily mixed up
		return rapid.StringOfN(rapid.RuneFrom([]rune("\x00\x01a'\\")), 1, 3, -1).Draw(t, "key")
	})
	anyValue = rapid.SampledFrom([]string{"", "\x00", "83", "eighty-three", "\xff\xfe"})
)

func anyRange(t *rapid.T) store.Range {
	r := store.Range{Backward: rapid.Bool().Draw(t, "backward"), Limit: rapid.IntRange(0, 4).Draw(t, "limit")}
	if rapid.Bool().Draw(t, "from") {
		r.From = []byte(anyKey.Draw(t, "lowest"))
	}
	if rapid.Bool().Draw(t, "to") {
		r.To = []byte(anyKey.Draw(t, "above"))
	}
	return r
}

// write does some things in an Update and checks on the way that it reads what it wrote.
func (m *machine) write(t *rapid.T, w store.Writer, now contents) error {
	for range rapid.IntRange(1, 6).Draw(t, "steps") {
		name := anyBucket.Draw(t, "bucket")
		var err error
		switch rapid.IntRange(0, 5).Draw(t, "step") {
		case 0, 1, 2:
			key, value := anyKey.Draw(t, "key"), anyValue.Draw(t, "value")
			err = w.Put(name, []byte(key), []byte(value))
			now.bucket(name)[key] = value
		case 3:
			key := anyKey.Draw(t, "gone")
			err = w.Delete(name, []byte(key))
			delete(now.entries[name], key)
		case 4:
			n := uint64(rapid.IntRange(1, 3).Draw(t, "numbers"))
			now.bucket(name)
			now.sequences[name] += n
			var last uint64
			if last, err = w.Next(name, n); last != now.sequences[name] {
				t.Fatalf("the sequence gave %d, want %d", last, now.sequences[name])
			}
		case 5:
			err = m.agree(t, w, now)
		}
		if err != nil {
			return err
		}
	}
	return m.agree(t, w, now)
}

func (m *machine) update(t *rapid.T) {
	now := m.want.clone()
	must(t, m.store.Update(background, func(w store.Writer) error { return m.write(t, w, now) }))
	m.want = now
}

// fail writes, too, and then thinks better of it.
func (m *machine) fail(t *rapid.T) {
	now := m.want.clone()
	err := m.store.Update(background, func(w store.Writer) error {
		if err := m.write(t, w, now); err != nil {
			return err
		}
		return errOurs
	})
	if err != errOurs {
		t.Fatalf("the error is %v, want the caller's own", err)
	}
}

func (m *machine) reopen(t *rapid.T) {
	must(t, m.store.Close())
	var err error
	m.store, err = m.maker.Open(m.address, store.Options{})
	must(t, err)
}

// agree compares what is read with what should be there.
func (m *machine) agree(t *rapid.T, r store.Reader, want contents) error {
	names, err := r.Buckets()
	if err != nil {
		return err
	}
	if should := slices.Sorted(maps.Keys(want.entries)); !slices.Equal(names, should) {
		t.Fatalf("the buckets are %q, want %q", names, should)
	}
	for _, name := range []string{"items", "uses"} {
		if sequence, err := r.Sequence(name); err != nil || sequence != want.sequences[name] {
			t.Fatalf("the sequence of %q stands at %d (%v), want %d", name, sequence, err, want.sequences[name])
		}
		ranges := []store.Range{anyRange(t), {}, anyRange(t)}[:rapid.IntRange(1, 3).Draw(t, "ranges")]
		var should []string
		for _, one := range ranges {
			should = append(should, want.within(name, one)...)
		}
		list, err := scanned(r, name, ranges...)
		if err != nil {
			return err
		}
		if !slices.Equal(list, should) {
			t.Fatalf("%q, %+v: scanned %q, want %q", name, ranges, list, should)
		}
		if err := m.agreeOnKeys(t, r, name, want); err != nil {
			return err
		}
	}
	return nil
}

func (m *machine) agreeOnKeys(t *rapid.T, r store.Reader, name string, want contents) error {
	keys := rapid.SliceOfN(anyKey, 1, 5).Draw(t, "keys")
	raw := make([][]byte, len(keys))
	for i, key := range keys {
		raw[i] = []byte(key)
	}
	values, err := r.GetAll(name, raw)
	if err != nil {
		return err
	}
	for i, key := range keys {
		one, err := r.Get(name, raw[i])
		if err != nil {
			return err
		}
		value, there := want.entries[name][key]
		if string(values[i]) != value || (values[i] != nil) != there || string(one) != value || (one != nil) != there {
			t.Fatalf("%q in %q is %q and %q, want %q (there: %v)", key, name, values[i], one, value, there)
		}
	}
	return nil
}
