package vehicle

import (
	"context"
	"fmt"
)

// Job is a vehicle with its bodies on their mounts, in its states, under its cases.
type Job struct {
	Vehicle Vehicle
	Bodies  []Body
	States  []State
	Cases   []Case
	NoLoads bool // reactions and their ranges alone, without the loads on brackets
	// Shared, where it is set, gets what all mounts of a body take together for each choice of who takes what they share, by its place among Bodies.
	Shared func(body int, s Shared) `json:"-"`
}

// Report is all that comes of a job: the weights of each state, and each body's mounts.
type Report struct {
	Weights []Weights
	Bodies  []Result
}

// Analyse does a whole job. What a body's name in an item leads to is checked here.
func Analyse(j *Job) (Report, error) { return AnalyseContext(context.Background(), j) }

// AnalyseContext is Analyse until the context ends, whose error is then returned.
func AnalyseContext(ctx context.Context, j *Job) (Report, error) {
	c := &checker{}
	c.vehicle(&j.Vehicle)
	c.states(&j.Vehicle, j.States)
	c.cases(j.Cases)
	names := map[string]bool{}
	if len(j.Bodies) == 0 || len(j.Bodies) > maxMounts {
		c.Refuse("bodies", fmt.Sprintf("%d bodies", len(j.Bodies)), fmt.Sprintf("1 to %d, with their mounts", maxMounts))
	} else {
		for i := range j.Bodies {
			c.name(fmt.Sprintf("bodies[%d].name", i), carrier(j.Bodies[i].Name), names)
			c.body(fmt.Sprintf("bodies[%d]", i), &j.Bodies[i])
		}
		for i := range j.Vehicle.Items {
			c.rides(fmt.Sprintf("vehicle.items[%d].rides_on", i), j.Vehicle.Items[i].RidesOn, names)
		}
		for i := range j.Vehicle.Tanks {
			c.rides(fmt.Sprintf("vehicle.tanks[%d].rides_on", i), j.Vehicle.Tanks[i].RidesOn, names)
		}
	}
	if err := c.Err(); err != nil {
		return Report{}, err
	}
	var r Report
	depth := withLoads
	if j.NoLoads {
		depth = withRanges
	}
	for i := range j.States {
		r.Weights = append(r.Weights, j.Vehicle.weights(&j.States[i]))
	}
	for i := range j.Bodies {
		var shared func(Shared)
		if j.Shared != nil {
			shared = func(s Shared) { j.Shared(i, s) }
		}
		one, err := solve(ctx, fmt.Sprintf("bodies[%d]", i), &j.Vehicle, &j.Bodies[i], j.States, j.Cases, depth, shared)
		if err != nil {
			return Report{}, err
		}
		r.Bodies = append(r.Bodies, one)
	}
	return r, nil
}

func (c *checker) rides(field, on string, bodies map[string]bool) {
	if on = carrier(on); on != Chassis && !bodies[on] {
		c.Refuse(field, fmt.Sprintf("no body %.40q has mounts", on), "the name of a body with mounts, or chassis")
	}
}
