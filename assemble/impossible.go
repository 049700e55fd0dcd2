package assemble

import "context"

// ImpossibleError says that no quiz keeps all the rules of the plan.
type ImpossibleError struct{}

func (e *ImpossibleError) Error() string { return "no quiz keeps all the rules of the plan together" }

func (p *problem) explain(context.Context) error { return &ImpossibleError{} }
