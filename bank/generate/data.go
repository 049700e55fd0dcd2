package generate

import (
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// askedOfData are the questions about graphs and charts, in the order of a space's choices.
var askedOfData = []task.DataAsk{
	task.HowManyOf, task.HowManyMore, task.HowManyLess, task.InAll, task.WhichMost, task.WhichFewest, task.DrawIt, task.InOrder,
}

// data are the numbers of n sorts, 2 to 9 of each, in each of the forms with every question that can be
// asked of it. Which group the sorts are of, and which of them the question is about, follows from
// the numbers, so that both vary.
func data(n int, forms ...task.DataForm) space {
	lengths := []int{len(forms), len(askedOfData)}
	for range n {
		lengths = append(lengths, 8)
	}
	return product(func(c []int) task.Task {
		t := task.Data{Form: forms[c[0]], Ask: askedOfData[c[1]], N: n}
		total := 0
		for i, count := range c[2:] {
			t.Counts[i] = count + 2
			total += (i + 3) * count
		}
		group := words.SortGroups[total%len(words.SortGroups)]
		if t.Form == task.Things || t.Form == task.TallyChart && t.Ask == task.DrawIt {
			group = words.SortGroups[len(words.SortGroups)-1]
		}
		for i := range n {
			t.Sorts[i] = group.Sorts[(i+total)%len(group.Sorts)].Name
		}
		switch t.Ask {
		case task.HowManyOf:
			t.First = total % n
		case task.HowManyMore, task.HowManyLess:
			t.First, t.Second = total%n, (total+1+total/n%(n-1))%n
			if t.Counts[t.First] < t.Counts[t.Second] == (t.Ask == task.HowManyMore) {
				t.First, t.Second = t.Second, t.First
			}
		}
		if !t.Valid() { // two sorts of as many have no order
			return nil
		}
		return t
	}, lengths...)
}
