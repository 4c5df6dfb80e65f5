package wire

import (
	"fmt"

	"lugwright/geometry/shape"
	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/part/v1alpha1"
)

func vec(v part.Vec) *pb.Vec { return &pb.Vec{X: v.X, Y: v.Y, Z: v.Z} }

func readVec(r *reader, m *pb.Vec) part.Vec {
	return part.Vec{X: r.number("x", m.X), Y: r.number("y", m.Y), Z: r.number("z", m.Z)}
}

func pose(p part.Pose) *pb.Pose { return &pb.Pose{OriginMm: vec(p.Origin), U: vec(p.U), V: vec(p.V)} }

func readPose(r *reader, m *pb.Pose) part.Pose {
	return part.Pose{
		Origin: one(r, "origin_mm", m.OriginMm, readVec),
		U:      one(r, "u", m.U, readVec),
		V:      one(r, "v", m.V, readVec),
	}
}

func point(p *shape.Point) *pb.PlanePoint { return &pb.PlanePoint{XMm: p.X, YMm: p.Y} }

func readPoint(r *reader, m *pb.PlanePoint) shape.Point {
	return shape.Point{X: r.number("x_mm", m.XMm), Y: r.number("y_mm", m.YMm)}
}

func box(b shape.Box) *pb.Box { return &pb.Box{MinMm: point(&b.Min), MaxMm: point(&b.Max)} }

func readBox(r *reader, m *pb.Box) shape.Box {
	return shape.Box{Min: one(r, "min_mm", m.MinMm, readPoint), Max: one(r, "max_mm", m.MaxMm, readPoint)}
}

func loop(l *shape.Loop) *pb.Loop {
	n := len(*l)
	columns := make([]float64, 3*n)
	m := &pb.Loop{XMm: columns[:n:n], YMm: columns[n : 2*n : 2*n], Bulge: columns[2*n:]}
	for i, v := range *l {
		m.XMm[i], m.YMm[i], m.Bulge[i] = v.X, v.Y, v.Bulge
	}
	return m
}

func readLoop(r *reader, m *pb.Loop) shape.Loop {
	n := len(m.XMm)
	if len(m.YMm) != n || len(m.Bulge) != n {
		r.refuse("", fmt.Sprintf("columns of %d, %d and %d entries", n, len(m.YMm), len(m.Bulge)), "three of one length")
		return nil
	}
	if n == 0 || !r.fits("x_mm", n, maxVertices) {
		return nil
	}
	out := make(shape.Loop, n)
	for i := range out {
		out[i].X = r.number("x_mm", m.XMm[i])
		out[i].Y = r.number("y_mm", m.YMm[i])
		out[i].Bulge = r.number("bulge", m.Bulge[i])
	}
	return out
}
