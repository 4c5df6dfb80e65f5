package vehicle

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/part"
	"lugwright/strength/statics"
)

// sideways names the load along an axis.
var sideways = [3]string{"fore-aft", "side", "vertical"}

// names of the mounts of actors, in order.
func (m *model) names(actors []int) []string {
	var out []string
	for _, a := range actors {
		for _, p := range m.actors[a].pieces {
			out = append(out, m.body.Mounts[p.mount].Name)
		}
	}
	return out
}

// motion describes a motion of the body, given about the rig's origin.
func (m *model) motion(f statics.Motion) FreeMotion {
	out := FreeMotion{ShiftMM: part.Vec(f.Shift), TurnRad: part.Vec(f.Turn)}
	turn := out.TurnRad.Norm()
	if turn*m.lengthMM < 1e-6*out.ShiftMM.Norm() {
		out.Words = "sliding along " + along(out.ShiftMM.Unit())
		return out
	}
	axis := out.TurnRad.Scale(1 / turn)
	out.IsTurn, out.Axis = true, axis
	out.Point = m.origin.Add(axis.Cross(out.ShiftMM).Scale(1 / turn))
	out.Words = "turning about " + m.line(out.Point, axis)
	if pitch := out.ShiftMM.Dot(axis) / turn; math.Abs(pitch) > 0.5 {
		out.Words += fmt.Sprintf(" while sliding along it, %.0f mm a radian", pitch)
	}
	return out
}

// along names a direction: an axis, or its parts.
func along(u part.Vec) string {
	for i, x := range []float64{u.X, u.Y, u.Z} {
		if math.Abs(math.Abs(x)-1) < 1e-6 {
			return directions[i]
		}
	}
	return fmt.Sprintf("the direction (%.2f, %.2f, %.2f)", u.X+0, u.Y+0, u.Z+0)
}

// line names an axis by the mounts on it where there are two apart, else by its direction and place.
func (m *model) line(p, axis part.Vec) string {
	var on []string
	var first part.Vec
	apart := false
	for i := range m.body.Mounts {
		mount := &m.body.Mounts[i]
		if mount.At.Sub(p).Cross(axis).Norm() > 1 {
			continue
		}
		if len(on) == 0 {
			first = mount.At
		}
		apart = apart || mount.At.Sub(first).Norm() > 1
		on = append(on, mount.Name)
	}
	direction := along(axis)
	if apart {
		if len(direction) == 1 {
			return "the line along " + direction + " through " + list(on)
		}
		return "the line through " + list(on)
	}
	switch direction {
	case "x":
		return fmt.Sprintf("the line along x at y %.0f, z %.0f mm", p.Y+0, p.Z+0)
	case "y":
		return fmt.Sprintf("the line along y at x %.0f, z %.0f mm", p.X+0, p.Z+0)
	case "z":
		return fmt.Sprintf("the line along z at x %.0f, y %.0f mm", p.X+0, p.Y+0)
	}
	return fmt.Sprintf("the line along %s through (%.0f, %.0f, %.0f) mm", strings.TrimPrefix(direction, "the direction "), p.X+0, p.Y+0, p.Z+0)
}

// heldTwice says which restraints hold the same, those of one direction that hang together in one sentence.
func (m *model) heldTwice() []string {
	type alike struct {
		dir    int
		actors []int
		spare  int
	}
	var sets []alike
	var mixed []string
	for _, s := range m.net.Surplus() {
		dir := m.actors[s.Hold].pieces[0].dir
		same := true
		var actors []int
		for i, v := range s.Balanced {
			if v != 0 {
				actors = append(actors, i)
				same = same && m.actors[i].pieces[0].dir == dir
			}
		}
		if !same {
			var others []string
			for _, i := range actors {
				if i != s.Hold {
					others = append(others, m.what(i))
				}
			}
			mixed = append(mixed, fmt.Sprintf("%s holds what %s hold already: they can work against each other", m.what(s.Hold), list(others)))
			continue
		}
		now := alike{dir, actors, 1}
		var apart []alike
		for _, a := range sets {
			if a.dir == dir && slices.ContainsFunc(a.actors, func(x int) bool { return slices.Contains(now.actors, x) }) {
				now.actors, now.spare = append(now.actors, a.actors...), now.spare+a.spare
			} else {
				apart = append(apart, a)
			}
		}
		slices.Sort(now.actors)
		now.actors = slices.Compact(now.actors)
		sets = append(apart, now)
	}
	var out []string
	for _, a := range sets {
		names, word := m.names(a.actors), "all"
		if len(names) == 2 {
			word = "both"
		}
		what := "hold " + directions[a.dir]
		if a.dir >= 3 {
			what = "hold the body against turning about " + directions[a.dir-3]
		}
		out = append(out, fmt.Sprintf("%s %s %s, %d more than equilibrium needs: they can work against each other", list(names), word, what, a.spare))
	}
	return append(out, mixed...)
}

// what names an actor: "left in x".
func (m *model) what(i int) string {
	a := &m.actors[i]
	name := list(m.names([]int{i}))
	if a.couple() {
		return name + " against turning about " + directions[a.pieces[0].dir-3]
	}
	return name + " in " + directions[a.pieces[0].dir]
}

// unheld says which motion a load drives and which mounts part from the body.
func (m *model) unheld(e *statics.UnheldError, parting []int) (words string, parts []string) {
	words = "nothing holds the body against " + m.motion(e.Motion).Words
	seen := map[string]bool{}
	for _, a := range parting {
		for _, p := range m.actors[a].pieces {
			if n := m.body.Mounts[p.mount].Name; !seen[n] {
				seen[n] = true
				parts = append(parts, n)
			}
		}
	}
	if len(parts) > 0 {
		words += ": it lifts off " + list(parts)
	}
	return words, parts
}
