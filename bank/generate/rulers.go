package generate

import "evenhand/standards/task"

// measured are bars beside a ruler, from 0 and from every other mark.
func measured() space {
	var list []task.Task
	for _, inches := range []bool{false, true} {
		t := task.Ruler{Inches: inches}
		for t.From = 0; t.From < t.Reach(); t.From++ {
			for t.To = t.From + 1; t.To <= t.Reach(); t.To++ {
				if inches || t.Length() > 1 { // a bar of one centimeter is hard to see
					list = append(list, t)
				}
			}
		}
	}
	return listed(list)
}

// comparedBars are two bars from 0 beside a ruler, the longer one first or last.
func comparedBars() space {
	var list []task.Task
	for _, inches := range []bool{false, true} {
		t := task.Ruler{Inches: inches}
		for t.To = 1; t.To <= t.Reach(); t.To++ {
			for t.OtherTo = 1; t.OtherTo <= t.Reach(); t.OtherTo++ {
				if t.To != t.OtherTo && (inches || min(t.To, t.OtherTo) > 1) {
					list = append(list, t)
				}
			}
		}
	}
	return listed(list)
}

// listed is a space of few tasks, written out.
func listed(list []task.Task) space {
	return space{len(list), func(i int) task.Task { return list[i] }}
}
