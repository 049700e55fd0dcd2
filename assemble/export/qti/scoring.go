package qti

import (
	"slices"
	"strconv"
	"strings"
)

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

// Score is 1 for a right answer and else 0; answers are by the response's ID. What a person
// marks scores 0 here.
func (it Item) Score(answers map[string][]string) int {
	right := false
	switch first := it.Responses[0]; it.Scoring.By {
	case ByMatch:
		right = sameValues(first, answers[first.ID])
	case ByMap:
		given := answers[first.ID]
		right = len(given) == 1 && slices.ContainsFunc(first.Accepted, func(a string) bool { return strings.EqualFold(a, given[0]) })
	case ByRule:
		n, known := it.value(it.Scoring.Rule, answers)
		right = known && n == 1
	}
	if right {
		return 1
	}
	return 0
}

// sameValues compares values in any order; whole numbers by what they are worth.
func sameValues(r Response, given []string) bool {
	want, got := slices.Clone(r.Correct), slices.Clone(given)
	if r.Kind == Number {
		for i, value := range got {
			if n, err := strconv.Atoi(value); err == nil {
				got[i] = strconv.Itoa(n)
			}
		}
	}
	slices.Sort(want)
	slices.Sort(got)
	return slices.Equal(want, got)
}

// value evaluates a rule; truth is 1 or 0. It is not known where it is null in the
// standard's sense.
func (it Item) value(r Rule, answers map[string][]string) (n int, known bool) {
	var args []int
	all := true
	for _, arg := range r.Args {
		n, ok := it.value(arg, answers)
		if r.Op == "and" && ok && n == 0 {
			return 0, true // false whatever the unknown ones are
		}
		args, all = append(args, n), all && ok
	}
	if !all {
		return 0, false
	}
	switch r.Op {
	case "variable":
		return wholeNumber(answers[r.Name])
	case "correct":
		at := slices.IndexFunc(it.Responses, func(response Response) bool { return response.ID == r.Name })
		return wholeNumber(it.Responses[at].Correct)
	case "base-value":
		return r.N, true
	case "sum":
		for _, arg := range args {
			n += arg
		}
		return n, true
	case "match", "equal":
		return truth(args[0] == args[1]), true
	case "gte":
		return truth(args[0] >= args[1]), true
	case "not":
		return 1 - args[0], true
	}
	return 1, true // and
}

func truth(is bool) int {
	if is {
		return 1
	}
	return 0
}

func wholeNumber(values []string) (int, bool) {
	if len(values) != 1 {
		return 0, false
	}
	n, err := strconv.Atoi(values[0])
	return n, err == nil
}
