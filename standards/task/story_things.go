package task

import "evenhand/standards/words"

// StoryNames lists the children that stories tell of.
func StoryNames() []string {
	names := make([]string, len(words.Children))
	for i, child := range words.Children {
		names[i] = child.Name
	}
	return names
}

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

// suits says whether a thing can be told of in the situation: a length or money can't be told
// as two unknown parts, and isn't told as three.
func suits(t words.Thing, situation StorySituation) bool {
	return t.Kind == words.Counted || situation != TogetherBoth && situation != ThreeAddends
}
