package main

import (
	"regexp"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"
)

// flagsFirst moves flags before arguments, as the library would silently take a
// flag behind an argument for one more argument: the program's own flags come
// before the command, the command's flags behind it. What stands behind "--"
// stays where it is.
func flagsFirst(app *cli.App, args []string) []string {
	if len(args) == 0 {
		return args
	}
	args = straightened(args)
	if flag := valueless(args[1:], app.Flags); flag != "" {
		return []string{args[0], flag}
	}
	global, rest := pick(args[1:], app.Flags, false)
	if len(rest) > 0 && slices.Contains([]string{"--help", "-help", "-h"}, rest[0]) {
		return []string{args[0], "help"}
	}
	at := slices.IndexFunc(rest, func(arg string) bool { return !strings.HasPrefix(arg, "-") })
	if at < 0 {
		return slices.Concat(args[:1], global, rest)
	}
	command := app.Command(rest[at])
	if command == nil {
		return slices.Concat(args[:1], global, rest)
	}
	others := calledNow(slices.Concat(rest[:at], rest[at+1:]), command.Flags)
	if flag := valueless(others, command.Flags); flag != "" {
		return slices.Concat(args[:1], global, []string{command.Name, flag}) // so that the library says what it needs
	}
	flags, arguments := pick(others, command.Flags, true)
	if asksHelp(flags, command.Flags) {
		return []string{args[0], "help", command.Name}
	}
	if len(arguments) > 0 {
		arguments = append([]string{"--"}, arguments...)
	}
	return slices.Concat(args[:1], global, []string{command.Name}, flags, arguments)
}

// straightened undoes what word processors do to lines that are copied from them, which a shell
// passes on as it is: a long dash before an option, and curly quotes around one argument, which the
// shell has then cut at its spaces.
func straightened(args []string) (straight []string) {
	for i := 0; i < len(args); i++ {
		arg := args[i]
		if arg == "--" {
			return append(straight, args[i:]...)
		}
		if m := longDash.FindStringSubmatch(arg); m != nil {
			arg = "--" + m[1]
		}
		for _, quotes := range [][2]string{{"“", "”"}, {"‘", "’"}} {
			inside, opens := strings.CutPrefix(arg, quotes[0])
			if !opens || strings.Contains(strings.TrimSuffix(inside, quotes[1]), quotes[1]) {
				continue
			}
			closes := slices.IndexFunc(args[i:], func(a string) bool { return strings.HasSuffix(a, quotes[1]) })
			if closes >= 0 {
				arg = strings.TrimSuffix(strings.TrimPrefix(strings.Join(args[i:i+closes+1], " "), quotes[0]), quotes[1])
				i += closes
			}
			break
		}
		straight = append(straight, arg)
	}
	return straight
}

var longDash = regexp.MustCompile(`^[–—]-?([a-z][a-z-]*(=.*)?)$`)

// earlierNames are names that options had before, so that what calls them by these still runs.
var earlierNames = map[string]string{"--look": "--layout", "--standing": "--status"}

// calledNow writes options by the names they have now, where the command has no such option.
func calledNow(args []string, flags []cli.Flag) []string {
	for i, arg := range args {
		name, value, hasValue := strings.Cut(arg, "=")
		now, was := earlierNames[name]
		if arg == "--" {
			break
		}
		if !was || flagNamed(flags, now[2:]) == nil {
			continue
		}
		if args[i] = now; hasValue {
			args[i] += "=" + value
		}
	}
	return args
}

// pick takes the given flags with their values out of the arguments; with all, it takes
// unknown flags too, so that they are refused and not overlooked.
func pick(args []string, flags []cli.Flag, all bool) (picked, rest []string) {
	for i := 0; i < len(args); i++ {
		arg := args[i]
		if arg == "--" {
			if all {
				return picked, append(rest, args[i+1:]...)
			}
			return picked, append(rest, args[i:]...)
		}
		name, _, hasValue := strings.Cut(strings.TrimLeft(arg, "-"), "=")
		if !strings.HasPrefix(arg, "-") || arg == "-" {
			rest = append(rest, arg)
			continue
		}
		flag := flagNamed(flags, name)
		if flag == nil && !all {
			rest = append(rest, arg)
			continue
		}
		picked = append(picked, arg)
		if flag != nil && takesValue(flag) && !hasValue && i+1 < len(args) {
			i++
			picked = append(picked, args[i])
		}
	}
	return picked, rest
}

// asksHelp says that one of the flags asks for help, and none that takes a value has it there.
func asksHelp(args []string, flags []cli.Flag) bool {
	for i := 0; i < len(args); i++ {
		name, _, hasValue := strings.Cut(strings.TrimLeft(args[i], "-"), "=")
		if name == "help" || name == "h" {
			return true
		}
		if flag := flagNamed(flags, name); flag != nil && takesValue(flag) && !hasValue {
			i++
		}
	}
	return false
}

// valueless is a flag whose value is missing: it stands last, or another flag or "--"
// stands where the value should. A value that begins with two dashes is written --flag=--value.
func valueless(args []string, flags []cli.Flag) string {
	for i, arg := range args {
		if arg == "--" {
			return ""
		}
		flag := flagNamed(flags, strings.TrimLeft(arg, "-"))
		if !strings.HasPrefix(arg, "-") || flag == nil || !takesValue(flag) {
			continue
		}
		if i+1 == len(args) || strings.HasPrefix(args[i+1], "--") {
			return arg
		}
	}
	return ""
}

func flagNamed(flags []cli.Flag, name string) cli.Flag {
	for _, flag := range flags {
		if slices.Contains(flag.Names(), name) {
			return flag
		}
	}
	return nil
}

func takesValue(flag cli.Flag) bool {
	documented, ok := flag.(cli.DocGenerationFlag)
	return ok && documented.TakesValue()
}
