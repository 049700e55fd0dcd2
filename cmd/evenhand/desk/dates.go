package desk

import (
	"strconv"
	"strings"
	"time"

	"evenhand/assemble/plan"
	"evenhand/bank"
)

// Date is a day of the year in words.
func (s sentences) Date(day time.Time) string {
	return s.say("date", day.Day(), s.say("month."+strconv.Itoa(int(day.Month()))))
}

// Day is the day of a moment by this computer's clock, with its year, in templates.
func (s sentences) Day(t time.Time) string {
	local := t.Local()
	return s.say("date.year", s.Date(local), local.Year())
}

// When is a moment by this computer's clock, in templates.
func (s sentences) When(t time.Time) string { return s.Day(t) + ", " + t.Local().Format("15:04") }

// Dates are the school days of a week, such as 23–27 November.
func (s sentences) Dates(week plan.Week) string {
	monday := week.Monday()
	friday := monday.AddDate(0, 0, 4)
	if monday.Month() != friday.Month() {
		return s.Date(monday) + " – " + s.Date(friday)
	}
	return strconv.Itoa(monday.Day()) + "–" + s.Date(friday)
}

// Week is a week such as 2026-W48 by its days; any other text stays.
func (s sentences) Week(text string) string {
	week, err := plan.ParseWeek(text)
	if err != nil {
		return text
	}
	return s.say("date.year", s.Dates(week), week.Monday().AddDate(0, 0, 4).Year())
}

// Weeks are several of them.
func (s sentences) Weeks(texts []string) string {
	var weeks []string
	for _, text := range texts {
		weeks = append(weeks, s.Week(text))
	}
	return strings.Join(weeks, ", ")
}

// QuizName is a quiz by its title and week.
func (s sentences) QuizName(q bank.Quiz) string { return q.Title + " (" + s.Week(q.Week) + ")" }
