// Package sheet draws a quiz: on paper as PDF and on the screen as SVG, from one
// drawing code.
//
// WritePDF prints a Paper, which is one form of a quiz, for pupils or, with
// Options.Key, for the teacher: the same pages filled in, then what each likely
// wrong answer suggests. SVG draws a single Question.
//
// Inside, everything that can be seen is a drawing: a size and a way to paint it on a
// canvas. Drawings are put together from smaller ones in rows and stacks
// (drawing.go), with the type and the boxes of a kit (kit.go). Each look, such as a
// column sum or a clock face, is a file of its own that turns a task into a drawing;
// looks.go lists them. layout.go puts drawings on pages and never splits one. Two
// canvases, pdf.go and svg.go, know about files.
//
// A new look is one file and one row in looks.go, and a direction to read aloud.
package sheet
