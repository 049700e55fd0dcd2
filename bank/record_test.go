package bank

import (
	"reflect"
	"testing"
	"time"

	"pgregory.net/rapid"

	"evenhand/standards"
	"evenhand/standards/task"
)

// anyItem draws items of every shape, sensible or not: the records must hold them all.
func anyItem(t *rapid.T) *Item {
	text := rapid.String()
	it := &Item{
		Revision: rapid.IntRange(0, 1<<31).Draw(t, "revision"),
		Task:     text.Draw(t, "task"), Key: text.Draw(t, "key"), Notes: text.Draw(t, "notes"),
		By: text.Draw(t, "by"), Reason: text.Draw(t, "reason"),
		Skill:     standards.SkillID(text.Draw(t, "skill")),
		Look:      task.Look(text.Draw(t, "look")),
		Standing:  Standing(text.Draw(t, "standing")),
		Predicted: standards.Difficulty(rapid.Int().Draw(t, "predicted")),
		Seconds:   rapid.Int().Draw(t, "seconds"),
		Origin:    Origin{text.Draw(t, "kind"), rapid.Uint64().Draw(t, "seed"), text.Draw(t, "file"), rapid.Int().Draw(t, "row"), text.Draw(t, "author")},
		At:        time.Unix(rapid.Int64Range(-1<<40, 1<<40).Draw(t, "seconds"), rapid.Int64Range(0, 999_999_999).Draw(t, "nanoseconds")).UTC(),
	}
	for i := range it.Traits {
		it.Traits[i] = text.Draw(t, "trait")
	}
	for _, code := range rapid.SliceOfN(text, 0, 4).Draw(t, "codes") {
		it.Codes = append(it.Codes, task.Code(code))
	}
	if wording := rapid.MapOfN(text, text, 0, 3).Draw(t, "wording"); len(wording) > 0 {
		it.Wording = wording
	}
	if rapid.Bool().Draw(t, "measured") {
		it.Measured = &Measured{standards.Difficulty(rapid.Int().Draw(t, "difficulty")), 7, 300}
	}
	return it
}

// What is encoded is decoded to the same, and no beginning of it to anything.
func TestRecordsReadBackTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := anyItem(t)
		record := encode(nil, want)
		got := &Item{}
		if err := decode(record, got); err != nil || !reflect.DeepEqual(got, want) {
			t.Fatalf("%v\ngot  %+v\nwant %+v", err, got, want)
		}
		cut := rapid.IntRange(0, len(record)-1).Draw(t, "cut")
		if err := decode(record[:cut], got); err == nil {
			t.Fatalf("the first %d of %d bytes are read as %+v", cut, len(record), got)
		}
	})
}

func TestGroupNamesReadBackTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		it := anyItem(t)
		want := newGroup(it, usage{rapid.IntRange(0, 1000).Draw(t, "uses"), rapid.String().Draw(t, "week")})
		got, err := readGroup(want.appendName(nil), []byte{0, 0, 0, 1, 0, 0, 0, 5})
		want.Size, want.Set = 5, 1
		if err != nil || got != want {
			t.Fatalf("%v\ngot  %+v\nwant %+v", err, got, want)
		}
	})
}

