package run

// This file finds the holes that brackets need in the frame's rails, so that they are held against the survey and the guides.

import (
	"context"
	"fmt"
	"math"

	"lugwright/client/job"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/vehicle/drill"
	"lugwright/vehicle/frame"
	"lugwright/vehicle/whole"
)

// meets is how far a bracket may stand from the web that it is bolted to, in mm, before it does not meet it: shims and a tape's reading.
const meets = 3

type holes struct {
	covered  []string
	open     []string
	warnings []whole.Warning
}

// holesOf puts the holes of the job's brackets that are bolted to a rail's web into the request's survey, which is a copy afterwards.
func holesOf(ctx context.Context, c *dial.Client, j *job.Job, q *whole.Request) (*holes, error) {
	h := &holes{}
	if len(j.Brackets) == 0 {
		return h, nil
	}
	requests := make([]geometry.Request, len(j.Brackets))
	for i := range j.Brackets {
		requests[i] = j.Brackets[i].Request()
	}
	answers, err := c.Build(ctx, requests)
	if err != nil {
		return nil, err
	}
	if q.Drilling != nil {
		d := *q.Drilling
		d.Rails = nil
		for _, r := range q.Drilling.Rails {
			r.New, r.Brackets = append([]drill.NewHole{}, r.New...), append([]drill.Bracket{}, r.Brackets...)
			d.Rails = append(d.Rails, r)
		}
		q.Drilling = &d
	}
	for i := range answers {
		b := &j.Brackets[i]
		if answers[i].Err != nil {
			h.leave(b, "it cannot be built: `lugwright check` says why")
			continue
		}
		h.bracket(j, b, j.Shop.Finished(answers[i].Bracket), q)
	}
	return h, nil
}

func (h *holes) leave(b *job.Bracket, why string) {
	h.open = append(h.open, "holes of "+b.Name+" in the frame: "+why)
}

// bracket takes one that is bolted to a rail's web; others make no holes there.
func (h *holes) bracket(j *job.Job, b *job.Bracket, built *part.Bracket, q *whole.Request) {
	groups := OnWeb(built)
	if groups == nil {
		return
	}
	if b.Mount == "" {
		h.leave(b, "its place on the vehicle is not known, for it is tied to no mount")
		return
	}
	m, body := j.Vehicle.Mount(b.Mount)
	lp := built.LoadPoint(b.LoadPoint)
	if lp == nil {
		h.leave(b, "it has several load points; load_point says which one is at the mount")
		return
	}
	side := railOf(q, q.Bodies[body].Name, b.Mount, m.At)
	if side == "" {
		h.leave(b, "its mount stands between the rails")
		return
	}
	r := surveyed(q, side)
	if r == nil {
		h.leave(b, fmt.Sprintf("the %s rail is not surveyed", side))
		return
	}
	shift := m.At.Sub(lp.At)
	if off, ok := h.offWeb(groups, shift, q.Frame, side); !ok {
		h.warnings = append(h.warnings, whole.Warning{
			Severity: whole.Fails, Kind: "drilling", At: "bracket " + b.Name,
			Words: fmt.Sprintf("it does not meet the web of the %s rail: with its load point at the mount %s it stands %.0f mm from the web's face", side, b.Mount, off),
		})
	}
	h.put(b, groups, shift, r)
}

// OnWeb are the bolt groups through a rail's web.
func OnWeb(b *part.Bracket) []part.BoltGroup {
	var out []part.BoltGroup
	for _, g := range b.Bolts {
		if s := b.Support(g.Plies[1].Thing); g.SameAs == "" && s != nil && s.Kind == part.RailWeb {
			out = append(out, g)
		}
	}
	return out
}

// HoleName is that of the nth hole of a bracket in a rail's web, counted from 1 over the groups of OnWeb.
func HoleName(b *job.Bracket, n int) string { return fmt.Sprintf("%s %d", b.Name, n) }

// railOf is the rail that a mount stands on: as stated, or that of its side; empty between them.
func railOf(q *whole.Request, body, mount string, at part.Vec) drill.Side {
	for _, s := range q.Stands {
		if s.Body == body && s.Mount == mount {
			return map[frame.Rail]drill.Side{frame.Left: drill.Left, frame.Right: drill.Right}[s.Rail]
		}
	}
	switch {
	case at.Y > 0:
		return drill.Left
	case at.Y < 0:
		return drill.Right
	}
	return ""
}

func surveyed(q *whole.Request, side drill.Side) *drill.Rail {
	if q.Drilling == nil {
		return nil
	}
	for i := range q.Drilling.Rails {
		if q.Drilling.Rails[i].Side == side {
			return &q.Drilling.Rails[i]
		}
	}
	return nil
}

// offWeb is how far the faying plane lies from the nearer face of the web.
func (h *holes) offWeb(groups []part.BoltGroup, shift part.Vec, f *frame.Frame, side drill.Side) (off float64, ok bool) {
	web := f.WebYMM
	if side == drill.Right {
		web = -web
	}
	for _, g := range groups {
		y := g.Pose.Origin.Y + shift.Y
		off = max(off, math.Abs(math.Abs(y-web)-f.Rail.ThicknessMM/2))
	}
	return off, off <= meets
}

// put adds the holes and the outline of the bracket's foot. What does not lie on the web at all is said, and not added.
func (h *holes) put(b *job.Bracket, groups []part.BoltGroup, shift part.Vec, r *drill.Rail) {
	outline := drill.Bracket{Name: b.Name, FromMM: math.Inf(1), ToMM: math.Inf(-1), BottomMM: math.Inf(1), TopMM: math.Inf(-1)}
	n := 0
	var missed int
	for i := range groups {
		g := &groups[i]
		for _, p := range g.Points {
			n++
			at := g.Pose.At(p.X, p.Y, 0).Add(shift)
			if at.Z > r.TopZMM || at.Z < r.TopZMM-r.DepthMM {
				missed++
				continue
			}
			r.New = append(r.New, drill.NewHole{
				Name: HoleName(b, n), Face: drill.Web, XMM: at.X, ZMM: at.Z, DiaMM: g.HoleMM, BoltMM: g.DiaMM, Bracket: b.Name,
			})
		}
		for _, u := range []float64{g.Patch.Min.X, g.Patch.Max.X} {
			for _, v := range []float64{g.Patch.Min.Y, g.Patch.Max.Y} {
				q := g.Pose.At(u, v, 0).Add(shift)
				outline.FromMM, outline.ToMM = min(outline.FromMM, q.X), max(outline.ToMM, q.X)
				outline.BottomMM, outline.TopMM = min(outline.BottomMM, q.Z), max(outline.TopMM, q.Z)
			}
		}
	}
	r.Brackets = append(r.Brackets, outline)
	if missed > 0 {
		h.warnings = append(h.warnings, whole.Warning{
			Severity: whole.Fails, Kind: "drilling", At: "bracket " + b.Name,
			Words: fmt.Sprintf("%d of its %d holes miss the %s rail, which reaches from %.0f to %.0f mm above the ground", missed, n, r.Side, r.TopZMM-r.DepthMM, r.TopZMM),
		})
	}
	h.covered = append(h.covered, fmt.Sprintf("%s: %d holes in the %s rail", b.Name, n-missed, r.Side))
}
