package main

import (
	"testing"

	"evenhand/bank/store/storetest"

	"github.com/rogpeppe/go-internal/testscript"
)

// The program with a bank in a database.
func TestDatabaseScripts(t *testing.T) {
	server := storetest.NewServer(t)
	testscript.Run(t, testscript.Params{
		Dir: "../../testdata/script/database",
		Setup: func(env *testscript.Env) error {
			env.Setenv("DATABASE", server.URL("postgres"))
			env.Setenv("EVENHAND_BY", "MK")
			return nil
		},
		Cmds: scriptCommands,
	})
}
