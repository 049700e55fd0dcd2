package main

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/urfave/cli/v2"
)

// Of two options of which one would be passed over in silence the call is refused, before anything is read or written.
func TestOptionsThatSayNothingAreRefused(t *testing.T) {
	calls := map[string]string{
		"plans friday --save pacing.toml --history":               "--save and --history are two things to do; say one of the two",
		"plans friday --history --remove":                         "--history and --remove are two things to do",
		"plans friday --save friday.toml --remove":                "--save and --remove are two things to do",
		"plans friday --save= --history":                          "--save and --history are two things to do",
		"plans friday --pacing":                                   "--pacing goes with --save",
		"plans friday --save friday.toml --json":                  "--json can't stand beside --save",
		"plans friday --remove --json":                            "--json can't stand beside --remove",
		"show 01M8 --svg item.svg --json":                         "--json can't stand beside --svg",
		"show 01M8 --overwrite":                                   "--overwrite goes with --svg",
		"review --anyone on --json":                               "--json can't stand beside --anyone",
		"review --anyone on --ready":                              "--ready can't stand beside --anyone",
		"review 01M8 --ready --json":                              "--json can't stand beside --ready",
		"list --conflicts --skill add-tens":                       "--skill can't stand beside --conflicts",
		"list --conflicts apples":                                 `leave off "apples"`,
		"list --conflicts --format csv":                           "--conflicts has no CSV",
		"report --csv items --html page.html":                     "--csv and --html are two things to do",
		"report --csv items,pupils":                               `--csv is "items,pupils"; it can be answers`,
		"report --overwrite":                                      "--overwrite goes with --out or --html",
		"report --html page.html --roster names.csv":              "names are shown on the screen only",
		"report --csv items --roster names.csv":                   "names are shown on the screen only",
		"calibrate --forget --json":                               "--json can't stand beside --forget",
		"calibrate --forget --dry-run":                            "--dry-run can't stand beside --forget",
		"merge other.bank --marks --dry-run":                      "--marks can't stand beside --dry-run",
		"export --overwrite":                                      "--overwrite goes with a file",
		"export - --overwrite":                                    "--overwrite goes with a file",
		"serve --tls-cert cert.pem":                               "--tls-cert goes with --tls-key",
		"help --man list":                                         `leave off "list"`,
		"assemble p.toml --out q --from f --replace A1 --keep A2": "--keep can't stand beside --replace",
		"assemble p.toml --out q --from= --keep A2":               "--keep goes with --from",
		"assemble --makeup f --out q --class 2A":                  "--class can't stand beside --makeup: the form is like those that were sat",
		"assemble --makeup f --out q --overwrite":                 "--overwrite can't stand beside --makeup",
		"assemble p.toml --out q --weeks 2 --json":                "each week's folder has its quiz.json",
		"assemble p.toml --model q.lp --fill":                     "--fill goes with --out",
		"assemble p.toml --model q.lp --large":                    "--large goes with --out",
		"print f --out q --both --lang es":                        "--lang can't stand beside --both",
		"print f --out q --spaced --columns 2":                    "--columns can't stand beside --spaced",
		"print f --out q --strips --spaced":                       "--spaced can't stand beside --strips",
		"print f --out q --class 2A":                              "--class goes with --pupils or --roster",
		"practice --out q --spaced --columns 1":                   "--columns can't stand beside --spaced",
		"demo --dir q --strips --columns 1":                       "--columns can't stand beside --strips",
		"mark f --out grid.csv --digits marks":                    "--digits can't stand beside --out",
		"mark f --enter --json":                                   "--json can't stand beside --enter",
		"mark f --history P01 --read ok=right":                    "--read can't stand beside --history",
		"mark f marks.csv --digits answers,marks":                 `--digits is "answers,marks"; it can be marks, answers`,
		"import list.csv --undo --revise":                         "--revise can't stand beside --undo",
	}
	t.Chdir(t.TempDir())
	for call, want := range calls {
		refusedWith(t, call, want)
	}
	if left, err := os.ReadDir("."); err != nil || len(left) > 0 {
		t.Errorf("refused calls left %v (%v)", left, err)
	}
}

// goesWith is how an option's help says that it says something beside others alone.
var goesWith = regexp.MustCompile(`^with ((?:--[a-z-]+)(?: or --[a-z-]+)*):`)

// What the help says of an option that goes with others alone holds: without them it is refused.
func TestHelpOfWhatGoesWithOthersHolds(t *testing.T) {
	t.Chdir(t.TempDir())
	found := 0
	for _, command := range newApp().Commands {
		for _, flag := range command.Flags {
			with := goesWith.FindStringSubmatch(strings.ReplaceAll(flag.(cli.DocGenerationFlag).GetUsage(), "`", ""))
			if with == nil {
				continue
			}
			found++
			call := command.Name + " something --" + flag.Names()[0]
			if takesValue(flag) {
				call += " 1"
			}
			refusedWith(t, call, "--"+flag.Names()[0]+" goes with "+with[1])
		}
	}
	if found < 5 {
		t.Errorf("only %d options are said to go with others", found)
	}
}

// refusedWith expects a call to be wrong usage and to say so.
func refusedWith(t *testing.T, call, want string) {
	t.Helper()
	code, out, said := evenhand("--bank none.bank " + call)
	if code != exitUsage || !strings.Contains(said, want) || out != "" {
		t.Errorf("%s: exit code %d, want 2 and %q, said: %s%s", call, code, want, said, out)
	}
}
