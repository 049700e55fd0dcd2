package remote

import (
	"context"
	"net/http"
	"strings"

	"evenhand/bank/store"
)

// Person is whose token a program has, as the desk knows it.
type Person struct {
	Name  string `json:"name"`
	Role  string `json:"role"`
	Marks bool   `json:"marks"` // may see and enter pupils' marks
	Enter string `json:"enter"` // at the desk of one person: where a browser of this computer gets in
}

// Ask asks a desk whose a token is; the empty one is that of the environment.
func Ask(ctx context.Context, address, token string) (me Person, err error) {
	if token == "" {
		if token, err = tokenFromEnvironment(); err != nil {
			return me, err
		}
	}
	s, err := at(strings.TrimRight(address, "/")+"/api/me", token, store.Options{})
	if err != nil {
		return me, err
	}
	return me, s.once(ctx, http.MethodGet, "", nil, &me)
}
