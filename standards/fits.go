package standards

import (
	"slices"

	"evenhand/standards/task"
)

// is tests for one kind of task.
func is[T task.Task](t task.Task) bool {
	_, ok := t.(T)
	return ok
}

// writing tests for numbers to write in digits, up to most.
func writing(most int) func(task.Task) bool {
	return func(t task.Task) bool { w, ok := t.(task.WriteNumber); return ok && !w.InWords && w.Number <= most }
}

// naming tests for shapes to name, flat or solid.
func naming(solid bool) func(task.Task) bool {
	return func(t task.Task) bool { n, ok := t.(task.NameShape); return ok && n.Figure.Solid() == solid }
}

// finding tests for shapes to find of one of the sorts.
func finding(sorts ...string) func(task.Task) bool {
	return func(t task.Task) bool { f, ok := t.(task.FindShapes); return ok && slices.Contains(sorts, f.Sort) }
}

// sharing tests for one question about shares.
func sharing(asks string) func(task.Task) bool {
	return func(t task.Task) bool { s, ok := t.(task.Shares); return ok && s.Asks == asks }
}

// furtherShares tests for thirds and for equal shares of other forms, which come after halves and fourths.
func furtherShares(t task.Task) bool {
	switch t.(type) {
	case task.Shares, task.CutShape, task.LargerShare:
		return !slices.Contains(t.Codes(), "1.G.A.3")
	}
	return false
}

func story(test func(task.Story) bool) func(task.Task) bool {
	return func(t task.Task) bool { s, ok := t.(task.Story); return ok && test(s) }
}

// kindergartenStory tests for stories of kindergarten.
func kindergartenStory(t task.Task) bool {
	return story(func(s task.Story) bool {
		plain := !s.Measured() && !s.Money()
		return plain && s.Situation.Mastered() == 0 && s.Sentence.Size() <= 10
	})(t)
}

func sentence(test func(task.Sentence) bool) func(task.Task) bool {
	return func(t task.Task) bool {
		s, ok := t.(task.Sentence)
		return ok && test(s)
	}
}

// result2 tests sentences of two numbers whose result is asked for.
func result2(test func(task.Sentence) bool) func(task.Task) bool {
	return sentence(func(s task.Sentence) bool { return s.N == 2 && s.Blank == 2 && test(s) })
}

// sum2 tests sums of two numbers whose result is asked for, the larger first.
func sum2(test func(larger, smaller, sum int) bool) func(task.Task) bool {
	return result2(func(s task.Sentence) bool {
		a, b := s.Terms[0], s.Terms[1]
		return s.IsAddition() && test(max(a, b), min(a, b), a+b)
	})
}

func lengths(asks ...task.LengthAsk) func(task.Task) bool {
	return func(t task.Task) bool { l, ok := t.(task.Lengths); return ok && slices.Contains(asks, l.Ask) }
}

func placeValue(places int) func(task.Task) bool {
	return func(t task.Task) bool { p, ok := t.(task.PlaceValue); return ok && p.Places == places }
}

func comparing(most int) func(task.Task) bool {
	return func(t task.Task) bool { c, ok := t.(task.Compare); return ok && max(c.A, c.B) <= most }
}

func onDial(step string) func(task.Task) bool {
	return func(t task.Task) bool { c, ok := t.(task.Clock); return ok && c.Time.Step() == step }
}
