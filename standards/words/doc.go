// Package words reads and writes what people say about numbers, times and things, in
// English and Spanish: "forty-two" and "cuarenta y dos", "half past 4", "las 4 y
// media", shells and caracoles, and the nearest of some names to what was typed.
//
// It knows no item and no skill, and imports nothing of ours.
package words
