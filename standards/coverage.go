package standards

import (
	"evenhand/standards/task"
)

// Cover says how far items can serve a published standard.
type Cover string

// The covers.
const (
	Served     Cover = "served"           // items of it are made, keyed and classified
	Partly     Cover = "partly"           // items touch a part of it
	ByWatching Cover = "by watching only" // it asks for something that a sheet of such items can't show
)

// Coverage is how far one standard is served, with the skills that do it or the reason
// why not.
type Coverage struct {
	Code   task.Code
	Cover  Cover
	Reason string // in a few words: what is missing, or empty when served
	Skills []SkillID
}

// Why not, for standards that share a reason.
const (
	byHands = "measured or compared with things in the hand"
)

// uncovered are the standards that are not served in full, and why.
var uncovered = map[task.Code]struct {
	cover  Cover
	reason string
}{
	"K.MD.A.1":  {ByWatching, byHands},
	"K.MD.A.2":  {Partly, "lengths and heights are compared; how heavy things are, and how much they hold, is compared in the hand"},
	"K.G.A.1":   {Partly, "where shapes are is asked; naming the shapes of things around is heard only by listening"},
	"K.G.B.4":   {Partly, "sides, corners and faces are counted; telling in words how shapes are alike is heard only by listening"},
	"K.G.B.5":   {Partly, "shapes are drawn on dots; building them from sticks and the like is seen only by watching"},
	"2.NBT.B.9": {Partly, "reasons are completed in words; a child's own explanation is heard only by listening"},
	"1.G.A.1":   {Partly, "shapes are told apart and drawn; building them is seen only by watching"},
	"2.MD.A.2":  {Partly, "a length is measured with two units; telling in words how the numbers go with them is heard only by listening"},
	"2.MD.D.9":  {Partly, "line plots of lengths are read and drawn; measuring the things in the hand is seen only by watching"},
}

// AllCoverage is the coverage of the 69 standards in the order of the document. A served
// standard lists the skills of the catalogue that have items of it.
func AllCoverage() []Coverage {
	var list []Coverage
	for _, code := range AllCodes() {
		c := Coverage{Code: code, Cover: Served}
		if row, ok := uncovered[code]; ok {
			c.Cover, c.Reason = row.cover, row.reason
		}
		for _, skill := range catalogue {
			for _, served := range skill.Codes {
				if served == code {
					c.Skills = append(c.Skills, skill.ID)
				}
			}
		}
		list = append(list, c)
	}
	return list
}
