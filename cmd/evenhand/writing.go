package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"

	"evenhand/bank/files"
	"evenhand/bank/results"

	"github.com/urfave/cli/v2"
)

// overwriteFlag says that the file of an output's name may be replaced.
var overwriteFlag = &cli.BoolFlag{Name: "overwrite", Usage: "replace a file that is there already; the bank, " +
	"its marks and what is read here are never replaced"}

// writeFile writes a file for colleagues, whole or not at all. It never takes the place
// of the bank, its marks or what the command reads, and of another file only with
// --overwrite.
func writeFile(c *cli.Context, path string, write func(io.Writer) error) error {
	return writeAs(c, files.Shared, path, write)
}

// writePrivate writes a file that only its owner can read, as writeFile does.
func writePrivate(c *cli.Context, path string, write func(io.Writer) error) error {
	return writeAs(c, files.Private, path, write)
}

func writeAs(c *cli.Context, mode os.FileMode, path string, write func(io.Writer) error) error {
	saySwept(c, filepath.Dir(path))
	if err := guardOf(c, path).Write(path, mode, write); err != nil {
		return cantWrite(c, path, err)
	}
	return nil
}

// guardOf keeps the bank, its marks and all that the command line names beside the output.
func guardOf(c *cli.Context, output string) files.Guard {
	g := files.Guard{Kept: keptBank(c), Replace: c.Bool(overwriteFlag.Name)}
	names := named(c)
	if at := slices.Index(names, output); at >= 0 {
		names = slices.Delete(names, at, at+1) // the output itself
	}
	for _, name := range names {
		g.Kept = append(g.Kept, files.Kept{Path: name, What: "what this command reads"})
	}
	if dir, name := filepath.Split(output); quizFile.MatchString(name) && exists(filepath.Join(dir, "quiz.csv")) {
		g.Kept = append(g.Kept, files.Kept{Path: output, What: "part of a quiz"})
	}
	return g
}

func keptBank(c *cli.Context) []files.Kept {
	path := c.String("bank")
	return []files.Kept{
		{Path: path, What: "the bank"},
		{Path: results.Path(path), What: "the marks of the bank"},
	}
}

// named are the files that the command line names, those of a quiz's folder included.
func named(c *cli.Context) (names []string) {
	values := c.Args().Slice()
	for _, flag := range c.Command.Flags {
		switch name := flag.Names()[0]; flag.(type) {
		case *cli.StringFlag:
			values = append(values, c.String(name))
		case *cli.StringSliceFlag:
			values = append(values, c.StringSlice(name)...)
		}
	}
	for _, value := range values {
		if value == "" || value == "-" {
			continue
		}
		names = append(names, value)
		for _, of := range []string{"quiz.csv", "quiz.json"} {
			if inside := filepath.Join(value, of); exists(inside) {
				names = append(names, inside)
			}
		}
	}
	return names
}

// cantWrite says why an output could not be written and what to do.
func cantWrite(c *cli.Context, path string, err error) error {
	var taken files.TakenError
	switch {
	case errors.As(err, &taken) && taken.Ask && hasFlag(c, overwriteFlag.Name):
		return fmt.Errorf("%w, or add --overwrite if it may be replaced", err)
	case errors.As(err, &taken):
		return err
	}
	return fmt.Errorf("can't write %s: %w", path, err)
}

func hasFlag(c *cli.Context, name string) bool {
	return slices.ContainsFunc(c.Command.Flags, func(f cli.Flag) bool { return slices.Contains(f.Names(), name) })
}

// saySwept takes away what killed runs left in a folder, and says so.
func saySwept(c *cli.Context, dir string) {
	for _, name := range files.Sweep(dir) {
		say(c, "removed %s, which a run that was stopped had left half done", name)
	}
}
