package command

// This file is the verb completion: scripts that let a shell complete verbs and options.

import (
	"fmt"

	"github.com/urfave/cli/v2"

	"lugwright/part"
)

const bashScript = `# lugwright: completion for bash. Use it with: source <(lugwright completion bash)
_lugwright() {
  local words
  words=("${COMP_WORDS[@]:1:$((COMP_CWORD - 1))}")
  [[ "${COMP_WORDS[COMP_CWORD]}" == -* ]] && words+=("${COMP_WORDS[COMP_CWORD]}")
  COMPREPLY=($(compgen -W "$("${COMP_WORDS[0]}" "${words[@]}" --generate-bash-completion 2>/dev/null)" -- "${COMP_WORDS[COMP_CWORD]}"))
}
complete -o bashdefault -o default -F _lugwright lugwright
`

const zshScript = `#compdef lugwright
# lugwright: completion for zsh. Put this in a file _lugwright on your fpath.
_lugwright() {
  local -a answers before
  before=("${(@)words[2,CURRENT-1]}")
  [[ "${words[CURRENT]}" == -* ]] && before+=("${words[CURRENT]}")
  answers=("${(@f)$("${words[1]}" "${before[@]}" --generate-bash-completion 2>/dev/null)}")
  if [[ -n "${answers[1]}" ]]; then
    compadd -a answers
  else
    _files
  fi
}
compdef _lugwright lugwright
`

var completionScripts = map[string]string{"bash": bashScript, "zsh": zshScript}

func (s *session) completionVerb() *cli.Command {
	return &cli.Command{
		Name: "completion", ArgsUsage: "bash|zsh", Usage: "print a script that completes verbs in a shell",
		BashComplete: func(c *cli.Context) { fmt.Fprintln(c.App.Writer, "bash\nzsh") },
		Action: func(c *cli.Context) error {
			if err := arguments(c, 1, 1); err != nil {
				return err
			}
			script, ok := completionScripts[c.Args().First()]
			if !ok {
				return &part.FieldError{Field: "shell", Found: fmt.Sprintf("%q", c.Args().First()), Accept: "one of bash, zsh"}
			}
			_, err := fmt.Fprint(s.out, script)
			return err
		},
	}
}
