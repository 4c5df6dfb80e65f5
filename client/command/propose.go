package command

// This file is the verb propose: first sizes for a bracket, from its loads and the stock on the rack.

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/urfave/cli/v2"

	"lugwright/client/job"
	"lugwright/client/propose"
	"lugwright/client/run"
	"lugwright/client/sweep"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/services/dial"
)

func (s *session) proposeVerb() *cli.Command {
	return &cli.Command{
		Name: "propose", ArgsUsage: "JOB [BRACKET]", Usage: "first sizes for a bracket, from its loads and the rack",
		Description: "lugwright propose JOB BRACKET                      sizes for a bracket of the job\n" +
			"lugwright propose JOB --mount NAME --kind clevis   a new one on a mount\n" +
			"What it prints is an item of the job's field brackets, the rest of it comments.\n" +
			"--vary sets a parameter, or gives the values that it may take.",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "mount", Usage: "mount of the vehicle, for a new bracket"},
			&cli.StringFlag{Name: "kind", Usage: "kind of the new bracket"},
			&cli.StringFlag{Name: "hand", Usage: "left or right", DefaultText: "the mount's side"},
			marginFlag(),
			&cli.StringSliceFlag{Name: "vary", Usage: "a parameter and its values; may be given again"},
			&cli.StringSliceFlag{Name: "keep", Usage: "leave this parameter as it is; may be given again"},
			&cli.IntFlag{Name: "most", Usage: "variants to try at most", Value: propose.Usual},
			&cli.IntFlag{Name: "pick", Usage: "write the first, second or third as YAML", Value: 1},
		},
		Action: s.propose,
	}
}

// A proposed is everything that propose has to tell.
type proposed struct {
	job     *job.Job
	spec    *job.Bracket // as the file has it, without the loads of its mount
	loaded  *job.Bracket // with them
	kind    *geometry.Kind
	margin  float64
	answer  *propose.Answer
	full    *run.Bracket // of the picked one; nil when nothing passes
	pick    int          // from 0
	most    int          // variants allowed
	stopped bool
}

func (s *session) propose(c *cli.Context) error {
	if err := arguments(c, 1, 2); err != nil {
		return err
	}
	margin, err := marginOf(c.String("margin"))
	if err != nil {
		return err
	}
	most, pick := c.Int("most"), c.Int("pick")
	switch {
	case most < 1 || most > propose.Most:
		return &usageError{fmt.Sprintf("--most %d; a number from 1 to %d", most, propose.Most), ""}
	case pick < 1 || pick > 3:
		return &usageError{fmt.Sprintf("--pick %d; 1, 2 or 3", pick), ""}
	}
	return s.withServices(c, func(ctx context.Context, client *dial.Client) error {
		j, err := readJob(ctx, client, c.Args().First())
		if err != nil {
			return err
		}
		kinds, err := client.Kinds(ctx)
		if err != nil {
			return err
		}
		if err := addNew(j, kinds, c); err != nil {
			return err
		}
		name := c.Args().Get(1)
		if c.String("mount") != "" {
			name = j.Brackets[len(j.Brackets)-1].Name
		}
		spec, err := sweep.Named(j, name)
		if err != nil {
			return err
		}
		bench, err := benchOf(ctx, client, j, margin)
		if err != nil {
			return err
		}
		p := &proposed{job: bench.Job, spec: spec, margin: margin, pick: pick - 1, most: most}
		if p.kind, err = geometry.Find(kinds, spec.Kind); err != nil {
			return err
		}
		o := propose.Options{Most: most, Keep: c.StringSlice("keep")}
		if o.Vary, err = varyOf(p.kind, name, c.StringSlice("vary"), o.Keep); err != nil {
			return err
		}
		if p.loaded, err = sweep.Named(bench.Job, name); err != nil {
			return err
		}
		bar := s.progress(-1, "tries")
		o.Told = bar.add
		p.answer, err = propose.Find(ctx, bench, p.loaded, p.kind, o)
		bar.end()
		p.stopped = err != nil
		if p.answer.Fault != nil && err == nil {
			return p.job.Locate(p.loaded, p.answer.Fault)
		}
		if best := p.answer.Best; err == nil && len(best) > 0 {
			p.pick = min(p.pick, len(best)-1)
			if p.full, err = run.One(ctx, client, bench.Job, best[p.pick].Spec); err != nil {
				return err
			}
		}
		if c.Bool("json") {
			if told := s.writeJSON(docOfProposed(p, Version)); told != nil && !errors.Is(err, context.Canceled) {
				return told
			}
		} else {
			(&proposePage{s.out, scale{j.Units}, p}).print()
		}
		return firstError(err, p.verdict())
	})
}

