package task

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Bills asks what bills and coins are worth together, in dollars and cents: "money $5, $1, 25, 10, 10".
type Bills struct {
	Bills [4]int // how many of each value in BillValues
	Coins [5]int // how many of each value in CoinValues
}

// BillValues are bills of the United States in dollars, the largest first.
var BillValues = [4]int{20, 10, 5, 1}

// LookBills is bills and coins, and boxes behind $ and before ¢.
const LookBills Look = "bills"

var _ = ownLook(LookBills, "bills and coins", 0)

var billCell = regexp.MustCompile(`^\$ ?([0-9]{1,3})$`)

func readBills(text string) (Task, error) {
	rest, ok := strings.CutPrefix(text, "money")
	if !ok {
		return nil, errOther
	}
	var t Bills
	for _, cell := range strings.Split(strings.Trim(rest, ":? "), ",") {
		cell = strings.TrimSpace(cell)
		if m := billCell.FindStringSubmatch(cell); m != nil {
			worth, _ := strconv.Atoi(m[1])
			at := slices.Index(BillValues[:], worth)
			if at < 0 {
				return nil, words.Errorf("%q is no bill here; the bills are $20, $10, $5 and $1, as in money $5, $1, 25, 10", cell)
			}
			t.Bills[at]++
			continue
		}
		m := coinCell.FindStringSubmatch(cell)
		if m == nil {
			return nil, errOther
		}
		worth, _ := strconv.Atoi(m[1])
		at := slices.Index(CoinValues[:], worth)
		if at < 0 {
			return nil, words.Errorf("%q is no coin; the coins are 50, 25, 10, 5 and 1 cent, as in money $5, $1, 25, 10", cell)
		}
		t.Coins[at]++
	}
	switch bills, coins := sum(t.Bills[:]), sum(t.Coins[:]); {
	case bills < 1 || coins < 1 || bills > 4 || coins > 6:
		return nil, words.Errorf("%q has %d bills and %d coins; a task here has 1 to 4 bills and 1 to 6 coins", text, bills, coins)
	case t.cents() > 99 || t.dollars() > 100:
		return nil, words.Errorf("%q: the coins are worth less than a dollar and the bills up to $100", text)
	}
	return t, nil
}

func (t Bills) String() string {
	var cells []string
	for _, worth := range t.BillList() {
		cells = append(cells, fmt.Sprintf("$%d", worth))
	}
	return "money " + strings.Join(cells, ", ") + ", " + joinInts(Coins{t.Coins}.List(), ", ")
}

// BillList is every bill's value, the largest first.
func (t Bills) BillList() (list []int) {
	for i, value := range BillValues {
		list = append(list, slices.Repeat([]int{value}, t.Bills[i])...)
	}
	return list
}

// CoinList is every coin's value, the largest first.
func (t Bills) CoinList() []int { return Coins{t.Coins}.List() }

func (t Bills) dollars() int { return sum(t.BillList()) }
func (t Bills) cents() int   { return Coins{t.Coins}.answer() }

// Key is the dollars and the cents, "$6 and 45¢".
func (t Bills) Key() string { return fmt.Sprintf("$%d and %d¢", t.dollars(), t.cents()) }

// Fills are the dollars and the cents.
func (t Bills) Fills() []string { return []string{strconv.Itoa(t.dollars()), strconv.Itoa(t.cents())} }

// Judge accepts dollars and cents in signs or words, and with a point.
func (t Bills) Judge(answer string) bool {
	n, ok := t.reply(answer)
	return ok && n == 100*t.dollars()+t.cents()
}

// Possible takes amounts of dollars and cents.
func (t Bills) Possible(answer string) bool { _, ok := t.reply(answer); return ok }

