package qti

// tree is the test's file: one part with one section, all items in their order, and the sum of
// their scores.
func (t Test) tree() node {
	section := element("qti-assessment-section", "identifier", "section", "title", t.Title, "visible", "true")
	for _, id := range t.Items {
		section = section.with(element("qti-assessment-item-ref", "identifier", id, "href", "items/"+id+".xml"))
	}
	sum := element("qti-sum").with(element("qti-test-variables", "variable-identifier", "SCORE"))
	return root("qti-assessment-test", itemSpace, itemSchema, "identifier", t.ID, "title", t.Title).with(
		element("qti-outcome-declaration", "identifier", "SCORE", "cardinality", "single", "base-type", "float"),
		element("qti-test-part", "identifier", "part", "navigation-mode", "nonlinear", "submission-mode", "individual").with(section),
		element("qti-outcome-processing").with(element("qti-set-outcome-value", "identifier", "SCORE").with(sum)),
	)
}
