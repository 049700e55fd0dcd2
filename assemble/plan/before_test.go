package plan

// Before says that the week lies before another.
func (w Week) Before(other Week) bool {
	return w.Year < other.Year || w.Year == other.Year && w.Number < other.Number
}
