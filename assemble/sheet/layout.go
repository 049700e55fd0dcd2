package sheet

import (
	"fmt"
	"math"
	"slices"

	"evenhand/standards/words"
)

// Space between things on a page, in millimetres.
const (
	rowGap       = 8.0
	spacedGap    = 20.0 // where asked for
	groupGap     = 11.0
	columnGap    = 12.0
	closeColumns = 7.0 // where it spares a page
	closeEdge    = 4.0 // the same, by how much less room there is above and below
	mostStretch  = 7.0 // how far free room may widen each gap
)

// block is a band over the whole width of a page that is never split: a
// direction, or a row of items.
type block struct {
	drawing
	gap   float64     // above it, unless it comes first on its page
	keep  bool        // stays with the block below
	mark  string      // line in the file's outline, empty for none
	close bool        // its page is not stretched
	what  *words.Told // what it is, for a message when it's too tall for a page
}

// blocks are the title and the items in groups, each under its direction. Sparing paper, two
// groups of one narrow item each stand side by side.
func (s settings) blocks(p Paper) ([]block, error) {
	list := []block{{drawing: tagged(tagTitle, "", s.heading(p)), keep: true}}
	if p.Example != nil {
		example, fits, err := s.example(*p.Example)
		if err != nil {
			return nil, err
		}
		if fits {
			list = append(list, block{drawing: example, gap: .6 * groupGap, what: words.Term("the example")})
		}
	}
	all := groups(p.Questions)
	var pairs map[int]block
	if s.sparing {
		var err error
		if pairs, err = s.pairs(all); err != nil {
			return nil, err
		}
	}
	for i := 0; i < len(all); i++ {
		if pair, ok := pairs[i]; ok {
			list = append(list, pair)
			i++
			continue
		}
		rows, err := s.rows(all[i])
		if err != nil {
			return nil, err
		}
		list = append(list, block{drawing: s.direction(all[i], s.width), gap: groupGap, keep: true, mark: s.outline(all[i])})
		list = append(list, rows...)
	}
	if p.Closing != "" {
		list = append(list, block{drawing: s.closing(p.Closing), gap: groupGap, what: words.Term("what comes last")})
	}
	return list, nil
}

// closing is what to do after the last item, with room for it.
func (s settings) closing(words string) drawing {
	said := tagged(tagDirection, "", s.paragraph(words, lettering{size: .78 * s.size}))
	d := stack(3, said, s.drawHere(s.width))
	d.speaks = true
	return d
}

// pairs are the groups that stand beside their next, by the place of the first, chosen so that as much
// height as possible is spared.
func (s settings) pairs(all [][]Question) (map[int]block, error) {
	spared := make([]float64, len(all)+2) // by what stands from each group on
	beside := make([]*block, len(all))
	for i := len(all) - 2; i >= 0; i-- {
		spared[i] = spared[i+1]
		pair, saves, err := s.abreast(all[i], all[i+1])
		if err != nil {
			return nil, err
		}
		if saves > 0 && saves+spared[i+2] > spared[i+1] {
			spared[i], beside[i] = saves+spared[i+2], &pair
		}
	}
	chosen := map[int]block{}
	for i := 0; i < len(all); i++ {
		if beside[i] != nil {
			chosen[i] = *beside[i]
			i++
		}
	}
	return chosen, nil
}

// direction is what the teacher reads aloud before a group, in lines of the given width.
func (s settings) direction(group []Question, width float64) drawing {
	k := s.kit
	k.width = width
	return s.inBoth(k, tagDirection, directionOf(group[0]), lettering{size: .78 * s.size})
}

// outline is a group's line in the file's outline.
func (s settings) outline(group []Question) string {
	return numbers(group) + "  " + s.say(directionOf(group[0]))
}

// abreast is two groups side by side, each under its own direction, and the height that this spares; 0
// where they are of more than one item or too wide.
func (s settings) abreast(a, b []Question) (block, float64, error) {
	half := (s.width - s.columnGap) / 2
	if s.Columns == 1 || len(a) > 1 || len(b) > 1 {
		return block{}, 0, nil
	}
	var cells []drawing
	for _, group := range [][]Question{a, b} {
		items, err := s.items(group)
		if err != nil {
			return block{}, 0, err
		}
		if items[0].w > half {
			return block{}, 0, nil
		}
		cell := stack(.7*rowGap, s.direction(group, half), items[0])
		cell.axis = 0
		cells = append(cells, cell)
	}
	pair := block{drawing: grid(half+s.columnGap, cells), gap: groupGap, mark: s.outline(a), what: words.Sayf("item %s", numbers(a))}
	return pair, groupGap + min(cells[0].h, cells[1].h), nil
}

// numbers is "1" or "1-4".
func numbers(group []Question) string {
	first, last := group[0].Number, group[len(group)-1].Number
	if first == last {
		return fmt.Sprint(first)
	}
	return fmt.Sprintf("%d-%d", first, last)
}

// groups splits the questions where the direction changes; their order stays.
func groups(questions []Question) [][]Question {
	var list [][]Question
	for i, q := range questions {
		if i == 0 || directionOf(q) != directionOf(questions[i-1]) {
			list = append(list, nil)
		}
		last := len(list) - 1
		list[last] = append(list[last], q)
	}
	return list
}

