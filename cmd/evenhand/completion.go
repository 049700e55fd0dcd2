package main

import (
	"fmt"
	"slices"
	"strings"

	"evenhand/bank/evidence/report"
	"evenhand/standards"
	"evenhand/standards/task"

	"github.com/urfave/cli/v2"
)

// completionScripts make a shell ask "evenhand complete" for what may stand next: with the words
// so far, the last one being typed; where nothing is offered, the shell offers files.
var completionScripts = map[string]string{
	"bash": `_evenhand() {
  local IFS=$'\n'
  COMPREPLY=($(evenhand complete -- "${COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null))
}
complete -o default -F _evenhand evenhand
`,
	"zsh": `#compdef evenhand
_evenhand() {
  local -a offered
  offered=("${(@f)$(evenhand complete -- "${(@)words[2,CURRENT]}" 2>/dev/null)}")
  if [[ -n "${offered[1]}" ]]; then compadd -- "${offered[@]}"; else _files; fi
}
compdef _evenhand evenhand
`,
	"fish": `complete -c evenhand -a '(evenhand complete -- (commandline -opc)[2..] (commandline -ct) 2>/dev/null)'
`,
	"powershell": `Register-ArgumentCompleter -Native -CommandName evenhand -ScriptBlock {
  param($word, $line, $at)
  $words = @($line.CommandElements | Select-Object -Skip 1 | ForEach-Object { "$_" })
  if ($word -eq '') { $words += '""' }
  evenhand complete -- $words 2>$null | ForEach-Object { [System.Management.Automation.CompletionResult]::new($_) }
}
`,
}

func completionCommand() *cli.Command {
	return &cli.Command{
		Name: "completion", Usage: "let the Tab key complete commands, options and names", ArgsUsage: "bash|zsh|fish|powershell",
		Description: "Prints the lines that teach it to your shell; add them to the file your shell reads when it starts.\n\n" +
			"Example: evenhand completion bash >> ~/.bashrc",
		Action: func(c *cli.Context) error {
			shells := []string{"bash", "zsh", "fish", "powershell"}
			if c.NArg() != 1 || !slices.Contains(shells, c.Args().First()) {
				return usagef("name your shell: %s", strings.Join(shells, ", "))
			}
			_, err := fmt.Fprint(c.App.Writer, completionScripts[c.Args().First()])
			return err
		},
	}
}

// completeCommand answers the shell; people have no use for it.
func completeCommand() *cli.Command {
	return &cli.Command{
		Name: "complete", Hidden: true,
		Action: func(c *cli.Context) error {
			for _, word := range complete(c.App, c.Args().Slice()) {
				fmt.Fprintln(c.App.Writer, word)
			}
			return nil
		},
	}
}

// complete gives what may stand for the last of the words.
func complete(app *cli.App, words []string) []string {
	if len(words) == 0 {
		return nil
	}
	before, typed := words[:len(words)-1], strings.Trim(words[len(words)-1], `"`)
	command, value := follow(app, before)
	flags := app.Flags
	if command != nil {
		flags = append(slices.Clone(command.Flags), app.Flags...)
	}
	var offered []string
	switch {
	case value != "":
		if values, ok := valuesOf[value]; ok {
			offered = values()
		}
	case strings.HasPrefix(typed, "-"):
		for _, name := range flagNames(flags) {
			offered = append(offered, "--"+name)
		}
	case command == nil:
		for _, c := range app.VisibleCommands() {
			offered = append(offered, c.Name)
		}
	case command.Name == "help":
		for _, c := range app.VisibleCommands() {
			offered = append(offered, c.Name)
		}
	}
	return slices.DeleteFunc(offered, func(word string) bool { return !strings.HasPrefix(word, typed) })
}

// follow reads the words before the one being typed: the command, and the flag whose value comes
// next, if one does.
func follow(app *cli.App, words []string) (command *cli.Command, value string) {
	for _, word := range words {
		name, _, hasValue := strings.Cut(strings.TrimLeft(word, "-"), "=")
		switch {
		case value != "":
			value = ""
		case strings.HasPrefix(word, "-"):
			flags := app.Flags
			if command != nil {
				flags = append(slices.Clone(command.Flags), flags...)
			}
			if flag := flagNamed(flags, name); flag != nil && takesValue(flag) && !hasValue {
				value = name
			}
		case command == nil:
			command = app.Command(word)
		}
	}
	return command, value
}

// valuesOf lists what may stand behind a flag that takes one of a few words.
var valuesOf = map[string]func() []string{
	"skill":  standards.Catalogue().IDs,
	"layout": func() []string { return texts(task.AllLooks()) },
	"band":   func() []string { return texts(standards.Bands()) },
	"status": func() []string { return []string{"draft", "ready", "retired"} },
	"origin": func() []string { return []string{"generated", "written", "imported"} },
	"paper":  func() []string { return []string{"letter", "a4"} },
	"lang":   func() []string { return []string{"en", "es"} },
	"digits": func() []string { return []string{"marks", "answers"} },
	"format": func() []string { return []string{"table", "csv", "json"} },
	"as":     func() []string { return []string{"csv", "qti"} },
	"csv":    report.Tables,
}

func texts[T ~string](words []T) []string {
	var list []string
	for _, word := range words {
		list = append(list, string(word))
	}
	return list
}
