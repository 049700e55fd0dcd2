// Package cells makes cells of CSV files safe to open in a spreadsheet.
package cells

import "strings"

// formulaStarts are the characters that make a spreadsheet run a cell that begins
// with one of them (OWASP, "CSV Injection": = + - @ TAB CR LF and their full-width
// forms), and the true minus sign.
const formulaStarts = "=+-@\t\r\n" + "−" + "＝＋－＠"

// Guard makes a cell safe to open in a spreadsheet: one apostrophe goes before
// a cell that would run as a formula. "-5" becomes "'-5". A cell that already
// looks guarded gets one more, so that Unguard gives back every text unchanged.
func Guard(cell string) string {
	if startsFormula(cell) {
		return "'" + cell
	}
	return cell
}

// Unguard takes off the one apostrophe that Guard put on, and no other:
// Unguard(Guard(s)) == s for every s. "'tis" stays as it is.
func Unguard(cell string) string {
	if strings.HasPrefix(cell, "'") && startsFormula(cell) {
		return cell[1:]
	}
	return cell
}

// startsFormula says whether a cell begins, after any apostrophes, with a
// character that starts a formula.
func startsFormula(cell string) bool {
	bare := strings.TrimLeft(cell, "'")
	return strings.IndexAny(bare, formulaStarts) == 0
}
