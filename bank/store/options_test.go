package store_test

import (
	"testing"
	"time"

	"evenhand/bank/store"
)

// Where nobody says how long to wait for a bank that another program holds, it is for a while
// and not for ever, which is what bbolt takes a timeout of 0 for (bbolt v1.4, Options.Timeout).
func TestNobodyWaitsForEver(t *testing.T) {
	if waits := (store.Options{}).Patience(); waits < time.Second || waits > time.Minute {
		t.Errorf("by itself a program waits %v", waits)
	}
	if waits := (store.Options{Timeout: 3 * time.Second}).Patience(); waits != 3*time.Second {
		t.Errorf("told to wait 3 s, a program waits %v", waits)
	}
}
