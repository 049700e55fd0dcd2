// Command evenhand keeps a grade team's bank of mathematics items and makes fair
// quizzes from it.
//
// This package holds one file a command: its flags, one call into the package
// that knows the trade, and how the answer is shown. No rule of the trade lives
// here. Data goes to stdout, talk to stderr; the exit codes are 0 done, 1
// failed, 2 wrong usage, 3 done in part.
package main

import "os"

func main() {
	os.Exit(run(os.Args, os.Stdin, os.Stdout, os.Stderr))
}
