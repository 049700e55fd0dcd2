package qti

// Scoring says how answers become a score of 1 or 0.
type Scoring struct {
	By   Way
	Rule Rule // ByRule: the score is 1 when it is true
}

// Way is one of the ways to score. The first two are the standard's own templates.
type Way string

// The ways to score.
const (
	ByMatch  Way = "match_correct" // the response is the correct one
	ByMap    Way = "map_response"  // the response is one of those accepted
	ByRule   Way = "rule"
	ByPerson Way = "person"
)

// Rule is an expression over the responses, with the standard's names for operators: and, not,
// match, equal, sum, gte, variable, correct, base-value. An empty response is null, and so is what
// is computed from it.
type Rule struct {
	Op   string
	Name string // variable, correct: the response
	N    int    // base-value: a whole number
	Args []Rule
}

// arity is how many arguments an operator takes; -1 is any number from one up.
var arity = map[string]int{"and": -1, "sum": -1, "not": 1, "match": 2, "equal": 2, "gte": 2, "variable": 0, "correct": 0, "base-value": 0}

func variable(name string) Rule    { return Rule{Op: "variable", Name: name} }
func correct(name string) Rule     { return Rule{Op: "correct", Name: name} }
func whole(n int) Rule             { return Rule{Op: "base-value", N: n} }
func op(op string, a ...Rule) Rule { return Rule{Op: op, Args: a} }

// allCorrect is the rule that every response is the correct one.
func allCorrect(responses []Response) Rule {
	var all []Rule
	for _, r := range responses {
		all = append(all, op("match", variable(r.ID), correct(r.ID)))
	}
	return op("and", all...)
}
