package evidence_test

import (
	"math"
	"runtime"
	"testing"

	"evenhand/bank/evidence"
)

// BenchmarkDistrict fits 100,000 pupils by 36 quizzes of 10 from 20,000 items.
func BenchmarkDistrict(b *testing.B) {
	w := newWorld(1, 20_000)
	papers := w.district(b, 100)
	for b.Loop() {
		fit, err := evidence.Difficulty(papers, w.traits, evidence.Usual(defaults), nil)
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(fit.Steps), "steps")
		b.ReportMetric(w.miss(fit), "rms-logits")
	}
	var mem runtime.MemStats
	runtime.ReadMemStats(&mem)
	b.ReportMetric(float64(mem.Sys)/1e9, "GB")
}

// miss is the root mean square error of the difficulties.
func (w *world) miss(fit *evidence.Fit) float64 {
	sum := 0.0
	for i, b := range w.difficulty {
		sum += (fit.Items[i].Value - b) * (fit.Items[i].Value - b)
	}
	return math.Sqrt(sum / float64(len(w.difficulty)))
}
