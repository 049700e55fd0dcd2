package main

import (
	"cmp"
	"fmt"
	"runtime"
	"runtime/debug"
)

// version says which program this is, from what the build left in it: the module's version, the
// commit and its day, whether files were changed since, and the Go version.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "of unknown origin, " + runtime.Version()
	}
	settings := map[string]string{}
	for _, setting := range info.Settings {
		settings[setting.Key] = setting.Value
	}
	text := cmp.Or(info.Main.Version, "(devel)")
	if commit := settings["vcs.revision"]; commit != "" {
		text += fmt.Sprintf(", commit %.12s of %.10s", commit, settings["vcs.time"])
	}
	if settings["vcs.modified"] == "true" {
		text += " with later changes"
	}
	return text + ", " + info.GoVersion
}
