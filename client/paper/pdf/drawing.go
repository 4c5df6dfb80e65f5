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
	err := soundPoint(start)
	for i := range segments {
		s := &segments[i]
		if err == nil {
			err = soundPoint(s.To)
		}
		if !(math.Abs(s.Bulge) <= 1) {
			return fmt.Errorf("bulge %g; -1 to 1 is accepted", s.Bulge)
		}
	}
	return err
}

func soundPoint(p draw.Point) error {
	if math.Abs(p.X) < limit && math.Abs(p.Y) < limit {
		return nil
	}
	return soundNumbers(p.X, p.Y)
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
	d.on.ends(false)
}

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
		c.on.shaded(p.Fill.Grey)
		how = "f*"
	}
	if p.Pen.WidthMM > 0 {
		pen := p.Pen
		pen.WidthMM *= c.scale
		pen.Dash = make([]float64, len(p.Pen.Dash))
		for i, l := range p.Pen.Dash {
			pen.Dash[i] = c.scale * l
		}
		c.on.stroke(pen)
		c.on.ends(len(pen.Dash) == 0) // round ends would close the gaps of dashes
		how = map[string]string{"": "S", "f*": "B*"}[how]
	}
	if how == "" {
		return
	}
	c.loop(p.Start, p.Segments, p.Closed)
	for _, l := range p.More {
		c.loop(l.Start, l.Segments, true)
	}
	c.on.op(how)
}

func (c *canvas) loop(from draw.Point, segments []draw.Segment, closed bool) {
	c.on.moveTo(c.at(from))
	for _, s := range segments {
		if s.Bulge == 0 {
			c.on.lineTo(c.at(s.To))
		} else {
			c.arc(from, s)
		}
		from = s.To
	}
	if closed {
		c.on.op("h")
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
		c.on.curveTo(x1, y1, x2, y2, x, y)
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
	back := 0.0
	switch t.Align {
	case draw.Middle:
		back = c.wide(words) / 2
	case draw.Right:
		back = c.wide(words)
	}
	sin, cos := math.Sincos(t.TurnRad)
	if words != "" {
		c.on.words(s, x-back*cos, y+back*sin, t.TurnRad, words)
	}
}
