// Package draw holds a drawing as strokes, areas and words in mm on paper, x to the right and y up from the lower left corner. It knows no
// bracket and no file format.
package draw

// Drawing is one picture.
type Drawing struct {
	WidthMM, HeightMM float64 // both above 0
	// Name tells it from others of the same thing, in letters and '-': "views". It may be empty.
	Name string
	// Title is said to those who cannot see the drawing, and Desc what there is to see, in a sentence or two; Desc may be empty.
	Title, Desc string
	Items       []Item
}

// Item is a *Path, a *Text or a *Group.
type Item interface{ item() }

// Point is a place on the paper, mm.
type Point struct{ X, Y float64 }

// Path is a line, drawn, filled or both.
type Path struct {
	Start    Point
	Segments []Segment
	Closed   bool
	Pen      Pen   // zero width: not drawn
	Fill     Shade // None: not filled; holes are further loops of More
	More     []Loop
}

// Loop is one more closed line of a Path, filled by the even-odd rule with the others.
type Loop struct {
	Start    Point
	Segments []Segment
}

// Segment goes on from where the one before ended: straight, or along a circular arc where Bulge is not 0. Bulge is the tangent of a quarter
// of the arc's angle, positive counter-clockwise, between -1 and 1: a full circle is two arcs.
type Segment struct {
	To    Point
	Bulge float64
}

// Pen is how a line is drawn.
type Pen struct {
	WidthMM float64
	Dash    []float64 // lengths of strokes and gaps by turns, mm; empty: unbroken
	Grey    float64   // 0 black to 1 white
}

// Shade is a fill: nothing, or a grey.
type Shade struct {
	On   bool
	Grey float64 // 0 black to 1 white
}

// Align says which point of a text stands at its place.
type Align int

// The ways to align a text along its line.
const (
	Left Align = iota
	Middle
	Right
)

// Text is one line of words, whose base line goes through At.
type Text struct {
	At       Point
	HeightMM float64 // of a capital letter
	Align    Align
	TurnRad  float64 // counter-clockwise about At
	Words    string
	Bold     bool
}

// Group is items with a name by which a page can find and light them up, such as a part mark or a weld number. What is in several places has
// several groups of one name.
type Group struct {
	ID    string // letters, digits, '-' and '_'
	Items []Item
}

func (*Path) item()  {}
func (*Text) item()  {}
func (*Group) item() {}
