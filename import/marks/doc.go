// Package marks reads and writes marking grids: one row a pupil, one column an item.
//
//	pupil,form,1,2,3,...,quiz
//	P01,A,1,1,73,...,q0f3a...
//	P02,B,✓,x,-,...,q0f3a...
//
// Blank writes a grid to fill in, Read reads one as teachers fill them in, in any
// encoding, with any delimiter, or a workbook; the column "quiz" says which quiz a grid
// is of, and a grid of another is refused. Every row ends in one of three ways: taken,
// unmarked (nothing is filled in yet), or set aside with the line, the column, the pupil
// and the reason or question in plain words:
//
//	rows = taken + unmarked + set aside
//
// # What a cell may say
//
//	1 or ✓       right, and so do +, R, C, yes, 100%, TRUE, an emoji tick and the like
//	0 or x       wrong, the answer is not known; so do W, no, 0%, FALSE, ✗ and the like
//	-            the pupil was absent, as do "absent", "abs", "ill", "ausente"
//	. or empty   not reached (where only right answers are marked, an empty cell between
//	             them is asked about), as do "nr", "not reached", "n/a"
//	other        the written answer, judged as the item's task allows, if it is a possible
//	             answer to the item, right or wrong
//	wrote x      the written answer x, whatever it looks like
//
// Anything else is never counted wrong: the row is set aside. What spreadsheets do to
// answers is undone where one reading fits the item (9.3 for a time was 9:30), else asked.
//
// # Signs that mean several things
//
// A sign such as / or o, a box, and - beside + is read by the signs beside it in its row,
// or, where a row is nothing but that sign, as other rows of the grid tell. Where more
// than one reading stands, the row is set aside with the question, and Options.Signs
// answers it. A sign that is a possible answer (TRUE under a true-or-false item, a key
// such as x) is a mark where the row marks so, an answer where the row is written out, and
// else asked about. Right, correct, wrong and incorrect are asked about beside other marks as well, unless
// mark and answer come to the same. Who ticks boxes, or marks with words, does so under every item of a
// row.
//
// # 1 and 0
//
// Each row decides for itself whether 1 and 0 are marks or what the child wrote. Ones are
// answers beside ticks or right answers written out; 1 and 0 are marks where they can't
// be answers to their items, where no answer is written out and two of them or more are
// wrong as answers (one, beside x for wrong, where the key is longer), and where half of the row or more is one and the same wrong
// digit. Where both readings stand and differ the row is asked about; Options.Digits
// answers. So who writes 1 for right marks a child's own 1 or 0 with x.
package marks
