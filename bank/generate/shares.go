package generate

import (
	"math/rand/v2"

	"evenhand/standards/task"
)

// sharesAsked are a question about each cut for which it can be asked.
func sharesAsked(question string) space {
	var tasks []task.Task
	for _, c := range task.Cuts() {
		if asked, err := task.Parse(question + ": " + c.String()); err == nil {
			tasks = append(tasks, asked)
		}
	}
	return listed(tasks)
}

// perShare is how many rows of shapes there are for halves, thirds and fourths each.
const perShare = 80

// cutsToFind are rows of four shapes of one form, cut in four ways.
func cutsToFind() space {
	return product(func(c []int) task.Task {
		random := rand.New(rand.NewPCG(uint64(c[1]), uint64(c[0])))
		shape := []string{"square", "rectangle", "circle"}[random.IntN(3)]
		var cuts []task.Cut
		for _, cut := range task.Cuts() {
			if cut.Shape == shape {
				cuts = append(cuts, cut)
			}
		}
		t := task.FindCuts{Shares: c[0] + 2, N: 4}
		for i, at := range random.Perm(len(cuts))[:4] {
			t.Cuts[i] = cuts[at]
		}
		asked, err := task.Parse(t.String())
		if err != nil {
			return nil
		}
		return asked
	}, 3, perShare)
}

// sharesCompared are all pairs of equal cuts of one shape.
func sharesCompared() space {
	var tasks []task.Task
	for _, left := range task.Cuts() {
		for _, right := range task.Cuts() {
			if left.Shape == right.Shape && left != right && left.Equal() && right.Equal() {
				tasks = append(tasks, task.LargerShare{Left: left, Right: right})
			}
		}
	}
	return listed(tasks)
}

// shapesToCut are circles, squares and rectangles to cut in 2, 3 and 4.
func shapesToCut() space {
	shapes := []string{"circle", "square", "rectangle"}
	return product(func(c []int) task.Task { return task.CutShape{Shape: shapes[c[0]], N: c[1] + 2} }, 3, 3)
}

// squares are rectangles of rows and columns, drawn and to draw.
func squares() space {
	return product(func(c []int) task.Task {
		t := task.Squares{Rows: c[0] + 1, Columns: c[1] + 1, ToDraw: c[2] == 1}
		if t.Rows*t.Columns < 2 {
			return nil
		}
		return t
	}, 5, 5, 2)
}
