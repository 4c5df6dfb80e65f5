package command

// This file lets options stand anywhere on the line: `pack job.yaml -o out --json` as well as `--json pack -o out job.yaml`.

import (
	"slices"
	"strings"

	"github.com/urfave/cli/v2"
)

// completing is how a shell asks for completions; it comes last and the line is then left as it is.
const completing = "--generate-bash-completion"

// reorder puts the application's options first, then the verb, its options and its arguments. What follows "--" is arguments.
func reorder(app *cli.App, args []string) ([]string, error) {
	if len(args) == 0 || slices.Contains(args, completing) {
		return args, nil
	}
	var given []cli.Flag
	var global, options, rest []string
	var verb *cli.Command
	for i := 1; i < len(args); i++ {
		arg := args[i]
		switch {
		case arg == "--":
			rest = append(rest, args[i:]...)
			i = len(args)
		case len(arg) < 2 || arg[0] != '-':
			if verb == nil {
				verb = app.Command(arg)
			}
			rest = append(rest, arg)
		default:
			taken := args[i:min(i+1+follows(app, verb, arg), len(args))]
			if err := once(app, verb, arg, len(taken), &given); err != nil {
				return nil, err
			}
			if flag(app.Flags, arg) != nil || verb == nil {
				global = append(global, taken...)
			} else {
				options = append(options, taken...)
			}
			i += len(taken) - 1
		}
	}
	if len(rest) == 0 || verb == nil {
		return slices.Concat(args[:1], global, options, rest), nil
	}
	return slices.Concat(args[:1], global, rest[:1], options, rest[1:]), nil
}

// once refuses an option that lacks its value, and one that is given again where only one value counts.
func once(app *cli.App, verb *cli.Command, arg string, taken int, given *[]cli.Flag) error {
	f := flagOf(app, verb, arg)
	if _, isBool := f.(*cli.BoolFlag); f == nil || isBool {
		return nil
	}
	if taken <= follows(app, verb, arg) {
		return &usageError{arg + " needs a value behind it", ""}
	}
	if _, many := f.(*cli.StringSliceFlag); !many && slices.Contains(*given, f) {
		name, _, _ := strings.Cut(arg, "=")
		return &usageError{name + " is given twice; give it once", ""}
	}
	*given = append(*given, f)
	return nil
}

// flagOf is the option of the application or of the verb that a word names.
func flagOf(app *cli.App, verb *cli.Command, arg string) cli.Flag {
	f := flag(app.Flags, arg)
	if f == nil && verb != nil {
		f = flag(verb.Flags, arg)
	}
	return f
}

// follows says how many words after an option belong to it.
func follows(app *cli.App, verb *cli.Command, arg string) int {
	f := flagOf(app, verb, arg)
	if f == nil || strings.Contains(arg, "=") {
		return 0
	}
	if _, isBool := f.(*cli.BoolFlag); isBool {
		return 0
	}
	return 1
}

func flag(flags []cli.Flag, arg string) cli.Flag {
	name, _, _ := strings.Cut(strings.TrimLeft(arg, "-"), "=")
	for _, f := range flags {
		if slices.Contains(f.Names(), name) {
			return f
		}
	}
	return nil
}
