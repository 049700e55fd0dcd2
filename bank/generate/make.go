package generate

import (
	"errors"
	"fmt"
	"math/rand/v2"

	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/standards/words"
)

// Request says what to make.
type Request struct {
	Skill standards.SkillID
	Where standards.Where
	Count int    // at least 1
	Seed  uint64 // the same seed makes the same items
	// Spread makes kinds of items within the skill come evenly, however many each has: counting
	// by twos as often as by hundreds.
	Spread bool
	// Taken says whether an item with this fingerprint is in the bank already; nil
	// when there is no bank.
	Taken func(fingerprint string) bool
	// Stop is asked now and then; when it says so, Make gives up with ErrStopped.
	Stop func() bool
}

// ErrStopped says that Make was stopped before it was done.
var ErrStopped = errors.New("making items was stopped")

// stopEvery is how many possible items are looked at between two questions to Stop.
const stopEvery = 256

// Result is what was made.
type Result struct {
	Tasks    []task.Task
	Taken    int  // fitting items passed over because the bank has them
	Less     bool // there are fewer than asked for: every possible item was looked at
	Possible int  // when Less: how many items exist that fit; Tasks and Taken together
}

// String is the result in words, "only 36 exist, 36 made".
func (r Result) String() string {
	words := fmt.Sprintf("%d made", len(r.Tasks))
	if !r.Less {
		return words
	}
	if r.Taken > 0 {
		words = fmt.Sprintf("%d in the bank already, %s", r.Taken, words)
	}
	exist := "exist"
	if r.Possible == 1 {
		exist = "exists"
	}
	return fmt.Sprintf("only %d %s, %s", r.Possible, exist, words)
}

// Make makes items at random, each possible one as likely as any other, none twice
// and none that is Taken. It is an error when no such item exists at all, and the
// error names the wish that can't be met.
//
// The first items of a larger Count are those of a smaller one.
func Make(r Request) (Result, error) {
	all, err := spaceOf(r.Skill)
	if err != nil {
		return Result{}, err
	}
	if r.Count < 1 {
		return Result{}, words.Errorf("%d items can't be made; ask for 1 or more", r.Count)
	}
	pick := draw
	if r.Spread {
		pick = spread
	}
	result, stopped := pick(all, r)
	if stopped {
		return Result{}, ErrStopped
	}
	if result.Less && result.Possible == 0 {
		return Result{}, impossible(all, r.Skill, r.Where)
	}
	return result, nil
}

func draw(all space, r Request) (result Result, stopped bool) {
	random := rand.New(rand.NewPCG(r.Seed, 0))
	looked := 0
	for i := range shuffled(all.size, random) {
		if looked++; looked%stopEvery == 0 && r.Stop != nil && r.Stop() {
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
		result.Tasks = append(result.Tasks, shown(asked, random))
		if len(result.Tasks) == r.Count {
			return result, false
		}
	}
	result.Less = true
	result.Possible = len(result.Tasks) + result.Taken
	return result, false
}
