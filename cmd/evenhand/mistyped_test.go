package main

import (
	"os"
	"strings"
	"testing"
)

// What a person mistypes is refused with what was read and what would be right, before anything is opened.
func TestMistypedValuesAreRefused(t *testing.T) {
	for call, want := range map[string]string{
		"list --unused-since 31.02.":                `"31.02." is no week; write the year and the number of the week, such as 2026-W48`,
		"list --unused-since 2026-W54":              "there is no week 54 in 2026; its weeks are 1 to 53",
		"list --unused-since 2026-02-31":            `"2026-02-31" is no week`,
		"list --easiest 2 --hardest 1":              "no item is at least as hard as --easiest 2 and at most as hard as --hardest 1",
		"list --skill add-two-digits":               `did you mean "add-two-digit"? evenhand skills lists them all`,
		"skills xyzzy":                              `no skill "xyzzy"; evenhand skills lists them all`,
		"list regroups=1":                           "regroups=1 would be looked for in the questions; for items with it write --where",
		"list skill=add-tens":                       "for items of that skill write --skill add-tens",
		"init my.bank":                              "init takes the bank in front: evenhand --bank my.bank init",
		"check my.bank":                             "evenhand --bank my.bank check",
		"generate add-tens":                         `generate takes no arguments, but got "add-tens"`,
		"desk --port 99999":                         "--port is 99999; a port is a number from 1 to 65535",
		"serve --listen everywhere":                 `--listen is "everywhere"; it is an address with its port, such as 127.0.0.1:8080`,
		"letter --out letter.docx":                  "a PDF is written, and letter.docx says that it is something else; give it the ending .pdf",
		"export items.XLSX":                         "CSV is written, and items.XLSX says that it is something else; give it the ending .csv",
		"export --as qti friday.csv":                "give it the ending .zip",
		"mark friday --out grid.xlsx":               "give it the ending .csv",
		"print friday --out q --fewer 0":            "--fewer is 0; a form keeps at least 1 item",
		"print friday --out friday.pdf":             "a folder of several files is written, and friday.pdf says that it is one file; name it such as friday",
		"assemble friday.toml --out friday.PDF":     "says that it is one file",
		"assemble --makeup friday --out absent.pdf": "says that it is one file",
		"practice --out monday.docx":                "name it such as monday",
		"demo --dir demo.zip":                       "name it such as demo",
		"report --html friday.pdf":                  "give it the ending .html",
		"report --csv items --out items.html":       "give it the ending .csv",
		"show 01M8 --svg item.png":                  "give it the ending .svg",
		"assemble friday.toml --model friday.toml":  "give it the ending .lp",
		"import list.csv --set-aside mend.xlsx":     "give it the ending .csv",
	} {
		refusedWith(t, call, want)
	}
}

// Files of other kinds are called what they are. How they begin: Word and PDF files by common practice, see
// ISO 32000-1 (7.5.2) and the ZIP format (APPNOTE 4.3.7); RTF by its specification.
func TestFilesOfOtherKindsAreNamed(t *testing.T) {
	t.Chdir(t.TempDir())
	for name, text := range map[string]string{
		"friday.docx": "PK\x03\x04\x14\x00", "friday.pdf": "%PDF-1.7\n1 0 obj", "friday.rtf": `{\rtf1 title`, "team.bank": strings.Repeat("\x00\x01", 99),
		"empty.csv": " \n", "marks.csv": "pupil,form,\"1\n",
	} {
		must(t, os.WriteFile(name, []byte(text), 0o600))
	}
	mustDo(t, "--bank own.bank init")
	for call, want := range map[string]string{
		"plan friday.docx":                    "friday.docx is a workbook or document (.xlsx, .docx), not a plan; a plan is plain text",
		"plan friday.pdf":                     "friday.pdf is a PDF, not a plan",
		"plan --pacing friday.rtf":            "friday.rtf is a text document (.rtf), not a plan",
		"plan team.bank":                      "team.bank is no text, not a plan",
		"plans friday --save friday.pdf":      "friday.pdf is a PDF, not a plan",
		"assemble friday.pdf --out q":         "friday.pdf is a PDF, not a plan",
		"import friday.pdf":                   "friday.pdf: this is a PDF, not a list; save it as CSV or .xlsx and take that",
		"print marks.csv --out q":             "marks.csv: this is no table that evenhand wrote",
		"plan nothing/here.toml":              "evenhand plan > nothing/here.toml writes an example there",
		"plan Friday,":                        `evenhand plan > "Friday," writes an example there`,
		"merge laptop.bank":                   "there is no bank laptop.bank to read",
		"copy laptop.bank new.bank":           "there is no bank laptop.bank to read",
		"import away.csv --undo --by MK":      "evenhand lists names them",
		"quizzes 2026-W54":                    "there is no week 54 in 2026; its weeks are 1 to 53",
		"letter 2026-W00 --out letter.pdf":    "there is no week 0 in 2026",
		"export --as qti Friday friday.zip":   `has no quiz called "Friday"; evenhand quizzes lists them`,
		"print Friday --out q --roster empty": `has no quiz called "Friday"`,
	} {
		code, _, said := evenhand("--bank own.bank " + call)
		if code != exitFailed || !strings.Contains(said, want) {
			t.Errorf("%s: exit code %d, want 1 and %q, said: %s", call, code, want, said)
		}
	}
}
