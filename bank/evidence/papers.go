package evidence

import (
	"encoding/binary"
	"fmt"
	"slices"
)

// Paper is what one pupil did with one form: the items answered, by number, and whether
// each was right. An item the pupil was absent for or did not reach is simply not listed.
type Paper struct {
	Items []int
	Right []bool
}

// Papers counts marked papers the way the difficulty model needs them. In that model the
// number right on a given set of items says all there is to know about a pupil's ability,
// so pupils of one class with the same forms and the same number right are one line with a
// count. No single answer is kept.
type Papers struct {
	forms     [][]int32
	formOf    map[string]int32
	patterns  []pattern
	patternOf map[string]int
	right     []int // by item: right answers
	answered  []int // by item: answers
	groups    int
	longest   int // most answers by one pupil
}

// pattern is a line of Papers: count pupils of one group with these forms and this many right.
type pattern struct {
	group, right, count int
	forms               []int32
}

// NewPapers returns an empty count for items numbered 0 to items-1.
func NewPapers(items int) *Papers {
	return &Papers{
		formOf: map[string]int32{}, patternOf: map[string]int{},
		right: make([]int, items), answered: make([]int, items),
	}
}

// Add counts all the papers of one pupil of the numbered group (a class, from 0): the
// model gives them one ability. To let ability move between weeks, add each week's paper
// by itself under a group of its own (class and week).
func (p *Papers) Add(group int, papers ...Paper) error {
	return p.AddAlike(1, group, papers...)
}

// AddAlike counts a number of pupils of one group whose papers are all the same.
func (p *Papers) AddAlike(pupils, group int, papers ...Paper) error {
	if err := p.check(pupils, group, papers); err != nil {
		return err
	}
	line := pattern{group: group, count: pupils}
	answers := 0
	for _, paper := range papers {
		if len(paper.Items) == 0 {
			continue
		}
		answers += len(paper.Items)
		line.right += p.countAnswers(paper, pupils)
		line.forms = append(line.forms, p.form(paper.Items))
	}
	if answers == 0 {
		return nil
	}
	p.groups = max(p.groups, group+1)
	p.longest = max(p.longest, answers)
	p.countPattern(line)
	return nil
}

func (p *Papers) check(pupils, group int, papers []Paper) error {
	if pupils < 1 || group < 0 {
		return fmt.Errorf("%d pupils of group %d: at least one pupil and a group numbered from 0 are needed", pupils, group)
	}
	for _, paper := range papers {
		if len(paper.Items) != len(paper.Right) {
			return fmt.Errorf("a paper with %d items has %d marks: give one mark for each item answered", len(paper.Items), len(paper.Right))
		}
		for _, item := range paper.Items {
			if item < 0 || item >= len(p.right) {
				return fmt.Errorf("item number %d on a paper: the items are numbered 0 to %d", item, len(p.right)-1)
			}
		}
	}
	return nil
}

// countAnswers adds the paper to the counts by item and returns its number right.
func (p *Papers) countAnswers(paper Paper, pupils int) (right int) {
	for k, item := range paper.Items {
		p.answered[item] += pupils
		if paper.Right[k] {
			p.right[item] += pupils
			right++
		}
	}
	return right
}

// form returns the number of the form with just these items, in this order.
func (p *Papers) form(items []int) int32 {
	key := make([]byte, 0, 128)
	for _, item := range items {
		key = binary.AppendUvarint(key, uint64(item))
	}
	if id, ok := p.formOf[string(key)]; ok {
		return id
	}
	id := int32(len(p.forms))
	form := make([]int32, len(items))
	for k, item := range items {
		form[k] = int32(item)
	}
	p.forms = append(p.forms, form)
	p.formOf[string(key)] = id
	return id
}

// countPattern joins the line to an equal one, or adds it.
func (p *Papers) countPattern(line pattern) {
	slices.Sort(line.forms)
	key := binary.AppendUvarint(nil, uint64(line.group))
	key = binary.AppendUvarint(key, uint64(line.right))
	for _, form := range line.forms {
		key = binary.AppendUvarint(key, uint64(form))
	}
	if at, ok := p.patternOf[string(key)]; ok {
		p.patterns[at].count += line.count
		return
	}
	p.patternOf[string(key)] = len(p.patterns)
	p.patterns = append(p.patterns, line)
}
