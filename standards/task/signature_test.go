package task

import "strings"

// ParseSignature reads what Signature wrote; ok is false for anything else.
func ParseSignature(s string) (ts Traits, ok bool) {
	values := strings.Split(s, "|")
	if len(values) != int(traitCount) {
		return ts, false
	}
	copy(ts[:], values)
	return ts, true
}
