package pdf

// This file draws a drawing, to scale.

import (
	"cmp"
	"fmt"
	"math"

	"lugwright/client/draw"
)

// limit is beyond any length of a drawing, mm.
const limit = 1e6

// sound refuses numbers that nobody can draw.
func sound(d *draw.Drawing) error {
	if !(d.WidthMM > 0 && d.HeightMM > 0 && d.WidthMM < limit && d.HeightMM < limit) {
		return fmt.Errorf("size %g x %g mm; above 0 and below %g is accepted", d.WidthMM, d.HeightMM, limit)
	}
	return soundItems(d.Items)
}

func soundItems(items []draw.Item) error {
	for _, item := range items {
		var err error
		switch item := item.(type) {
		case *draw.Group:
			err = soundItems(item.Items)
		case *draw.Text:
			err = soundNumbers(item.At.X, item.At.Y, item.HeightMM, item.TurnRad)
		case *draw.Path:
			err = cmp.Or(soundNumbers(item.Pen.WidthMM, item.Pen.Grey, item.Fill.Grey), soundNumbers(item.Pen.Dash...), soundLoop(item.Start, item.Segments))
			for _, l := range item.More {
				err = cmp.Or(err, soundLoop(l.Start, l.Segments))
			}
		}
		if err != nil {
			return err
		}
	}
	return nil
}

func soundLoop(start draw.Point, segments []draw.Segment) error {
	err := soundNumbers(start.X, start.Y)
	for _, s := range segments {
		err = cmp.Or(err, soundNumbers(s.To.X, s.To.Y))
		if !(math.Abs(s.Bulge) <= 1) {
			return fmt.Errorf("bulge %g; -1 to 1 is accepted", s.Bulge)
		}
	}
	return err
}

func soundNumbers(list ...float64) error {
	for _, v := range list {
		if !(math.Abs(v) < limit) {
			return fmt.Errorf("the number %g; less than %g is accepted", v, limit)
		}
	}
	return nil
}

// canvas is a drawing being drawn: its upper left corner on the page, and how large it goes.
type canvas struct {
	*document
	x, y, scale, tall float64
}

func (d *document) drawing(g *draw.Drawing, x, y, scale float64) {
	c := &canvas{d, x, y, scale, g.HeightMM}
	c.items(g.Items)
	d.f.SetDashPattern(nil, 0)
	d.f.SetLineCapStyle("butt")
}

// caps are the ends of lines by whether they are dashed: round ends would close the gaps of dashes.
var caps = map[bool]string{false: "round", true: "butt"}

func (c *canvas) at(p draw.Point) (x, y float64) {
	return c.x + c.scale*p.X, c.y + c.scale*(c.tall-p.Y)
}

func (c *canvas) items(items []draw.Item) {
	for _, item := range items {
		switch item := item.(type) {
		case *draw.Group:
			c.items(item.Items)
		case *draw.Path:
			c.path(item)
		case *draw.Text:
			c.text(item)
		}
	}
}

func (c *canvas) path(p *draw.Path) {
	how := ""
	if p.Fill.On {
		v := shade(p.Fill.Grey)
		c.f.SetFillColor(v, v, v)
		how = "F*"
	}
	if p.Pen.WidthMM > 0 {
		c.f.SetLineWidth(c.scale * p.Pen.WidthMM)
		c.grey(p.Pen.Grey)
		dash := make([]float64, len(p.Pen.Dash))
		for i, l := range p.Pen.Dash {
			dash[i] = c.scale * l
		}
		c.f.SetDashPattern(dash, 0)
		c.f.SetLineCapStyle(caps[len(dash) > 0])
		how = map[string]string{"": "D", "F*": "FD*"}[how]
	}
	if how == "" {
		return
	}
	c.loop(p.Start, p.Segments, p.Closed)
	for _, l := range p.More {
		c.loop(l.Start, l.Segments, true)
	}
	c.f.DrawPath(how)
}

func (c *canvas) loop(from draw.Point, segments []draw.Segment, closed bool) {
	c.f.MoveTo(c.at(from))
	for _, s := range segments {
		if s.Bulge == 0 {
			c.f.LineTo(c.at(s.To))
		} else {
			c.arc(from, s)
		}
		from = s.To
	}
	if closed {
		c.f.ClosePath()
	}
}

// arc is drawn as cubic curves of at most a twelfth of a turn, each within a millionth of its radius of the circle.
func (c *canvas) arc(from draw.Point, s draw.Segment) {
	angle := 4 * math.Atan(s.Bulge)
	dx, dy := s.To.X-from.X, s.To.Y-from.Y
	// The centre is off the middle of the chord, to its left where the arc turns left and is below a half circle.
	off := (1 - s.Bulge*s.Bulge) / (4 * s.Bulge)
	centre := draw.Point{X: (from.X+s.To.X)/2 - off*dy, Y: (from.Y+s.To.Y)/2 + off*dx}
	radius := math.Hypot(from.X-centre.X, from.Y-centre.Y)
	a := math.Atan2(from.Y-centre.Y, from.X-centre.X)
	n := max(1, int(math.Ceil(math.Abs(angle)/(math.Pi/6)-1e-9)))
	step := angle / float64(n)
	k := radius * 4 / 3 * math.Tan(step/4)
	on := func(a float64) draw.Point {
		return draw.Point{X: centre.X + radius*math.Cos(a), Y: centre.Y + radius*math.Sin(a)}
	}
	for i := range n {
		b := a + step
		p, q := on(a), on(b)
		if i == n-1 {
			q = s.To
		}
		x1, y1 := c.at(draw.Point{X: p.X - k*math.Sin(a), Y: p.Y + k*math.Cos(a)})
		x2, y2 := c.at(draw.Point{X: q.X + k*math.Sin(b), Y: q.Y - k*math.Cos(b)})
		x, y := c.at(q)
		c.f.CurveBezierCubicTo(x1, y1, x2, y2, x, y)
		a = b
	}
}

func (c *canvas) text(t *draw.Text) {
	s := style{regular, c.scale * t.HeightMM / capHeight / pointMM}
	if t.Bold {
		s.face = bold
	}
	c.use(s)
	words := plain(t.Words)
	x, y := c.at(t.At)
	from := x
	switch t.Align {
	case draw.Middle:
		from -= c.wide(words) / 2
	case draw.Right:
		from -= c.wide(words)
	}
	if t.TurnRad != 0 {
		c.f.TransformBegin()
		c.f.TransformRotate(t.TurnRad*180/math.Pi, x, y)
		defer c.f.TransformEnd()
	}
	c.put(from, y, words)
}