// addNew puts a new bracket of defaults on a mount, where one is asked for.
func addNew(j *job.Job, kinds []geometry.Kind, c *cli.Context) error {
	mount, kind, name := c.String("mount"), c.String("kind"), c.Args().Get(1)
	switch {
	case mount == "" && kind == "" && c.String("hand") == "" && name != "":
		return nil
	case name != "":
		return &usageError{"a bracket of the job, or --mount and --kind for a new one; not both", ""}
	case mount == "" || kind == "":
		names := make([]string, len(j.Brackets))
		for i := range names {
			names[i] = j.Brackets[i].Name
		}
		hint := "such as lugwright propose JOB --mount pair-left --kind clevis"
		if len(names) > 0 {
			hint = "the job has " + strings.Join(names, ", ") + "; for a new one " + hint
		}
		return &usageError{"propose needs a bracket of the job, or a mount and a kind for a new one", hint}
	case j.Basis == "":
		return j.AtRoot("basis", "missing", "the design basis and its method")
	case j.Vehicle == nil:
		return j.AtRoot("vehicle", "missing", "the section vehicle, with mounts")
	}
	if err := oneOf("--mount", "mount", mount, j.Vehicle.MountNames()); err != nil {
		return err
	}
	if _, err := geometry.Find(kinds, kind); err != nil {
		return err
	}
	m, _ := j.Vehicle.Mount(mount)
	hand := part.LeftHand
	if m.At.Y < 0 {
		hand = part.RightHand
	}
	switch h := part.Hand(c.String("hand")); {
	case h == "":
	case h != part.LeftHand && h != part.RightHand, m.At.Y != 0 && h != hand:
		return &usageError{fmt.Sprintf("--hand %q: the mount %s is on the %s", h, mount, hand), "left or right, the mount's side"}
	default:
		hand = h
	}
	j.Brackets = append(slices.Clone(j.Brackets), job.Bracket{Name: freeName(j, mount), Kind: kind, Hand: hand, Quantity: 1, Mount: mount})
	return nil
}

// freeName is a bracket's name made of a mount's, which no other bracket has.
func freeName(j *job.Job, mount string) string {
	name := strings.Map(func(r rune) rune {
		if r < 128 && (r >= '0' && r <= '9' || r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z' || r == '-' || r == '_') {
			return r
		}
		return '-'
	}, mount)
	name = strings.TrimLeft(name[:min(len(name), 34)], "-_")
	if name == "" {
		name = "bracket"
	}
	taken := func(name string) bool {
		return slices.ContainsFunc(j.Brackets, func(b job.Bracket) bool { return strings.EqualFold(b.Name, name) })
	}
	free := name
	for i := 2; taken(free); i++ {
		free = name + "-" + strconv.Itoa(i)
	}
	return free
}

// varyOf reads what is said of single parameters, and holds the names of those to keep against the kind.
func varyOf(kind *geometry.Kind, bracket string, varied, keep []string) ([]sweep.Axis, error) {
	known := make([]string, len(kind.Params))
	for i, d := range kind.Params {
		known[i] = d.Name
	}
	declared := func(option, name string) (int, error) {
		i := slices.Index(known, name)
		if i < 0 {
			return i, &usageError{fmt.Sprintf("%s %q: the kind %s has no such parameter%s", option, name, kind.Name, part.Nearest(name, known)), "`lugwright kinds " + kind.Name + "` lists them"}
		}
		return i, nil
	}
	for _, name := range keep {
		if _, err := declared("--keep", name); err != nil {
			return nil, err
		}
	}
	var out []sweep.Axis
	for _, text := range varied {
		name, values, ok := strings.Cut(text, "=")
		if !ok {
			return nil, &usageError{fmt.Sprintf("--vary %q: no values", text), "write a parameter and its values, such as pin_height=110 mm"}
		}
		name = strings.TrimPrefix(strings.TrimSpace(name), bracket+".")
		i, err := declared("--vary", name)
		if err != nil {
			return nil, err
		}
		if slices.Contains(keep, name) || slices.ContainsFunc(out, func(a sweep.Axis) bool { return a.Param.Name == name }) {
			return nil, &usageError{name + " is said twice; once with all its values, or --keep", ""}
		}
		a, err := sweep.ReadAxis(kind.Params[i], values)
		if err != nil {
			return nil, &usageError{fmt.Sprintf("--vary %q: %s", text, err), ""}
		}
		out = append(out, a)
	}
	return out, nil
}

// verdict is why nothing is proposed.
func (p *proposed) verdict() error {
	switch {
	case len(p.answer.Best) > 0:
		return nil
	case p.answer.Nearest == nil:
		return &verdictError{fmt.Sprintf("nothing is proposed for %s: no variant was tried", p.spec.Name)}
	}
	text := fmt.Sprintf("nothing that was tried for %s passes", p.spec.Name)
	if p.margin > 1 {
		text += fmt.Sprintf(" by a margin of %g", p.margin)
	}
	return &verdictError{text + ": the nearest " + fate(p.answer.Nearest.Row, scale{p.job.Units})}
}
