// Package formats stands beside the files of each stored format, for the tests that open them.
package formats

import (
	"encoding/json"
	"reflect"
	"time"
)

// Unnamed lists the fields that are kept as JSON under the name that they have in the program: renamed there, they would
// be lost to who stored them before.
func Unnamed(kept ...any) (fields []string) {
	seen := map[reflect.Type]bool{}
	var look func(reflect.Type)
	look = func(of reflect.Type) {
		switch of.Kind() {
		case reflect.Pointer, reflect.Slice, reflect.Array, reflect.Map:
			look(of.Elem())
		case reflect.Struct:
			if of == reflect.TypeFor[time.Time]() || seen[of] || of.Implements(reflect.TypeFor[json.Marshaler]()) {
				return
			}
			seen[of] = true
			for i := range of.NumField() {
				field := of.Field(i)
				name := field.Tag.Get("json")
				if field.IsExported() && (name == "" || name[0] == ',') {
					fields = append(fields, of.String()+"."+field.Name)
				}
				if name != "-" {
					look(field.Type)
				}
			}
		}
	}
	for _, value := range kept {
		look(reflect.TypeOf(value))
	}
	return fields
}
