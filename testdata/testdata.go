// Package testdata holds the lists that the demo and the tests bring in: three
// colleagues' lists of Alder Hill School, invented, and as untidy as real ones.
package testdata

import "embed"

// Lists are the files under lists/.
//
//go:embed lists/*
var Lists embed.FS
