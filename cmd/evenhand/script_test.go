package main

import (
	"os"
	"path/filepath"
	"testing"

	"evenhand/testdata/outside"

	"github.com/rogpeppe/go-internal/testscript"
)

// The scripts run the real program; "evenhand" in them is main.
func TestMain(m *testing.M) {
	if os.Getenv(asProgram) != "" {
		main()
	}
	testscript.Main(outside.M{M: m}, map[string]func(){"evenhand": main})
}

// asProgram names a variable of the environment that makes this test the program itself, for tests that
// stop or kill it.
const asProgram = "EVENHAND_TEST_AS_PROGRAM"

func TestScripts(t *testing.T) {
	folder := "../../testdata/script"
	scripts, err := filepath.Glob(filepath.Join(folder, "*.txt"))
	if err != nil || len(scripts) == 0 {
		t.Fatalf("no scripts in %s: %v", folder, err)
	}
	lists, err := filepath.Abs("../../testdata/lists")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Files: scripts,
		Setup: func(env *testscript.Env) error {
			env.Setenv("LISTS", lists)
			env.Setenv("EVENHAND_BY", "MK")
			return nil
		},
		RequireExplicitExec: false,
		UpdateScripts:       os.Getenv("EVENHAND_UPDATE") != "",
		Cmds:                scriptCommands,
	})
}
