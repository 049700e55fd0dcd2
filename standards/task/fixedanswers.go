package task

// FixedAnswers are the few answers that a task itself offers, such as true and false, in
// their usual order; nil where the answer is a number, a time or words to find. With so few
// answers a form of many such tasks can't do without two of the same key.
func FixedAnswers(task Task) []string {
	switch task.(type) {
	case Compare:
		return []string{"<", "=", ">"}
	case TrueFalse:
		return []string{"true", "false"}
	case OddEven:
		return []string{"odd", "even"}
	case Groups:
		return []string{"left", "same", "right"}
	}
	return nil
}
