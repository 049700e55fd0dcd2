package task

import (
	"slices"

	"evenhand/standards/words"
)

// StoryNames lists the children that stories tell of.
func StoryNames() []string { return slices.Clone(words.Children) }

// StoryThings lists what stories of the situation can be about.
func StoryThings(situation StorySituation) []string {
	var names []string
	for _, thing := range words.Things {
		if suits(thing, situation) {
			names = append(names, thing.Name)
		}
	}
	return names
}

// suits says whether a thing can be told of in the situation: cents come in no two
// kinds, and a length can't be told as two unknown parts.
func suits(t words.Thing, situation StorySituation) bool {
	return !situation.isTogether() || t.En.Kinds[0] != "" || t.Measured && situation != TogetherBoth
}
