// Package marks reads and writes marking grids: one row a pupil, one column an item.
//
//	pupil,form,1,2,3,...
//	P01,A,1,1,73,...
//	P02,B,✓,x,-,...
//
// Blank writes a grid to fill in, Read reads one as teachers fill them in, in any
// encoding, with any delimiter, or a workbook. Every row ends in one of three ways:
// taken, unmarked (nothing is filled in yet), or set aside with the line, the column
// and the reason in plain words:
//
//	rows = taken + unmarked + set aside
//
// # What a cell may say
//
//	1 or ✓       right
//	0 or x       wrong, the answer is not known
//	-            the pupil was absent
//	. or empty   not reached
//	other        the written answer, judged as the item's task allows
//
// TRUE and FALSE, which spreadsheets make of ticked boxes, are marks too, but not for
// an item whose answer is true or false.
//
// # 1 and 0
//
// Whether 1 and 0 are marks or what the children wrote is decided once for a whole grid
// (Digits), from its cells. They are answers where more right answers are written out
// than there are ones and zeros under items whose key is longer than one digit, such as
// 83 or 3:30; else they are marks. Reading.Digits says which it was, and Options.Digits
// decides it outright. Where a grid has both, a note names the places that could be
// either: those under a key of one digit, and among written answers all ones and zeros.
package marks
