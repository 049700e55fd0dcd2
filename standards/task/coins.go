package task

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"evenhand/standards/words"
)

// Coins asks what some coins are worth together, in cents: "coins 25, 10, 10, 5, 1".
// Counts says how many there are of each value in CoinValues; 2 to 10 coins in all,
// worth at most a dollar.
type Coins struct{ Counts [5]int }

// CoinValues are the coins of the United States in cents, the largest first.
var CoinValues = [5]int{50, 25, 10, 5, 1}

// maxCoins is the most coins a task shows.
const maxCoins = 10

// coinNames are the coins by their names, also in Spanish.
var coinNames = map[string]string{
	"penny": "1", "pennies": "1", "nickel": "5", "nickels": "5", "dime": "10", "dimes": "10", "quarter": "25", "quarters": "25",
	"half dollar": "50", "half dollars": "50", "half-dollar": "50", "half-dollars": "50",
}

var namedCoins = regexp.MustCompile(`^([1-9]|10|an?|one|two|three|four|five|six|seven|eight|nine|ten) ([a-z][a-z -]+)$`)

// coinCells is a cell, "25" or "2 dimes", as so many coins.
func coinCells(cell string) []string {
	m := namedCoins.FindStringSubmatch(cell)
	if m == nil || coinNames[m[2]] == "" {
		return []string{cell}
	}
	n, err := strconv.Atoi(m[1])
	if err != nil {
		n, _ = words.ReadNumber(m[1])
		n = max(n, 1)
	}
	return slices.Repeat([]string{coinNames[m[2]]}, n)
}

var coinCell = regexp.MustCompile(`^([0-9]{1,3}) ?(?:¢|c|cents?)?$`)

func readCoins(text string) (Task, error) {
	rest, ok := strings.CutPrefix(text, "coins")
	if !ok {
		return nil, errOther
	}
	var t Coins
	rest = strings.ReplaceAll(rest, " and ", ", ")
	for _, typed := range strings.FieldsFunc(strings.Trim(rest, ":?= "), func(r rune) bool { return r == ',' || r == ';' || r == '+' }) {
		for _, cell := range coinCells(strings.TrimSpace(typed)) {
			m := coinCell.FindStringSubmatch(cell)
			if m == nil {
				return nil, errOther // a question about coins in somebody's own words
			}
			worth, _ := strconv.Atoi(m[1])
			at := slices.Index(CoinValues[:], worth)
			if at < 0 {
				return nil, words.Errorf("%q is no coin; the coins are 50, 25, 10, 5 and 1 cent, as in coins 25, 10, 10, 5, 1", cell)
			}
			t.Counts[at]++
		}
	}
	if n := t.count(); n < 2 || n > maxCoins {
		return nil, words.Errorf("%q has %d coins; a task here has 2 to %d, as in coins 25, 10, 10, 5, 1", text, n, maxCoins)
	}
	if t.answer() > 100 {
		return nil, words.Errorf("%q is worth %d cents; quizzes for these grades stay within a dollar, 100 cents", text, t.answer())
	}
	return t, nil
}

// List is every coin's value, the largest first.
func (t Coins) List() []int {
	var list []int
	for i, value := range CoinValues {
		for range t.Counts[i] {
			list = append(list, value)
		}
	}
	return list
}

func (t Coins) String() string { return "coins " + joinInts(t.List(), ", ") }

func (t Coins) count() int {
	n := 0
	for _, count := range t.Counts {
		n += count
	}
	return n
}

func (t Coins) answer() int {
	sum := 0
	for i, value := range CoinValues {
		sum += t.Counts[i] * value
	}
	return sum
}

// Key is the number of cents.
func (t Coins) Key() string { return strconv.Itoa(t.answer()) }

// Judge accepts the number of cents alone, with ¢ or the word, as dollars ("$0.51"), or as the
// sum of the coins.
func (t Coins) Judge(answer string) bool {
	r, ok := readCents(answer, vocabulary(t.Prompt))
	if !ok || r.equation == nil {
		return ok && r.number == t.answer()
	}
	return r.equation.says(t.List(), t.answer())
}

// Possible takes amounts of money and number sentences.
func (t Coins) Possible(answer string) bool {
	_, ok := readCents(answer, vocabulary(t.Prompt))
	return ok
}

// Prompt names the coins and asks what they are worth.
func (t Coins) Prompt(lang string) string {
	coins := joinInts(t.List(), ", ")
	if lang == "es" {
		return "Las monedas valen " + coins + " centavos. ¿Cuántos centavos hay en total?"
	}
	return "The coins are worth " + coins + " cents. How many cents in all?"
}

// Said doesn't tell the coins' worth, which the child is to know.
func (t Coins) Said(lang string) string {
	_, question, _ := strings.Cut(t.Prompt(lang), ". ")
	return question
}

// Traits of coins: one addend a coin.
func (t Coins) Traits() Traits {
	var ts Traits
	ts.setFlag(Reaches100, t.answer() == 100)
	ts.setNumber(Digits, digitCount(t.List()[0]))
	ts.setNumber(Addends, t.count())
	ts.setNumber(Largest, t.answer())
	ts[Asks] = "worth"
	return ts
}

// Codes of coins: money in grade 2.
func (t Coins) Codes() []Code { return []Code{"2.MD.C.8"} }

// The missteps with coins.
var (
	coinsCounted = newMisstep("coins counted",
		"counts the coins and not what they are worth",
		"cuenta las monedas y no lo que valen",
		"lay each coin on as many single cents as it is worth",
		"poner cada moneda sobre tantos centavos sueltos como vale", "common practice")
	sizeForWorth = newMisstep("larger coin taken for more",
		"takes the nickel for ten cents and the dime for five, by their size",
		"por el tamaño, toma la moneda de 5 centavos por diez y la de 10 por cinco",
		"a small dime buys more than a large nickel: trade each for single cents",
		"una moneda pequeña de 10 centavos compra más que una grande de 5: cambiar cada una por centavos sueltos",
		"common practice")
	stepKept = newMisstep("went on in one step",
		"counts all coins as if each were worth what the first is",
		"cuenta todas las monedas como si valieran lo mismo que la primera",
		"say the worth of each coin before counting it on",
		"decir cuánto vale cada moneda antes de contarla", "common practice")
)

// Missteps of coins.
func (t Coins) Missteps() []Misstep {
	swapped := t
	swapped.Counts[2], swapped.Counts[3] = t.Counts[3], t.Counts[2]
	coins := t.List()
	return gather(t, []slip{
		{coinsCounted, strconv.Itoa(t.count())},
		{sizeForWorth, strconv.Itoa(swapped.answer())},
		{stepKept, strconv.Itoa(coins[0] * t.count())},
		{addendLeftOut, strconv.Itoa(t.answer() - coins[len(coins)-1])},
	})
}

// Clashes of coins: the same coins.
func (t Coins) Clashes() []string { return []string{t.String()} }

// Fingerprint of coins is their text, the largest coin first.
func (t Coins) Fingerprint() string { return t.String() }

// Looks of coins.
func (t Coins) Looks() []Look { return []Look{LookCoins} }

// Answers are money.
func (t Coins) Answers() Answers { return Money }
