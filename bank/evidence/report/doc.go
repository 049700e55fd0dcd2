// Package report turns marked papers into what a teacher is shown: few numbers, in
// plain words, with small counts marked as such.
//
//	r := report.Of(quizzes, papers)
//	for _, section := range r.Sections() { ... }   // for a terminal
//	err := r.WriteCSV(w, "items")                  // for a spreadsheet
//	err := r.WriteHTML(w)                          // one page with pictures
//
// The numbers are those of package evidence; this one counts, words and draws. Pages
// and CSV name pupils by code only. Wherever pupils are shown Caution is shown too.
package report

// Caution stands wherever results of pupils are shown.
const Caution = "A short quiz is a hint for teaching, not a diagnosis or a placement. What follows from it is for the teacher, " +
	"the school's rules, local law and licensed staff; accommodations follow each child's own plan."

// cautionSpanish is Caution in Spanish.
const cautionSpanish = "Una prueba corta es una pista para enseñar, no un diagnóstico ni una decisión de ubicación. " +
	"Lo que se siga de ella corresponde al docente, las normas de la escuela, la ley local y el personal titulado; " +
	"las adaptaciones siguen el plan de cada niño."

// CautionIn is Caution in a language ("en" or "es"; any other reads as "en").
func CautionIn(lang string) string {
	if lang == "es" {
		return cautionSpanish
	}
	return Caution
}

// shortCaution stands beside results on a page that has shown Caution.
const shortCaution = "A hint for teaching, not a diagnosis or a placement."
