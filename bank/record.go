package bank

import (
	"encoding/binary"
	"errors"
	"slices"
	"time"

	"evenhand/standards"
	"evenhand/standards/task"
)

// recordFormat is the first byte of every record. A program that meets a higher
// one says so instead of guessing.
const recordFormat = 1

// recordSize is about how long a record is, in bytes, and a little more.
const recordSize = 256

// errRecord says that a record's bytes are not what encode writes.
var errRecord = errors.New("a record is damaged")

// encode appends one revision of an item, without its ID, which is the record's
// key: whole numbers as varints, texts with their length before them, the traits
// as a bit for each that applies and then their values. Equal items give equal
// bytes.
func encode(to []byte, it *Item) []byte {
	to = append(to, recordFormat)
	to = binary.AppendUvarint(to, uint64(it.Revision))
	to = appendTime(to, it.At)
	for _, text := range []string{it.By, it.Reason, it.Task, it.Key, string(it.Skill), string(it.Look), string(it.Standing), it.Notes} {
		to = appendText(to, text)
	}
	to = binary.AppendUvarint(to, uint64(len(it.Codes)))
	for _, code := range it.Codes {
		to = appendText(to, string(code))
	}
	to = appendTraits(to, &it.Traits)
	to = binary.AppendVarint(to, int64(it.Predicted))
	to = appendMeasured(to, it.Measured)
	to = binary.AppendVarint(to, int64(it.Seconds))
	to = appendOrigin(to, &it.Origin)
	return appendWording(to, it.Wording)
}

func appendText(to []byte, text string) []byte {
	return append(binary.AppendUvarint(to, uint64(len(text))), text...)
}

func appendFlag(to []byte, yes bool) []byte {
	if yes {
		return append(to, 1)
	}
	return append(to, 0)
}

func appendTime(to []byte, at time.Time) []byte {
	to = binary.AppendVarint(to, at.Unix())
	return binary.AppendUvarint(to, uint64(at.Nanosecond()))
}

func appendTraits(to []byte, ts *task.Traits) []byte {
	var applies uint64
	for i, value := range ts {
		if value != "" {
			applies |= 1 << i
		}
	}
	to = binary.AppendUvarint(to, applies)
	for _, value := range ts {
		if value != "" {
			to = appendText(to, value)
		}
	}
	return to
}

func appendMeasured(to []byte, m *Measured) []byte {
	to = appendFlag(to, m != nil)
	if m == nil {
		return to
	}
	for _, n := range []int64{int64(m.Difficulty), int64(m.StandardError), int64(m.Answers)} {
		to = binary.AppendVarint(to, n)
	}
	return to
}

func appendOrigin(to []byte, o *Origin) []byte {
	to = appendText(appendText(appendText(to, o.Kind), o.File), o.By)
	to = binary.AppendUvarint(to, o.Seed)
	return binary.AppendVarint(to, int64(o.Row))
}

func appendWording(to []byte, wording map[string]string) []byte {
	to = binary.AppendUvarint(to, uint64(len(wording)))
	for _, lang := range languages(wording) {
		to = appendText(to, lang)
		to = appendText(to, wording[lang])
	}
	return to
}

// languages lists the languages of a wording in alphabetical order.
func languages(wording map[string]string) []string {
	if len(wording) == 0 {
		return nil
	}
	list := make([]string, 0, len(wording))
	for lang := range wording {
		list = append(list, lang)
	}
	slices.Sort(list)
	return list
}

// decode reads what encode wrote. The bytes may be the store's own: they are
// copied once into one string that all the item's texts share.
func decode(record []byte, it *Item) error {
	r := reader{raw: record, text: string(record)}
	if format := r.octet(); format != recordFormat {
		return errRecord
	}
	*it = Item{Revision: int(r.count()), At: r.time()}
	it.By, it.Reason, it.Task, it.Key = r.string(), r.string(), r.string(), r.string()
	it.Skill, it.Look = standards.SkillID(r.string()), task.Look(r.string())
	it.Standing, it.Notes = Standing(r.string()), r.string()
	it.Codes = r.codes()
	r.traits(&it.Traits)
	it.Predicted = standards.Difficulty(r.number())
	it.Measured = r.measured()
	it.Seconds = int(r.number())
	it.Origin = Origin{Kind: r.string(), File: r.string(), By: r.string(), Seed: r.count(), Row: int(r.number())}
	it.Wording = r.wording()
	return r.end()
}
