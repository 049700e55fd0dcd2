package sheet

// drawing is something laid out and ready to be put anywhere: its size, the height of
// its middle line, by which things in a row are lined up, and how to paint it with its
// top left corner at a point. Lengths are millimetres.
type drawing struct {
	w, h  float64
	axis  float64
	paint func(c canvas, at point)

	speaks bool // its parts are tagged: a screen reader needs no words in its place
}

// row sets drawings side by side, their middle lines level.
func row(gap float64, parts ...drawing) drawing {
	var above, below, w float64
	for i, d := range parts {
		above, below = max(above, d.axis), max(below, d.h-d.axis)
		if w += d.w; i > 0 {
			w += gap
		}
	}
	return drawing{w: w, h: above + below, axis: above, paint: func(c canvas, at point) {
		x := at.x
		for _, d := range parts {
			d.paint(c, point{x, at.y + above - d.axis})
			x += d.w + gap
		}
	}}
}

// stack sets drawings one below the other, their left edges in line.
func stack(gap float64, parts ...drawing) drawing { return piled(gap, 0, parts) }

// centred sets drawings one below the other, each in the middle.
func centred(gap float64, parts ...drawing) drawing { return piled(gap, .5, parts) }

// piled sets drawings one below the other; indent is the share of the free width
// that stays to the left of each. The middle line is that of the first.
func piled(gap, indent float64, parts []drawing) drawing {
	var w, h float64
	for i, d := range parts {
		w = max(w, d.w)
		if h += d.h; i > 0 {
			h += gap
		}
	}
	return drawing{w: w, h: h, axis: parts[0].axis, paint: func(c canvas, at point) {
		y := at.y
		for _, d := range parts {
			d.paint(c, point{at.x + indent*(w-d.w), y})
			y += d.h + gap
		}
	}}
}

// flow sets drawings side by side as far as the width goes and the rest on the next
// rows.
func flow(width, gap, between float64, parts ...drawing) drawing {
	var rows []drawing
	for start := 0; start < len(parts); {
		end, w := start+1, parts[start].w
		for end < len(parts) && w+gap+parts[end].w <= width {
			w += gap + parts[end].w
			end++
		}
		rows = append(rows, row(gap, parts[start:end]...))
		start = end
	}
	return stack(between, rows...)
}
