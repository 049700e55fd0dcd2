package task

import (
	"math"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// What people write for cents and dollars.
var (
	centWords   = wordSet("¢ c cent cents centavo centavos penny pennies")
	dollarWords = wordSet("$ dollar dollars dólar dólares")
)

// readCents reads an amount of money as cents: "51", "51¢", "51 cents", "$0.51", "$.51", "0.51",
// "a dollar"; or an equation of cents.
func readCents(answer string, known func(string) bool) (reply, bool) {
	if n, err := strconv.ParseUint(answer, 10, 32); err == nil {
		return reply{number: int(n)}, true
	}
	tokens := trimmed(words.Tokens(answer))
	bare := words.Cut(tokens, func(t words.Token) bool { return centWords[t.Text] })
	if e, ok := readEquation(bare, known); ok {
		return reply{equation: &e}, true
	}
	cents, dollars, named, amount, seen := len(bare) < len(tokens), false, false, "", false
	for _, t := range bare {
		switch {
		case (t.IsNumber() || t.Kind == words.Decimal) && !seen:
			seen, amount = true, t.Text
			if t.Kind == words.Spoken {
				amount = strconv.Itoa(t.Number)
			}
		case dollarWords[t.Text]:
			dollars, named = true, named || t.Kind == words.Word
		case t.Kind == words.Word && (aroundNumbers[t.Text] || known(t.Text) || t.Text == "un"), t.Text == "." || t.Text == "=":
		default:
			return reply{}, false
		}
	}
	if named && !seen { // "a dollar"
		seen, amount = true, "1"
	}
	n, ok := inCents(amount, dollars)
	return reply{number: n}, seen && ok && !(cents && dollars)
}

// inCents is an amount in cents. Without a dollar sign, two decimals are dollars as long as the
// amount is small; 51.00 may be a spreadsheet's way of writing 51, and is not guessed at.
func inCents(amount string, dollars bool) (int, bool) {
	whole, decimals, point := strings.Cut(amount, ".")
	if !dollars && !point {
		n, err := strconv.Atoi(strings.ReplaceAll(amount, ",", ""))
		return n, err == nil && !strings.Contains(amount, ",")
	}
	value, err := strconv.ParseFloat("0"+amount, 64)
	switch {
	case err != nil, len(decimals) > 2:
		return 0, false
	case !dollars && (len(decimals) != 2 || len(whole) > 1):
		return 0, false
	}
	return int(math.Round(100 * value)), true
}
