package sheet

import (
	"fmt"
	"html"
	"io"
	"strings"
)

// WriteHTML writes a paper as a page for a browser that prints the same as the PDF: each page is one picture of
// its size, whose text is text, and whose parts are headings, groups and named images for a screen
// reader.
func WriteHTML(w io.Writer, p Paper, o Options) error {
	s, leaves, err := o.pagesOf(p)
	if err != nil {
		return err
	}
	return s.writeHTML(w, s.documentTitle(p), leaves)
}

// writeHTML writes pages as a page for a browser.
func (s settings) writeHTML(w io.Writer, title string, leaves []leaf) error {
	width, height := mm(s.scale*s.pageWidth), mm(s.scale*s.pageHeight)
	var b strings.Builder
	fmt.Fprintf(&b, `<!doctype html>
<html lang="%s">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>%s</title>
<style>
@page { size: %smm %smm; margin: 0 }
body { margin: 0 }
svg { display: block; width: %smm; height: %smm; break-after: page }
text { white-space: pre }
</style>
<main>
`, s.Lang, html.EscapeString(title), width, height, width, height)
	for i, leaf := range leaves {
		b.WriteString(s.htmlPage(leaf, i+1, len(leaves)))
	}
	b.WriteString("</main>\n</html>\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// htmlPage is one page as a picture in the text of the document.
func (s settings) htmlPage(leaf leaf, number, of int) string {
	c := &svgCanvas{face: s.face, onPage: true}
	leaf.paint(c, number, of)
	whole := s.scale / leaf.scale // the teacher's pages of large print are drawn in usual print
	return fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %s %s" role="group" aria-label="%s">
<g fill="none" stroke="#000" stroke-linecap="round" stroke-linejoin="round" font-family="%s, 'DejaVu Sans', Verdana, sans-serif">
%s</g>
</svg>
`, mm(whole*s.pageWidth), mm(whole*s.pageHeight), fmt.Sprintf(s.say(pageWords), number, of), s.face.name, c.body)
}

// bookmark does nothing: a browser makes its outline from the headings.
func (c *svgCanvas) bookmark(string, int, float64) {}

// roles are the tags as a browser tells them to a screen reader (WAI-ARIA 1.2).
var roles = map[tag]string{
	tagTitle: ` role="heading" aria-level="1"`, tagDirection: ` role="heading" aria-level="2"`, tagItem: ` role="group"`,
}

func (c *svgCanvas) begin(t tag, alt, lang string) {
	if !c.onPage {
		return
	}
	role := roles[t]
	if t == tagFigure {
		role = fmt.Sprintf(` role="img" aria-label="%s"`, html.EscapeString(alt))
	}
	if lang != "" {
		role += fmt.Sprintf(` lang="%s"`, lang)
	}
	c.add("<g", role, ">\n")
}

func (c *svgCanvas) end() {
	if c.onPage {
		c.add("</g>\n")
	}
}