// A group told briefly is the group, whatever was read before it.
func TestPortionsAreTheirGroups(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		known := newPortionReader()
		base := newGroup(anyItem(t), usage{1, ""})
		for range 20 {
			want := base
			want.LastWeek = rapid.SampledFrom([]string{"", "2026-W48", "2026-W49"}).Draw(t, "week")
			want.Traits[task.Largest] = rapid.SampledFrom([]string{"", "9", "99", "999"}).Draw(t, "largest")
			want.Traits[task.Step] = rapid.SampledFrom([]string{"", "9", "2026-W48"}).Draw(t, "step")
			want.Uses = rapid.IntRange(0, 2).Draw(t, "uses")
			got, err := known.read(want.appendName(nil), []byte{0, 0, 0, 1, 0, 0, 0, 5})
			want.Size, want.Set = 5, 1
			if err != nil || known.group(got) != want {
				t.Fatalf("%v\ngot  %+v\nwant %+v", err, known.group(got), want)
			}
		}
		if len(known.kinds) > 2*3*3 { // largest or none, three steps, three numbers of uses
			t.Fatalf("%d kinds of groups are told apart", len(known.kinds))
		}
		if rapid.Bool().Draw(t, "it is the last trait") {
			clear(base.Traits[task.Largest+1:])
		}
		base.Traits[task.Largest], base.Size, base.Set = "99", 5, 1
		name, value := base.appendName(nil), []byte{0, 0, 0, 1, 0, 0, 0, 5}
		for range 2 {
			if got, err := known.read(name, value); err != nil || known.group(got) != base {
				t.Fatalf("%v\ngot  %+v\nwant %+v", err, known.group(got), base)
			}
			cut := rapid.IntRange(0, len(name)-1).Draw(t, "cut")
			if got, err := known.read(name[:cut], value); err == nil {
				t.Fatalf("the first %d of %d bytes are read as %+v", cut, len(name), known.group(got))
			}
		}
	})
}

// Every sealed value is known, and none with a byte changed.
func TestASealShowsEveryChangedByte(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		key, value := rapid.SliceOf(rapid.Byte()).Draw(t, "key"), rapid.SliceOf(rapid.Byte()).Draw(t, "value")
		sealed := Seal(key, append([]byte(nil), value...))
		if got, ok := Unseal(key, sealed); !ok || string(got) != string(value) {
			t.Fatalf("%x is read as %x, %v", value, got, ok)
		}
		at := rapid.IntRange(0, len(sealed)-1).Draw(t, "at")
		sealed[at] ^= rapid.ByteRange(1, 255).Draw(t, "change")
		if _, ok := Unseal(key, sealed); ok {
			t.Fatalf("a change of byte %d goes unnoticed", at)
		}
	})
}

// No bytes make the readers of the file panic or take much memory, and a record
// that is read stays what it is when written and read again.
func FuzzDecode(f *testing.F) {
	f.Add(encode(nil, &Item{}))
	asked := task.MustParse("47 + 36 = ?")
	it := NewItem(asked, "", Origin{Kind: "imported", File: "autumn.csv", Row: 7, By: "Ms. Reyes"})
	it.Measured = &Measured{-700, 120, 300}
	it.Wording = map[string]string{"en": "47 and 36 make how many?", "es": "¿Cuánto es 47 más 36?"}
	f.Add(encode(nil, &it))
	g := newGroup(&it, usage{2, "2026-W48"})
	name, value := g.appendName(nil), make([]byte, 2*setNumber)
	f.Add(name)
	f.Add(appendMember(nil, &it))
	f.Add([]byte{0xFF, 0xFF, 0xFF, 0xFF}) // a seal over itself and nothing
	f.Fuzz(func(t *testing.T, raw []byte) {
		g, err := readGroup(raw, value)
		fresh, used := newPortionReader(), newPortionReader()
		used.read(name, value)
		for _, known := range []*portionReader{&fresh, &used} {
			p, briefly := known.read(raw, value)
			if err == nil && (briefly != nil || known.group(p) != g) || err != nil && briefly == nil {
				t.Errorf("%v %v\nbriefly %+v\nin full %+v", err, briefly, p, g)
			}
		}
		readMember(make([]byte, setNumber+8+16), raw, make([]byte, 64))
		readOrigin(raw)
		readUse(raw, raw)
		var first, second Item
		if decode(raw, &first) != nil {
			return
		}
		if err := decode(encode(nil, &first), &second); err != nil || !reflect.DeepEqual(first, second) {
			t.Errorf("%v\nfirst  %+v\nsecond %+v", err, first, second)
		}
	})
}
