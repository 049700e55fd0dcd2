package assemble_test

import (
	"fmt"
	"os"
	"testing"

	"evenhand/assemble/plan"
)

// A plan and a pacing list that a team wrote for the program of the first format mean the same for ever.
// What they must mean is typed off the files.
func TestFormat1Plans(t *testing.T) {
	read := func(name string) []byte {
		text, err := os.ReadFile("../testdata/formats/1/" + name)
		if err != nil {
			t.Fatal(err)
		}
		return text
	}
	p, err := plan.Parse(read("plan.toml"), "plan.toml")
	if err != nil {
		t.Fatal(err)
	}
	got := fmt.Sprintf("%s: %d forms of %d in %d minutes, %d shared, %d right in 100, rest %d, tell apart %q",
		p.Title, p.Forms, p.Size(), p.Minutes, p.Shared, p.ShareRight, p.Rest, p.Diagnose[0].Name)
	for _, r := range p.Rows {
		got += fmt.Sprintf("; %d %s vary %v", r.Count, r.Name(), r.Vary)
	}
	for _, b := range p.Bands {
		got += fmt.Sprintf("; %s %d to %d", b.Band, b.AtLeast, b.AtMost)
	}
	for _, q := range p.Quotas {
		got += fmt.Sprintf("; %s %d to %d", q.Where, q.AtLeast, q.AtMost)
	}
	want := `Friday check, week 48: 2 forms of 5 in 15 minutes, 1 shared, 75 right in 100, rest 4, tell apart "ten dropped"; ` +
		"3 add-two-digit where regroups >= 1 and crosses_100 = false, shown as column and sentence vary true; " +
		"2 clock-half-hour, shown as clock-face vary false; warm-up 0 to 4; stretch 0 to 3; makes_ten = true 0 to 2"
	if got != want {
		t.Errorf("the plan\ngot  %s\nwant %s", got, want)
	}
	term, err := plan.ParsePacing(read("pacing.toml"), "pacing.toml")
	if err != nil {
		t.Fatal(err)
	}
	got = fmt.Sprintf("%s: %d forms of %d in %d minutes, %d right in 100, rest %d, %d new in 100, back after %v", term.Weekly.Title, term.Weekly.Forms,
		term.Items, term.Weekly.Minutes, term.Weekly.ShareRight, term.Weekly.Rest, term.Share, term.Return)
	for _, s := range term.New {
		got += fmt.Sprintf("; week %d %s", s.Week, s.Name())
	}
	want = "Winter term: 1 forms of 6 in 15 minutes, 75 right in 100, rest 4, 60 new in 100, back after [1 2 4]; " +
		"week 1 add-two-digit where regroups = 0; week 2 clock-half-hour, shown as clock-face"
	if got != want {
		t.Errorf("the pacing list\ngot  %s\nwant %s", got, want)
	}
}
