package assemble

import _ "embed"

//go:embed example_plan.toml
var examplePlan string

// ExamplePlan is a plan with a note on everything that may stand in one.
func ExamplePlan() string { return examplePlan }

//go:embed example_pacing.toml
var examplePacing string

// ExamplePacing is a pacing list with a note on everything that may stand in one.
func ExamplePacing() string { return examplePacing }
