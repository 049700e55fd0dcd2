package sheet

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"evenhand/bank/generate"
	"evenhand/standards"
)

// mixed is a quiz of ten items of four skills of a grade, each in some look, drawn by a seed.
func mixed(t *testing.T, grade int, seed uint64) Paper {
	r := rand.New(rand.NewPCG(seed, 1))
	skills := slices.DeleteFunc(slices.Clone(standards.Catalogue()), func(s standards.Skill) bool { return s.Grade != grade })
	p := Paper{Title: "Friday check", Form: "A"}
	for len(p.Questions) < 10 {
		skill := skills[r.IntN(len(skills))]
		made, err := generate.Make(generate.Request{Skill: skill.ID, Count: 3, Seed: seed + 1})
		if err != nil {
			t.Fatal(err)
		}
		wanted := skill.Looks[r.IntN(len(skill.Looks))]
		for _, asked := range made.Tasks[:min(len(made.Tasks), 10-len(p.Questions))] {
			q := Question{Number: len(p.Questions) + 1, Task: asked, Look: asked.Looks()[0], Missteps: asked.Missteps()}
			if slices.Contains(asked.Looks(), wanted) {
				q.Look = wanted
			}
			p.Questions = append(p.Questions, q)
		}
	}
	return p
}

// Whatever a plan mixes, in usual and large print, in one language and in two: a quiz takes no more pages than its items
// fill where each page leaves half of the tallest free; no item stands alone on the last page where the one before it could stand
// there, too, and both pages were more alike for it; and the answers of all items stand on the first page of its key.
func TestMixedPlansSparePaper(t *testing.T) {
	for seed := range uint64(10) {
		p := mixed(t, int(seed%3), seed)
		for _, o := range []Options{{}, {PaperSize: "a4", Lang: "es"}, {Both: true}, {Large: true}} {
			o.Font = BuiltInFont
			s, err := o.settle()
			if err != nil {
				t.Fatal(err)
			}
			pages, err := s.itemPages(p)
			if err != nil {
				t.Fatal(err)
			}
			closer := s.closer()
			blocks, err := closer.blocks(p)
			if err != nil {
				t.Fatal(err)
			}
			room, total := closer.pageHeight-closer.topSpace-closer.bottomSpace, 0.0
			for _, b := range blocks {
				total += b.h + slices.Min(tighterGaps)*b.gap
			}
			tallest := 0.0 // what stays together may leave as much free on each page
			for start := 0; start < len(blocks); {
				end, h := together(blocks, start)
				start, tallest = end, max(tallest, h)
			}
			if least := math.Ceil(total / (room - tallest/2)); float64(len(pages)) > least {
				t.Errorf("plan %d, %+v: %d pages, its items would fill %.1f", seed, o, len(pages), total/room)
			}
			full, err := spread(blocks, room, true)
			if err != nil {
				t.Fatal(err)
			}
			if lone, used, before, ok := lastOfAll(full); ok && lone+before < used {
				t.Errorf("plan %d, %+v: the last item stands alone, with room for the one before", seed, o)
			}
			key := s.answers(p)
			first, err := paginate(key, s.pageHeight-s.topSpace-s.bottomSpace)
			if err != nil || first[0][0].what.String() != "the marking strip" {
				t.Errorf("plan %d, %+v: the key begins with something else (%v)", seed, o, err)
			}
		}
	}
}

// lastOfAll is how tall what stands alone on the last page is, how much of the page before is used, and how tall what stays
// together at its end is; false where more stands on the last page, or nothing else on the one before.
func lastOfAll(pages [][]block) (lone, used, before float64, ok bool) {
	if len(pages) < 2 {
		return 0, 0, 0, false
	}
	last, previous := pages[len(pages)-1], pages[len(pages)-2]
	if end, h := together(last, 0); end == len(last) {
		lone = h
	} else {
		return 0, 0, 0, false
	}
	runs := 0
	for start := 0; start < len(previous); runs++ {
		end, h := together(previous, start)
		used, before, start = used+previous[start].gap+h, previous[start].gap+h, end
	}
	return lone, used - previous[0].gap, before, runs > 1
}
