package report

import (
	"math"
	"slices"

	"evenhand/bank/results"
	"evenhand/standards"
)

// answered is an answer of a pupil's last weeks.
type answered struct {
	skill standards.SkillID
	right bool
	ease  float64 // how easy the item was for the class, in logits
}

// What it takes to put a pupil in a skill's group (common practice): so many items
// missed, at least half of them, and fewer right than luck gives in one of five cases.
const (
	leastMissed = 2
	mostLuck    = 0.2
)

// believedAnswers is how many answers the predicted difficulty of an item counts for
// beside the answers of the class.
const believedAnswers = 4

// ease is how easy an item was for the class: the logit of the share right, the
// predicted share counted in.
func (b *book) ease(class string, item results.Item) float64 {
	key := [2]string{class, item.ID}
	part, known := b.shares[key]
	if !known {
		for _, p := range b.papers {
			for i, a := range p.Answers {
				if p.Class == class && a.Counts() && p.form.Items[i].ID == item.ID {
					part.add(a.State == right)
				}
			}
		}
		b.shares[key] = part
	}
	share := (float64(part.Right) + believedAnswers*item.Difficulty.ShareRight()) / float64(part.Of+believedAnswers)
	return math.Log(share / (1 - share))
}

// weakest is the skill in which a pupil missed at least half, and more than the pupil's
// other answers and the class's answers to the same items make likely: the skill with
// the smallest probability of so few right. So a skill that is hard for everybody is
// nobody's own weakness.
func weakest(answers []answered) (skill standards.SkillID, part Part, ok bool) {
	least := mostLuck
	for _, id := range skillsOf(answers) {
		var own, others []answered
		var p Part
		for _, a := range answers {
			if a.skill != id {
				others = append(others, a)
				continue
			}
			own = append(own, a)
			p.add(a.right)
		}
		if p.Of-p.Right < leastMissed || 2*p.Right > p.Of {
			continue
		}
		if luck := soFew(own, p.Right, abilityOf(others)); luck < least {
			skill, part, ok, least = id, p, true, luck
		}
	}
	return skill, part, ok
}

func skillsOf(answers []answered) (ids []standards.SkillID) {
	for _, a := range answers {
		ids = append(ids, a.skill)
	}
	slices.Sort(ids)
	return slices.Compact(ids)
}

// abilityOf is how much better than the class a pupil is, in logits: the most likely
// value under the Rasch model for pupils who spread by one logit around their class.
func abilityOf(answers []answered) float64 {
	ability := 0.0
	for range 50 {
		slope, curve := -ability, 1.0
		for _, a := range answers {
			p := logistic(a.ease + ability)
			slope -= p
			if a.right {
				slope++
			}
			curve += p * (1 - p)
		}
		step := slope / curve
		ability += max(-1, min(1, step))
		if math.Abs(step) < 1e-9 {
			break
		}
	}
	return ability
}

func logistic(x float64) float64 { return 1 / (1 + math.Exp(-x)) }

// soFew is the probability of at most so many right, each item by its own chance (the
// Poisson binomial distribution, by full calculation).
func soFew(items []answered, right int, ability float64) (sum float64) {
	counts := make([]float64, len(items)+1) // probability of so many right
	counts[0] = 1
	for i, item := range items {
		p := logistic(item.ease + ability)
		for k := i + 1; k > 0; k-- {
			counts[k] = counts[k]*(1-p) + counts[k-1]*p
		}
		counts[0] *= 1 - p
	}
	for _, p := range counts[:right+1] {
		sum += p
	}
	return sum
}
