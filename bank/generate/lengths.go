package generate

import "evenhand/standards/task"

// blocksAlong are bars of 2 to 10 blocks end to end.
func blocksAlong() space {
	return product(func(c []int) task.Task { return task.Blocks{Count: c[0] + 2} }, 9)
}

// blockWays are bars of 4 to 8 blocks in three pictures, in every order of the ways.
func blockWays() space {
	ways := [6][3]task.BlockWay{
		{task.Even, task.Gaps, task.Overlaps}, {task.Even, task.Overlaps, task.Gaps}, {task.Gaps, task.Even, task.Overlaps},
		{task.Overlaps, task.Even, task.Gaps}, {task.Gaps, task.Overlaps, task.Even}, {task.Overlaps, task.Gaps, task.Even},
	}
	return product(func(c []int) task.Task { return task.Blocks{Count: c[0] + 4, Ways: ways[c[1]]} }, 5, len(ways))
}

// shortBlocks are bars of 2 to 6 long blocks with 2 or 3 short ones in each.
func shortBlocks() space {
	return product(func(c []int) task.Task { return task.Blocks{Count: c[0] + 2, Parts: c[1] + 2} }, 5, 2)
}

// bars are bars of 2 to 10, no two of one length, with each of the questions.
func bars(n int, asks ...task.LengthAsk) space {
	lengths := []int{len(asks)}
	for range n {
		lengths = append(lengths, 9)
	}
	return product(func(c []int) task.Task {
		t := task.Lengths{N: n, Ask: asks[c[0]]}
		for i, length := range c[1:] {
			t.Bars[i] = length + 2
		}
		if read, err := task.Parse(t.String()); err != nil || read != t {
			return nil
		}
		return t
	}, lengths...)
}

// estimates are the things whose length can be estimated, or measured with a tool.
func estimates(tool bool) space {
	names := task.EstimatedThings(tool)
	return product(func(c []int) task.Task { return task.Estimate{Thing: names[c[0]], Tool: tool} }, len(names))
}
