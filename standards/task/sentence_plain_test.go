package task

import (
	"testing"

	"pgregory.net/rapid"
)

// The shortcut of Parse never reads anything else than the full reading does.
func TestShortcutReadsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[0-9]{1,4} ?[-+ ?=] ?[0-9]{1,3}( ?[-+] ?[0-9]{0,2}){0,3} ?=? ?\??[ ?]?`).Draw(t, "text")
		short, ok := plainSentence(text)
		if !ok {
			return
		}
		full, err := parse(text)
		if err != nil || full != Task(short) {
			t.Fatalf("%q: %#v by the shortcut, %#v (%v) in full", text, short, full, err)
		}
	})
}

func BenchmarkParse(b *testing.B) {
	for name, read := range map[string]func(string) (Task, error){"shortcut": Parse, "in full": parse} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := read("47 + 36 = ?"); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
