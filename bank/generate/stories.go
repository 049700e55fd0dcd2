package generate

import (
	"slices"

	"evenhand/standards/task"
	"evenhand/standards/words"
)

// What stories are about.
var (
	lengths = thingsOf(words.Measured)
	money   = thingsOf(words.Money)
	counted = thingsOf(words.Counted)
)

func thingsOf(kind words.ThingKind) (names []string) {
	for _, thing := range words.Things {
		if thing.Kind == kind {
			names = append(names, thing.Name)
		}
	}
	return names
}

// situations are those of two numbers; firstSituations are those of kindergarten.
var (
	situations = slices.DeleteFunc(task.Situations(), func(s task.StorySituation) bool {
		return s == task.TwoSteps || s == task.ThreeAddends
	})
	firstSituations = slices.DeleteFunc(slices.Clone(situations), func(s task.StorySituation) bool { return s.Mastered() > 0 })
)

// stories are the stories of the situations with a whole of at most most and parts of at
// least least. Each pair of numbers is told of so many of the things; which things
// and which children it falls to goes around, so that they come up equally often.
func stories(most, least, tellings int, things []string, situations ...task.StorySituation) space {
	var all []space
	for turn, situation := range situations {
		suited := slices.DeleteFunc(slices.Clone(things), func(thing string) bool {
			return !slices.Contains(task.StoryThings(situation), thing)
		})
		if len(suited) > 0 {
			all = append(all, storiesOf(situation, turn, most, least, tellings, suited))
		}
	}
	return join(all...)
}

func storiesOf(situation task.StorySituation, turn, most, least, tellings int, things []string) space {
	shape := situation.Example().(task.Story).Sentence
	tell := func(whole, part, telling int) task.Task {
		s := shape
		switch {
		case min(part, whole-part) < least:
			return nil
		case situation == task.TogetherBoth && (part > 1 || whole < 3):
			return nil // one story for each whole, from 3 on: of two things not "some" are red
		case shape.IsAddition():
			s.Terms = [4]int{whole - part, part}
		default:
			s.Terms = [4]int{whole, part}
		}
		return told(situation, s, things, 7*whole+5*part+3*turn+telling)
	}
	var all []space
	for telling := range tellings {
		all = append(all, choose(func(set []int) task.Task { return tell(set[0]+1, set[1]+1, telling) }, most, 2))
	}
	return join(all...)
}

// told is the story with the thing, the children and the telling whose turn it is; nil where
// the numbers can't be told. Nobody has more of a thing than a child would meet.
func told(situation task.StorySituation, s task.Sentence, things []string, turn int) task.Task {
	largest := slices.Max(append(s.Operands(), s.Result()))
	if s.N == 3 {
		largest = max(largest, s.Terms[0]+s.Terms[1])
	}
	things = slices.DeleteFunc(slices.Clone(things), func(name string) bool { return words.ThingNamed(name).Most < largest })
	if len(things) == 0 {
		return nil
	}
	children := task.StoryNames()
	first := (turn*11 + turn/len(children)) % len(children)
	names := []string{children[first], children[(first+5+turn%7)%len(children)]}
	story, err := task.NewStory(situation, s, things[turn%len(things)], names[:situation.People()]...)
	if err != nil {
		return nil
	}
	story.Telling = 1 + turn/len(things)%task.StoryTellings
	return story
}

// threeAddends are stories of three numbers from 2 on whose sum is at most 20, in an order that varies.
func threeAddends(things []string) space {
	var all []space
	for telling := range task.StoryTellings {
		all = append(all, gather(func(n []int) task.Task {
			turn := n[0] + 3*n[1] + 5*n[2] + 7*telling
			s := task.Sentence{N: 3, Blank: 3}
			for i := range n {
				s.Terms[i] = n[(i+turn)%3]
			}
			if s.Result() > 20 {
				return nil
			}
			return told(task.ThreeAddends, s, things, turn)
		}, 2, 16, 3))
	}
	return join(all...)
}

// twoSteps are stories of two steps with a first number up to 60 and steps of up to 30.
func twoSteps(things []string) space {
	return product(func(c []int) task.Task {
		s := task.Sentence{Terms: [4]int{c[0] + 2, c[1] + 2, c[2] + 2}, Minus: [4]bool{1: c[3]&1 == 1, 2: c[3]&2 == 2}, N: 3, Blank: 3}
		if s.Terms[0]-s.Terms[1] < 0 && s.Minus[1] {
			return nil
		}
		return told(task.TwoSteps, s, things, c[0]+3*c[1]+5*c[2]+c[3])
	}, 59, 29, 29, 4)
}
