package sheet

// tag says what a part of a page is, by the standard structure types of ISO 32000-1 (14.8.4).
type tag string

// The tags in use. An item and a part of the file hold others; the rest hold what is seen.
const (
	tagPart      tag = "Part"   // a paper, a key
	tagItem      tag = "Sect"   // an item with its number
	tagTitle     tag = "H1"     // what a page is about
	tagDirection tag = "H2"     // what to do with the items below
	tagText      tag = "P"      // words and numbers
	tagFigure    tag = "Figure" // a picture, with words in its place
)

// holds says that a tag's part is made of tagged parts.
func (t tag) holds() bool { return t == tagPart || t == tagItem }

// tagger is a canvas that keeps what the parts of a page are, in the order they are read. What is
// drawn outside all tags is decoration.
type tagger interface {
	begin(t tag, alt, lang string)
	end()
}

// tagged is a drawing with its tag; alt is what a screen reader says in place of a figure.
func tagged(t tag, alt string, d drawing) drawing { return taggedIn("", t, alt, d) }

// taggedIn is the same in a language that is not the file's own; empty for that.
func taggedIn(lang string, t tag, alt string, d drawing) drawing {
	inside := d.paint
	d.paint = func(c canvas, at point) {
		if keeper, ok := c.(tagger); ok {
			keeper.begin(t, alt, lang)
			defer keeper.end()
		}
		inside(c, at)
	}
	d.speaks = true
	return d
}
