package desk

import "sync"

// remembered keeps what was made of keys that hold all that it depends on, so that it can't be out of date.
type remembered[Key comparable, Made any] struct {
	most int // how many are kept; beyond, all are forgotten at once

	sync.Mutex
	known map[Key]Made
}

// of is what is made of a key: what is known, else what make gives.
func (r *remembered[Key, Made]) of(key Key, make func() (Made, error)) (Made, error) {
	r.Lock()
	made, ok := r.known[key]
	r.Unlock()
	if ok {
		return made, nil
	}
	made, err := make()
	if err != nil {
		return made, err
	}
	r.Lock()
	defer r.Unlock()
	if r.known == nil || len(r.known) >= r.most {
		r.known = map[Key]Made{}
	}
	r.known[key] = made
	return made, nil
}
