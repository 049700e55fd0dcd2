package store

import "time"

// Options say how to open a store.
type Options struct {
	Timeout  time.Duration   // how long to wait for another program or for a lost server; 0 means DefaultTimeout
	ReadOnly bool            // only read
	Waiting  func(on string) // told what is waited for, once it has taken a second; nil means nobody
}

// DefaultTimeout is how long is waited where nobody says otherwise.
const DefaultTimeout = 30 * time.Second

// Patience is the timeout that the options ask for.
func (o Options) Patience() time.Duration {
	if o.Timeout == 0 {
		return DefaultTimeout
	}
	return o.Timeout
}

// Told calls Waiting, if there is one.
func (o Options) Told(on string) {
	if o.Waiting != nil {
		o.Waiting(on)
	}
}
