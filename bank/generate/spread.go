package generate

import (
	"math/rand/v2"
	"strings"

	"evenhand/standards"
	"evenhand/standards/task"
)

// mostSpread is how many possible tasks of a skill are looked at for their kinds: all but in
// the largest skills, where a kind rarer than one in so many may be missed.
const mostSpread = 50_000

// kindTraits are the traits that make kinds of tasks within a skill: what is asked, in which
// steps, with how many regroupings. The sizes of numbers make none.
var kindTraits = []task.Trait{
	task.Asks, task.Step, task.Unknown, task.Situation, task.ClockStep, task.Regroups, task.ZeroCrossed, task.Decides, task.Addends,
}

func kindOf(asked task.Task) string {
	ts, values := asked.Traits(), make([]string, len(kindTraits))
	for i, t := range kindTraits {
		values[i] = ts[t]
	}
	return strings.Join(values, "|")
}

// spread draws tasks kind by kind, in turn: the first of each kind, then the second of each, as
// far as there are more. Within a kind each is as likely as any other.
func spread(all space, r Request) (result Result, stopped bool) {
	random := rand.New(rand.NewPCG(r.Seed, 0))
	kinds, order, looked := map[string][]task.Task{}, []string{}, 0
	for i := range shuffled(all.size, random) {
		if looked++; looked > mostSpread && len(order) > 0 {
			break
		}
		if looked%stopEvery == 0 && r.Stop != nil && r.Stop() {
			return result, true
		}
		asked := all.at(i)
		if asked == nil || standards.SkillOf(asked) != r.Skill || !fits(asked, r.Where) {
			continue
		}
		if r.Taken != nil && r.Taken(asked.Fingerprint()) {
			result.Taken++
			continue
		}
		result.Possible++
		kind := kindOf(asked)
		if kinds[kind] == nil {
			order = append(order, kind)
		}
		if len(kinds[kind]) < r.Count {
			kinds[kind] = append(kinds[kind], asked)
		}
	}
	for turn := 0; turn < r.Count && len(result.Tasks) < min(r.Count, result.Possible); turn++ {
		for _, kind := range order {
			if turn < len(kinds[kind]) && len(result.Tasks) < r.Count {
				result.Tasks = append(result.Tasks, shown(kinds[kind][turn], random))
			}
		}
	}
	result.Less = len(result.Tasks) < r.Count && looked <= mostSpread
	result.Possible = len(result.Tasks) + result.Taken
	return result, false
}
