package sheet

import (
	"slices"
	"strings"

	"evenhand/standards/task"
)

// Sizes of blocks in millimetres.
const (
	blockTall  = 7.0
	mostBlock  = 14.0 // width of a block where there is room
	raisedBy   = 2.0  // every second of blocks that overlap
	letterRoom = 8.0
)

// blockAt is one block: how far from the left end of the bar it begins, in blocks, and whether it lies on its
// neighbours.
type blockAt struct {
	from   float64
	raised bool
}

// laid are blocks along a bar in a way: end to end, one too few with gaps between them, or one too many that
// overlap. The first and the last always end with the bar.
func laid(count int, way task.BlockWay) []blockAt {
	n := count
	switch way {
	case task.Gaps:
		n--
	case task.Overlaps:
		n++
	}
	step := float64(count-1) / float64(n-1)
	list := make([]blockAt, n)
	for i := range list {
		list[i] = blockAt{step * float64(i), way == task.Overlaps && i%2 == 1}
	}
	return list
}

// barOver draws a bar and blocks of a width below it.
func barOver(count int, unit, width float64, blocks []blockAt) drawing {
	d := drawing{w: unit * float64(count), h: barTall + 1 + blockTall + raisedBy}
	d.axis = d.h / 2
	d.paint = func(c canvas, at point) {
		oblong(c, at, d.w, barTall, pale)
		for _, raised := range []bool{false, true} {
			for _, b := range blocks {
				if b.raised != raised {
					continue
				}
				y := at.y + barTall + 1
				if raised {
					y += raisedBy
				}
				oblong(c, point{at.x + unit*b.from, y}, width, blockTall, hollow)
			}
		}
	}
	return d
}

// oblong draws a rectangle that nobody writes in.
func oblong(c canvas, at point, w, h float64, f fill) {
	c.polygon([]point{at, {at.x + w, at.y}, {at.x + w, at.y + h}, {at.x, at.y + h}}, style{line: plain, fill: f})
}

// blocksAlong draws a bar with blocks end to end, and a box for how many.
func blocksAlong(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Blocks)
	if !ok || t.Pictures() || t.Parts > 0 {
		return drawing{}, false
	}
	box := k.answerBox(2, t.Key())
	unit := min(mostBlock, (k.width-box.w-2*k.gap())/float64(t.Count))
	return row(2*k.gap(), barOver(t.Count, unit, unit, laid(t.Count, task.Even)), box), true
}

// blockPictures draws three pictures of blocks along one bar, each with its letter and a box to mark.
func blockPictures(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Blocks)
	if !ok || !t.Pictures() {
		return drawing{}, false
	}
	unit := min(mostBlock, (k.width-placeWidth-letterRoom-3*k.gap())/float64(t.Count))
	var rows []drawing
	for i, way := range t.Ways {
		rows = append(rows, k.pictured(letter(i), t.Key(), barOver(t.Count, unit, unit, laid(t.Count, way))))
	}
	return stack(4, rows...), true
}

// pictured is a picture with its letter and a box to mark before it.
func (k kit) pictured(letter, key string, picture drawing) drawing {
	return row(k.gap(), k.markBox(letter == key), k.named(letter), picture)
}

// named is the letter of a picture, in a column of such letters.
func (k kit) named(letter string) drawing {
	name := k.bold(letter)
	name.w = letterRoom
	return name
}

// shortAndLong draws a bar with long blocks, and below it short ones in the room of one long block.
func shortAndLong(k kit, asked task.Task) (drawing, bool) {
	t, ok := asked.(task.Blocks)
	if !ok || t.Parts == 0 {
		return drawing{}, false
	}
	box := k.answerBox(2, t.Key())
	unit := min(2*mostBlock, (k.width-box.w-2*k.gap())/float64(t.Count))
	long := barOver(t.Count, unit, unit, laid(t.Count, task.Even))
	short := drawing{w: unit, h: blockTall, axis: blockTall / 2, paint: func(c canvas, at point) {
		for i := range t.Parts {
			oblong(c, point{at.x + unit/float64(t.Parts)*float64(i), at.y}, unit/float64(t.Parts), blockTall, hollow)
		}
	}}
	return row(2*k.gap(), level(stack(0, long, short)), box), true
}

// What is said of blocks.
var (
	barOnBlocksSaid = phrase{"A bar. Below it, from end to end:", "Una barra. Debajo, de un extremo al otro:"}
	blockSaid       = phrase{"block", "bloque"}
	gapSaid         = phrase{"gap", "hueco"}
	overlapSaid     = phrase{"on top of it", "encima"}
	longBlockSaid   = phrase{"long block", "bloque largo"}
	shortBlockSaid  = phrase{"short block", "bloque corto"}
	oneLongSaid     = phrase{"One long block is as long as:", "Un bloque largo mide lo mismo que:"}
)

func blocksAlongAloud(k kit, asked task.Task) []string {
	t := asked.(task.Blocks)
	return []string{k.say(barOnBlocksSaid), k.things(blockSaid, t.Count, 5), t.Prompt(k.lang)}
}

func shortAndLongAloud(k kit, asked task.Task) []string {
	t := asked.(task.Blocks)
	return []string{k.say(barOnBlocksSaid), k.things(longBlockSaid, t.Count, 5), k.say(oneLongSaid), k.things(shortBlockSaid, t.Parts, 5), t.Prompt(k.lang)}
}

// blockPicturesAloud says block by block how each picture has them.
func blockPicturesAloud(k kit, asked task.Task) []string {
	t := asked.(task.Blocks)
	said := []string{k.say(barOnBlocksSaid)}
	for i, way := range t.Ways {
		between := map[task.BlockWay]string{task.Even: ", ", task.Gaps: ", " + k.say(gapSaid) + ", ", task.Overlaps: ", " + k.say(overlapSaid) + " "}[way]
		blocks := slices.Repeat([]string{k.say(blockSaid)}, len(laid(t.Count, way)))
		said = append(said, letter(i)+": "+strings.Join(blocks, between)+".")
	}
	return append(said, t.Prompt(k.lang))
}