// reply is an amount in cents: "$6 and 45¢", "6 dollars 45", "$6.45", "645¢".
func (t Bills) reply(answer string) (cents int, ok bool) {
	var numbers []int
	var units []string
	pending := false
	for _, token := range trimmed(words.Tokens(answer)) {
		dollar, cent := dollarWords[token.Text], centWords[token.Text]
		switch {
		case token.IsNumber():
			numbers = append(numbers, token.Number)
			unit := ""
			if pending {
				unit, pending = "$", false
			}
			units = append(units, unit)
		case dollar && token.Kind == words.Sign && !pending:
			pending = true
		case (dollar || cent) && len(units) > 0 && units[len(units)-1] == "":
			units[len(units)-1] = map[bool]string{true: "$", false: "¢"}[dollar]
		case token.Kind == words.Decimal:
			r, known := readCents(answer, noWords)
			return r.number, known && r.equation == nil
		case dollar && len(units) == 0: // "a dollar and 25 cents"
			numbers, units = append(numbers, 1), append(units, "$")
		case token.Text == "and" || token.Text == "y" || token.Text == "un" || strings.Contains(",&", token.Text) ||
			aroundNumbers[token.Text]:
		default:
			return 0, false
		}
	}
	switch strings.Join(units, "") {
	case "$¢", "$": // in "1 dollar 25" the cents need no name
		if pending || len(units) > 2 || units[0] != "$" || len(units) == 2 && units[1] == "" && numbers[1] > 99 {
			return 0, false
		}
		cents = 100 * numbers[0]
		if len(numbers) == 2 {
			cents += numbers[1]
		}
		return cents, true
	case "¢":
		return numbers[0], len(numbers) == 1
	}
	return 0, false
}

// Prompt names the bills and coins and asks what they are worth.
func (t Bills) Prompt(lang string) string {
	if lang == "es" {
		return "¿Cuánto dinero hay en total? $ ? y ? ¢"
	}
	return "How much money is there in all? $ ? and ? ¢"
}

// Said asks without the places for dollars and cents.
func (t Bills) Said(lang string) string {
	question, _, _ := strings.Cut(t.Prompt(lang), " $")
	return question
}

// Short tells the bills and coins.
func (t Bills) Short(lang string) string {
	return shown(t, lang, strings.TrimPrefix(t.String(), "money "))
}

// Traits of bills and coins.
func (t Bills) Traits() Traits {
	var ts Traits
	ts.setNumber(Addends, len(t.BillList())+len(t.CoinList()))
	ts.setNumber(Largest, max(t.dollars(), t.cents()))
	ts[Asks] = "bills and coins"
	return ts
}

// Codes of bills and coins: money in grade 2.
func (t Bills) Codes() []Code { return []Code{"2.MD.C.8"} }

var signsMixed = newMisstep("dollars and cents mixed up",
	"takes the signs $ and ¢ for each other",
	"confunde los signos $ y ¢",
	"lay bills on one side and coins on the other, each with its sign",
	"poner los billetes de un lado y las monedas del otro, con el signo de cada uno", "common practice")

// Missteps of bills and coins.
func (t Bills) Missteps() []Misstep {
	amount := func(dollars, cents int) string { return fmt.Sprintf("$%d and %d¢", dollars, cents) }
	swapped := t.Coins
	swapped[2], swapped[3] = swapped[3], swapped[2]
	return gather(t, []slip{
		{signsMixed, amount(t.cents(), t.dollars())},
		{coinsCounted, amount(len(t.BillList()), len(t.CoinList()))},
		{sizeForWorth, amount(t.dollars(), Coins{swapped}.answer())},
	})
}

// Clashes of bills and coins: the same money.
func (t Bills) Clashes() []string { return []string{t.String()} }

// Fingerprint of bills and coins is their text.
func (t Bills) Fingerprint() string { return t.String() }

// Looks of bills and coins.
func (t Bills) Looks() []Look { return []Look{LookBills} }

// Accepted are usual ways to write the amount.
func (t Bills) Accepted(string) []string {
	return []string{t.Key(), fmt.Sprintf("$%d.%02d", t.dollars(), t.cents()), fmt.Sprintf("$%d %d¢", t.dollars(), t.cents())}
}

// Answers are money.
func (t Bills) Answers() Answers { return Money }