// rows sets the items of a group side by side where two are narrow enough, else one
// below the other.
func (s settings) rows(group []Question) ([]block, error) {
	items, err := s.items(group)
	if err != nil {
		return nil, err
	}
	half := (s.width - s.columnGap) / 2
	var rows []block
	for start := 0; start < len(items); {
		end := start + 1
		if s.Columns != 1 && !s.Spaced && end < len(items) && max(items[start].w, items[end].w) <= half {
			end++
		}
		rows = append(rows, block{drawing: grid(half+s.columnGap, items[start:end]), gap: s.rowGap(), what: words.Sayf("item %s", numbers(group[start:end]))})
		start = end
	}
	return rows, nil
}

// rowGap is the room between items one below the other.
func (s settings) rowGap() float64 {
	if s.Spaced {
		return spacedGap
	}
	return rowGap
}

// label is the room for an item's number.
func (s settings) label() float64 { return 2.2 * s.size }

// items are the drawings of a group with their numbers.
func (s settings) items(group []Question) ([]drawing, error) {
	k := s.kit
	k.width -= s.label()
	var list []drawing
	for _, q := range group {
		d, err := k.draw(q)
		if err != nil {
			return nil, err
		}
		if d, err = s.withSpanish(k, q, d); err != nil {
			return nil, err
		}
		number := k.bold(fmt.Sprint(q.Number))
		number.w = s.label()
		list = append(list, tagged(tagItem, "", row(0, tagged(tagText, "", number), d)))
	}
	return list, nil
}

// grid sets drawings at equal steps, their middle lines level.
func grid(step float64, items []drawing) drawing {
	cells := append([]drawing(nil), items...)
	for i := range cells {
		cells[i].w = step
	}
	return row(0, cells...)
}

// tighterGaps are shares of the usual gaps that are tried to save a page.
var tighterGaps = []float64{.85, .7, .55}

// spread puts blocks on as few pages of the height as the gaps allow, the widest gaps that do,
// and fills the pages evenly, so that no item stands alone on the last one. Where gaps are not to
// shrink it only fills evenly.
func spread(blocks []block, height float64, shrink bool) ([][]block, error) {
	best, err := paginate(blocks, height)
	if err != nil {
		return nil, err
	}
	usual := blocks
	for _, share := range tighterGaps {
		if !shrink {
			break
		}
		tight := slices.Clone(usual)
		for i := range tight {
			tight[i].gap *= share
		}
		if pages, err := paginate(tight, height); err == nil && len(pages) < len(best) {
			best, blocks = pages, tight
		}
	}
	if blocks[0].close {
		return best, nil
	}
	return evened(blocks, height, len(best)), nil
}

// evened puts blocks on so many pages that hold them, so that the squares of the room left free add up
// to as little as can be.
func evened(blocks []block, height float64, count int) [][]block {
	type split struct {
		free float64 // squares of the room left free up to here
		from int     // where the last page begins
	}
	n := len(blocks)
	best := make([][]split, count+1) // by the number of pages and of blocks on them
	for pages := range best {
		best[pages] = make([]split, n+1)
		for end := range best[pages] {
			best[pages][end].free = math.Inf(1)
		}
	}
	best[0][0].free = 0
	for pages := 1; pages <= count; pages++ {
		for start := 0; start < n; start++ {
			if math.IsInf(best[pages-1][start].free, 1) {
				continue
			}
			used := -blocks[start].gap
			for end := start; end < n; {
				next, h := together(blocks, end)
				if used += blocks[end].gap + h; used > height {
					break
				}
				end = next
				if free := best[pages-1][start].free + (height-used)*(height-used); free < best[pages][end].free {
					best[pages][end] = split{free, start}
				}
			}
		}
	}
	spread := make([][]block, count)
	for pages, end := count, n; pages > 0; pages-- {
		start := best[pages][end].from
		spread[pages-1], end = blocks[start:end], start
	}
	return spread
}

// paginate puts blocks on pages with so much height each, as many on each as it holds.
func paginate(blocks []block, height float64) ([][]block, error) {
	var pages [][]block
	used := 0.0
	for start := 0; start < len(blocks); {
		end, h := together(blocks, start)
		if h > height {
			return nil, words.Errorf("%s is too tall for one page; shorten its text or leave out large type", blocks[end-1].what)
		}
		gap := blocks[start].gap
		if len(pages) == 0 || used+gap+h > height {
			pages, used, gap = append(pages, nil), 0, 0
		}
		pages[len(pages)-1] = append(pages[len(pages)-1], blocks[start:end]...)
		used += gap + h
		start = end
	}
	return pages, nil
}

// together is the end of the run of blocks from start that stay together, and its
// height.
func together(blocks []block, start int) (end int, h float64) {
	for end = start; ; end++ {
		h += blocks[end].h
		if end > start {
			h += blocks[end].gap
		}
		if !blocks[end].keep || end == len(blocks)-1 {
			return end + 1, h
		}
	}
}

// stretch is how much each gap of a page can grow so that its items stand airily. Pages for
// the teacher stay close.
func stretch(page []block, height float64) float64 {
	used := page[0].h
	for _, b := range page[1:] {
		used += b.gap + b.h
	}
	if len(page) == 1 || page[0].close {
		return 0
	}
	return min(mostStretch, (height-used)/float64(len(page)-1))
}
