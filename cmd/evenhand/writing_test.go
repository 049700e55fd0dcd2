package main

import (
	"bytes"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/urfave/cli/v2"
)

// evenhand runs the program in this process.
func evenhand(line string) (code int, stdout, stderr string) {
	var out, said bytes.Buffer
	code = run(append([]string{"evenhand"}, strings.Fields(line)...), strings.NewReader(""), &out, &said)
	return code, out.String(), said.String()
}

// outputs are all ways to have a file or folder written; OUT is its name. Those that only make
// something new have no other way.
var outputs = []string{
	"init --bank OUT",
	"demo --dir OUT",
	"import bad.csv --set-aside OUT",
	"show 01M89PY9E8R9MNDJT19V1602WB --svg OUT",
	"assemble plan.toml --model OUT",
	"assemble plan.toml --out OUT --try --week 2027-W20",
	"assemble --weeks 1 pacing.toml --out OUT --try --from-week 2027-W20",
	"export OUT",
	"export --as qti OUT",
	"export --as qti friday OUT",
	"print friday --out OUT",
	"mark friday --out OUT --class 2A",
	"practice friday --out OUT --try --fill",
	"letter friday --out OUT",
	"report --html OUT",
	"report --csv pupils --out OUT",
	"backup OUT",
	"copy team.bank OUT",
}

// What takes the name of a file but doesn't write it.
var inputs = []string{
	"import", "import --column", "plan", "assemble", "assemble --from", "assemble --makeup", "serve --tls-cert",
	"serve --tls-key", "serve --backups", "tag", "mark", "mark --roster", "report", "report --roster", "restore",
	"list --file",
	"unuse", "plans", "plans --save", "quizzes", "print", "print --roster", "practice", "letter",
}

// names is how the help names a file or folder.
var placeholder = regexp.MustCompile("`[^`]*`")

var namesFile = regexp.MustCompile(`FILE|DIR|LIST|QUIZ|PLAN|BACKUP|MARKS|quiz\.csv`)

// Whatever command and option writes a file: it is in the list above, so that the next test tries it.
func TestEveryOutputIsTried(t *testing.T) {
	known := slices.Clone(inputs)
	for _, line := range outputs {
		words := strings.Fields(line)
		known = append(known, words[0])
		for i, word := range words {
			if word == "OUT" && i > 1 && strings.HasPrefix(words[i-1], "--") {
				known = append(known, words[0]+" "+words[i-1])
			}
		}
	}
	for _, command := range newApp().Commands {
		if namesFile.MatchString(command.ArgsUsage) && !slices.Contains(known, command.Name) {
			t.Errorf("%s takes %s: is it written? Put it in outputs or inputs", command.Name, command.ArgsUsage)
		}
		for _, flag := range command.Flags {
			described, ok := flag.(cli.DocGenerationFlag)
			name := command.Name + " --" + flag.Names()[0]
			if ok && described.TakesValue() && namesFile.MatchString(placeholder.FindString(described.GetUsage())) && !slices.Contains(known, name) {
				t.Errorf("%s takes a file (%s): is it written? Put it in outputs or inputs", name, described.GetUsage())
			}
		}
	}
}

// No output of any command is ever the bank, its marks or what the command reads, by whatever name; and a
// file that a person made is only replaced when the person says so.
func TestNothingIsOverwritten(t *testing.T) {
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../../testdata/formats/1")); err != nil {
		t.Fatal(err)
	}
	t.Chdir(dir)
	t.Setenv("EVENHAND_BANK", "team.bank")
	t.Setenv("EVENHAND_BY", "MK")
	for name, text := range map[string]string{"bad.csv": "question,answer\n8 + 7,16\n", "notes.txt": "mine", "folder/notes.txt": "mine"} {
		os.Mkdir("folder", 0o777)
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	linked := os.Symlink("team.bank", "soft.bank") == nil && os.Symlink("friday/quiz.csv", "soft.csv") == nil &&
		os.Link("team.bank", "hard.bank") == nil && os.Link("team.bank.marks", "hard.marks") == nil
	if code, _, said := evenhand("mark friday grid.csv --class 2A"); code != 0 { // brings the marks along to this format
		t.Fatal(said)
	}
	_, whole, _ := evenhand("check")
	mine := []string{"notes.txt", "folder/notes.txt", "bad.csv", "plan.toml", "pacing.toml", "friday/quiz.csv", "friday/quiz.json", "grid.csv"}
	before := map[string][]byte{}
	for _, name := range mine {
		before[name], _ = os.ReadFile(name)
	}
	victims := append([]string{"team.bank", "team.bank.marks", "folder", "friday"}, mine...)
	if linked {
		victims = append(victims, "soft.bank", "hard.bank", "hard.marks", "soft.csv")
	}
	for _, output := range outputs {
		for _, victim := range victims {
			for _, ask := range []string{"", " --overwrite"} {
				if ask != "" && !overwrites(output) {
					continue
				}
				line := strings.Replace(output, "OUT", victim, 1) + ask
				code, _, said := evenhand(line)
				for _, name := range mine {
					now, err := os.ReadFile(name)
					if err == nil && bytes.Equal(now, before[name]) {
						continue
					}
					if asked := ask != "" && name == victim && !strings.Contains(output, name) && code == 0; !asked {
						t.Errorf("evenhand %s (exit %d: %s): %s is not what it was", line, code, said, name)
					}
					os.WriteFile(name, before[name], 0o600)
				}
				if _, now, said := evenhand("check"); now != whole {
					t.Fatalf("evenhand %s (exit %d): the bank or its marks are not what they were: %s%s, was %s", line, code, now, said, whole)
				}
				kept := !slices.Contains(mine, victim) || ask == ""
				if kept && code == 0 {
					t.Errorf("evenhand %s: exit 0, but %s must stay", line, victim)
				}
			}
		}
	}
	if left, _ := os.ReadDir("."); slices.ContainsFunc(left, func(e os.DirEntry) bool { return strings.HasPrefix(e.Name(), ".evenhand-") }) {
		t.Errorf("something half done is left: %v", left)
	}
}

// overwrites says whether the command has the option.
func overwrites(line string) bool {
	name, _, _ := strings.Cut(line, " ")
	return slices.ContainsFunc(newApp().Command(name).Flags, func(f cli.Flag) bool { return slices.Contains(f.Names(), "overwrite") })
}
