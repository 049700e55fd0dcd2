package plan

import _ "embed"

//go:embed example.toml
var example string

// Example is a plan with a note on everything that may stand in one.
func Example() string { return example }

//go:embed example_pacing.toml
var examplePacing string

// ExamplePacing is a pacing list with a note on everything that may stand in one.
func ExamplePacing() string { return examplePacing }
