package results

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"evenhand/bank"
)

// AboutOrphans says what to do where the file of results is missing and others in its folder
// are of banks that aren't there: most likely the bank was renamed or moved without them.
// It is empty where that is not so.
func AboutOrphans(path string) string {
	names := orphans(path)
	if len(names) == 0 {
		return ""
	}
	return fmt.Sprintf("%s holds marks of a bank that is not there; if it is this bank, renamed or moved, "+
		"rename the file to %s", strings.Join(names, " and "), path)
}

func orphans(path string) (names []string) {
	if !bank.IsFile(path) || !missing(path) {
		return nil
	}
	entries, _ := os.ReadDir(filepath.Dir(path))
	for _, e := range entries {
		of, isMarks := strings.CutSuffix(e.Name(), ending)
		if isMarks && of != "" && missing(filepath.Join(filepath.Dir(path), of)) {
			names = append(names, filepath.Join(filepath.Dir(path), e.Name()))
		}
	}
	return names
}
