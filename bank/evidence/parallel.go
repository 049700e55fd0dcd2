package evidence

import "sync"

// shards is how many pieces a big sum is cut into. It does not depend on the machine, and
// the pieces are added in order, so the same papers give the same bytes everywhere.
const shards = 8

// inShards calls work for consecutive ranges that cover 0 to n-1, at the same time when
// there is enough to do, and returns how many ranges there were.
func inShards(n int, work func(shard, from, to int)) int {
	if n < 64*shards {
		work(0, 0, n)
		return 1
	}
	var wait sync.WaitGroup
	for shard := range shards {
		wait.Go(func() { work(shard, n*shard/shards, n*(shard+1)/shards) })
	}
	wait.Wait()
	return shards
}
