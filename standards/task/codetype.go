package task

import "strings"

// Code is the full code of a published standard with its cluster letter, such as
// "2.NBT.B.5", from the Common Core State Standards for Mathematics (2010),
// kindergarten to grade 2.
type Code string

// Short is the code without its cluster letter, "2.NBT.5".
func (c Code) Short() string {
	parts := strings.Split(string(c), ".")
	if len(parts) != 4 {
		return string(c)
	}
	return strings.Join([]string{parts[0], parts[1], parts[3]}, ".")
}
