// Package sheet draws a quiz: on paper as PDF and on the screen as SVG, from one
// drawing code.
//
// WritePDF prints a Paper, which is one form of a quiz, for pupils or, with
// Options.Key, for the teacher: the answers and what each likely wrong one suggests
// on one page, then the sheet filled in. WriteKeys has the answers of all forms,
// WriteStrips the forms by turns to cut apart, WriteScript what is read aloud, and
// WriteHTML the same pages for a browser. SVG draws a single Question.
//
// Inside, everything that can be seen is a drawing: a size and a way to paint it on a
// canvas. Drawings are put together from smaller ones in rows and stacks
// (drawing.go), with the type and the boxes of a kit (kit.go). Each look, such as a
// column sum or a clock face, is a file of its own that turns a task into a drawing;
// looks.go lists them. layout.go puts drawings on pages and never splits one. Two
// canvases, pdf.go and svg.go, know about files.
//
// Parts of a page are tagged (tags.go) as they are painted; structure.go writes the tags
// into the PDF, html.go as roles. In place of a picture stands what aloud.go says of it.
//
// A new look is one file and one row in looks.go, a direction to read aloud, and, where
// the task's words don't tell what its picture shows, a line in aloud.go.
package sheet
