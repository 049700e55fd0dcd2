package main

import (
	"strings"
	"testing"
	"time"
)

func TestProgressShowsAfterTwoSeconds(t *testing.T) {
	var screen strings.Builder
	clock := time.Date(2026, time.November, 27, 16, 0, 0, 0, time.UTC)
	advance, end := progressOn(&screen, "importing", func() time.Time { return clock })
	step := func(after time.Duration, done int) {
		clock = clock.Add(after)
		advance(done, 200)
	}
	step(1900*time.Millisecond, 10)
	end()
	if screen.Len() > 0 {
		t.Errorf("within two seconds it shows %q", screen.String())
	}
	step(200*time.Millisecond, 50)
	step(50*time.Millisecond, 51) // too soon after the last
	step(100*time.Millisecond, 199)
	end()
	if got, want := screen.String(), "\rimporting: 50 of 200, 25 %\rimporting: 199 of 200, 99 %\r\x1b[K"; got != want {
		t.Errorf("it shows %q, want %q", got, want)
	}
}
