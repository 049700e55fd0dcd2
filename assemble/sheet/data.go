package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"evenhand/standards/task"
)

// Sizes of what data are answered with, in millimetres.
const (
	besideQuestion = 58.0 // least room for a question beside a graph
	namesGap       = 3.0
)

// dataIn draws data by the drawing of their form.
func dataIn(form task.DataForm, picture func(k kit, t task.Data) drawing) func(k kit, asked task.Task) (drawing, bool) {
	return func(k kit, asked task.Task) (drawing, bool) {
		t, ok := asked.(task.Data)
		if !ok || t.Form != form {
			return drawing{}, false
		}
		shown := picture(k, t)
		if t.Ask == task.DrawIt {
			return shown, true
		}
		return k.beside(shown, func(k kit) drawing { return k.questionOfData(t) }), true
	}
}

// beside sets a question beside a picture where there is room, else below it.
func (k kit) beside(picture drawing, question func(kit) drawing) drawing {
	gap := 2 * k.gap()
	if room := k.width - picture.w - gap; room >= besideQuestion {
		k.width = room
		return row(gap, picture, level(question(k)))
	}
	return stack(4, picture, question(k))
}

// besideSource sets a graph or chart to be made beside what it is made from where there is room, else below it.
func (k kit) besideSource(source, graph drawing) drawing {
	if source.w+graph.w+4*k.gap() > k.width {
		return stack(4, source, graph)
	}
	return row(4*k.gap(), source, graph)
}

// made says that a graph or chart has its marks: all but those that a pupil is to make.
func (k kit) made(t task.Data) bool { return t.Ask != task.DrawIt || k.key }

// level is a drawing whose middle is in line with its neighbours'.
func level(d drawing) drawing {
	d.axis = d.h / 2
	return d
}

// questionOfData is the question with the boxes for its answer.
func (k kit) questionOfData(t task.Data) drawing {
	question := k.prompt(t)
	if t.Ask == task.InOrder && strings.Contains(question, ":") { // its places are the boxes
		question, _, _ = strings.Cut(question, ":")
		question += "."
	}
	print := k.paragraph(question, lettering{size: k.size})
	return stack(3, print, k.boxesOfData(t))
}

func (k kit) boxesOfData(t task.Data) drawing {
	if t.Ask != task.InOrder && task.FixedAnswers(t) == nil {
		return k.answerBox(2, t.Key())
	}
	var cells []drawing
	for i := range t.N {
		name, box := k.sortName(t, i), k.markBox(t.Sorts[i] == t.Key())
		if t.Ask == task.InOrder {
			box = k.box(placeWidth, boxHeight, t.Fills()[i])
		}
		cells = append(cells, row(1.5, box, name))
	}
	return flow(k.width, 2*namesGap, namesGap, cells...)
}

// inGraph is the type of what stands in a graph.
func (k kit) inGraph() lettering { return lettering{size: max(leastPrint, .6*k.size)} }

// sortName is the name of a sort in the type of a graph.
func (k kit) sortName(t task.Data, place int) drawing {
	return k.print(t.SortIn(place, k.lang), k.inGraph())
}

// namesWidth is the room for the longest name.
func (k kit) namesWidth(t task.Data) float64 {
	w := 0.0
	for i := range t.N {
		w = max(w, k.sortName(t, i).w)
	}
	return w
}

// ruled is rows below each other, each a name and what belongs to it, with lines around all. Rows
// are of one height; the second column has the width given.
func (k kit) ruled(t task.Data, height, width float64, cell func(place int) drawing) drawing {
	names := k.namesWidth(t) + 2*namesGap
	d := drawing{w: names + width, h: float64(t.N) * height}
	d.axis = d.h / 2
	d.paint = func(c canvas, at point) {
		for i := range t.N {
			y := at.y + float64(i)*height
			name, inside := k.sortName(t, i), cell(i)
			name.paint(c, point{at.x + namesGap, y + height/2 - name.axis})
			inside.paint(c, point{at.x + names + namesGap, y + height/2 - inside.axis})
		}
		for i := range t.N + 1 {
			y := at.y + float64(i)*height
			c.line(point{at.x, y}, point{at.x + d.w, y}, style{line: thin})
		}
		for _, x := range []float64{0, names, d.w} {
			c.line(point{at.x + x, at.y}, point{at.x + x, at.y + d.h}, style{line: thin})
		}
	}
	return d
}

// countsTable is a table of the sorts and how many there are of each.
func (k kit) countsTable(t task.Data) drawing {
	const rowHeight, numberWidth = 9.0, 14.0
	return k.ruled(t, rowHeight, numberWidth, func(i int) drawing {
		return k.print(strconv.Itoa(t.Counts[i]), k.inGraph())
	})
}

// What is said of data.
var (
	thingsName       = phrase{"shapes to sort", "figuras para clasificar"}
	tallyName        = phrase{"tally chart", "tabla de conteo"}
	pictureGraphName = phrase{"picture graph", "pictograma"}
	barGraphName     = phrase{"bar graph", "gráfica de barras"}

	tableSaid   = phrase{"A table:", "Una tabla:"}
	squareUnit  = phrase{"square", "cuadro"}
	circleSaid  = phrase{"circle", "círculo"}
	markTallied = phrase{"mark", "marca"}
	bundleSaid  = phrase{"bundle of five", "grupo de cinco"}
)

// tableAloud is the numbers as the table has them.
func (k kit) tableAloud(t task.Data) string {
	var rows []string
	for i := range t.N {
		rows = append(rows, fmt.Sprintf("%s %d", t.SortIn(i, k.lang), t.Counts[i]))
	}
	return k.say(tableSaid) + " " + strings.Join(rows, ", ") + "."
}

func readTableAloud(k kit, asked task.Task) []string {
	t := asked.(task.Data)
	return []string{k.tableAloud(t), t.Said(k.lang)}
}

// dataAloud says what is shown of each sort, in things to count by ear; a graph to be drawn is told by
// its table.
func dataAloud(name phrase, sounds func(k kit, n int) string) func(k kit, asked task.Task) []string {
	return func(k kit, asked task.Task) []string {
		t := asked.(task.Data)
		if t.Ask == task.DrawIt {
			return []string{k.tableAloud(t), t.Prompt(k.lang)}
		}
		var rows []string
		for i := range t.N {
			rows = append(rows, t.SortIn(i, k.lang)+": "+sounds(k, t.Counts[i]))
		}
		return []string{k.say(name) + ". " + strings.Join(rows, " "), t.Said(k.lang)}
	}
}

// dataDirection is the direction of what is asked, where it isn't a number to write.
func dataDirection(marked, drawn phrase) func(asked task.Task) (phrase, bool) {
	return func(asked task.Task) (phrase, bool) {
		t, ok := asked.(task.Data)
		switch {
		case ok && t.Ask == task.DrawIt:
			return drawn, true
		case ok && task.FixedAnswers(t) != nil:
			return marked, true
		}
		return phrase{}, false
	}
}
