package desk

import (
	"strings"
	"time"

	"evenhand/assemble"
	"evenhand/bank"
)

// day is one of the five school days of the strip.
type day struct {
	Name  string
	Today bool
}

// week shows what this week needs.
func week(v *visit) error {
	now := v.desk.o.Now()
	counts, err := v.desk.bank.Count()
	if err != nil {
		return err
	}
	var days []day
	for weekday := time.Monday; weekday <= time.Friday; weekday++ {
		days = append(days, day{strings.ToLower(weekday.String()), weekday == now.Weekday()})
	}
	return v.show("week", struct {
		Week  string
		Days  []day
		Ready int
	}{assemble.WeekOf(now).String(), days, counts[bank.Ready]})
}
