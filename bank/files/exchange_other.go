//go:build !linux && !darwin

package files

import "errors"

// exchange gives each of two folders the other's name, in one step: not on this system.
func exchange(_, _ string) error { return errors.ErrUnsupported }
