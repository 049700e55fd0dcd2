// Package qti writes a quiz or a bank as a package of the open standard QTI 3.0, Question and Test
// Interoperability of 1EdTech, which programs for tests on a screen read; reads its own
// packages back (Read); and reads the items of any package of QTI 3.0 as rows of a list (Rows).
//
//	imsmanifest.xml               lists all that follows, and tells of each item
//	form-A.xml, form-B.xml        a test for each form; none for a whole bank
//	items/item-ID.xml             a file for each item
//	items/pictures/item-ID.svg    its drawing, where words don't say it all
//
// # How questions are asked
//
// A number is typed (qti-text-entry-interaction with whole numbers, so that 083 is 83), one at each blank
// where there are several, and all must be right. A time or a number name is typed, and a list of
// ways to write it counts as right (qti-mapping), each of which the task's own judgement
// accepts. Comparing, true or false, odd or even, which group and the look of a choice are
// choices. Clocks to match are matched. Two pairs that make a number are four numbers with a
// rule, as any two pairs are right. A score is 1 or 0.
//
// Hands to draw on a clock are drawn on the blank face (qti-drawing-interaction), and a person marks
// them: the score is declared as given by a person (external-scored), and the time stands in a
// rubric that only who scores sees. Items by hand with no key, or one that is longer than a
// machine can sensibly compare, are longer texts that a person marks, in the same way.
//
// The alternative text of a drawing says what kind of picture it is and never what it shows to
// count or to read. So a child who can't see it can't answer items that ask to read a picture;
// choose others for that child.
//
// # Metadata
//
// The manifest tells of each item in LOM (IEEE 1484.12.1-2002): the bank's ID and the task in plain text
// form as identifiers, the difficulty as easy, medium or difficult for warm-up, core or stretch,
// the expected working time, the codes of the published standards as educational objectives,
// the skill as a competency. The standard's own place for curriculum standards wants GUIDs from
// a registry, which codes are not. The kind of interaction is in QTI metadata. Difficulty in
// logits has no place in the standard, and is in the CSV.
//
// # What was checked
//
// The published XML schemas are no part of this project, and could not be had when this was written.
// Names and structure follow the specification and its published examples (Best Practices and
// Implementation Guide, 1 May 2022); a test holds every file to the rules written down there
// (structure_test.go), from the guide where it says so and else from memory. With the schemas in
// a folder named in EVENHAND_QTI_SCHEMAS, TestReferenceSchemas validates against them with
// xmllint.
package qti
