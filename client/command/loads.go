package command

// This file is the verb loads: what rides where, down to what each bracket is designed for.

import (
	"context"
	"fmt"
	"math"
	"strings"

	"github.com/urfave/cli/v2"

	"lugwright/client/run"
	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/units"
	"lugwright/vehicle"
	"lugwright/vehicle/whole"
)

func (s *session) loadsVerb() *cli.Command {
	return &cli.Command{
		Name: "loads", ArgsUsage: "JOB", Usage: "weights, forces on mounts, frame, room and lift: worst first",
		Description: "--move takes a mass or a tank and by how much: --move 'clean water: x 300 mm'.\n" +
			"--over takes places: '1250 mm to 2250 mm by 250 mm', or '1250 mm, 1800 mm'.",
		Flags: []cli.Flag{
			&cli.BoolFlag{Name: "all", Usage: "list every state and case"},
			&cli.StringSliceFlag{Name: "move", Usage: "what if this moved; may be given again"},
			&cli.StringFlag{Name: "sweep-mount", Usage: "move this mount along the frame"},
			&cli.StringFlag{Name: "over", Usage: "places that --sweep-mount tries"},
		},
		Action: s.loads,
	}
}

func (s *session) loads(c *cli.Context) error {
	if err := arguments(c, 1, 1); err != nil {
		return err
	}
	o := run.VehicleOptions{All: c.Bool("all") || c.Bool("json")}
	for _, text := range c.StringSlice("move") {
		m, err := move(text)
		if err != nil {
			return err
		}
		o.Moves = append(o.Moves, m)
	}
	return s.withServices(c, func(ctx context.Context, client *dial.Client) error {
		j, err := readJob(ctx, client, c.Args().First())
		if err != nil {
			return err
		}
		if j.Vehicle != nil {
			if o.Sweep, err = sweepOf(c.String("sweep-mount"), c.String("over"), j.Vehicle.MountNames(), j.Vehicle.BodyOf); err != nil {
				return err
			}
			if err := movable(o.Moves, j.Vehicle.Request.Vehicle); err != nil {
				return err
			}
		}
		v, err := run.OfVehicle(ctx, client, j, o)
		if err != nil {
			return err
		}
		if c.Bool("json") {
			err = s.writeJSON(docOfVehicle(v, Version))
		} else {
			s.out.vehicle(v, c.Bool("all"))
		}
		return firstError(err, vehicleVerdict(v))
	})
}

// farthestMM is how far a mass may be moved: beyond it is a slip.
const farthestMM = 1e5

// move reads "clean water: x 300 mm, y -20 mm".
func move(text string) (vehicle.Move, error) {
	const hint = "write what moves and by how much, such as --move 'clean water: x 300 mm'"
	refused := func(why string) (vehicle.Move, error) {
		return vehicle.Move{}, &usageError{fmt.Sprintf("--move %q: %s", text, why), hint}
	}
	at := strings.LastIndex(text, ":")
	if at < 1 {
		return refused("there is no colon behind a name")
	}
	m := vehicle.Move{Name: strings.TrimSpace(text[:at])}
	for _, shift := range strings.Split(text[at+1:], ",") {
		shift = strings.TrimSpace(shift)
		axis, amount, _ := strings.Cut(shift, " ")
		to := map[string]*float64{"x": &m.By.X, "y": &m.By.Y, "z": &m.By.Z}[axis]
		if to == nil {
			return refused(fmt.Sprintf("%q begins with none of x, y, z", shift))
		}
		mm, err := units.Parse(amount, units.Length)
		if err != nil {
			return refused(err.Error())
		}
		if math.Abs(mm) > farthestMM {
			return refused(fmt.Sprintf("%q is further than 100 m", shift))
		}
		*to = mm
	}
	return m, nil
}

// movable refuses moves of what the vehicle does not have, before anything is asked.
func movable(moves []vehicle.Move, v *vehicle.Vehicle) error {
	if v == nil {
		return nil
	}
	var known []string
	for _, m := range v.Items {
		known = append(known, m.Name)
	}
	for _, t := range v.Tanks {
		known = append(known, t.Name)
	}
	for _, m := range moves {
		if err := oneOf("--move", "mass or tank", m.Name, known); err != nil {
			return err
		}
	}
	return nil
}

func oneOf(option, what, name string, known []string) error {
	for _, k := range known {
		if k == name {
			return nil
		}
	}
	return &usageError{fmt.Sprintf("%s: no %s %q%s", option, what, name, part.Nearest(name, known)), "the job has " + strings.Join(known, ", ")}
}

// mostPlaces is how many places a sweep may try.
const mostPlaces = whole.MaxSweep

func sweepOf(mount, over string, known []string, body func(string) string) (*whole.Sweep, error) {
	switch {
	case mount == "" && over == "":
		return nil, nil
	case mount == "" || over == "":
		return nil, &usageError{"--sweep-mount and --over go together", "such as --sweep-mount single --over '1250 mm to 2250 mm by 250 mm'"}
	}
	if err := oneOf("--sweep-mount", "mount", mount, known); err != nil {
		return nil, err
	}
	xs, err := places(over)
	if err != nil {
		return nil, &usageError{fmt.Sprintf("--over %q: %s", over, err), "write '1250 mm to 2250 mm by 250 mm', or places with commas between"}
	}
	return &whole.Sweep{Body: body(mount), Mount: mount, XMM: xs}, nil
}

// places reads "A to B by C" or "A, B, C".
func places(over string) ([]float64, error) {
	from, rest, span := strings.Cut(over, " to ")
	if !span {
		var out []float64
		for _, text := range strings.Split(over, ",") {
			x, err := units.Parse(strings.TrimSpace(text), units.Length)
			if err != nil {
				return nil, err
			}
			out = append(out, x)
		}
		return out, nil
	}
	to, by, _ := strings.Cut(rest, " by ")
	var v [3]float64
	for i, text := range []string{from, to, by} {
		x, err := units.Parse(strings.TrimSpace(text), units.Length)
		if err != nil {
			return nil, err
		}
		v[i] = x
	}
	n := (v[1] - v[0]) / v[2]
	if !(v[2] > 0) || !(n >= 0) || n > mostPlaces {
		return nil, fmt.Errorf("it gives no places, or more than %d", mostPlaces)
	}
	var out []float64
	for i := range int(n+1e-9) + 1 {
		out = append(out, v[0]+float64(i)*v[2])
	}
	return out, nil
}
