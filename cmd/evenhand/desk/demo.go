package desk

// passage is a page that leads on to another desk, or says that this one is closed.
type passage struct {
	Title, Text string // keys of sentences
	Link        string // where it leads at once; empty for nowhere
	Go          string // key of what the link says
	Wait        int    // seconds before it leads there
}

// enterDemo opens the demo school beside this bank.
func enterDemo(v *visit) error {
	if v.desk.o.DemoSchool == nil {
		return v.missing("fault.nothing")
	}
	link, err := v.desk.o.DemoSchool()
	if err != nil {
		return err
	}
	return v.show("passage", passage{"demo.title", "demo.opens", link, "demo.go", 0})
}

// throwDemoAway closes the demo school and leads back.
func throwDemoAway(v *visit) error {
	if v.desk.o.ThrowAway == nil {
		return v.missing("fault.nothing")
	}
	v.desk.o.ThrowAway()
	return v.show("passage", passage{"demo.away.title", "demo.away.done", v.desk.o.Home + "/", "demo.home", 5})
}

// closeDesk ends the program, where nobody has a window of it to close.
func closeDesk(v *visit) error {
	if v.desk.o.Stop == nil {
		return v.missing("fault.nothing")
	}
	err := v.show("passage", passage{Title: "close.title", Text: "close.done"})
	v.desk.o.Stop()
	return err
}
