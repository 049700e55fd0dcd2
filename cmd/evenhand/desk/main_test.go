package desk_test

import (
	"os"
	"testing"

	"evenhand/testdata/outside"
)

func TestMain(m *testing.M) { os.Exit(outside.M{M: m}.Run()) }
